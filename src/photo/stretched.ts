import type { PicturePoint } from "./edge-line.ts";
import type { Grey } from "./grey.ts";

const DIAGONAL = Math.sqrt(0.5);
/** Directions along which a picture is stretched: across, down, and both diagonals. */
export const stretches = [
  [1, 0],
  [0, 1],
  [DIAGONAL, DIAGONAL],
  [DIAGONAL, -DIAGONAL],
] as const;

export interface Stretched {
  readonly picture: Grey;
  /** A spot of the stretched picture in the picture that it was made from. */
  readonly back: (spot: PicturePoint) => PicturePoint;
}

/**
 * The picture drawn out along a direction of length one. A plane that is looked at slantingly is squeezed, by 1.4 at 45° and 1.7
 * at 55°, and decoders miss a code that is squeezed along its diagonal; drawn out again along one of the four `stretches` it is
 * found. What the corners are refined in stays the picture itself. What lies outside it is white.
 */
export function stretched({ width, height, pixels }: Grey, [dx, dy]: readonly [number, number], by: number): Stretched {
  // p' = p + (by - 1) (p · d) d, and back with 1/by
  const along = (times: number) => [1 + (times - 1) * dx * dx, (times - 1) * dx * dy, 1 + (times - 1) * dy * dy] as const;
  const [a, b, c] = along(by);
  const [ia, ib, ic] = along(1 / by);
  const [xs, ys] = [
    [0, a * width, b * height, a * width + b * height],
    [0, b * width, c * height, b * width + c * height],
  ];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.ceil(Math.max(...xs) - left), Math.ceil(Math.max(...ys) - top)];
  const out = new Uint8Array(wide * high).fill(255);
  for (let y = 0; y < high; y++) {
    const Y = y + 0.5 + top;
    for (let x = 0; x < wide; x++) {
      const X = x + 0.5 + left;
      const [px, py] = [ia * X + ib * Y - 0.5, ib * X + ic * Y - 0.5];
      const [x0, y0] = [Math.floor(px), Math.floor(py)];
      if (x0 < 0 || y0 < 0 || x0 + 1 >= width || y0 + 1 >= height) continue;
      const [fx, fy, at] = [px - x0, py - y0, y0 * width + x0];
      const above = (pixels[at] as number) * (1 - fx) + (pixels[at + 1] as number) * fx;
      const below = (pixels[at + width] as number) * (1 - fx) + (pixels[at + width + 1] as number) * fx;
      out[y * wide + x] = above * (1 - fy) + below * fy;
    }
  }
  const back = ({ x, y }: PicturePoint): PicturePoint => {
    const [X, Y] = [x + left, y + top];
    return { x: ia * X + ib * Y, y: ib * X + ic * Y };
  };
  return { picture: { width: wide, height: high, pixels: out }, back };
}
