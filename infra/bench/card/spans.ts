import { type CardPlane, OWN_PHOTO_DOUBTS, photoLength } from "#core/geometry/index.ts";
import type { Chance } from "../../chance/index.ts";
import { distance, inPicture, type Pixel, plus, project, times, type Vector } from "../../scenes/index.ts";
import { CARD_LENGTH, type CardPhoto, SHEET } from "./scene.ts";

/** A length of the world and where its ends are tapped. */
export interface Span {
  readonly length: number;
  readonly ends: readonly [Pixel, Pixel];
  /** Whole card lengths within which both ends lie of the sheet's rim: 1, 2 or 3. */
  readonly within: number;
}

export const TWENTY_FOUR_INCHES = 0.6096;
/** Standard deviation of a tap along each axis, pixels; as `OWN_PHOTO_DOUBTS` states it. */
const TAP = OWN_PHOTO_DOUBTS.tap;

/** From the sheet's rim; nought on the sheet. */
function fromSheet({ lying }: CardPhoto, spot: Vector): number {
  const [x, y] = lying.along;
  const [a, b] = [spot[0] * x + spot[1] * y, spot[0] * y - spot[1] * x];
  const [dx, dy] = [Math.max(0, Math.abs(a) - SHEET.width / 2), Math.max(0, Math.abs(b) - SHEET.height / 2)];
  return Math.sqrt(dx * dx + dy * dy);
}

/** Lengths on the measured plane whose ends are in the picture, at most `each` of them for each number of card lengths. */
export function spansOf(photo: CardPhoto, chance: Chance, each: number, length = TWENTY_FOUR_INCHES): readonly Span[] {
  const { camera, plane } = photo;
  const spans: Span[] = [];
  const onPlane = (x: number, y: number): Vector => [x, y, plane.height + plane.alongX * x + plane.alongY * y];
  const tapped = ([x, y]: Pixel): Pixel => [x + TAP * chance.normal(), y + TAP * chance.normal()];
  for (let n = 0; n < 4000 && spans.length < 3 * each; n++) {
    const [x, y, turn] = [2.4 * chance.next() - 1.2, 2.4 * chance.next() - 1.2, 2 * Math.PI * chance.next()];
    const from = onPlane(x, y);
    const way = plus(onPlane(x + Math.cos(turn), y + Math.sin(turn)), from, -1);
    const to = plus(from, times(way, length / distance(way, [0, 0, 0])));
    const within = Math.max(1, Math.ceil(Math.max(fromSheet(photo, from), fromSheet(photo, to)) / CARD_LENGTH));
    if (within > 3 || spans.filter((span) => span.within === within).length >= each) continue;
    const [one, other] = [project(camera, from), project(camera, to)];
    if (!one || !other || !inPicture(camera, one, 10) || !inPicture(camera, other, 10)) continue;
    spans.push({ length, ends: [tapped(one), tapped(other)], within });
  }
  return spans;
}

/** What came of a span, metres. */
export interface Measured {
  readonly within: number;
  readonly error: number;
  readonly doubt: number;
}

export function measured(plane: CardPlane, spans: readonly Span[], doubts = OWN_PHOTO_DOUBTS): readonly Measured[] {
  return spans.flatMap(({ length, ends: [[x0, y0], [x1, y1]], within }) => {
    const found = photoLength(plane, { x: x0, y: y0 }, { x: x1, y: y1 }, doubts);
    return found.ok ? [{ within, error: found.value.micrometres / 1e6 - length, doubt: found.value.doubt / 1e6 }] : [];
  });
}
