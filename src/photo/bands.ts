import { bitsOf } from "./likeness.ts";
import { type Nearest, type Turn, turned, turnedMask, turns } from "./turns.ts";
import { bandOf } from "./waves.ts";

/** A hash cut into `BANDS` whole numbers of 22, 21 and 21 bits, by which it is indexed: the first bit of a band the highest. */
export type Bands = readonly [number, number, number];

const inBand = (bits: readonly boolean[], band: number): readonly boolean[] => bits.filter((_, n) => bandOf[n] === band);
const numberOf = (bits: readonly boolean[]): number => bits.reduce((sum, bit) => sum * 2 + (bit ? 1 : 0), 0);

export function bandsOf(hash: string): Bands {
  const bits = bitsOf(hash);
  return [numberOf(inBand(bits, 0)), numberOf(inBand(bits, 1)), numberOf(inBand(bits, 2))];
}

function onesIn(value: number): number {
  let count = 0;
  for (let left = value; left > 0; left &= left - 1) count += 1;
  return count;
}

/** The same as `distance` of the hashes that they are cut from. */
export const bandsApart = (one: Bands, other: Bands): number => one.reduce((sum, band, n) => sum + onesIn(band ^ (other[n] as number)), 0);

/** The band's number with every combination of its unsure bits, ascending. */
function both(value: number, unsure: number): readonly number[] {
  let found = [value];
  for (let left = unsure; left > 0; left &= left - 1) {
    const bit = left & -left;
    found = [...found, ...found.map((one) => one ^ bit)];
  }
  return found;
}

export interface LookUp {
  /** The hash in its eight turns, in the order of `turns`. */
  readonly turned: readonly Bands[];
  /** For each band the numbers to ask the index for, ascending: nearby ones lie in the same page. */
  readonly keys: readonly [readonly number[], readonly number[], readonly number[]];
}

/**
 * What to ask an index by bands for to find pictures like this one. A picture is found when one of its bands is the same in
 * all but unsure bits; `tests/unit/photo/likeness` prints how many of those that are alike it finds.
 */
export function lookUp(hash: string, unsure: string): LookUp {
  const lying = turns.map((turn) => ({ bands: bandsOf(turned(hash, turn)), masks: bandsOf(turnedMask(unsure, turn)) }));
  const keys = (band: 0 | 1 | 2): readonly number[] =>
    [...new Set(lying.flatMap(({ bands, masks }) => both(bands[band], masks[band])))].sort((a, b) => a - b);
  return { turned: lying.map(({ bands }) => bands), keys: [keys(0), keys(1), keys(2)] };
}

/** The nearest of the eight turns to what an index gave. */
export function nearestOf({ turned: lying }: LookUp, found: Bands): Nearest {
  let best: Nearest = { distance: Number.POSITIVE_INFINITY, turn: 1 };
  for (const [n, bands] of lying.entries()) {
    const bits = bandsApart(bands, found);
    if (bits < best.distance) best = { distance: bits, turn: turns[n] as Turn };
  }
  return best;
}
