/**
 * Measures on grey pixels (one byte each, rows from the top, upright). The picture is brought to a long edge of
 * `GREY_LONG_EDGE` first, so that figures of different cameras can be compared.
 */

/** A grey picture: one byte a pixel, rows from the top, upright. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/** Long edge in pixels of the grey picture that is measured (own). A smaller picture is measured as it is. */
export const GREY_LONG_EDGE = 1024;

/** Grey steps at each end that count as clipped: 0…4 and 251…255 (own; a JPEG's rounding blurs 0 and 255 by a few steps). */
const CLIPPED_STEPS = 5;

export function checkShape(grey: Uint8Array, width: number, height: number): void {
  if (!Number.isInteger(width) || !Number.isInteger(height) || width < 1 || height < 1 || grey.length !== width * height) {
    throw new RangeError(`${grey.length} grey pixels are not ${width} × ${height}`);
  }
}

/**
 * Variance of the Laplacian [0 1 0; 1 −4 1; 0 1 0] over the valid region, population variance, in grey steps squared.
 * Zero for a picture without edges and for one below 3 × 3 pixels. Pech-Pacheco et al., ICPR 2000 (from memory).
 */
export function sharpness(grey: Uint8Array, width: number, height: number): number {
  checkShape(grey, width, height);
  const count = Math.max(0, width - 2) * Math.max(0, height - 2);
  let sum = 0;
  let squares = 0;
  for (let y = 1; y < height - 1; y += 1) {
    let left = grey[y * width] as number;
    let here = grey[y * width + 1] as number;
    for (let at = y * width + 1; at < (y + 1) * width - 1; at += 1) {
      const right = grey[at + 1] as number;
      const edge = ((grey[at - width] as number) + (grey[at + width] as number) + left + right - 4 * here) | 0;
      sum += edge;
      squares += Math.imul(edge, edge);
      left = here;
      here = right;
    }
  }
  // Sums of integers far below 2^53: exact, so the difference of squares loses nothing.
  return count === 0 ? 0 : (squares * count - sum * sum) / (count * count);
}

/** Shares of clipped pixels, in parts per million of all pixels. */
export interface Exposure {
  readonly dark: number;
  readonly bright: number;
}

export function exposure(grey: Uint8Array): Exposure {
  if (grey.length === 0) throw new RangeError("no grey pixels");
  const counts = new Uint32Array(256);
  // By index: an iterator makes garbage for every pixel, and collecting it costs more than the counting.
  for (let at = 0; at < grey.length; at += 1) counts[grey[at] as number] = (counts[grey[at] as number] as number) + 1;
  const sum = (steps: Uint32Array): number => steps.reduce((all, one) => all + one, 0);
  const [dark, bright] = [sum(counts.subarray(0, CLIPPED_STEPS)), sum(counts.subarray(256 - CLIPPED_STEPS))];
  const share = (n: number): number => Math.round((n / grey.length) * 1e6);
  return { dark: share(dark), bright: share(bright) };
}

/** Grey pixels of a canvas' picture, four bytes a pixel, by the weights of ITU-R BT.709 (from memory) on the bytes as they are. */
export function greyFromRgba(rgba: Uint8Array | Uint8ClampedArray, width: number, height: number): Grey {
  const pixels = new Uint8Array(width * height);
  if (rgba.length !== pixels.length * 4) throw new RangeError(`${rgba.length} bytes are not ${width} × ${height} pixels of four`);
  for (let n = 0; n < pixels.length; n += 1)
    pixels[n] = Math.round(0.2126 * (rgba[4 * n] as number) + 0.7152 * (rgba[4 * n + 1] as number) + 0.0722 * (rgba[4 * n + 2] as number));
  return { width, height, pixels };
}
