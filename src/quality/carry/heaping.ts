import { message } from "../../job/index.ts";
import { binomialAtLeast, normalDistribution } from "../../statistics/index.ts";
import { type Candidate, percent, sumOf } from "../answering.ts";
import type { ReadingObserved } from "../observation.ts";
import type { Label } from "../question.ts";

/** Fewer readings than this and nobody's are judged (own). */
export const LEAST_READINGS = 20;

/** The most often that a reading with its own doubt can fall on one given mark: were the work itself perfect. */
export const mostOnOneMark = (resolution: number, u: number): number => (u > 0 ? 2 * normalDistribution(resolution / (2 * u)) - 1 : 1);

/** The same, each worked out once: of one job few differ. */
export function knownChances(): typeof mostOnOneMark {
  const known = new Map<number, number>();
  return (resolution, u) => {
    const ratio = resolution / u;
    const chance = known.get(ratio) ?? mostOnOneMark(resolution, u);
    known.set(ratio, chance);
    return chance;
  };
}

export interface Heaping {
  readonly n: number;
  /** As many stand exactly on the nominal, and at most so many would. */
  readonly hits: number;
  readonly most: number;
  readonly p: number;
}

/** Whether a reading that has a nominal, a smallest mark and a doubt stands on the nominal's own mark, and how often its doubt lets it. */
export const onNominal = (
  { value, nominal, resolution, u }: ReadingObserved,
  chanceOf = mostOnOneMark,
): { readonly isHit: boolean; readonly chance: number } | undefined =>
  value === undefined || nominal === undefined || resolution === undefined || u === undefined || resolution <= 0
    ? undefined
    : { isHit: 2 * Math.abs(value - nominal) <= resolution, chance: chanceOf(resolution, u) };

/** Readings that are judged so: on the nominal's own mark more often than their doubt lets them? */
export function heaping(counts: readonly Omit<Heaping, "p">[]): Heaping {
  const [n, hits, most] = [sumOf(counts, (one) => one.n), sumOf(counts, (one) => one.hits), sumOf(counts, (one) => one.most)];
  // of unlike chances, the binomial of their mean has the heavier tail from its mean on (Hoeffding 1956, from memory)
  return { n, hits, most, p: hits <= most ? 1 : binomialAtLeast(hits, n, most / n) };
}

export const heapingCandidate = (about: Label, { n, hits, most, p }: Heaping): Candidate => ({
  about,
  what: "typed the nominal",
  p,
  says: message("carry.nominal", { hits, n, share: percent(hits / n), most: percent(most / n) }),
});
