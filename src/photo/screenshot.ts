import type { PhotoFacts } from "./facts.ts";

/** A phone's screen is at least so much longer than wide; a camera's picture is 4 : 3, 3 : 2 or 16 : 9 (common practice). */
const SCREEN_RATIO = 1.8;

/**
 * Whether a picture looks like one of a phone's screen: a PNG without a word from a camera, and either as long as a screen
 * or with even bars around a picture. A hint for the person who looks at it, no more.
 */
export function screenshotLook({
  type,
  width,
  height,
  taken,
  position,
  likeness,
}: Pick<PhotoFacts, "type" | "width" | "height" | "taken" | "position" | "likeness">): boolean {
  if (type !== "image/png" || taken !== null || position !== null || width === null || height === null) return false;
  return Math.max(width, height) >= SCREEN_RATIO * Math.min(width, height) || (likeness?.hashes.length ?? 0) > 1;
}
