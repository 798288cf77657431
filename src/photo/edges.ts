import { checkShape } from "./grey.ts";

/** What a diagonal's second difference is divided by: its step is longer. Own; with it the sharp tiles of the tests are alike in all four directions. */
const DIAGONAL = 2.5;
/** Sum of the weights 1-2-1 down times 1-2-1 across. */
const WEIGHTS = 16;

/** A row of the picture smoothed by 1-2-1 across and down, times `WEIGHTS`: exact integers. Its two ends stay nought. */
function smoothRow(grey: Uint8Array, width: number, y: number, down: Int32Array, row: Int32Array): void {
  const from = y * width;
  for (let x = 0; x < width; x += 1)
    down[x] = (grey[from - width + x] as number) + 2 * (grey[from + x] as number) + (grey[from + width + x] as number);
  for (let x = 1; x < width - 1; x += 1) row[x] = (down[x - 1] as number) + 2 * (down[x] as number) + (down[x + 1] as number);
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
  // three rows at a time, whose pixels are handed on from right to left: nothing of the picture's size is written
  const down = new Int32Array(width);
  let [above, own, below] = [new Int32Array(width), new Int32Array(width), new Int32Array(width)];
  smoothRow(grey, width, 1, down, above);
  smoothRow(grey, width, 2, down, own);
  const squares = { across: 0, down: 0, falling: 0, rising: 0 };
  for (let y = 2; y < height - 2; y += 1) {
    smoothRow(grey, width, y + 1, down, below);
    addSquares(squares, above, own, below);
    [above, own, below] = [own, below, above];
  }
  const least = Math.min(squares.across, squares.down, squares.falling / DIAGONAL, squares.rising / DIAGONAL);
  return least / ((width - 4) * (height - 4) * WEIGHTS * WEIGHTS);
}

interface Squares {
  across: number;
  down: number;
  falling: number;
  rising: number;
}

/** Adds the squared second differences of the middle row. Sums of integers far below 2^53: exact. */
function addSquares(squares: Squares, above: Int32Array, own: Int32Array, below: Int32Array): void {
  let across = 0;
  let down = 0;
  let falling = 0;
  let rising = 0;
  let upperLeft = above[1] as number;
  let upper = above[2] as number;
  let left = own[1] as number;
  let here = own[2] as number;
  let lowerLeft = below[1] as number;
  let lower = below[2] as number;
  for (let x = 3; x < own.length - 1; x += 1) {
    const upperRight = above[x] as number;
    const right = own[x] as number;
    const lowerRight = below[x] as number;
    const middle = 2 * here;
    const a = (left + right - middle) | 0;
    const d = (upper + lower - middle) | 0;
    const f = (upperLeft + lowerRight - middle) | 0;
    const r = (upperRight + lowerLeft - middle) | 0;
    across += Math.imul(a, a);
    down += Math.imul(d, d);
    falling += Math.imul(f, f);
    rising += Math.imul(r, r);
    // written out: taking lists apart here costs several times the rest
    upperLeft = upper;
    upper = upperRight;
    left = here;
    here = right;
    lowerLeft = lower;
    lower = lowerRight;
  }
  squares.across += across;
  squares.down += down;
  squares.falling += falling;
  squares.rising += rising;
}
