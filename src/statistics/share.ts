import { betaQuantile } from "./continuous.ts";
import { normalQuantile } from "./normal.ts";

export interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

const zOf = (alpha: number): number => normalQuantile(1 - alpha / 2);

/** Wilson's score interval of a share; `z` in place of alpha's own where a published example uses a rounded one. n = 0: 0 to 1. */
export function wilson(hits: number, n: number, alpha: number, z: number = zOf(alpha)): Interval {
  if (n <= 0) return { value: Number.NaN, low: 0, high: 1 };
  const p = hits / n;
  const squared = z * z;
  const centre = (p + squared / (2 * n)) / (1 + squared / n);
  const half = (z * Math.sqrt((p * (1 - p)) / n + squared / (4 * n * n))) / (1 + squared / n);
  return { value: p, low: hits === 0 ? 0 : Math.max(0, centre - half), high: hits === n ? 1 : Math.min(1, centre + half) };
}

/** Clopper and Pearson's interval: never misses more often than alpha. */
export function exactShare(hits: number, n: number, alpha: number): Interval {
  if (n <= 0) return { value: Number.NaN, low: 0, high: 1 };
  return {
    value: hits / n,
    low: hits === 0 ? 0 : betaQuantile(alpha / 2, hits, n - hits + 1),
    high: hits === n ? 1 : betaQuantile(1 - alpha / 2, hits + 1, n - hits),
  };
}

/** Second share less the first, Newcombe's interval from two of Wilson's (1998, method 10, from memory). */
export function differenceOfShares(first: Interval, second: Interval): Interval {
  const value = second.value - first.value;
  return {
    value,
    low: value - Math.hypot(second.value - second.low, first.high - first.value),
    high: value + Math.hypot(second.high - second.value, first.value - first.low),
  };
}
