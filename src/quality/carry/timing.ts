import { message } from "../../job/index.ts";
import { fisherExact } from "../../statistics/index.ts";
import { type Candidate, percent, sumOf } from "../answering.ts";
import type { JobObserved } from "../observation.ts";
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

/** Readings by a group of theirs; `keyOf` undefined: left out. */
export function timings(jobs: readonly JobObserved[], keyOf: (step: string, person: string) => string): readonly Timing[] {
  const counts = new Map<string, { n: number; within: number; all: number; after: number }>();
  for (const { readings } of jobs) {
    const last = new Map<string, { readonly at: number; readonly item: string; readonly tag: string | undefined }>();
    for (const { at, phone, item, tag, step, person, afterCovering } of [...readings].sort((a, b) => a.at - b.at)) {
      const key = keyOf(step, person);
      const own = counts.get(key) ?? { n: 0, within: 0, all: 0, after: 0 };
      const before = last.get(phone);
      own.all += 1;
      if (afterCovering) own.after += 1;
      if (before !== undefined && (before.item !== item || before.tag !== tag)) {
        own.n += 1;
        if (at - before.at < WITHIN_MS) own.within += 1;
      }
      last.set(phone, { at, item, tag });
      counts.set(key, own);
    }
  }
  return [...counts].map(([key, own]) => ({ key, ...own }));
}

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
