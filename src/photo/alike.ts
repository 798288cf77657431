import type { Likeness } from "./likeness.ts";
import { type Nearest, nearest } from "./turns.ts";

/** Two pictures whose hashes differ in at most so many bits are shown beside each other. Own, from `tests/unit/photo/likeness`. */
export const ALIKE_AT_MOST = 6;

/**
 * How near two pictures come to each other over the eight turns; nothing where one abstains. Of two hashes one is that of
 * a picture without its bars: with the bars on both, the bars would be what is alike.
 */
export function nearness(one: Likeness, other: Likeness): Nearest | null {
  let best: Nearest | null = null;
  for (const [i, hash] of one.hashes.entries()) {
    for (const [k, against] of other.hashes.entries()) {
      if (i > 0 && k > 0) continue;
      const found = nearest(hash, against);
      if (best === null || found.distance < best.distance) best = found;
    }
  }
  return best;
}

export function alike(one: Likeness, other: Likeness): boolean {
  const found = nearness(one, other);
  return found !== null && found.distance <= ALIKE_AT_MOST;
}
