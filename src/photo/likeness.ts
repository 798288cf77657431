import { withoutBars } from "./borders.ts";
import { cosines, SMALL } from "./cosines.ts";
import type { Grey } from "./grey.ts";
import { cellMeans, type Part, wholeOf } from "./sampled.ts";

/** Bits of a likeness. */
export const LIKENESS_BITS = 64;

/** Why a picture has no likeness: nothing in it lies in a place of its own, so any two such pictures would agree by chance. */
export type Abstained = "even" | "texture";

/**
 * A picture's likeness: its hash, and a second one where even bars stood around it (the picture without them first, then
 * with them). No hash where it abstains. Text and integers, as stored.
 */
export interface Likeness {
  /** 16 hexadecimal digits each. */
  readonly hashes: readonly string[];
  readonly abstains: Abstained | null;
  /** Half of the waves are at least so strong: hundredths of a grey step. */
  readonly strength: number;
  /** Energy of a wave that is hashed against that of one of the finer ones, in hundredths. */
  readonly layout: number;
}

/** Below this the signs are made by the camera's noise and the JPEG's rounding. Own, from `tests/unit/photo/likeness`. */
export const STRENGTH_AT_LEAST = 400;
/** Gravel has as much in its finer waves as in its coarse ones, a scene has not. Own, from the same test. */
export const LAYOUT_AT_LEAST = 300;
/** Fewer pixels than this across or down hold no picture. */
const SMALLEST = SMALL;

/** The waves, coarse first, the same set when across and down change places: 1 ≤ u + v ≤ 10 without (5, 5). */
export const waves: readonly (readonly [u: number, v: number])[] = Array.from({ length: 10 }, (_, n) => n + 1).flatMap((sum) =>
  Array.from({ length: sum + 1 }, (_, u) => [u, sum - u] as const).filter(([u, v]) => u !== 5 || v !== 5),
);

/** The likeness of an upright picture; `GREY_LONG_EDGE` or less is fine enough. */
export function likeness(grey: Grey): Likeness {
  const { inside } = withoutBars(grey);
  if (inside === null || inside.width < SMALLEST || inside.height < SMALLEST) return none("even", 0, 0);
  const whole = wholeOf(grey);
  const parts = inside.width === whole.width && inside.height === whole.height ? [inside] : [inside, whole];
  const looks = parts.map((part) => lookAt(grey, part));
  const [first] = looks as [Look];
  if (first.strength < STRENGTH_AT_LEAST) return none("even", first.strength, first.layout);
  if (first.layout < LAYOUT_AT_LEAST) return none("texture", first.strength, first.layout);
  return { hashes: looks.map(({ hash }) => hash), abstains: null, strength: first.strength, layout: first.layout };
}

const none = (abstains: Abstained, strength: number, layout: number): Likeness => ({ hashes: [], abstains, strength, layout });

interface Look {
  readonly hash: string;
  readonly strength: number;
  readonly layout: number;
}

function lookAt(grey: Grey, part: Part): Look {
  const found = cosines(cellMeans(grey, part, SMALL, SMALL));
  const at = ([u, v]: readonly [number, number]): number => found[v * SMALL + u] as number;
  const sizes = waves.map((wave) => Math.abs(at(wave))).sort((a, b) => a - b);
  const hashed = new Set(waves.map(([u, v]) => v * SMALL + u));
  let coarse = 0;
  let fine = 0;
  for (let n = 1; n < found.length; n += 1) {
    const energy = (found[n] as number) * (found[n] as number);
    if (hashed.has(n)) coarse += energy;
    else fine += energy;
  }
  const fineCount = found.length - 1 - hashed.size;
  const layout = fine === 0 ? Number.MAX_SAFE_INTEGER : (coarse / hashed.size / (fine / fineCount)) * 100;
  return {
    hash: hashOf(waves.map((wave) => at(wave) > 0)),
    strength: Math.round((sizes[sizes.length >> 1] as number) * 100),
    layout: Math.min(Math.round(layout), 1_000_000),
  };
}

/** The bits as hexadecimal digits, the first bit the highest of the first digit. */
export function hashOf(bits: readonly boolean[]): string {
  let text = "";
  for (let n = 0; n < bits.length; n += 4) {
    const digit = (bits[n] ? 8 : 0) + (bits[n + 1] ? 4 : 0) + (bits[n + 2] ? 2 : 0) + (bits[n + 3] ? 1 : 0);
    text += digit.toString(16);
  }
  return text;
}

export const bitsOf = (hash: string): readonly boolean[] =>
  [...hash].flatMap((digit) => {
    const value = Number.parseInt(digit, 16);
    return [8, 4, 2, 1].map((bit) => (value & bit) !== 0);
  });
