/** A wave by its half waves across and down. */
export type Wave = readonly [u: number, v: number];

/** The waves that are hashed, coarse first, the same set when across and down change places: 1 ≤ u + v ≤ 10 without (5, 5). */
export const waves: readonly Wave[] = Array.from({ length: 10 }, (_, n) => n + 1).flatMap((sum) =>
  Array.from({ length: sum + 1 }, (_, u) => [u, sum - u] as const).filter(([u, v]) => u !== 5 || v !== 5),
);

/** Bands that a hash is looked up by. */
export const BANDS = 3;

/**
 * The band of each wave. A wave and the one that it becomes when the picture is turned by a right angle share a band, so
 * that a turned picture's bits stay in their bands; each band has coarse and fine ones. 22, 21 and 21 of them.
 */
export const bandOf: readonly number[] = waves.map(([u, v]) => {
  const alike = waves.filter(([a, b]) => (u === v ? a === b : a < b));
  return alike.findIndex(([a, b]) => a === Math.min(u, v) && b === Math.max(u, v)) % BANDS;
});
