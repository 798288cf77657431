import { total } from "../doubt/index.ts";

export type Matrix = readonly (readonly number[])[];

/** Lower factor of a symmetric positive definite matrix; its diagonal is not a number where the matrix is not positive definite. */
export function choleskyOf(matrix: Matrix): Matrix {
  const factor: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const line: number[] = [];
    for (let j = 0; j <= i; j++) {
      const earlier = j === i ? line : (factor[j] ?? []);
      const known: number[] = [];
      for (let k = 0; k < j; k++) known.push((line[k] as number) * (earlier[k] ?? 0));
      const rest = (row[j] ?? 0) - total(known);
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
  for (let i = 0; i < b.length; i++) {
    const known: number[] = [];
    for (let j = 0; j < i; j++) known.push(at(i, j) * (half[j] as number));
    half.push(((b[i] as number) - total(known)) / at(i, i));
  }
  const x: number[] = half.map(() => 0);
  for (let i = half.length - 1; i >= 0; i--) {
    const known: number[] = [];
    for (let j = i + 1; j < x.length; j++) known.push(at(j, i) * (x[j] as number));
    x[i] = ((half[i] as number) - total(known)) / at(i, i);
  }
  return x;
}

export const dot = (a: readonly number[], b: readonly number[]): number => total(a.map((value, i) => value * (b[i] ?? 0)));
