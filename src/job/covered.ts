import { coveredBefore } from "./before-record.ts";
import { happenedAt, type Live } from "./live.ts";
import { oncePer } from "./once-per.ts";
import { entersItem } from "./series.ts";
import { factsOf, type JobState, type Moment } from "./state.ts";

/** A covering that happened and was not opened up again since. */
export interface Covered extends Moment {
  readonly fact: Live;
  /** Nobody said so: it follows from an entry of something that needs it hidden, and happened no later than that. */
  readonly noLaterThan: boolean;
  /** It had happened before the record began; nothing was shown and nothing is judged. */
  readonly beforeRecord?: true;
}

/** An entry made at the work. What was received otherwise is entered whenever the office files it, and proves no order. */
const tellsOrder = (fact: Live): boolean => entersItem(fact) && fact.kind !== "received-otherwise";

/** Place in the work at which a covering was last opened up again; -1 for never. */
export const lastOpened = (state: JobState, covering: string): number =>
  factsOf(state, "opened-up-again")
    .filter((f) => f.what.covering === covering)
    .at(-1)?.position ?? -1;

/** When a covering happened: as first said since it was last open, else no later than the first entry that needs it hidden. */
export const coveredOf = (state: JobState, covering: string | undefined): Covered | undefined =>
  covering === undefined ? undefined : happened(state, covering);

const happened = oncePer((state: JobState, covering: string): Covered | undefined => {
  const since = lastOpened(state, covering);
  const said = factsOf(state, "covered").find((f) => f.what.covering === covering && f.position > since);
  if (said) return { fact: said, position: said.position, at: happenedAt(said), noLaterThan: false };
  const before = coveredBefore(state, covering);
  if (before && before.position > since)
    return { fact: before, position: before.position, at: before.at, noLaterThan: true, beforeRecord: true };
  const afterwards = new Set(state.sheet?.items.filter((item) => item.needsHidden === covering).map((item) => item.id));
  const first = state.facts.find(
    (f) => f.standing === "counts" && f.position > since && tellsOrder(f) && afterwards.has(String(f.what.item)),
  );
  return first && { fact: first, position: first.position, at: first.at, noLaterThan: true };
});
