import { message } from "../../job/index.ts";
import { binomialAtLeast, normalDistribution } from "../../statistics/index.ts";
import { type Candidate, percent, sumOf } from "../answering.ts";
import type { ReadingObserved } from "../observation.ts";
import type { Label } from "../question.ts";

/** Fewer readings than this and nobody's are judged (own). */
export const LEAST_READINGS = 20;

/** The most often that a reading with its own doubt can fall on one given mark: were the work itself perfect. */
export const mostOnOneMark = (resolution: number, u: number): number => (u > 0 ? 2 * normalDistribution(resolution / (2 * u)) - 1 : 1);

export interface Heaping {
  readonly n: number;
  /** As many stand exactly on the nominal, and at most so many would. */
  readonly hits: number;
  readonly most: number;
  readonly p: number;
}

/** Readings that have a nominal, a smallest mark and a doubt: on the nominal's own mark more often than the doubt lets them? */
export function heaping(readings: readonly ReadingObserved[]): Heaping {
  const judged = readings.flatMap(({ value, nominal, resolution, u }) =>
    value === undefined || nominal === undefined || resolution === undefined || u === undefined || resolution <= 0
      ? []
      : [{ isHit: 2 * Math.abs(value - nominal) <= resolution, chance: mostOnOneMark(resolution, u) }],
  );
  const n = judged.length;
  const hits = judged.filter(({ isHit }) => isHit).length;
  const most = sumOf(judged, ({ chance }) => chance);
  // of unlike chances, the binomial of their mean has the heavier tail from its mean on (Hoeffding 1956, from memory)
  return { n, hits, most, p: hits <= most ? 1 : binomialAtLeast(hits, n, most / n) };
}

export const heapingCandidate = (about: Label, { n, hits, most, p }: Heaping): Candidate => ({
  about,
  what: "typed the nominal",
  p,
  says: message("carry.nominal", { hits, n, share: percent(hits / n), most: percent(most / n) }),
});
