import { betaShare, gammaUpper } from "./gamma.ts";
import { risingTo } from "./quantile.ts";

const isShare = (p: number): boolean => p >= 0 && p <= 1;

/** Chance that a chi-square value with so many degrees of freedom lies above x. */
export const chiSquareAbove = (x: number, degrees: number): number => (x <= 0 ? 1 : gammaUpper(degrees / 2, x / 2));

/** The x with chance p at or below it; p in 0..1, else NaN. */
export function chiSquareQuantile(p: number, degrees: number): number {
  if (!isShare(p) || !(degrees > 0)) return Number.NaN;
  if (p === 1) return Number.POSITIVE_INFINITY;
  return risingTo(p, (x) => 1 - chiSquareAbove(x, degrees), 0, degrees + 10, true);
}

/** Chance that |t| lies above |x| for Student's t with so many degrees of freedom: both tails. */
export const studentBeyond = (x: number, degrees: number): number => betaShare(degrees / (degrees + x * x), degrees / 2, 0.5);

/** The t with chance p at or below it. */
export function studentQuantile(p: number, degrees: number): number {
  if (!isShare(p) || !(degrees > 0)) return Number.NaN;
  if (p === 0 || p === 1) return p === 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const tail = Math.min(p, 1 - p);
  const t = risingTo(1 - 2 * tail, (x) => 1 - studentBeyond(x, degrees), 0, 10, true);
  return p < 0.5 ? -t : t;
}

/** Chance that Fisher's F with these degrees of freedom lies above x. */
export function fisherAbove(x: number, above: number, below: number): number {
  if (x <= 0) return 1;
  return betaShare(below / (below + above * x), below / 2, above / 2);
}

/** The F with chance p at or below it. */
export function fisherQuantile(p: number, above: number, below: number): number {
  if (!isShare(p) || !(above > 0) || !(below > 0)) return Number.NaN;
  if (p === 1) return Number.POSITIVE_INFINITY;
  return risingTo(p, (x) => 1 - fisherAbove(x, above, below), 0, 10, true);
}

/** The share with chance p at or below it, beta distribution. */
export function betaQuantile(p: number, a: number, b: number): number {
  if (!isShare(p) || !(a > 0) || !(b > 0)) return Number.NaN;
  if (p === 0 || p === 1) return p;
  return risingTo(p, (x) => betaShare(x, a, b), 0, 1, false);
}
