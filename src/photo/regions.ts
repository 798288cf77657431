/** A part of an upright picture, in millionths of its width and height from its upper left corner. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** As many parts of one picture as can be blurred (own). */
export const MOST_REGIONS = 20;
const WHOLE = 1_000_000;

const isShare = (value: unknown, least: number): value is number =>
  Number.isSafeInteger(value) && Number(value) >= least && Number(value) <= WHOLE;

/** Whether a value is a part of a picture that lies inside it and is not empty. */
export function isRegion(value: unknown): value is Region {
  if (typeof value !== "object" || value === null) return false;
  const { x, y, width, height } = value as Partial<Record<keyof Region, unknown>>;
  return isShare(x, 0) && isShare(y, 0) && isShare(width, 1) && isShare(height, 1) && x + width <= WHOLE && y + height <= WHOLE;
}

/** Pixels of a region, whole ones, rounded outwards: nothing that was marked is left out. */
export function pixelsOf({ x, y, width, height }: Region, picture: { readonly width: number; readonly height: number }) {
  const [left, top] = [Math.floor((x * picture.width) / WHOLE), Math.floor((y * picture.height) / WHOLE)];
  const right = Math.min(picture.width, Math.ceil(((x + width) * picture.width) / WHOLE));
  const bottom = Math.min(picture.height, Math.ceil(((y + height) * picture.height) / WHOLE));
  return { left, top, width: Math.max(1, right - left), height: Math.max(1, bottom - top) };
}
