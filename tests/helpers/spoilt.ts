import sharp from "sharp";
import { open, type Pixels, pixelsOf } from "./photographs.ts";

/** Pictures spoilt by known amounts; lengths in pixels of the picture as it is measured. */

export type Change = (pixels: Pixels) => Promise<Pixels>;

export const asTaken: Change = async (pixels) => pixels;

/** Out of focus: a Gaussian of this standard deviation. */
export const focus =
  (sigma: number): Change =>
  (pixels) =>
    pixelsOf(open(pixels).blur(sigma));

/** Shaken along a straight line of this many pixels. */
export const shaken =
  (length: number, direction: "across" | "down" | "diagonal"): Change =>
  (pixels) => {
    const kernel = new Array<number>(length * length).fill(0);
    const middle = length >> 1;
    for (let n = 0; n < length; n += 1) {
      const [x, y] = direction === "across" ? [n, middle] : direction === "down" ? [middle, n] : [n, n];
      kernel[y * length + x] = 1;
    }
    return pixelsOf(open(pixels).convolve({ width: length, height: length, kernel, scale: length }));
  };

export const recompressed =
  (quality: number): Change =>
  async (pixels) =>
    pixelsOf(sharp(await open(pixels).jpeg({ quality }).toBuffer()));

/** Even numbers 0…1 from a congruence (Knuth's multiplier, from memory): the same in every run. */
export function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Noise of each channel with this standard deviation in steps: a sum of six even numbers, whose variance is a half. */
export const noisy =
  (deviation: number, seed = 1): Change =>
  async (pixels) => {
    const next = numbers(seed);
    const data = Buffer.from(pixels.data);
    for (let n = 0; n < data.length; n += 1) {
      const sum = next() + next() + next() + next() + next() + next() - 3;
      data[n] = Math.max(0, Math.min(255, Math.round((data[n] as number) + sum * deviation * Math.SQRT2)));
    }
    return { ...pixels, data };
  };

export const both =
  (first: Change, second: Change): Change =>
  async (pixels) =>
    second(await first(pixels));
