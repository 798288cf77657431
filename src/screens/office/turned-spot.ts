import type { Turn } from "../../photo/index.ts";
import type { Spot } from "./marked-parts.ts";

const places: Readonly<Record<Turn, (spot: Spot) => Spot>> = {
  1: ({ x, y }) => ({ x, y }),
  2: ({ x, y }) => ({ x: 1 - x, y }),
  3: ({ x, y }) => ({ x: 1 - x, y: 1 - y }),
  4: ({ x, y }) => ({ x, y: 1 - y }),
  5: ({ x, y }) => ({ x: y, y: x }),
  6: ({ x, y }) => ({ x: 1 - y, y: x }),
  7: ({ x, y }) => ({ x: 1 - y, y: 1 - x }),
  8: ({ x, y }) => ({ x: y, y: 1 - x }),
};

/** Where a spot of a picture lies once the picture is turned as a viewer does for this orientation tag (Exif 2.32, tag 274; from memory). */
export const turnedSpot = (turn: Turn, spot: Spot): Spot => places[turn](spot);
