import type { Whats } from "../fact.ts";
import type { Finding } from "../finding.ts";
import type { Live } from "../live.ts";
import { oncePer } from "../once-per.ts";
import { factsOf, type JobState } from "../state.ts";

type Look = Live & { readonly what: Whats["picture-looked-at"] };

const looks = oncePer(
  (state: JobState, _: "all"): ReadonlyMap<string, Look> =>
    new Map(factsOf(state, "picture-looked-at").map((fact) => [fact.what.picture, fact])),
);

/** The last look of a person at a picture, by the picture's entry. */
export const lookAt = (state: JobState, picture: string): Look | undefined => looks(state, "all").get(picture);

const saidBy: Readonly<Record<string, Whats["picture-looked-at"]["says"]>> = {
  "picture.shows": "shows it",
  "picture.does-not-show": "does not show it",
  "picture.cannot-tell": "cannot tell",
};

/** The look that a picture's finding speaks of; undefined where it speaks of none. */
export function lookBehind(state: JobState, { of, says, entries }: Pick<Finding, "of" | "says" | "entries">): Look | undefined {
  const said = of === "picture" ? saidBy[says.key] : undefined;
  if (said === undefined) return undefined;
  return entries.flatMap((entry) => lookAt(state, entry) ?? []).find((look) => look.what.says === said);
}
