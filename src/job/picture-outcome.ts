import { type Finding, message } from "./finding.ts";
import type { Live } from "./live.ts";
import { oncePer } from "./once-per.ts";
import { besideCovering, timesOf } from "./picture-facts/beside-covering.ts";
import { lookAt } from "./picture-facts/looks.ts";
import type { Instance } from "./series.ts";
import { factsOf, type JobState } from "./state.ts";

type PictureOutcome = Pick<Finding, "verdict" | "says">;

/** Pictures that media could not open. */
const unreadablePhotos = oncePer((state: JobState, _: "all"): ReadonlySet<string> => {
  const facts = factsOf(state, "picture-read").filter(
    ({ what }) => typeof what.facts === "object" && what.facts !== null && "unreadable" in what.facts && what.facts.unreadable,
  );
  return new Set(facts.map((f) => f.what.photo));
});

type Shown = "shows it" | "cannot tell" | "nobody looked yet" | "does not show it" | "unreadable" | "after covering";

/** What a person saw on it counts before what a machine made of it, but for its time, which nobody sees. */
function shown(state: JobState, instance: Instance, picture: Live, unreadable: ReadonlySet<string>): Shown {
  const looked = lookAt(state, picture.id)?.what.says;
  if (looked === "does not show it") return looked;
  if (besideCovering(state, instance, picture)?.order === "after") return "after covering";
  if (looked === "shows it") return looked;
  if (picture.what.judged === "unreadable" || unreadable.has(String(picture.what.photo))) return "unreadable";
  return looked ?? "nobody looked yet";
}

const pictureOrder: readonly Shown[] = ["shows it", "nobody looked yet", "cannot tell", "after covering", "unreadable", "does not show it"];

/** The best of the pictures taken stands for all. */
export function pictureOutcome(state: JobState, instance: Instance, pictures: readonly Live[]): PictureOutcome {
  const unreadable = unreadablePhotos(state, "all");
  const judged = pictures.map((picture) => ({ picture, is: shown(state, instance, picture, unreadable) }));
  const [first] = judged.sort((a, b) => pictureOrder.indexOf(a.is) - pictureOrder.indexOf(b.is));
  const best = first?.is;
  const beside = best === "after covering" && first ? besideCovering(state, instance, first.picture) : undefined;
  // both times and their doubts, and no verdict against anybody: a clock may be off, or the covering may have been said wrongly
  if (beside) return { verdict: "too close to call", says: message("picture.after-covering", timesOf(beside)) };
  if (best === "does not show it") return { verdict: "outside", says: message("picture.does-not-show") };
  if (best === "unreadable") return { verdict: "too close to call", says: message("picture.unreadable") };
  if (best === "shows it") return { verdict: "within", says: message("picture.shows") };
  return { verdict: "within", says: message(best === "cannot tell" ? "picture.cannot-tell" : "picture.not-looked-at") };
}
