import { chanceFrom } from "../chance/index.ts";
import { Fifo } from "./fifo.ts";

/** How unequal pieces of work are: each takes its mean, up to so much more or less. */
const SPREAD = 0.5;

/** Containers with one queue before them, each with so many pieces of work at once. */
export function containers(times: Float64Array, seconds: number, atOnce: number, seed: number): ReturnType<Fifo["busiest"]> {
  const chance = chanceFrom(seed);
  const fifo = new Fifo(atOnce);
  for (const at of times) fifo.served(at, seconds * 1000 * (1 + SPREAD * (2 * chance.next() - 1)));
  return fifo.busiest();
}

/**
 * The least number for which something no longer holds, to a fiftieth: doubled from `start` on (or halved, where it does not hold there),
 * then halved between. Undefined where it still holds at `most`.
 */
export function breaksAt(holds: (n: number) => boolean, start: number, most: number): number | undefined {
  let [low, high] = [0, start];
  while (holds(high)) {
    low = high;
    if (high >= most) return undefined;
    high = Math.min(most, 2 * high);
  }
  while (high - low > Math.max(1, high / 50)) {
    const middle = Math.round((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return high;
}
