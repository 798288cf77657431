import { checkShape, type Grey } from "./grey.ts";

/** A part of a picture: from a left and top pixel, so many wide and high. */
export interface Part {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export const wholeOf = ({ width, height }: Grey): Part => ({ left: 0, top: 0, width, height });

/**
 * The means of a part of a picture over `columns` × `rows` equal cells, the part being at least that wide and high. Cells
 * are cut where they lie: a pixel on a cell's bound counts in both, by its share.
 */
export function cellMeans(grey: Grey, part: Part, columns: number, rows: number): Float64Array {
  checkShape(grey.pixels, grey.width, grey.height);
  const means = new Float64Array(columns * rows);
  const line = new Float64Array(columns);
  const cellHeight = part.height / rows;
  for (let y = 0; y < part.height; y += 1) {
    narrow(grey.pixels, (part.top + y) * grey.width + part.left, part.width, line);
    const row = Math.min(rows - 1, Math.floor(y / cellHeight));
    const below = Math.max(0, Math.min(1, y + 1 - (row + 1) * cellHeight));
    for (let x = 0; x < columns; x += 1) {
      const mean = (line[x] as number) / cellHeight;
      means[row * columns + x] = (means[row * columns + x] as number) + mean * (1 - below);
      if (below > 0 && row + 1 < rows) means[(row + 1) * columns + x] = (means[(row + 1) * columns + x] as number) + mean * below;
    }
  }
  return means;
}

/** One line of pixels as the means of `into.length` equal lengths of it. */
function narrow(pixels: Uint8Array, from: number, length: number, into: Float64Array): void {
  const cell = length / into.length;
  let at = 0;
  for (let n = 0; n < into.length; n += 1) {
    const begin = n * cell;
    const end = n + 1 === into.length ? length : begin + cell;
    let sum = 0;
    const first = at;
    for (; at < end; at += 1) sum += pixels[from + at] as number;
    // The pixel before may have reached over the bound; the last one of this cell may do so now.
    if (begin > 0) sum += (pixels[from + first - 1] as number) * (first - begin);
    if (at > end) sum -= (pixels[from + at - 1] as number) * (at - end);
    into[n] = sum / cell;
  }
}
