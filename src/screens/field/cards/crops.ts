import type { FourSpots, SeenCorner } from "../../../geometry/index.ts";
import type { FourCorners, PicturePoint, RefinedCorner } from "../../../photo/index.ts";

interface Size {
  readonly width: number;
  readonly height: number;
}
/** A part of a picture, whole pixels of it. */
export interface Crop extends Size {
  readonly left: number;
  readonly top: number;
}

/** Own: a crop is drawn at most so large; a code that fills a picture is known well enough by then. */
const LARGEST = 2048;
/** Light around a code, as share of its larger side: five of its 21 modules. */
const AROUND = 0.24;

/** Size in whole pixels of a part drawn at most so large, never larger than it is. */
export function wholeSize({ width, height }: Size, longEdge = LARGEST): Size {
  const share = Math.min(1, longEdge / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * share)), height: Math.max(1, Math.round(height * share)) };
}

interface Position {
  readonly topLeft: PicturePoint;
  readonly topRight: PicturePoint;
  readonly bottomRight: PicturePoint;
  readonly bottomLeft: PicturePoint;
}

/**
 * A decoder's corners, whole pixels from the upper left corner of what was looked at, in the picture's own. They are good to one of
 * those pixels: against rendered scenes 0.4 along each axis (root mean square), the lower right one, which has no pattern, 1.0.
 */
export function roughIn({ topLeft, topRight, bottomRight, bottomLeft }: Position, whole: Size, looked: Size): FourCorners {
  const back = ({ x, y }: PicturePoint): PicturePoint => ({
    x: (x * whole.width) / looked.width,
    y: (y * whole.height) / looked.height,
  });
  return [back(topLeft), back(topRight), back(bottomRight), back(bottomLeft)];
}

/** What is cut out about a code: with light around it, as far as the picture reaches. */
export function cropAbout(corners: FourCorners, { width, height }: Size): Crop {
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const around = AROUND * Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)) + 4;
  const [left, top] = [Math.max(0, Math.floor(Math.min(...xs) - around)), Math.max(0, Math.floor(Math.min(...ys) - around))];
  const [right, below] = [Math.min(width, Math.ceil(Math.max(...xs) + around)), Math.min(height, Math.ceil(Math.max(...ys) + around))];
  return { left, top, width: Math.max(1, right - left), height: Math.max(1, below - top) };
}

/** Corners of the picture in a crop of it that was drawn at `size`. */
export function toCrop([a, b, c, d]: FourCorners, { left, top, width, height }: Crop, size: Size): FourCorners {
  const to = ({ x, y }: PicturePoint): PicturePoint => ({
    x: ((x - left) * size.width) / width,
    y: ((y - top) * size.height) / height,
  });
  return [to(a), to(b), to(c), to(d)];
}

/** And back, with their doubt. */
export function fromCrop([a, b, c, d]: FourCorners<RefinedCorner>, { left, top, width, height }: Crop, size: Size): FourSpots<SeenCorner> {
  const back = ({ x, y, u }: RefinedCorner): SeenCorner => ({
    x: left + (x * width) / size.width,
    y: top + (y * height) / size.height,
    u: (u * width) / size.width,
  });
  return [back(a), back(b), back(c), back(d)];
}
