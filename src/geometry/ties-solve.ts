import { total, type Uncertain } from "../doubt/index.ts";
import { choleskyOf, dot, type Matrix, solve } from "./cholesky.ts";
import type { Tied } from "./ties-meet.ts";
import type { PlanPoint, Vector } from "./ties-plan.ts";

/** No tape is better than this (own): keeps the weights finite where a doubt is nil or wholly shared. Metres. */
export const LEAST_DOUBT = 1e-4;
const MOST_STEPS = 40;
const SETTLED_WITHIN = 1e-9;

/** Parts of a doubt in the order of one list of sources, 0 where it has none: a step of the search then sums plain numbers. */
type Row = readonly number[];

interface TieInRows {
  readonly tied: Tied;
  /** Of its distance, and of its mark. */
  readonly row: { readonly distance: Row; readonly x: Row; readonly y: Row };
}

interface Rows {
  readonly sources: readonly string[];
  readonly ties: readonly TieInRows[];
}

function inRows(ties: readonly Tied[]): Rows {
  const sources = [...new Set(ties.flatMap(({ mark, distance }) => [distance, mark.x, mark.y].flatMap(({ parts }) => [...parts.keys()])))];
  const row = ({ parts }: Uncertain): Row => sources.map((source) => parts.get(source) ?? 0);
  return { sources, ties: ties.map((tied) => ({ tied, row: { distance: row(tied.distance), x: row(tied.mark.x), y: row(tied.mark.y) } })) };
}

function fromRow(sources: readonly string[], row: Row): Uncertain["parts"] {
  const parts = new Map<string, number>();
  for (const [i, part] of row.entries()) if (part !== 0) parts.set(sources[i] as string, part);
  return parts;
}

/** Σ times × row, source by source. Most sources stand in one or two rows of several: only what is there is summed. */
function combined(terms: readonly { readonly times: number; readonly of: Row }[]): Row {
  const row: number[] = [];
  for (let i = 0; i < (terms[0]?.of.length ?? 0); i++) {
    const there: number[] = [];
    for (const { times, of } of terms) if (of[i] !== 0) there.push(times * (of[i] as number));
    row.push(total(there));
  }
  return row;
}

/** Covariance of two values over the sources that they share. */
function covariance(a: Row, b: Row): number {
  const products: number[] = [];
  for (let i = 0; i < a.length; i++) if (a[i] !== 0 && b[i] !== 0) products.push((a[i] as number) * (b[i] as number));
  return total(products);
}

/** Everything about the ties as seen from one place. */
interface Seen {
  /** Unit vectors from each mark to the place. */
  readonly units: readonly Vector[];
  /** Measured less computed distance. */
  readonly misclosures: readonly number[];
  /** Its doubt: that of the tie and of its mark along the line. */
  readonly doubts: readonly Row[];
}

function seenFrom(at: Vector, { ties }: Rows): Seen | undefined {
  const lines = ties.map(({ tied: { mark, distance }, row }) => {
    const [dx, dy] = [at.x - mark.x.value, at.y - mark.y.value];
    const length = Math.sqrt(dx * dx + dy * dy);
    const unit = { x: dx / length, y: dy / length };
    const doubt = combined([
      { times: 1, of: row.distance },
      { times: unit.x, of: row.x },
      { times: unit.y, of: row.y },
    ]);
    return { length, unit, misclosure: distance.value - length, doubt };
  });
  if (!lines.every(({ length }) => Number.isFinite(length) && length > 0)) return undefined;
  return {
    units: lines.map(({ unit }) => unit),
    misclosures: lines.map(({ misclosure }) => misclosure),
    doubts: lines.map(({ doubt }) => doubt),
  };
}

/** How the place moves with each misclosure, weighted by the inverse of their joint covariance, and chi-square. */
interface Weighted {
  readonly gainX: readonly number[];
  readonly gainY: readonly number[];
  readonly chiSquare: number;
}

/** Its lower half, which is all that a Cholesky factor is made of. */
const jointCovariance = (doubts: readonly Row[]): Matrix =>
  doubts.map((a, i) => doubts.slice(0, i + 1).map((b, j) => covariance(a, b) + (i === j ? LEAST_DOUBT * LEAST_DOUBT : 0)));

function weigh({ units, misclosures, doubts }: Seen): Weighted | undefined {
  const factor = choleskyOf(jointCovariance(doubts));
  const [xs, ys] = [units.map(({ x }) => x), units.map(({ y }) => y)];
  const [wx, wy] = [solve(factor, xs), solve(factor, ys)];
  const [xx, xy, yy] = [dot(xs, wx), dot(xs, wy), dot(ys, wy)];
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-12 * xx * yy) || !Number.isFinite(determinant)) return undefined;
  return {
    gainX: wx.map((w, i) => (yy * w - xy * (wy[i] ?? 0)) / determinant),
    gainY: wx.map((w, i) => (xx * (wy[i] ?? 0) - xy * w) / determinant),
    chiSquare: Math.max(0, dot(misclosures, solve(factor, misclosures))),
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
  const rows = inRows(ties);
  let at = guess;
  for (let step = 0; step < MOST_STEPS; step++) {
    const seen = seenFrom(at, rows);
    const weighted = seen && weigh(seen);
    if (!seen || !weighted) return undefined;
    const move = { x: dot(weighted.gainX, seen.misclosures), y: dot(weighted.gainY, seen.misclosures) };
    at = { x: at.x + move.x, y: at.y + move.y };
    if (move.x * move.x + move.y * move.y <= SETTLED_WITHIN * SETTLED_WITHIN) return solutionAt(at, rows);
  }
  return undefined;
}

function solutionAt(at: Vector, rows: Rows): Solution | undefined {
  const seen = seenFrom(at, rows);
  const weighted = seen && weigh(seen);
  if (!seen || !weighted) return undefined;
  const shift = (gain: readonly number[]): Row => combined(seen.doubts.map((of, i) => ({ times: gain[i] ?? 0, of })));
  const [dx, dy] = [shift(weighted.gainX), shift(weighted.gainY)];
  const partsOf = (row: Row): Uncertain["parts"] => fromRow(rows.sources, row);
  const residuals = rows.ties.map(({ tied }, i) => {
    const unit = seen.units[i] as Vector;
    const left = combined([
      { times: 1, of: seen.doubts[i] as Row },
      { times: -unit.x, of: dx },
      { times: -unit.y, of: dy },
    ]);
    return { mark: tied.mark.name, residual: { value: seen.misclosures[i] as number, parts: partsOf(left) } };
  });
  const point = { x: { value: at.x, parts: partsOf(dx) }, y: { value: at.y, parts: partsOf(dy) } };
  return { point, residuals, chiSquare: weighted.chiSquare };
}
