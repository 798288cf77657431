import type { Spot } from "./homography.ts";

export type FourSpots<T extends Spot = Spot> = readonly [topLeft: T, topRight: T, bottomRight: T, bottomLeft: T];

/** A code as it is printed: the corners of the square that its modules fill (no quiet zone), code upright; micrometres, x right, y down. */
export interface CardCode {
  readonly name: string;
  readonly corners: FourSpots;
}

/** The same corner in the picture, pixels from the picture's upper left corner (the first pixel's middle is ½, ½). */
export interface SeenCorner extends Spot {
  /** Standard uncertainty along each axis, pixels. */
  readonly u: number;
}
export interface SeenCode {
  readonly name: string;
  readonly corners: FourSpots<SeenCorner>;
}

/** A lens as measured (`lensFrom`) or supposed: distortion at half the diagonal, in millionths of it, outwards positive. */
export interface Lens {
  readonly distortion: number;
  /** Half-width of what it may be, same unit. */
  readonly within: number;
}

export interface CardPicture {
  /** Pixels, upright. */
  readonly width: number;
  readonly height: number;
  readonly codes: readonly SeenCode[];
  readonly lens?: Lens;
  /** Pixels, where the camera said it. */
  readonly focalLength?: number;
  /** Where the lens looks in the picture, pixels; its middle where absent. A picture that was cut has another. */
  readonly centre?: Spot;
}
