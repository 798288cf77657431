import { withoutBars } from "./borders.ts";
import { cosines, SMALL } from "./cosines.ts";
import type { Grey } from "./grey.ts";
import { cellMeans, type Part, wholeOf } from "./sampled.ts";
import { BANDS, bandOf, waves } from "./waves.ts";

/** Bits of a likeness. */
export const LIKENESS_BITS = 64;

/** Why a picture has no likeness: nothing in it lies in a place of its own, so any two such pictures would agree by chance. */
export type Abstained = "even" | "texture";

/**
 * A picture's likeness: its hash, and further ones where even bars stood around it (the picture without them first, with
 * some of them, with all). No hash where it abstains. Text and integers, as stored.
 */
export interface Likeness {
  /** 16 hexadecimal digits each. */
  readonly hashes: readonly string[];
  /** For each hash the bits that are the first to change in a copy: ones where the waves are weak, `UNSURE_PER_BAND` in each band. */
  readonly unsure: readonly string[];
  readonly abstains: Abstained | null;
  /** Half of the waves are at least so strong: hundredths of a grey step. */
  readonly strength: number;
  /** Energy of a wave that is hashed against that of one of the finer ones, in hundredths. */
  readonly layout: number;
}

/** Bits of each band that are tried both ways when a hash is looked up. Own, from `tests/unit/photo/likeness`. */
export const UNSURE_PER_BAND = 4;

/** Below this the signs are made by the camera's noise and the JPEG's rounding. Own, from `tests/unit/photo/likeness`. */
export const STRENGTH_AT_LEAST = 1_500;
/** Gravel has as much in its finer waves as in its coarse ones, a scene has not. Own, from the same test. */
export const LAYOUT_AT_LEAST = 300;
/** Fewer pixels than this across or down hold no picture. */
const SMALLEST = SMALL;

/** The likeness of an upright picture; `GREY_LONG_EDGE` or less is fine enough. */
export function likeness(grey: Grey): Likeness {
  const { inside, between } = withoutBars(grey);
  if (inside.width < SMALLEST || inside.height < SMALLEST) return none("even", 0, 0);
  const looks = different([inside, between, wholeOf(grey)]).map((part) => lookAt(grey, part));
  const [{ strength, layout }] = looks as [Look];
  if (strength < STRENGTH_AT_LEAST) return none("even", strength, layout);
  if (layout < LAYOUT_AT_LEAST) return none("texture", strength, layout);
  return { hashes: looks.map(({ hash }) => hash), unsure: looks.map(({ unsure }) => unsure), abstains: null, strength, layout };
}

const none = (abstains: Abstained, strength: number, layout: number): Likeness => ({ hashes: [], unsure: [], abstains, strength, layout });

/** Parts that lie within one another, each size once. */
const different = (parts: readonly Part[]): readonly Part[] =>
  parts.filter(({ width, height }, n) => n === 0 || width !== parts[n - 1]?.width || height !== parts[n - 1]?.height);

interface Look {
  readonly hash: string;
  readonly unsure: string;
  readonly strength: number;
  readonly layout: number;
}

/** Ones at the weakest waves of each band. */
function unsureOf(sizes: readonly number[]): string {
  const weakest = Array.from({ length: BANDS }, (_, band) =>
    [...sizes.keys()]
      .filter((n) => bandOf[n] === band)
      .sort((a, b) => (sizes[a] as number) - (sizes[b] as number))
      .slice(0, UNSURE_PER_BAND),
  ).flat();
  return hashOf(sizes.map((_, n) => weakest.includes(n)));
}

function lookAt(grey: Grey, part: Part): Look {
  const found = cosines(cellMeans(grey, part, SMALL, SMALL));
  const at = ([u, v]: readonly [number, number]): number => found[v * SMALL + u] as number;
  const sizes = waves.map((wave) => Math.abs(at(wave)));
  const middle = sizes.toSorted((a, b) => a - b)[sizes.length >> 1] as number;
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
    unsure: unsureOf(sizes),
    strength: Math.round(middle * 100),
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
