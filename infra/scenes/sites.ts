import type { Vector } from "./camera.ts";
import { box, level, mantle, ring } from "./solids.ts";
import { BLACK, EARTH, type Look, type Surface, WHITE } from "./surface.ts";

/** A named spot of the world whose place in a picture is to be known. */
export interface Mark {
  readonly name: string;
  readonly spot: Vector;
}

/** Something built, with spots between which a length is known. Metres; the ground lies at height 0. */
export interface Site {
  readonly surfaces: readonly Surface[];
  readonly marks: readonly Mark[];
}

const soil = (seed: number, key: number): Look => ({ shade: 0.3, uneven: 0.8, tint: EARTH, seed, key });
const plastic = (tint: number, shade: number, seed: number, key: number): Look => ({ shade, uneven: 0.08, tint, seed, key });

/** A round hole in level ground, straight down. */
export function hole(x: number, y: number, radius: number, depth: number, seed: number): Site {
  const opening = { round: true, x, y, radius } as const;
  return {
    surfaces: [
      level(0, soil(seed, 1), [opening]),
      level(-depth, soil(seed + 1, 2), [], opening),
      mantle([x, y, -depth], [0, 0, 1], radius, depth, soil(seed + 2, 3)),
    ],
    marks: [
      { name: "west rim", spot: [x - radius, y, 0] },
      { name: "east rim", spot: [x + radius, y, 0] },
      { name: "south rim", spot: [x, y - radius, 0] },
      { name: "north rim", spot: [x, y + radius, 0] },
    ],
  };
}

/** A round basin in the ground, its rim over or under the ground's level by `rim`; water or floor at `floor` below the rim. */
export function basin(x: number, y: number, radius: number, rim: number, floor: number, seed: number): Site {
  const [wall, dug] = [0.012, radius + 0.06];
  const opening = { round: true, x, y, radius: dug } as const;
  const inside = { round: true, x, y, radius } as const;
  const black = (key: number): Look => plastic(BLACK, 0.09, seed, key);
  return {
    surfaces: [
      level(0, soil(seed, 1), [opening]),
      level(Math.min(rim, 0) - 0.05, soil(seed + 1, 2), [inside], opening),
      mantle([x, y, rim - floor], [0, 0, 1], radius, floor, black(3)),
      mantle([x, y, rim - floor], [0, 0, 1], radius + wall, floor, black(4)),
      ring([x, y, rim], [0, 0, 1], radius, radius + wall, plastic(BLACK, 0.16, seed, 5)),
      level(rim - floor, black(6), [], inside),
    ],
    marks: [
      { name: "west inside", spot: [x - radius, y, rim] },
      { name: "east inside", spot: [x + radius, y, rim] },
      { name: "south inside", spot: [x, y - radius, rim] },
      { name: "north inside", spot: [x, y + radius, rim] },
    ],
  };
}

/** A trench along y with straight walls, between x - width/2 and x + width/2. */
export function trench(x: number, width: number, y0: number, y1: number, depth: number, seed: number): Site {
  const opening = { round: false, x0: x - width / 2, y0, x1: x + width / 2, y1 } as const;
  return {
    surfaces: [
      level(0, soil(seed, 1), [opening]),
      box([opening.x0, y0, -depth], [opening.x1, y1, 0], soil(seed + 1, 2), { top: false, bottom: true }),
    ],
    marks: [
      { name: "west edge", spot: [opening.x0, (y0 + y1) / 2, 0] },
      { name: "east edge", spot: [opening.x1, (y0 + y1) / 2, 0] },
      { name: "south-west corner", spot: [opening.x0, y0, 0] },
      { name: "north-west corner", spot: [opening.x0, y1, 0] },
    ],
  };
}

/** A pipe that lies along y on the bottom of a trench, and so much of it that both ends are seen. */
export function pipeInTrench(x: number, width: number, y0: number, y1: number, depth: number, radius: number, seed: number): Site {
  const { surfaces, marks } = trench(x, width, y0, y1, depth, seed);
  const [from, to] = [y0 + 0.1, y1 - 0.1];
  const white = plastic(WHITE, 0.7, seed, 7);
  const middle = radius - depth;
  return {
    surfaces: [
      ...surfaces,
      mantle([x, from, middle], [0, 1, 0], radius, to - from, white),
      ring([x, from, middle], [0, 1, 0], 0.85 * radius, radius, white),
      ring([x, to, middle], [0, 1, 0], 0.85 * radius, radius, white),
    ],
    marks: [
      ...marks,
      { name: "south end of the pipe", spot: [x, from, middle + radius] },
      { name: "north end of the pipe", spot: [x, to, middle + radius] },
    ],
  };
}
