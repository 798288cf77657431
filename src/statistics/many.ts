/**
 * Holm's step-down procedure: which of these chances stay under alpha when the chance of one false call over all of them is to be
 * alpha at most, whatever depends on what. In the order given.
 */
export function holm(chances: readonly number[], alpha: number): readonly boolean[] {
  const order = chances.map((p, i) => ({ p, i })).sort((a, b) => a.p - b.p);
  const stands = chances.map(() => false);
  for (const [rank, { p, i }] of order.entries()) {
    if (!(p <= alpha / (chances.length - rank))) break;
    stands[i] = true;
  }
  return stands;
}
