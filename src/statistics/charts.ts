import { moments } from "./variance.ts";

/** d2 of two, to the digits that the published examples use (three), and D4 of two. */
const D2 = 1.128;
const D4 = 3.267;

export interface Limits {
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
}

export interface Individuals extends Limits {
  /** Standard deviation from the mean moving range. */
  readonly sigma: number;
  readonly ranges: readonly number[];
  readonly rangeLimits: Limits;
}

/** Individuals and moving range of values in their order, limits at three sigma; undefined of fewer than two. */
export function individuals(values: readonly number[]): Individuals | undefined {
  if (values.length < 2) return undefined;
  const ranges = values.slice(1).map((value, i) => Math.abs(value - (values[i] ?? value)));
  const centre = moments(values).mean;
  const meanRange = moments(ranges).mean;
  const sigma = meanRange / D2;
  return {
    centre,
    lower: centre - 3 * sigma,
    upper: centre + 3 * sigma,
    sigma,
    ranges,
    rangeLimits: { centre: meanRange, lower: 0, upper: D4 * meanRange },
  };
}

/** Counts of equal chances (c chart). */
export function countLimits(counts: readonly number[]): Limits {
  const centre = moments(counts).mean;
  const half = 3 * Math.sqrt(centre);
  return { centre, lower: Math.max(0, centre - half), upper: centre + half };
}

/** Counts each out of so many units (u chart): limits for each. */
export function rateLimits(counts: readonly number[], units: readonly number[]): readonly Limits[] {
  const total = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0);
  const centre = total(counts) / total(units);
  return units.map((n) => {
    const half = 3 * Math.sqrt(centre / n);
    return { centre, lower: Math.max(0, centre - half), upper: centre + half };
  });
}

/** Shares, each of so many (p chart): limits for each. */
export function shareLimits(hits: readonly number[], of: readonly number[]): readonly Limits[] {
  const total = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0);
  const centre = total(hits) / total(of);
  return of.map((n) => {
    const half = 3 * Math.sqrt((centre * (1 - centre)) / n);
    return { centre, lower: Math.max(0, centre - half), upper: Math.min(1, centre + half) };
  });
}

/**
 * Jobs between rare events (g chart): counts of jobs without the event before each event. Limits are chances of the geometric
 * distribution, since three sigma of so lopsided a count would put the lower limit below zero.
 */
export function betweenEventsLimits(gaps: readonly number[], beyond: number): Limits {
  const centre = moments(gaps).mean;
  // the smallest-variance unbiased estimate of the chance, as a gap of zero must not read as certainty (from memory)
  const chance = gaps.length < 2 ? 1 / (1 + centre) : (gaps.length - 1) / gaps.length / (centre + (gaps.length - 1) / gaps.length);
  const at = (share: number): number => Math.log(1 - share) / Math.log(1 - chance) - 1;
  return { centre, lower: Math.max(0, at(beyond / 2)), upper: Math.max(0, at(1 - beyond / 2)) };
}

/** Points of values outside their limits, by place from 0. */
export const beyondLimits = (values: readonly number[], limits: readonly Limits[]): readonly number[] =>
  values.flatMap((value, i) => {
    const own = limits[i] ?? limits[0];
    return own !== undefined && (value > own.upper || value < own.lower) ? [i] : [];
  });

/** The run rule: so many in a row on one side of the centre; the last point of each such run, and every further one. */
export function runsOnOneSide(values: readonly number[], centre: number, length: number): readonly number[] {
  let run = 0;
  let side = 0;
  return values.flatMap((value, i) => {
    const own = Math.sign(value - centre);
    run = own !== 0 && own === side ? run + 1 : own === 0 ? 0 : 1;
    side = own;
    return run >= length ? [i] : [];
  });
}
