import { chiSquareQuantile } from "./continuous.ts";
import { normalQuantile } from "./normal.ts";
import type { Interval } from "./share.ts";

export interface Capability {
  /** Absent where there is only one limit. */
  readonly cp?: Interval;
  readonly cpk: Interval;
}

/**
 * How many times three sigma fit between mean and the nearer limit (Cpk), and six between both (Cp), with intervals: Cp by chi-square,
 * Cpk by Bissell's approximation (1990, from memory). `n`: values that mean and sigma come from. Undefined without a limit or with sigma 0.
 */
export function capability(
  { mean, sigma, n }: { readonly mean: number; readonly sigma: number; readonly n: number },
  { lower, upper }: { readonly lower?: number; readonly upper?: number },
  alpha: number,
): Capability | undefined {
  if (!(sigma > 0) || n < 2 || (lower === undefined && upper === undefined)) return undefined;
  const sides = [...(upper === undefined ? [] : [upper - mean]), ...(lower === undefined ? [] : [mean - lower])];
  const value = Math.min(...sides) / (3 * sigma);
  const half = normalQuantile(1 - alpha / 2) * Math.sqrt(1 / (9 * n) + (value * value) / (2 * (n - 1)));
  const cpk = { value, low: value - half, high: value + half };
  if (lower === undefined || upper === undefined) return { cpk };
  const both = (upper - lower) / (6 * sigma);
  const bound = (p: number): number => both * Math.sqrt(chiSquareQuantile(p, n - 1) / (n - 1));
  return { cp: { value: both, low: bound(alpha / 2), high: bound(1 - alpha / 2) }, cpk };
}
