import { studentBeyond } from "./continuous.ts";

/** A straight line through points by least squares: its slope, and the chance of such a slope where there is none. */
export interface Trend {
  readonly slope: number;
  readonly intercept: number;
  /** Standard error of the slope. */
  readonly error: number;
  readonly p: number;
}

/** Undefined of fewer than three points, or where all x are the same. Student's t with n - 2 degrees of freedom. */
export function trend(points: readonly { readonly x: number; readonly y: number }[]): Trend | undefined {
  const n = points.length;
  if (n < 3) return undefined;
  const mean = (of: "x" | "y"): number => points.reduce((sum, point) => sum + point[of], 0) / n;
  const [meanX, meanY] = [mean("x"), mean("y")];
  const spread = points.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0);
  if (!(spread > 0)) return undefined;
  const slope = points.reduce((sum, { x, y }) => sum + (x - meanX) * (y - meanY), 0) / spread;
  const left = points.reduce((sum, { x, y }) => sum + (y - meanY - slope * (x - meanX)) ** 2, 0);
  const error = Math.sqrt(left / (n - 2) / spread);
  const p = error > 0 ? studentBeyond(slope / error, n - 2) : slope === 0 ? 1 : 0;
  return { slope, intercept: meanY - slope * meanX, error, p };
}
