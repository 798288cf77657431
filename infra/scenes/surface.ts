import type { Vector } from "./camera.ts";
import { earth } from "./texture.ts";

/** Where a ray meets a surface, and what is there. Written by the surface, so that millions of rays make no garbage. */
export interface Meeting {
  /** In lengths of the ray's direction; Infinity where nothing is met. */
  t: number;
  x: number;
  y: number;
  z: number;
  /** The surface's normal, of length one, either way. */
  nx: number;
  ny: number;
  nz: number;
  /** Share of the light that comes back, 0 to 1, and the number of its colour in `tints`. */
  shade: number;
  tint: number;
  /** How uneven the shade is, and where in which noise: it is worked out for what is seen alone. */
  uneven: number;
  a: number;
  b: number;
  seed: number;
  /** Where it changes between neighbouring rays, the pixel between them is looked at more closely. */
  key: number;
}

/** Meets a ray, if nearer than `meeting.t`. */
export type Surface = (origin: Vector, direction: Float64Array, meeting: Meeting) => void;

export const nothing = (): Meeting => ({
  ...{ t: Number.POSITIVE_INFINITY, x: 0, y: 0, z: 0, nx: 0, ny: 0, nz: 1 },
  ...{ shade: 0.5, tint: 0, uneven: 0, a: 0, b: 0, seed: 0, key: 0 },
});

/** Colours by their number, as factors on red, green and blue: grey, earth, black plastic, grey-blue liner, white plastic, grass, yellow. */
export const tints: readonly Vector[] = [
  [1, 1, 1],
  [1.25, 0.97, 0.7],
  [0.95, 1, 1.08],
  [0.85, 1, 1.2],
  [1, 1, 0.97],
  [0.8, 1.12, 0.6],
  [1.3, 1.05, 0.3],
];
export const GREY = 0;
export const EARTH = 1;
export const BLACK = 2;
export const LINER = 3;
export const WHITE = 4;
export const GRASS = 5;
export const YELLOW = 6;

/** Writes a meeting; the place follows from the ray. */
export function meet(meeting: Meeting, origin: Vector, d: Float64Array, t: number, nx: number, ny: number, nz: number): void {
  meeting.t = t;
  meeting.x = origin[0] + t * (d[0] as number);
  meeting.y = origin[1] + t * (d[1] as number);
  meeting.z = origin[2] + t * (d[2] as number);
  meeting.nx = nx;
  meeting.ny = ny;
  meeting.nz = nz;
}

/** How a surface looks: the middle of its shade, how uneven, its colour's number, and the noise's seed. */
export interface Look {
  readonly shade: number;
  readonly uneven: number;
  readonly tint: number;
  readonly seed: number;
  /** Of its own among a scene's surfaces. */
  readonly key: number;
}

/** Writes how it looks where it was met; `a` and `b` are the place in its noise. */
export function paint(meeting: Meeting, { shade, uneven, tint, seed, key }: Look, a: number, b: number): void {
  meeting.shade = shade;
  meeting.uneven = uneven;
  meeting.tint = tint;
  meeting.seed = seed;
  meeting.a = a;
  meeting.b = b;
  meeting.key = key;
}

/** Share of the light that comes back where it was met. */
export const shadeOf = ({ shade, uneven, a, b, seed }: Meeting): number =>
  uneven === 0 ? shade : shade * (1 + uneven * (earth(a, b, seed) - 0.5));
