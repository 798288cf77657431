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
  let count = 0;
  let sum = 0;
  let squares = 0;
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x;
      const edge =
        (grey[at - width] as number) +
        (grey[at + width] as number) +
        (grey[at - 1] as number) +
        (grey[at + 1] as number) -
        4 * (grey[at] as number);
      count += 1;
      sum += edge;
      squares += edge * edge;
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
  let dark = 0;
  let bright = 0;
  // By index: an iterator makes garbage for every pixel, and collecting it costs more than the counting.
  for (let at = 0; at < grey.length; at += 1) {
    const step = grey[at] as number;
    if (step < CLIPPED_STEPS) dark += 1;
    else if (step > 255 - CLIPPED_STEPS) bright += 1;
  }
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
