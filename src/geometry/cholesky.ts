import { total } from "../doubt/index.ts";

export type Matrix = readonly (readonly number[])[];

/** Lower factor of a symmetric positive definite matrix; its diagonal is not a number where the matrix is not positive definite. */
export function choleskyOf(matrix: Matrix): Matrix {
  const factor: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const line: number[] = [];
    for (let j = 0; j <= i; j++) {
      const earlier = j === i ? line : (factor[j] ?? []);
      const rest = (row[j] ?? 0) - total(line.slice(0, j).map((value, k) => value * (earlier[k] ?? 0)));
      line.push(j === i ? Math.sqrt(rest) : rest / (earlier[j] ?? 1));
    }
    factor.push(line);
  }
  return factor;
}

/** Solves a x = b for a symmetric positive definite matrix by its Cholesky factor. */
export function solve(factor: Matrix, b: readonly number[]): readonly number[] {
  const at = (i: number, j: number): number => factor[i]?.[j] ?? 0;
  const half: number[] = [];
  for (const [i, value] of b.entries()) half.push((value - total(half.map((h, j) => at(i, j) * h))) / at(i, i));
  const x: number[] = half.map(() => 0);
  for (let i = half.length - 1; i >= 0; i--) {
    const known = x.slice(i + 1).map((value, k) => at(i + 1 + k, i) * value);
    x[i] = ((half[i] ?? 0) - total(known)) / at(i, i);
  }
  return x;
}

export const dot = (a: readonly number[], b: readonly number[]): number => total(a.map((value, i) => value * (b[i] ?? 0)));
