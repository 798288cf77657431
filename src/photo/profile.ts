import type { Grey } from "./grey.ts";

/** Light of a pixel from its byte, by the square: near enough to the camera's curve that blur does not move an edge much. */
const LIGHT = Float64Array.from({ length: 256 }, (_, byte) => (byte * byte) / 65025);

/** Between four pixels; the first pixel's middle is ½, ½. Not a number outside the picture. */
function lightAt({ width, height, pixels }: Grey, x: number, y: number): number {
  const [px, py] = [x - 0.5, y - 0.5];
  const [x0, y0] = [Math.floor(px), Math.floor(py)];
  if (!(x0 >= 0 && y0 >= 0 && x0 + 1 < width && y0 + 1 < height)) return Number.NaN;
  const [fx, fy] = [px - x0, py - y0];
  const at = y0 * width + x0;
  const above = (LIGHT[pixels[at] as number] as number) * (1 - fx) + (LIGHT[pixels[at + 1] as number] as number) * fx;
  const below = (LIGHT[pixels[at + width] as number] as number) * (1 - fx) + (LIGHT[pixels[at + width + 1] as number] as number) * fx;
  return above * (1 - fy) + below * fy;
}

/** Between samples of a profile, pixels. */
const STEP = 0.25;
/** Paper is lighter than ink by more than this, share of full light, or there is nothing to see (own). */
const LEAST_CONTRAST = 0.02;
/** Where light changes along a profile, pixels outwards, and by how much. */
export interface Change {
  readonly across: number;
  readonly contrast: number;
}

export interface Profile {
  /** Light from inside outwards, a value every `STEP`, the first one at `-deep`. */
  readonly light: readonly number[];
  readonly deep: number;
}

/** Light along a line from `deep` inside a place to `far` outside it; undefined where the picture ends. */
export function profileAt(
  grey: Grey,
  [x, y]: readonly [number, number],
  [nx, ny]: readonly [number, number],
  deep: number,
  far: number,
): Profile | undefined {
  const light: number[] = [];
  for (let t = -deep; t <= far; t += STEP) light.push(lightAt(grey, x + t * nx, y + t * ny));
  return light.every(Number.isFinite) ? { light, deep } : undefined;
}

/**
 * Where light changes along a profile, between two places: the middle of mass of the slope, in a window about itself. `way` 1
 * finds where it grows light on the way out, -1 where it grows dark.
 */
export function changeAt(
  { light, deep }: Profile,
  way: 1 | -1,
  [least, most]: readonly [number, number],
  window: number,
): Change | undefined {
  const slope = light.slice(2).map((value, i) => Math.max(0, way * (value - (light[i] as number))));
  const placeOf = (i: number): number => (i + 1) * STEP - deep;
  let steepest = -1;
  for (const [i, value] of slope.entries()) if (placeOf(i) >= least && placeOf(i) <= most && value > (slope[steepest] ?? 0)) steepest = i;
  if (steepest < 0) return undefined;
  let middle = placeOf(steepest);
  let contrast = 0;
  for (let round = 0; round < 4; round++) {
    let [sum, moment] = [0, 0];
    for (const [i, value] of slope.entries()) {
      const off = Math.abs(placeOf(i) - middle);
      if (off > window) continue;
      // the window's rim counts in part, so that the middle does not jump from sample to sample
      const weight = value * Math.min(1, (window - off) / STEP);
      sum += weight;
      moment += weight * placeOf(i);
    }
    if (!(sum > LEAST_CONTRAST)) return undefined;
    middle = moment / sum;
    contrast = sum / 2;
  }
  return { across: middle, contrast };
}

/**
 * A finder pattern's outermost ring is a dark line with light on both sides. Blur and ink move its two edges apart by the same,
 * so its middle stays, half a module inside the code's edge.
 */
export function ringAt(profile: Profile, depth: number, reach: number): Change | undefined {
  const window = Math.max(1.25, Math.min(3, 0.5 * depth));
  const outer = changeAt(profile, 1, [-reach, reach], window);
  const inner = changeAt(profile, -1, [-depth - reach, Math.min(-depth + reach, -STEP)], window);
  if (outer === undefined || inner === undefined || inner.contrast < 0.4 * outer.contrast) return undefined;
  return { across: (outer.across + inner.across + depth) / 2, contrast: outer.contrast };
}
