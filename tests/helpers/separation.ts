/** One figure and which photograph it comes from. */
export interface Drawn {
  readonly photograph: string;
  readonly figure: number;
}

/** Area under the ROC curve: the share of pairs in which the good one has the larger figure, ties by half (Mann and Whitney 1947, from memory). */
export function area(good: readonly Drawn[], bad: readonly Drawn[]): number {
  let sum = 0;
  for (const { figure: one } of good) for (const { figure: other } of bad) sum += one > other ? 1 : one === other ? 0.5 : 0;
  return sum / (good.length * bad.length);
}

/** 97.5 % points of Student's t, by degrees of freedom (from memory). */
const students: Readonly<Record<number, number>> = { 3: 3.182, 4: 2.776, 5: 2.571, 6: 2.447, 7: 2.365, 8: 2.306 };

export interface Interval {
  readonly value: number;
  readonly from: number;
  readonly to: number;
}

/** The area with its 95 % interval by leaving out one photograph at a time: tiles of one photograph are not independent. */
export function areaWithInterval(good: readonly Drawn[], bad: readonly Drawn[]): Interval {
  const value = area(good, bad);
  const names = [...new Set([...good, ...bad].map(({ photograph }) => photograph))];
  const without = (list: readonly Drawn[], name: string): readonly Drawn[] => list.filter(({ photograph }) => photograph !== name);
  const left = names.map((name) => area(without(good, name), without(bad, name)));
  const mean = left.reduce((sum, one) => sum + one, 0) / left.length;
  const squares = left.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  const half = (students[names.length - 1] as number) * Math.sqrt(((names.length - 1) / names.length) * squares);
  return { value, from: Math.max(0, value - half), to: Math.min(1, value + half) };
}

/** A share k of n with its 95 % interval (Wilson 1927, from memory). */
export function share(k: number, n: number): Interval {
  const z = 1.96;
  const middle = (k + (z * z) / 2) / (n + z * z);
  const half = (z / (n + z * z)) * Math.sqrt((k * (n - k)) / n + (z * z) / 4);
  return { value: k / n, from: Math.max(0, middle - half), to: Math.min(1, middle + half) };
}
