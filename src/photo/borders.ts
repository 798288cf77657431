import { checkShape, type Grey } from "./grey.ts";
import { type Part, wholeOf } from "./sampled.ts";

/** Grey steps on either side of the bar's own grey that still count as the bar: what a JPEG makes of an even colour (own). */
const EVEN_STEPS = 3;
/** Share of a line that may differ: a clock and the signs beside it in a screen's upper bar (own). */
const OTHERWISE_AT_MOST = 0.4;
/**
 * A bar ends at once: so much of a line differs within `ABRUPT_LINES` of it (own). An even background or a clipped sky of
 * the picture's own ends raggedly, and where it seems to end changes with every copy.
 */
const ABRUPT_AT_LEAST = 0.65;
const ABRUPT_LINES = 3;
/** A bar thinner than this share of the edge is left alone: a dark row at a picture's rim is none (own). */
const THINNEST_BAR = 0.02;

interface Line {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

const sides = ["top", "bottom", "left", "right"] as const;
type Side = (typeof sides)[number];

function lineOf(grey: Grey, { left, top, width, height }: Part, side: Side, depth: number): Line {
  if (side === "top" || side === "bottom") {
    const y = side === "top" ? top + depth : top + height - 1 - depth;
    return { from: y * grey.width + left, step: 1, count: width };
  }
  const x = side === "left" ? left + depth : left + width - 1 - depth;
  return { from: top * grey.width + x, step: grey.width, count: height };
}

/** The grey that stands in the middle when a line's pixels are put in order. */
function middleGrey(pixels: Uint8Array, { from, step, count }: Line): number {
  const counts = new Uint32Array(256);
  for (let n = 0; n < count; n += 1) {
    const grey = pixels[from + n * step] as number;
    counts[grey] = (counts[grey] as number) + 1;
  }
  let below = 0;
  for (let grey = 0; grey < 256; grey += 1) {
    below += counts[grey] as number;
    if (below * 2 > count) return grey;
  }
  return 255;
}

/** Share of the line's pixels that are not the bar's grey. */
function otherwise(pixels: Uint8Array, { from, step, count }: Line, bar: number): number {
  let other = 0;
  for (let n = 0; n < count; n += 1) if (Math.abs((pixels[from + n * step] as number) - bar) > EVEN_STEPS) other += 1;
  return other / count;
}

function barOn(grey: Grey, part: Part, side: Side): number {
  const across = side === "top" || side === "bottom" ? part.height : part.width;
  const bar = middleGrey(grey.pixels, lineOf(grey, part, side, 0));
  const other = (depth: number): number => otherwise(grey.pixels, lineOf(grey, part, side, depth), bar);
  let depth = 0;
  while (depth < across && other(depth) <= OTHERWISE_AT_MOST) depth += 1;
  // Even all through is no bar: how little is in it, the strength of its waves tells.
  if (depth === across || depth < across * THINNEST_BAR) return 0;
  for (let n = 0; n < ABRUPT_LINES && depth + n < across; n += 1) if (other(depth + n) >= ABRUPT_AT_LEAST) return depth;
  return 0;
}

export interface Bordered {
  /** What is left without the bars. */
  readonly inside: Part;
  /** What was left when the outermost bars, above and below or left and right, were gone: a picture may have even sides of its own. */
  readonly between: Part;
  /** Pixels taken away on each side. */
  readonly bars: Readonly<Record<Side, number>>;
}

/** Bars of one even grey along the edges, as a screen puts them around a picture of another shape, found from the outside inwards. */
export function withoutBars(grey: Grey): Bordered {
  checkShape(grey.pixels, grey.width, grey.height);
  const bars = { top: 0, bottom: 0, left: 0, right: 0 };
  const whole = wholeOf(grey);
  let part = whole;
  let between: Part | undefined;
  for (let again = true; again; ) {
    again = false;
    for (const side of sides) {
      if (side === "left" && part !== whole) between ??= part;
      const depth = barOn(grey, part, side);
      if (depth === 0) continue;
      again = true;
      bars[side] += depth;
      part = narrowed(part, side, depth);
    }
    if (part !== whole) between ??= part;
  }
  return { inside: part, between: between ?? whole, bars };
}

function narrowed({ left, top, width, height }: Part, side: Side, by: number): Part {
  if (side === "top") return { left, top: top + by, width, height: height - by };
  if (side === "bottom") return { left, top, width, height: height - by };
  return { left: side === "left" ? left + by : left, top, width: width - by, height };
}
