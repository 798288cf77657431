import { hypergeometricAtMost } from "./counted.ts";

/** A chance of exactly alpha is one that is allowed, whatever dust the floats leave on it. */
const upTo = (alpha: number): number => alpha * (1 + 1e-9);

/**
 * The most that could be off in a lot when `off` of `looked` were: the largest number that such a look, or a better one, would still
 * come from in more than alpha of cases. Whole numbers, off <= looked <= lot.
 */
export function mostOff(lot: number, looked: number, off: number, alpha: number): number {
  let most = off;
  for (let count = off + 1; count <= lot - (looked - off); count++) {
    if (hypergeometricAtMost(off, lot, count, looked) <= upTo(alpha)) break;
    most = count;
  }
  return most;
}

/** How many to look at, finding none off, to be sure by 1 - alpha that at most `allowed` are. All of them where nothing less will do. */
export function looksNeeded(lot: number, allowed: number, alpha: number): number {
  if (allowed >= lot) return 0;
  for (let looked = 1; looked < lot; looked++) {
    if (hypergeometricAtMost(0, lot, allowed + 1, looked) <= upTo(alpha)) return looked;
  }
  return lot;
}
