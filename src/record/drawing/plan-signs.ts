import type { DrawnAs } from "../../job/index.ts";
import type { DrawnShape, PaperPoint } from "../model-drawn.ts";
import { type Measured, offLine } from "./plan-lettering.ts";
import { at, circle, direction, line, shifted, upFrom, wordsThrough } from "./strokes.ts";

/** A mark: a filled triangle round its place. */
export function markSign({ x, y }: PaperPoint): DrawnShape {
  const top = at(x, y - 1.9);
  return line("outline", [top, at(x + 1.65, y + 0.95), at(x - 1.65, y + 0.95), top], "ink");
}

const cross = ({ x, y }: PaperPoint, r: number): readonly DrawnShape[] => [
  line("outline", [at(x - r, y - r), at(x + r, y + r)]),
  line("outline", [at(x - r, y + r), at(x + r, y - r)]),
];
const plus = ({ x, y }: PaperPoint, r: number): readonly DrawnShape[] => [
  line("outline", [at(x - r, y), at(x + r, y)]),
  line("outline", [at(x, y - r), at(x, y + r)]),
];
const box = ({ x, y }: PaperPoint, r: number): readonly PaperPoint[] => [
  at(x - r, y - r),
  at(x + r, y - r),
  at(x + r, y + r),
  at(x - r, y + r),
  at(x - r, y - r),
];

/** What stands at a point, by what it is; told apart by shape alone. */
const signs: Readonly<Record<DrawnAs, (place: PaperPoint) => readonly DrawnShape[]>> = {
  joint: (place) => [circle("outline", place, 0.75, "ink")],
  crossing: (place) => cross(place, 1.2),
  splice: (place) => [line("outline", box(place, 0.9), "ink")],
  outlet: (place) => [line("outline", box(place, 1.3), "paper"), circle("outline", place, 0.45, "ink")],
  lid: (place) => [circle("outline", place, 1.4, "paper"), ...plus(place, 1.4)],
  basin: (place) => plus(place, 1.6),
};

export const pointSign = (drawnAs: DrawnAs, place: PaperPoint): readonly DrawnShape[] => signs[drawnAs](place);

const BALLOON = 2.5;
/** From a place to the middle of the balloon with its letter, millimetres. */
export const AWAY = 6.4;

/** A letter in a balloon, `out` of its place. */
export function balloon(place: PaperPoint, out: PaperPoint, text: string): readonly DrawnShape[] {
  const centre = shifted(place, out, AWAY);
  return [
    line("hair", [place, shifted(place, out, AWAY - BALLOON)]),
    circle("outline", centre, BALLOON, "paper"),
    wordsThrough(centre, text, { anchor: "middle", size: 2.8, heavy: true }),
  ];
}

const ARROW = 6;

/** Farther off than this is free enough for the arrow: its own half and the half of a balloon, millimetres. */
const ARROW_CLEAR = 15;

/** The corner for the north arrow: the lower right one, or else the one that stands farthest off everything drawn. */
export function freestCorner(width: number, height: number, occupied: readonly PaperPoint[], lines: readonly Measured[]): PaperPoint {
  const [left, right, top, bottom] = [14, width - 14, 13, height - 13];
  const clear = (place: PaperPoint): number =>
    Math.min(
      ARROW_CLEAR,
      ...occupied.map((other) => offLine(place, { from: other, to: other })),
      ...lines.map((line) => offLine(place, line)),
    );
  const corners = [at(right, bottom), at(right, top), at(left, top)];
  return corners.reduce((best, other) => (clear(other) > clear(best) ? other : best));
}

/** An arrow that points north, round a place. */
export function northArrow(centre: PaperPoint, along: PaperPoint, letter: string): readonly DrawnShape[] {
  const to = direction(at(0, 0), along);
  const [tip, foot, side] = [shifted(centre, to, ARROW), shifted(centre, to, -ARROW), upFrom(to)];
  const neck = shifted(tip, to, -3.6);
  return [
    line("outline", [foot, neck]),
    line("outline", [tip, shifted(neck, side, 1.3), neck, shifted(neck, side, -1.3), tip], "paper"),
    line("outline", [tip, shifted(neck, side, 1.3), neck, tip], "ink"),
    ...[wordsThrough(shifted(tip, to, 2.2), letter, { anchor: "middle", size: 3, heavy: true })],
  ];
}
