/** Metres, z up; directions without a unit. */
export type Vector = readonly [x: number, y: number, z: number];
/** Pixels from the picture's upper left corner; the first pixel's middle is ½, ½. */
export type Pixel = readonly [x: number, y: number];

export interface Lens {
  /** Pixels. */
  readonly focal: number;
  /** Radial distortion at half the picture's diagonal: a spot at share r of it is seen at r (1 + k1 r² + k2 r⁴). */
  readonly k1: number;
  readonly k2: number;
}

/** A pinhole with radial distortion. */
export interface Camera {
  readonly width: number;
  readonly height: number;
  readonly lens: Lens;
  readonly position: Vector;
  /** To the right, down and forward in the picture; at right angles, of length one. */
  readonly right: Vector;
  readonly down: Vector;
  readonly forward: Vector;
}

export const plus = (a: Vector, b: Vector, times = 1): Vector => [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const times = (a: Vector, n: number): Vector => [a[0] * n, a[1] * n, a[2] * n];
export const unit = (a: Vector): Vector => times(a, 1 / Math.sqrt(dot(a, a)));
export const distance = (a: Vector, b: Vector): number => Math.sqrt(dot(plus(a, b, -1), plus(a, b, -1)));

export interface Standing {
  readonly width: number;
  readonly height: number;
  readonly lens: Lens;
  /** What is in the picture's middle, and how far away. */
  readonly aim: Vector;
  readonly distance: number;
  /** Degrees between the look and straight down; from which side, and how the camera is turned about its look. */
  readonly tilt: number;
  readonly side: number;
  readonly roll: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** A camera that looks down at a spot. With `side` 0 it stands to the south of it (at smaller y), with `roll` 0 north is up. */
export function standing({ width, height, lens, aim, distance: far, tilt, side, roll }: Standing): Camera {
  const [lean, about, turn] = [radians(tilt), radians(side), radians(roll)];
  const back: Vector = [Math.sin(lean) * Math.sin(about), -Math.sin(lean) * Math.cos(about), Math.cos(lean)];
  const right: Vector = [Math.cos(about), Math.sin(about), 0];
  const forward = times(back, -1);
  const down = cross(forward, right);
  return {
    width,
    height,
    lens,
    position: plus(aim, back, far),
    right: plus(times(right, Math.cos(turn)), down, Math.sin(turn)),
    down: plus(times(down, Math.cos(turn)), right, -Math.sin(turn)),
    forward,
  };
}

const halfOf = ({ width, height }: Camera): number => Math.sqrt(width * width + height * height) / 2;

/** Where a spot of the world is seen; undefined behind the camera. */
export function project(camera: Camera, spot: Vector): Pixel | undefined {
  const from = plus(spot, camera.position, -1);
  const z = dot(from, camera.forward);
  if (z <= 0) return undefined;
  const { focal, k1, k2 } = camera.lens;
  const half = halfOf(camera);
  const [u, v] = [(focal * dot(from, camera.right)) / z, (focal * dot(from, camera.down)) / z];
  const square = (u * u + v * v) / (half * half);
  const by = 1 + k1 * square + k2 * square * square;
  return [camera.width / 2 + u * by, camera.height / 2 + v * by];
}

export const inPicture = ({ width, height }: Camera, [x, y]: Pixel, margin = 0): boolean =>
  x >= margin && y >= margin && x <= width - margin && y <= height - margin;

/** Direction of the ray through a pixel, written into `out`; not of length one. */
export function rayThrough(camera: Camera): (x: number, y: number, out: Float64Array) => void {
  const { width, height, right, down, forward } = camera;
  const { focal, k1, k2 } = camera.lens;
  const half = halfOf(camera);
  return (x, y, out) => {
    const [seenX, seenY] = [(x - width / 2) / half, (y - height / 2) / half];
    let by = 1;
    // the distortion is small: each round gains two digits or more
    for (let round = 0; round < 5; round++) {
      const square = (seenX * seenX + seenY * seenY) / (by * by);
      by = 1 + k1 * square + k2 * square * square;
    }
    const u = (seenX * half) / by / focal;
    const v = (seenY * half) / by / focal;
    out[0] = forward[0] + u * right[0] + v * down[0];
    out[1] = forward[1] + u * right[1] + v * down[1];
    out[2] = forward[2] + u * right[2] + v * down[2];
  };
}
