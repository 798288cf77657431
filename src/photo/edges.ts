import { checkShape } from "./grey.ts";

/** What a diagonal's second difference is divided by: its step is longer. Own; with it the sharp tiles of the tests are alike in all four directions. */
const DIAGONAL = 2.5;
/** Sum of the weights 1-2-1 down times 1-2-1 across. */
const WEIGHTS = 16;

/** The picture smoothed by 1-2-1 across and down, times `WEIGHTS`: exact integers. The rim of one pixel stays nought. */
function smoothed(grey: Uint8Array, width: number, height: number): Int16Array {
  const across = new Int16Array(grey.length);
  for (let at = 1; at < grey.length - 1; at += 1)
    across[at] = (grey[at - 1] as number) + 2 * (grey[at] as number) + (grey[at + 1] as number);
  const both = new Int16Array(grey.length);
  for (let at = width; at < width * (height - 1); at += 1)
    both[at] = (across[at - width] as number) + 2 * (across[at] as number) + (across[at + width] as number);
  return both;
}

/**
 * How strong edges are in the direction in which they are weakest, of across, down and both diagonals: the mean square of
 * the second difference of the smoothed picture, grey steps squared. A shaken camera leaves edges along its movement and
 * none across it, which the Laplacian's variance takes for sharp; the smoothing keeps noise from passing for edges. Own.
 * Nought below 5 × 5 pixels.
 */
export function weakestEdges(grey: Uint8Array, width: number, height: number): number {
  checkShape(grey, width, height);
  if (width < 5 || height < 5) return 0;
  const picture = smoothed(grey, width, height);
  let across = 0;
  let down = 0;
  let falling = 0;
  let rising = 0;
  for (let y = 2; y < height - 2; y += 1) {
    for (let at = y * width + 2; at < (y + 1) * width - 2; at += 1) {
      const middle = 2 * (picture[at] as number);
      const a = (picture[at - 1] as number) + (picture[at + 1] as number) - middle;
      const d = (picture[at - width] as number) + (picture[at + width] as number) - middle;
      const f = (picture[at - width - 1] as number) + (picture[at + width + 1] as number) - middle;
      const r = (picture[at - width + 1] as number) + (picture[at + width - 1] as number) - middle;
      across += a * a;
      down += d * d;
      falling += f * f;
      rising += r * r;
    }
  }
  const least = Math.min(across, down, falling / DIAGONAL, rising / DIAGONAL);
  return least / ((width - 4) * (height - 4) * WEIGHTS * WEIGHTS);
}
