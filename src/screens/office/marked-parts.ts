import { isRegion, type Region } from "../../photo/index.ts";

/** Millionths in a per cent of the picture. */
const PER_CENT = 10_000;
const WHOLE = 1_000_000;
/** What is dragged is rounded outwards to a tenth of a per cent, so that nothing that was marked is left out. */
const STEP = 1_000;
/** Across and down: anything smaller is a slip of the hand (own). */
const SMALLEST = 5_000;

export const sides = ["x", "y", "width", "height"] as const;

/** A part as it stands in its fields: per cent of the upright picture's width and height, as text. */
export type MarkedPart = { readonly key: number } & { readonly [S in (typeof sides)[number]]: string };

/** A place in a picture: shares of its width and height, from the upper left corner. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

const inMillionths = (typed: string): number => (typed.trim() === "" ? Number.NaN : Math.round(Number(typed) * PER_CENT));

/** The region that the fields name; undefined where they name none, or one that does not lie inside the picture. */
export function regionOf(part: MarkedPart): Region | undefined {
  const [x = 0, y = 0, width = 0, height = 0] = sides.map((side) => inMillionths(part[side]));
  const region = { x, y, width, height };
  return isRegion(region) ? region : undefined;
}

export const partOf = (key: number, { x, y, width, height }: Region): MarkedPart => ({
  key,
  x: String(x / PER_CENT),
  y: String(y / PER_CENT),
  width: String(width / PER_CENT),
  height: String(height / PER_CENT),
});

const inside = (share: number): number => Math.min(1, Math.max(0, share)) * WHOLE;
const span = (one: number, other: number): readonly [from: number, length: number] => {
  const from = Math.floor(Math.min(inside(one), inside(other)) / STEP) * STEP;
  return [from, Math.ceil(Math.max(inside(one), inside(other)) / STEP) * STEP - from];
};

/** The region between two corners; a corner beyond the picture counts as its edge. Undefined for a slip of the hand. */
export function dragged(from: Spot, to: Spot): Region | undefined {
  const isSlip = [from.x - to.x, from.y - to.y].some((way) => Math.abs(way) * WHOLE < SMALLEST);
  if (isSlip) return undefined;
  const [x, width] = span(from.x, to.x);
  const [y, height] = span(from.y, to.y);
  const region = { x, y, width, height };
  return isRegion(region) ? region : undefined;
}
