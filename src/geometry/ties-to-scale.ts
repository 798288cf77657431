import { type Outcome, ok, refuse } from "../outcome/index.ts";
import type { Vector } from "./ties-plan.ts";

/** A drawing's scale, 1 : `ratio`. In inches it is said as so many `inches` (a fraction as it is written) to `feet`. */
export interface DrawingScale {
  readonly ratio: number;
  readonly said?: { readonly inches: string; readonly feet: number };
}

export interface SheetFit {
  readonly scale: DrawingScale;
  /** Where the origin of the axes comes to lie on the paper, metres from its left and top edge. */
  readonly offset: Vector;
}

/** ISO 5455 from memory, and 1:25 and 1:250 as usual on building drawings. */
const metricScales: readonly DrawingScale[] = [5, 10, 20, 25, 50, 100, 200, 250, 500, 1000].map((ratio) => ({ ratio }));

/** The architect's and, from 1 in = 20 ft on, the engineer's scales (common practice). */
const inchScales: readonly DrawingScale[] = (
  [
    ["3", 3, 1],
    ["1 1/2", 1.5, 1],
    ["1", 1, 1],
    ["3/4", 0.75, 1],
    ["1/2", 0.5, 1],
    ["3/8", 0.375, 1],
    ["1/4", 0.25, 1],
    ["3/16", 0.1875, 1],
    ["1/8", 0.125, 1],
    ["3/32", 0.09375, 1],
    ["1/16", 0.0625, 1],
    ["1", 1, 20],
    ["1", 1, 30],
    ["1", 1, 40],
    ["1", 1, 50],
    ["1", 1, 60],
    ["1", 1, 100],
  ] as const
).map(([inches, size, feet]) => ({ ratio: (feet * 12) / size, said: { inches, feet } }));

export const drawingScales = { metric: metricScales, inches: inchScales } as const;

/** A hair of grace, that what fits exactly is not lost to rounding. */
const GRACE = 1 + 1e-12;

/**
 * The largest usual scale at which all points fit into `width` × `height` metres of paper, and where the origin lies for them to
 * stand in its middle. Give the points that bound what is drawn (ellipses, dimension lines), and paper without its margins.
 * Refuses no points, numbers that are not finite, paper without size, and more than the smallest scale can hold.
 */
export function fitToSheet(
  points: readonly Vector[],
  width: number,
  height: number,
  units: keyof typeof drawingScales = "metric",
): Outcome<SheetFit> {
  for (const [name, size] of Object.entries({ width, height })) {
    if (!Number.isFinite(size)) return refuse("number-not-finite", name);
    if (size <= 0) return refuse("number-not-positive", name);
  }
  if (points.length === 0) return refuse("points-too-few", "points", { taken: 0, least: 1 });
  if (!points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))) return refuse("number-not-finite", "points");
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = drawingScales[units].find(({ ratio }) => right - left <= width * ratio * GRACE && top - bottom <= height * ratio * GRACE);
  if (!scale) return refuse("drawing-does-not-fit", "points");
  const { ratio } = scale;
  return ok({ scale, offset: { x: width / 2 - (left + right) / 2 / ratio, y: height / 2 + (bottom + top) / 2 / ratio } });
}

/** A point on the paper, metres from its left and top edge (y down, as drawn on screens and in SVG). */
export const onSheet = ({ scale, offset }: SheetFit, { x, y }: Vector): Vector => ({
  x: offset.x + x / scale.ratio,
  y: offset.y - y / scale.ratio,
});
