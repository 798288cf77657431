import { betaShare, gammaUpper, logChoose } from "./gamma.ts";

/** Chance of `least` or more of n, each with chance p. */
export function binomialAtLeast(least: number, n: number, p: number): number {
  if (least <= 0) return 1;
  if (least > n) return 0;
  return betaShare(p, least, n - least + 1);
}

/** Chance of `most` or fewer of n, each with chance p. */
export const binomialAtMost = (most: number, n: number, p: number): number => 1 - binomialAtLeast(most + 1, n, p);

/** Chance of `least` or more where `mean` are expected, Poisson. */
export function poissonAtLeast(least: number, mean: number): number {
  if (least <= 0) return 1;
  return mean <= 0 ? 0 : 1 - gammaUpper(least, mean);
}

/** Chance of `most` or fewer where `mean` are expected, Poisson. */
export const poissonAtMost = (most: number, mean: number): number => 1 - poissonAtLeast(most + 1, mean);

/** Chance of exactly `found` off in a look at n out of a lot that has `off`: hypergeometric. */
export function hypergeometric(found: number, lot: number, off: number, n: number): number {
  if (found < Math.max(0, n - (lot - off)) || found > Math.min(off, n)) return 0;
  return Math.exp(logChoose(off, found) + logChoose(lot - off, n - found) - logChoose(lot, n));
}

/** Chance of `most` or fewer off: the operating characteristic of a look that accepts `most`. */
export function hypergeometricAtMost(most: number, lot: number, off: number, n: number): number {
  let sum = 0;
  for (let found = 0; found <= most; found++) sum += hypergeometric(found, lot, off, n);
  return Math.min(1, sum);
}

/** Chance of `least` or more off. */
export function hypergeometricAtLeast(least: number, lot: number, off: number, n: number): number {
  let sum = 0;
  for (let found = Math.max(0, least); found <= Math.min(off, n); found++) sum += hypergeometric(found, lot, off, n);
  return Math.min(1, sum);
}

/**
 * Fisher's exact test of two shares, both sides: chance, with all totals as they are, of a table no likelier than the one seen.
 * `first` of `firstOf` against `second` of `secondOf`.
 */
export function fisherExact(first: number, firstOf: number, second: number, secondOf: number): number {
  const [lot, off] = [firstOf + secondOf, first + second];
  if (firstOf <= 0 || secondOf <= 0) return 1;
  const seen = hypergeometric(first, lot, off, firstOf);
  let sum = 0;
  for (let k = Math.max(0, off - secondOf); k <= Math.min(off, firstOf); k++) {
    const chance = hypergeometric(k, lot, off, firstOf);
    // what is as likely but for the floats' own dust counts
    if (chance <= seen * (1 + 1e-9)) sum += chance;
  }
  return Math.min(1, sum);
}
