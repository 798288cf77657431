import { betaQuantile } from "./continuous.ts";
import { logGamma } from "./gamma.ts";
import type { Interval } from "./share.ts";

/** A share of many groups as a beta distribution: what one group is likely to be before it is looked at. */
export interface BetaPrior {
  readonly a: number;
  readonly b: number;
}

export interface Group {
  readonly hits: number;
  readonly n: number;
}

const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b);

/** The most and the least that all groups together may weigh; the most is 'no difference between groups'. */
const [LEAST_WEIGHT, MOST_WEIGHT] = [1, 10_000];

/**
 * The beta-binomial whose mean is the share of all and whose weight (a + b) makes the groups likeliest, found by a golden section over
 * the logarithm of the weight. Undefined of fewer than three groups, or where all or none are hits.
 */
export function betaPrior(groups: readonly Group[]): BetaPrior | undefined {
  const seen = groups.filter(({ n }) => n > 0);
  const [hits, n] = [seen.reduce((s, g) => s + g.hits, 0), seen.reduce((s, g) => s + g.n, 0)];
  if (seen.length < 3 || hits === 0 || hits === n) return undefined;
  const mean = hits / n;
  const likelihood = (logWeight: number): number => {
    const [a, b] = [mean * Math.exp(logWeight), (1 - mean) * Math.exp(logWeight)];
    return seen.reduce((sum, g) => sum + logBeta(a + g.hits, b + g.n - g.hits) - logBeta(a, b), 0);
  };
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [Math.log(LEAST_WEIGHT), Math.log(MOST_WEIGHT)];
  for (let step = 0; step < 60; step++) {
    const [left, right] = [high - golden * (high - low), low + golden * (high - low)];
    if (likelihood(left) > likelihood(right)) high = right;
    else low = left;
  }
  const weight = Math.exp((low + high) / 2);
  return { a: mean * weight, b: (1 - mean) * weight };
}

/** What a group's share is likely to be, drawn towards that of all the more the fewer it has. */
export function shrunk({ a, b }: BetaPrior, { hits, n }: Group, alpha: number): Interval {
  const [after, before] = [a + hits, b + n - hits];
  return {
    value: after / (after + before),
    low: betaQuantile(alpha / 2, after, before),
    high: betaQuantile(1 - alpha / 2, after, before),
  };
}
