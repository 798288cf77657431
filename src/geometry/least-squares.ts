import { choleskyOf, dot, type Matrix, solve } from "./cholesky.ts";

const MOST_STEPS = 14;
/** Step of a parameter for its slope, where all parameters are near one in size; its error is the square of it. */
const SLOPE_STEP = 1e-5;
/** A step shorter than this share of the parameters ends the search: slopes by differences carry it no further. */
const SETTLED_WITHIN = 1e-9;
/** And so does a sum of squares that falls by less than this share. */
const FALLS_WITHIN = 1e-11;

export interface Settled {
  readonly at: readonly number[];
  /** Weighted residuals there. */
  readonly residuals: readonly number[];
  /** Slope of every residual by every parameter: a row for each residual. */
  readonly slopes: Matrix;
  /** Cholesky factor of the normal matrix. */
  readonly factor: Matrix;
}

/** Slopes by the difference of a step either way. */
function slopesOf(at: readonly number[], residualsOf: (at: readonly number[]) => readonly number[]): Matrix {
  const columns = at.map((_, j) => {
    const moved = (by: number): readonly number[] => residualsOf(at.map((value, k) => (k === j ? value + by : value)));
    const [more, less] = [moved(SLOPE_STEP), moved(-SLOPE_STEP)];
    return more.map((value, i) => (value - (less[i] ?? 0)) / (2 * SLOPE_STEP));
  });
  return (columns[0] ?? []).map((_, i) => columns.map((column) => column[i] ?? 0));
}

/** Sums of products of two columns, in the rows' own order. */
function normalOf(slopes: Matrix, damping: number): number[][] {
  const n = slopes[0]?.length ?? 0;
  const normal = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (const row of slopes)
    for (let i = 0; i < n; i++)
      for (let j = 0; j <= i; j++) (normal[i] as number[])[j] = (normal[i]?.[j] as number) + (row[i] as number) * (row[j] as number);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) (normal[j] as number[])[i] = normal[i]?.[j] as number;
    (normal[i] as number[])[i] = (normal[i]?.[i] as number) * (1 + damping);
  }
  return normal;
}

const againstSlopes = (slopes: Matrix, residuals: readonly number[]): readonly number[] =>
  (slopes[0] ?? []).map((_, j) => -slopes.reduce((sum, row, i) => sum + (row[j] as number) * (residuals[i] as number), 0));

/**
 * Least sum of squared residuals from a first guess, by Gauss-Newton steps that are damped where one of them makes it worse
 * (Levenberg and Marquardt). Parameters near one in size; residuals already divided by their doubts. Undefined where the
 * residuals do not determine the parameters or are no numbers. + − × ÷ and square roots only.
 */
export function leastSquares(start: readonly number[], residualsOf: (at: readonly number[]) => readonly number[]): Settled | undefined {
  let at = start;
  let residuals = residualsOf(at);
  let damping = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const slopes = slopesOf(at, residualsOf);
    const aim = againstSlopes(slopes, residuals);
    const move = solve(choleskyOf(normalOf(slopes, damping)), aim);
    if (!move.every(Number.isFinite)) return undefined;
    const next = at.map((value, i) => value + (move[i] as number));
    const there = residualsOf(next);
    const short = dot(move, move) <= SETTLED_WITHIN * SETTLED_WITHIN * (1 + dot(at, at));
    const [now, then] = [dot(residuals, residuals), dot(there, there)];
    if (then <= now) {
      [at, residuals] = [next, there];
      damping = damping < 1e-6 ? 0 : damping / 10;
    } else if (!short && now - then < -1e-14 * now) {
      damping = damping === 0 ? 1e-4 : damping * 10;
      continue;
    }
    if (short || (damping === 0 && Math.abs(now - then) <= FALLS_WITHIN * now)) break;
  }
  const slopes = slopesOf(at, residualsOf);
  const factor = choleskyOf(normalOf(slopes, 0));
  return factor.every((row, i) => Number.isFinite(row[i])) && residuals.every(Number.isFinite)
    ? { at, residuals, slopes, factor }
    : undefined;
}
