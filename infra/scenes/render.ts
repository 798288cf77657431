import { chanceFrom } from "../chance/index.ts";
import { type Camera, rayThrough, type Vector } from "./camera.ts";
import { type Meeting, nothing, type Surface, shadeOf, tints } from "./surface.ts";

/** What the camera does to the light. */
export interface Sensor {
  /** Standard deviation of the lens' blur, pixels. */
  readonly blur: number;
  /** Standard deviation of the noise at full light, share of it; falls with the root of the light. */
  readonly noise: number;
  readonly seed: number;
}

export interface Light {
  /** Towards the sun, length one. */
  readonly sun: Vector;
  /** Share of the light that comes from everywhere. */
  readonly sky: number;
  /** What full light on white gives, of the sensor's range. */
  readonly exposure: number;
  readonly shadows: boolean;
}

/** A part of the picture, pixels: only it is drawn. */
export interface Window {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Red, green and blue, one byte each, rows from the top; `window` is where in the camera's picture it lies. */
export interface Rendered {
  readonly pixels: Uint8Array;
  readonly window: Window;
}

/** Samples of a pixel through which an edge runs: every sixteenth across and down once, so that no edge falls between them. */
const FINE = Array.from({ length: 16 }, (_, i) => [(i + 0.5) / 16, (((i * 7) % 16) + 0.5) / 16] as const);

/** Light of one ray. */
function lit(surfaces: readonly Surface[], { sun, sky, exposure, shadows }: Light, met: Meeting): number {
  const facing = met.nx * sun[0] + met.ny * sun[1] + met.nz * sun[2];
  let direct = Math.abs(facing);
  if (shadows && direct > 0) {
    const between = nothing();
    const from: Vector = [met.x + 1e-4 * sun[0], met.y + 1e-4 * sun[1], met.z + 1e-4 * sun[2]];
    const way = Float64Array.of(...sun);
    for (const surface of surfaces) surface(from, way, between);
    if (between.t < Number.POSITIVE_INFINITY) direct = 0;
  }
  return exposure * shadeOf(met) * (sky + (1 - sky) * direct);
}

function blurred(plane: Float32Array, width: number, height: number, sigma: number): Float32Array {
  if (sigma <= 0) return plane;
  const reach = Math.ceil(3 * sigma);
  const raw = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)));
  const sum = raw.reduce((a, b) => a + b, 0);
  const weights = Float64Array.from(raw, (w) => w / sum);
  const pass = (from: Float32Array, step: number, along: number, place: (at: number) => number): Float32Array => {
    const to = new Float32Array(from.length);
    for (let at = 0; at < from.length; at++) {
      const here = place(at);
      let value = 0;
      for (let k = -reach; k <= reach; k++) {
        const there = here + k < 0 ? 0 : here + k >= along ? along - 1 : here + k;
        value += (weights[k + reach] as number) * (from[at + (there - here) * step] as number);
      }
      to[at] = value;
    }
    return to;
  };
  return pass(
    pass(plane, 1, width, (at) => at % width),
    width,
    height,
    (at) => (at - (at % width)) / width,
  );
}

/** Bytes by the transfer curve of sRGB (IEC 61966-2-1, from memory), in 4096 steps of light. */
const CURVE = Uint8Array.from({ length: 4097 }, (_, i) => {
  const light = i / 4096;
  return Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055));
});

/** A scene as the camera takes it: rays, blur, noise, the curve of sRGB. */
export function render(surfaces: readonly Surface[], camera: Camera, light: Light, sensor: Sensor, part?: Window): Rendered {
  const window = part ?? { x: 0, y: 0, width: camera.width, height: camera.height };
  const { width, height } = window;
  const through = rayThrough(camera);
  const way = new Float64Array(3);
  const met = nothing();
  const look = (x: number, y: number): void => {
    through(window.x + x, window.y + y, way);
    met.t = Number.POSITIVE_INFINITY;
    met.key = 0;
    for (const surface of surfaces) surface(camera.position, way, met);
  };
  // keys at the pixels' corners: where all four are alike, one ray through the middle will do
  const keys = new Int16Array((width + 1) * (height + 1));
  for (let y = 0; y <= height; y++)
    for (let x = 0; x <= width; x++) {
      look(x, y);
      keys[y * (width + 1) + x] = met.key;
    }
  const plane = new Float32Array(width * height);
  const colours = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const corner = y * (width + 1) + x;
      const key = keys[corner];
      const plain = key === keys[corner + 1] && key === keys[corner + width + 1] && key === keys[corner + width + 2];
      let sum = 0;
      if (!plain)
        for (const [fx, fy] of FINE) {
          look(x + fx, y + fy);
          sum += lit(surfaces, light, met) / FINE.length;
        }
      else {
        look(x + 0.5, y + 0.5);
        sum = lit(surfaces, light, met);
      }
      plane[y * width + x] = sum;
      colours[y * width + x] = met.tint;
    }
  const sharp = blurred(plane, width, height, sensor.blur);
  const { normal, below } = chanceFrom(sensor.seed);
  const table = Float32Array.from({ length: 65536 }, normal);
  const pixels = new Uint8Array(3 * width * height);
  for (let at = 0; at < sharp.length; at++) {
    const value = sharp[at] as number;
    const noisy = value + sensor.noise * Math.sqrt(Math.max(0, value) + 0.01) * (table[below(65536)] as number);
    const tint = tints[colours[at] as number] as Vector;
    for (let c = 0; c < 3; c++)
      pixels[3 * at + c] = CURVE[Math.max(0, Math.min(4096, Math.round(4096 * noisy * (tint[c] as number))))] as number;
  }
  return { pixels, window };
}
