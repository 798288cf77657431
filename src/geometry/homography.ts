import { total } from "../doubt/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { choleskyOf, dot, solve } from "./cholesky.ts";
import { leastSquares } from "./least-squares.ts";
import { COLLINEAR_BELOW } from "./places.ts";

/** A point of a plane, in whatever unit the plane has: pixels from the picture's upper left corner, or lengths on a sheet. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Row by row: (x, y, 1) goes to (u, v, w), which is the spot (u/w, v/w). Only the ratios of the nine count. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** One spot in both planes. */
export interface SpotPair {
  readonly from: Spot;
  readonly to: Spot;
}

/** Where a spot goes. Not a number where it goes to infinity. */
export function mapSpot([a, b, c, d, e, f, g, h, i]: Homography, { x, y }: Spot): Spot {
  const w = g * x + h * y + i;
  return { x: (a * x + b * y + c) / w, y: (d * x + e * y + f) / w };
}

/** `after` of `before`. */
export function chained(after: Homography, before: Homography): Homography {
  const at = (row: number, column: number): number =>
    total([0, 1, 2].map((k) => (after[3 * row + k] ?? 0) * (before[3 * k + column] ?? 0)));
  return [at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)];
}

/** The way back, by the adjugate: all nine have the same factor, which does not count. */
export const turnedBack = ([a, b, c, d, e, f, g, h, i]: Homography): Homography => [
  e * i - f * h,
  c * h - b * i,
  b * f - c * e,
  f * g - d * i,
  a * i - c * g,
  c * d - a * f,
  d * h - e * g,
  b * g - a * h,
  a * e - b * d,
];

/** Middle to nought and the mean distance from it to the square root of two (Hartley & Zisserman, 2nd ed., 4.4.4, from memory). */
function normalising(spots: readonly Spot[]): Homography | undefined {
  const n = spots.length;
  const [x0, y0] = [total(spots.map(({ x }) => x)) / n, total(spots.map(({ y }) => y)) / n];
  const spread = total(spots.map(({ x, y }) => Math.sqrt((x - x0) * (x - x0) + (y - y0) * (y - y0)))) / n;
  if (!(spread > 0)) return undefined;
  const s = Math.sqrt(2) / spread;
  return [s, 0, -s * x0, 0, s, -s * y0, 0, 0, 1];
}

/** Both rows of the direct linear transform for one pair. */
const rowsOf = ({ from: { x, y }, to: { x: u, y: v } }: SpotPair): readonly (readonly number[])[] => [
  [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
  [0, 0, 0, x, y, 1, -v * x, -v * y, -v],
];

/** The vector that a symmetric positive semidefinite matrix shortens most, by inverse iteration from a fixed start. */
function shortened(matrix: readonly (readonly number[])[]): readonly number[] {
  const trace = total(matrix.map((row, i) => row[i] ?? 0));
  // keeps the factor finite where the fit is perfect
  const factor = choleskyOf(matrix.map((row, i) => row.map((value, j) => value + (i === j ? 1e-13 * trace : 0))));
  let vector: readonly number[] = [0.9, 0.1, 0.2, -0.1, 0.8, 0.3, 0.05, -0.07, 1];
  for (let round = 0; round < 12; round++) {
    const next = solve(factor, vector);
    const size = Math.sqrt(dot(next, next));
    vector = next.map((value) => value / size);
  }
  return vector;
}

/** Whether the smaller of the two principal spreads is below `COLLINEAR_BELOW` of the larger, as for a plane's places. */
function inLine(spots: readonly Spot[]): boolean {
  const n = spots.length;
  const [x0, y0] = [total(spots.map(({ x }) => x)) / n, total(spots.map(({ y }) => y)) / n];
  const xx = total(spots.map(({ x }) => (x - x0) * (x - x0)));
  const yy = total(spots.map(({ y }) => (y - y0) * (y - y0)));
  const xy = total(spots.map(({ x, y }) => (x - x0) * (y - y0)));
  const largest = (xx + yy + Math.sqrt((xx - yy) * (xx - yy) + 4 * xy * xy)) / 2;
  const determinant = xx * yy - xy * xy;
  return !(determinant > 0 && Math.sqrt(determinant) / largest >= COLLINEAR_BELOW);
}

/** Normalised direct linear transform (Hartley & Zisserman, 2nd ed., algorithm 4.2, from memory). Pairs have been looked at. */
export function directTransform(pairs: readonly SpotPair[]): Homography | undefined {
  const [before, after] = [normalising(pairs.map(({ from }) => from)), normalising(pairs.map(({ to }) => to))];
  if (before === undefined || after === undefined) return undefined;
  const rows = pairs.flatMap(({ from, to }) => rowsOf({ from: mapSpot(before, from), to: mapSpot(after, to) }));
  const square = Array.from({ length: 9 }, (_, i) =>
    Array.from({ length: 9 }, (_, j) => total(rows.map((r) => (r[i] ?? 0) * (r[j] ?? 0)))),
  );
  const found = shortened(square) as unknown as Homography;
  return chained(turnedBack(after), chained(found, before));
}

/**
 * Homography that leaves the least sum of squared distances in the second plane, from four pairs or more: direct linear
 * transform, then Gauss-Newton. The ninth number is 1: the first plane's origin, brought to the middle of its spots, must not
 * lie on the horizon. Refuses fewer than four pairs, what is no number, and spots in one line.
 */
export function homographyFrom(pairs: readonly SpotPair[]): Outcome<Homography> {
  if (pairs.length < 4) return refuse("points-too-few", "pairs");
  const figures = pairs.flatMap(({ from, to }) => [from.x, from.y, to.x, to.y]);
  if (!figures.every(Number.isFinite)) return refuse("number-not-finite", "pairs");
  if (inLine(pairs.map(({ from }) => from)) || inLine(pairs.map(({ to }) => to))) return refuse("points-collinear", "pairs");
  const [before, after] = [normalising(pairs.map(({ from }) => from)), normalising(pairs.map(({ to }) => to))];
  if (before === undefined || after === undefined) return refuse("points-coincident", "pairs");
  const plain = pairs.map(({ from, to }) => ({ from: mapSpot(before, from), to: mapSpot(after, to) }));
  const first = directTransform(plain);
  if (first === undefined || !first.every(Number.isFinite) || first[8] === 0) return refuse("points-collinear", "pairs");
  const start = first.slice(0, 8).map((value) => value / first[8]);
  const of = (eight: readonly number[]): Homography => [...eight, 1] as unknown as Homography;
  const settled = leastSquares(start, (eight) =>
    plain.flatMap(({ from, to }) => {
      const at = mapSpot(of(eight), from);
      return [at.x - to.x, at.y - to.y];
    }),
  );
  if (settled === undefined) return refuse("points-collinear", "pairs");
  const all = chained(turnedBack(after), chained(of(settled.at), before));
  return ok(all.map((value) => value / all[8]) as unknown as Homography);
}
