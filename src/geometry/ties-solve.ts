import { combine, type Uncertain } from "../doubt/index.ts";
import { choleskyOf, dot, solve } from "./cholesky.ts";
import type { Tied } from "./ties-meet.ts";
import { covariance, type PlanPoint, type Vector } from "./ties-plan.ts";

/** No tape is better than this (own): keeps the weights finite where a doubt is nil or wholly shared. Metres. */
export const LEAST_DOUBT = 1e-4;
const MOST_STEPS = 40;
const SETTLED_WITHIN = 1e-9;

/** Everything about the ties as seen from one place. */
interface Seen {
  /** Unit vectors from each mark to the place. */
  readonly units: readonly Vector[];
  /** Measured less computed distance; its doubt is that of the tie and of its mark along the line. */
  readonly misclosures: readonly Uncertain[];
}

function seenFrom(at: Vector, ties: readonly Tied[]): Seen | undefined {
  const lines = ties.map(({ mark, distance }) => {
    const [dx, dy] = [at.x - mark.x.value, at.y - mark.y.value];
    const length = Math.sqrt(dx * dx + dy * dy);
    const unit = { x: dx / length, y: dy / length };
    const { parts } = combine([
      { times: 1, of: distance },
      { times: unit.x, of: mark.x },
      { times: unit.y, of: mark.y },
    ]);
    return { length, unit, misclosure: { value: distance.value - length, parts } };
  });
  if (!lines.every(({ length }) => Number.isFinite(length) && length > 0)) return undefined;
  return { units: lines.map(({ unit }) => unit), misclosures: lines.map(({ misclosure }) => misclosure) };
}

/** How the place moves with each misclosure, weighted by the inverse of their joint covariance, and chi-square. */
interface Weighted {
  readonly gainX: readonly number[];
  readonly gainY: readonly number[];
  readonly chiSquare: number;
}

function weigh({ units, misclosures }: Seen): Weighted | undefined {
  const matrix = misclosures.map((a, i) => misclosures.map((b, j) => covariance(a, b) + (i === j ? LEAST_DOUBT * LEAST_DOUBT : 0)));
  const factor = choleskyOf(matrix);
  const [xs, ys] = [units.map(({ x }) => x), units.map(({ y }) => y)];
  const [wx, wy] = [solve(factor, xs), solve(factor, ys)];
  const [xx, xy, yy] = [dot(xs, wx), dot(xs, wy), dot(ys, wy)];
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-12 * xx * yy) || !Number.isFinite(determinant)) return undefined;
  const values = misclosures.map(({ value }) => value);
  return {
    gainX: wx.map((w, i) => (yy * w - xy * (wy[i] ?? 0)) / determinant),
    gainY: wx.map((w, i) => (xx * (wy[i] ?? 0) - xy * w) / determinant),
    chiSquare: Math.max(0, dot(values, solve(factor, values))),
  };
}

export interface Solution {
  readonly point: PlanPoint;
  readonly residuals: readonly { readonly mark: string; readonly residual: Uncertain }[];
  readonly chiSquare: number;
}

/**
 * Place by generalised least squares from a first guess, Gauss-Newton, at most 40 steps; undefined where it does not settle or
 * the marks all lie in one line with it. The weights are the inverse of the joint covariance of the ties, with the marks' own
 * doubts along the lines, so that what the ties share (one tape, one mark) is counted once; the doubt of the place follows from
 * the same sources and cancels against whatever else rests on them. + − × ÷ and square roots only.
 */
export function solveTies(ties: readonly Tied[], guess: Vector): Solution | undefined {
  let at = guess;
  for (let step = 0; step < MOST_STEPS; step++) {
    const seen = seenFrom(at, ties);
    const weighted = seen && weigh(seen);
    if (!seen || !weighted) return undefined;
    const values = seen.misclosures.map(({ value }) => value);
    const move = { x: dot(weighted.gainX, values), y: dot(weighted.gainY, values) };
    at = { x: at.x + move.x, y: at.y + move.y };
    if (move.x * move.x + move.y * move.y <= SETTLED_WITHIN * SETTLED_WITHIN) return solutionAt(at, ties);
  }
  return undefined;
}

function solutionAt(at: Vector, ties: readonly Tied[]): Solution | undefined {
  const seen = seenFrom(at, ties);
  const weighted = seen && weigh(seen);
  if (!seen || !weighted) return undefined;
  const shift = (gain: readonly number[]): Uncertain => combine(seen.misclosures.map((of, i) => ({ times: gain[i] ?? 0, of })));
  const [dx, dy] = [shift(weighted.gainX), shift(weighted.gainY)];
  const residuals = ties.map(({ mark }, i) => {
    const [unit, misclosure] = [seen.units[i] as Vector, seen.misclosures[i] as Uncertain];
    const left = combine([
      { times: 1, of: misclosure },
      { times: -unit.x, of: dx },
      { times: -unit.y, of: dy },
    ]);
    return { mark: mark.name, residual: { value: misclosure.value, parts: left.parts } };
  });
  const point = { x: { value: at.x, parts: dx.parts }, y: { value: at.y, parts: dy.parts } };
  return { point, residuals, chiSquare: weighted.chiSquare };
}
