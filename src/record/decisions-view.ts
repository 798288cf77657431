import { type About, factsOf, type Live } from "../job/index.ts";
import type { Context } from "./context.ts";
import type { DecisionView } from "./model.ts";
import { fill } from "./say.ts";

function view(context: Context, fact: Live, title: string, kind: string, says: string): DecisionView {
  return { title, kind, says, by: context.nameOf(fact), when: context.sayer.moment(fact.at) };
}

/** What was accepted as built, agreed beforehand, let through by telephone or done over, in the order of the work. */
export function decisionViews(context: Context): readonly DecisionView[] {
  const { state, sayer, texts, sheet } = context;
  const title = (about: About): string => sayer.title(about);
  const length = (value: number | undefined): string => (value === undefined ? "…" : sayer.quantity("length", value));
  const concessions = factsOf(state, "concession").map((f) => ({
    at: f.position,
    view: view(
      context,
      f,
      title(f.what.about),
      texts("kind-concession"),
      fill(texts("concession-says"), { reason: f.what.reason, extent: f.what.extent }),
    ),
  }));
  const departures = factsOf(state, "departure-agreed").map((f) => ({
    at: f.position,
    view: view(
      context,
      f,
      title(f.what.about),
      texts("kind-departure"),
      fill(texts("departure-says"), { reason: f.what.reason, lower: length(f.what.lower), upper: length(f.what.upper) }),
    ),
  }));
  const words = factsOf(state, "go-ahead");
  const goAheads = words
    .filter((f) => f.what.confirms === undefined)
    .map((f) => {
      const confirmed = words.some((other) => other.what.confirms === f.id);
      const act = sayer.words(sheet.coverings.find((c) => c.id === f.what.covering)?.title);
      return {
        at: f.position,
        view: view(
          context,
          f,
          act,
          texts("kind-go-ahead"),
          `${f.what.reason} (${texts(confirmed ? "word-confirmed" : "word-not-confirmed")})`,
        ),
      };
    });
  const reworks = factsOf(state, "reworked").map((f) => ({
    at: f.position,
    view: view(
      context,
      f,
      title(f.what.about),
      texts("kind-rework"),
      fill(texts("rework-says"), { done: f.what.done, minutes: String(f.what.minutes) }),
    ),
  }));
  return [...concessions, ...departures, ...goAheads, ...reworks].sort((a, b) => a.at - b.at).map(({ view: v }) => v);
}
