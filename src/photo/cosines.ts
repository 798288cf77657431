/** Edge of the small picture that a likeness is taken from. */
export const SMALL = 32;

const table = Array.from({ length: SMALL }, (_, u) =>
  Float64Array.from(
    { length: SMALL },
    (_, x) => Math.cos(((2 * x + 1) * u * Math.PI) / (2 * SMALL)) * Math.sqrt((u === 0 ? 1 : 2) / SMALL),
  ),
);

/**
 * The cosine transform (DCT-II, orthonormal) of a `SMALL` × `SMALL` picture, row v and column u at v × SMALL + u: u counts
 * the half waves across, v those down. In grey steps, times SMALL for u = v = 0. Ahmed, Natarajan, Rao 1974 (from memory).
 */
export function cosines(small: Float64Array): Float64Array {
  const across = new Float64Array(SMALL * SMALL);
  for (let y = 0; y < SMALL; y += 1) {
    for (let u = 0; u < SMALL; u += 1) {
      const wave = table[u] as Float64Array;
      let sum = 0;
      for (let x = 0; x < SMALL; x += 1) sum += (small[y * SMALL + x] as number) * (wave[x] as number);
      across[y * SMALL + u] = sum;
    }
  }
  const both = new Float64Array(SMALL * SMALL);
  for (let v = 0; v < SMALL; v += 1) {
    const wave = table[v] as Float64Array;
    for (let u = 0; u < SMALL; u += 1) {
      let sum = 0;
      for (let y = 0; y < SMALL; y += 1) sum += (across[y * SMALL + u] as number) * (wave[y] as number);
      both[v * SMALL + u] = sum;
    }
  }
  return both;
}
