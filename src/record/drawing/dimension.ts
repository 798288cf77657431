import type { DrawnShape, PaperPoint } from "../model-drawn.ts";
import { at, direction, line, shifted, upFrom, words } from "./strokes.ts";

const SLASH = 0.9;
const CLEAR = 0.75;

/** The short strokes across the two ends of a dimension line, at 45 degrees to it. */
function slashes(from: PaperPoint, to: PaperPoint): readonly DrawnShape[] {
  const along = direction(from, to);
  const up = upFrom(along);
  const aslant = { x: (along.x + up.x) / Math.SQRT2, y: (along.y + up.y) / Math.SQRT2 };
  return [from, to].map((end) => line("outline", [shifted(end, aslant, -SLASH), shifted(end, aslant, SLASH)]));
}

/** A bare dimension line. */
export const measure = (from: PaperPoint, to: PaperPoint): readonly DrawnShape[] => [line("dimension", [from, to]), ...slashes(from, to)];

/** The direction in which letters along a line are read: from below or from the right. */
export function readable(along: PaperPoint): PaperPoint {
  const turn = along.x < -1e-9 || (Math.abs(along.x) <= 1e-9 && along.y > 0);
  return turn ? { x: -along.x, y: -along.y } : along;
}

/** A dimension line with its figure above it, `share` of the way from the first end to the second. */
export function dimension(from: PaperPoint, to: PaperPoint, text: string, share = 0.5): readonly DrawnShape[] {
  const along = readable(direction(from, to));
  const place = at(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
  return [...measure(from, to), words(shifted(place, upFrom(along), CLEAR), text, { anchor: "middle", along })];
}
