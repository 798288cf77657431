/**
 * Where a rising share reaches p, by halving between two bounds: 200 halvings leave nothing of a float's digits, and no start has
 * to be guessed. `high` may be too low; it is doubled until it is not.
 */
export function risingTo(p: number, share: (x: number) => number, low: number, high: number, mayGrow: boolean): number {
  let [from, to] = [low, high];
  if (mayGrow) for (let tries = 0; tries < 1000 && share(to) < p; tries++) to *= 2;
  for (let halvings = 0; halvings < 200; halvings++) {
    const middle = (from + to) / 2;
    if (middle === from || middle === to) break;
    if (share(middle) < p) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
