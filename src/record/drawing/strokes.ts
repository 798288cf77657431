import type { DrawnShape, PaperPoint, Placed, Stroke } from "../model-drawn.ts";

/** Hundredths of a millimetre: finer than any printer, and the same text everywhere. */
export const onPaper = (millimetres: number): number => Math.round(millimetres * 100) / 100;
const fine = (share: number): number => Math.round(share * 1e5) / 1e5;

export const at = (x: number, y: number): PaperPoint => ({ x: onPaper(x), y: onPaper(y) });
export const shifted = (from: PaperPoint, along: PaperPoint, by: number): PaperPoint => at(from.x + along.x * by, from.y + along.y * by);

/** A direction of length 1; to the right where the two points are one. */
export function direction(from: PaperPoint, to: PaperPoint): PaperPoint {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(x * x + y * y);
  return length === 0 ? { x: 1, y: 0 } : { x: x / length, y: y / length };
}

/** The direction that stands square on another, up for one that goes to the right. */
export const upFrom = ({ x, y }: PaperPoint): PaperPoint => ({ x: y, y: -x });

export const placedAt = (origin: PaperPoint, along: PaperPoint = { x: 1, y: 0 }): Placed => [
  fine(along.x),
  fine(along.y),
  fine(-along.y),
  fine(along.x),
  onPaper(origin.x),
  onPaper(origin.y),
];

type Line = Extract<DrawnShape, { shape: "line" }>;
type Lettering = Extract<DrawnShape, { shape: "words" }>;

export const line = (stroke: Stroke, points: readonly PaperPoint[], filled?: Line["filled"]): Line => ({
  shape: "line",
  stroke,
  points,
  ...(filled === undefined ? {} : { filled }),
});

export const circle = (stroke: Stroke, centre: PaperPoint, radius: number, filled?: "ink" | "paper"): DrawnShape => ({
  shape: "ellipse",
  stroke,
  placed: placedAt(centre),
  rx: onPaper(radius),
  ry: onPaper(radius),
  ...(filled === undefined ? {} : { filled }),
});

/** Height of the letters of dimension figures, millimetres. */
export const LETTERS = 2.35;
/** From the middle of a line of letters down to their foot, as a share of their height. */
const FOOT = 0.36;

export interface LetteringChoice {
  readonly anchor?: Lettering["anchor"];
  readonly along?: PaperPoint;
  readonly size?: number;
  readonly heavy?: boolean;
}

/** Words whose foot stands at a place. */
export const words = (
  place: PaperPoint,
  text: string,
  { anchor = "start", along, size = LETTERS, heavy }: LetteringChoice = {},
): Lettering => ({
  shape: "words",
  placed: placedAt(place, along),
  text,
  anchor,
  size,
  ...(heavy ? { heavy } : {}),
});

/** Words whose middle line runs through a place. */
export const wordsThrough = (place: PaperPoint, text: string, choice: LetteringChoice = {}): Lettering =>
  words(at(place.x, place.y + (choice.size ?? LETTERS) * FOOT), text, choice);
