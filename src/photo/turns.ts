import { bitsOf, hashOf } from "./likeness.ts";
import { waves } from "./waves.ts";

/** The eight ways a picture can lie: turned by a right angle or mirrored, or both. Numbers of the camera's orientation tag. */
export type Turn = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

const place = new Map(waves.map(([u, v], index) => [`${u} ${v}`, index]));
const odd = (n: number): boolean => n % 2 === 1;

/** Which bit goes where, and whether it changes: mirroring turns the odd waves over, turning makes across and down change places. */
const recipe = (swaps: boolean, across: boolean, down: boolean): readonly (readonly [from: number, over: boolean])[] =>
  waves.map(([u, v]) => [place.get(swaps ? `${v} ${u}` : `${u} ${v}`) as number, (across && odd(u)) !== (down && odd(v))]);

const ways: Readonly<Record<Turn, readonly [swaps: boolean, across: boolean, down: boolean]>> = {
  1: [false, false, false],
  2: [false, true, false],
  3: [false, true, true],
  4: [false, false, true],
  5: [true, false, false],
  6: [true, true, false],
  7: [true, true, true],
  8: [true, false, true],
};

export const turns: readonly Turn[] = [1, 2, 3, 4, 5, 6, 7, 8];

const recipes = new Map<Turn, ReturnType<typeof recipe>>();
function recipeOf(turn: Turn): ReturnType<typeof recipe> {
  const known = recipes.get(turn) ?? recipe(...ways[turn]);
  recipes.set(turn, known);
  return known;
}

/** The hash that the picture would have if it were turned as a viewer does for this orientation tag. Exact, but for waves of strength nought. */
export function turned(hash: string, turn: Turn): string {
  const bits = bitsOf(hash);
  return hashOf(recipeOf(turn).map(([from, over]) => bits[from] !== over));
}

/** The turn that undoes this one: only the two by a right angle are not their own. */
export const undone = (turn: Turn): Turn => (turn === 6 ? 8 : turn === 8 ? 6 : turn);

/** Where the bits of `mask` lie when the picture is turned: moved like the hash's, changed by nothing. */
export function turnedMask(mask: string, turn: Turn): string {
  const bits = bitsOf(mask);
  return hashOf(recipeOf(turn).map(([from]) => bits[from] === true));
}

/** Bits in which two hashes differ, 0…64. */
export function distance(one: string, other: string): number {
  const [a, b] = [bitsOf(one), bitsOf(other)];
  return a.reduce((count, bit, n) => (bit === b[n] ? count : count + 1), 0);
}

export interface Nearest {
  readonly distance: number;
  readonly turn: Turn;
}

/** The least distance over the eight turns of the one, lying as it is first where several are equal. */
export function nearest(one: string, other: string): Nearest {
  let best: Nearest = { distance: distance(one, other), turn: 1 };
  for (const turn of turns) {
    const found = distance(turned(one, turn), other);
    if (found < best.distance) best = { distance: found, turn };
  }
  return best;
}
