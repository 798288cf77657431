import type { Uncertain } from "../doubt/index.ts";
import { standardUncertainty } from "../doubt/index.ts";

/** Chi-square that is exceeded in 5 cases of 100, by degrees of freedom from 1 (NIST/SEMATECH e-Handbook 1.3.6.7.4). */
export const CHI_SQUARE_95 = [
  3.841459, 5.991465, 7.814728, 9.487729, 11.070498, 12.591587, 14.06714, 15.507313, 16.918978, 18.307038,
] as const;
export const ELLIPSE_95_SQUARED = CHI_SQUARE_95[1];

/** Two degrees of freedom are used up by x and y. */
export const MOST_TIES = CHI_SQUARE_95.length + 2;

/** Whether the ties fit together within their doubts. */
export interface Consistency {
  /** Squares of the residuals over those of their doubts, in millionths. */
  readonly chiSquare: number;
  /** What it exceeds in 5 cases of 100 by chance alone, in millionths. */
  readonly most: number;
  readonly degreesOfFreedom: number;
  readonly agrees: boolean;
  /**
   * The mark whose tie fits worst, where they do not agree. Of three ties each is equally suspect, so none is named; the third
   * one only shows that something is wrong.
   */
  readonly suspect?: string;
}

const inMillionths = (n: number): number => Math.round(n * 1e6);

export function consistencyOf(
  chiSquare: number,
  residuals: readonly { readonly mark: string; readonly residual: Uncertain }[],
): Consistency | undefined {
  const degreesOfFreedom = residuals.length - 2;
  const limit = CHI_SQUARE_95[degreesOfFreedom - 1];
  if (limit === undefined) return undefined;
  const [found, most] = [inMillionths(chiSquare), inMillionths(limit)];
  const agrees = found <= most;
  const plain = { chiSquare: found, most, degreesOfFreedom, agrees };
  if (agrees || degreesOfFreedom < 2) return plain;
  const sizes = residuals.map(({ mark, residual }) => ({ mark, size: Math.abs(residual.value) / standardUncertainty(residual) }));
  const worst = sizes.reduce((a, b) => (b.size > a.size ? b : a));
  return { ...plain, suspect: worst.mark };
}
