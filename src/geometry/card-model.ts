import type { Homography, Spot } from "./homography.ts";

/**
 * What a photo of a card is explained by. All of it in units of its own: on the card, spots from the middle of its codes in
 * units of `CardFrame.size`; in the picture, spots from the lens' centre in units of half the picture's diagonal.
 *
 * Numbers of the model, in this order: eight of the homography (the ninth is 1), the lens' distortion, three bows of the sheet
 * (along x², along xy, along y²: the height towards the camera at x = 1, y = 1), and how far ink or blur moved the edges of a
 * code outwards, those across x and those across y: blur moves them by pixels, and a slanting look makes unlike lengths of them.
 */
export const LENS = 8;
export const BOWS = [9, 10, 11] as const;
export const SPREADS = [12, 13] as const;

/** How card and picture are brought to those units. */
export interface CardFrame {
  /** Middle of the card's codes and the size that counts as one, micrometres. */
  readonly middle: Spot;
  readonly size: number;
  /** The lens' centre and half the picture's diagonal, pixels. */
  readonly centre: Spot;
  readonly half: number;
  /** Focal length in halves of the diagonal. */
  readonly focal: number;
}

type Vector3 = readonly [number, number, number];

const cross = ([a, b, c]: Vector3, [d, e, f]: Vector3): Vector3 => [b * f - c * e, c * d - a * f, a * e - b * d];
const length3 = ([a, b, c]: Vector3): number => Math.sqrt(a * a + b * b + c * c);

/** How the camera looks at a plane. */
export interface Pose {
  /** What one unit of height above the plane, towards the camera, adds to (u, v, w) of the homography. */
  readonly up: Vector3;
  /** Cosine of the angle between the plane's normal and the camera's axis: 1 is square on. */
  readonly cosine: number;
  /** From the camera to the plane's origin, units of the plane. */
  readonly away: number;
}

/** From a homography (plane to picture, lens' centre at nought) and the focal length in the picture's unit. */
export function poseOf([a, b, c, d, e, f, g, h, i]: Homography, focal: number): Pose {
  const [first, second]: [Vector3, Vector3] = [
    [a / focal, d / focal, g],
    [b / focal, e / focal, h],
  ];
  const scale = Math.sqrt(length3(first) * length3(second));
  const normal = cross(first, second);
  // x to the right and y down: their cross product points away from who reads the card
  const size = length3(normal);
  const away: Vector3 = [normal[0] / size, normal[1] / size, normal[2] / size];
  return {
    up: [-scale * focal * away[0], -scale * focal * away[1], -scale * away[2]],
    cosine: Math.abs(away[2]),
    away: length3([c / focal, f / focal, i]) / scale,
  };
}

export const homographyOf = (model: readonly number[]): Homography => [...model.slice(0, 8), 1] as unknown as Homography;

/** Radial distortion with one coefficient: a spot at distance r from the centre is seen at r (1 + k r²). Brown 1966, from memory. */
export function distorted({ x, y }: Spot, k: number): Spot {
  const by = 1 + k * (x * x + y * y);
  return { x: x * by, y: y * by };
}

/** The way back, by Newton's method on the distance. */
export function undistorted({ x, y }: Spot, k: number): Spot {
  const seen = Math.sqrt(x * x + y * y);
  if (seen === 0) return { x, y };
  let r = seen;
  for (let step = 0; step < 12; step++) r -= (r * (1 + k * r * r) - seen) / (1 + 3 * k * r * r);
  return { x: (x * r) / seen, y: (y * r) / seen };
}

/** A corner of a code on the card, and which way is outwards from its code. Units of the card. */
export interface ModelCorner {
  readonly at: Spot;
  readonly outwards: Spot;
}

/** Where the model sees a corner, units of the picture. `up` is that of the model's pose. */
export function seenAt(model: readonly number[], up: Vector3, { at, outwards }: ModelCorner): Spot {
  const [x, y] = [at.x + (model[SPREADS[0]] as number) * outwards.x, at.y + (model[SPREADS[1]] as number) * outwards.y];
  const height = (model[BOWS[0]] as number) * x * x + (model[BOWS[1]] as number) * x * y + (model[BOWS[2]] as number) * y * y;
  const [a, b, c, d, e, f, g, h] = model as readonly [number, number, number, number, number, number, number, number];
  const w = g * x + h * y + 1 + height * up[2];
  return distorted({ x: (a * x + b * y + c + height * up[0]) / w, y: (d * x + e * y + f + height * up[1]) / w }, model[LENS] as number);
}

/** The measured plane over the card: height at the card's middle, and its rise along x and y. Units of the card. */
export interface Lean {
  readonly height: number;
  readonly alongX: number;
  readonly alongY: number;
}

/** Homography from the measured plane, by its x and y below the camera's `up`, to the picture. */
export function leaning(card: Homography, up: Vector3, { height, alongX, alongY }: Lean): Homography {
  const [a, b, c, d, e, f, g, h, i] = card;
  return [
    a + alongX * up[0],
    b + alongY * up[0],
    c + height * up[0],
    d + alongX * up[1],
    e + alongY * up[1],
    f + height * up[1],
    g + alongX * up[2],
    h + alongY * up[2],
    i + height * up[2],
  ];
}

/** Distance of two spots on the measured plane, with what it rises between them. */
export function alongPlane({ alongX, alongY }: Lean, from: Spot, to: Spot): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const rise = alongX * dx + alongY * dy;
  return Math.sqrt(dx * dx + dy * dy + rise * rise);
}
