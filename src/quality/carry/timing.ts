import { message } from "../../job/index.ts";
import { fisherExact } from "../../statistics/index.ts";
import { type Candidate, grouped, percent, sumOf } from "../answering.ts";
import type { GroupCarried } from "../carried.ts";
import type { Label } from "../question.ts";

/** Two places read and typed within this are too near for a tape to have moved between them, milliseconds (own). */
export const WITHIN_MS = 4_000;

/** Of one group: readings that followed another place, those that followed it within seconds, and those after the covering. */
export interface Timing {
  readonly key: string;
  readonly n: number;
  readonly within: number;
  readonly all: number;
  readonly after: number;
}

/** Counts of all jobs by a group of theirs, in the order in which the groups first appear. */
export const timings = (groups: readonly GroupCarried[], by: "step" | "person"): readonly Timing[] =>
  [...grouped(groups, (group) => group[by])].map(([key, own]) => ({
    key,
    n: sumOf(own, ({ followed }) => followed),
    within: sumOf(own, ({ within }) => within),
    all: sumOf(own, ({ readings }) => readings),
    after: sumOf(own, ({ afterCovering }) => afterCovering),
  }));

/** One group against all the others: more often than they? */
export function timingCandidate(
  about: Label,
  own: Timing,
  all: readonly Timing[],
  what: "entered within seconds" | "entered after the covering",
): Candidate {
  const seconds = what === "entered within seconds";
  const [hits, of] = seconds ? [own.within, own.n] : [own.after, own.all];
  const rest = sumOf(all, (t) => (seconds ? t.within : t.after)) - hits;
  const restOf = sumOf(all, (t) => (seconds ? t.n : t.all)) - of;
  return {
    about,
    what,
    p: of === 0 || restOf === 0 ? 1 : fisherExact(hits, of, rest, restOf),
    quiet: hits / Math.max(1, of) <= rest / Math.max(1, restOf),
    says: message(seconds ? "carry.seconds" : "carry.after", { hits, n: of, share: percent(hits / Math.max(1, of)) }),
  };
}
