import {
  BLACK,
  box,
  type Camera,
  EARTH,
  GREY,
  inchMarks,
  LINER,
  type Look,
  type Lying,
  level,
  mantle,
  painted,
  ring,
  type Stroke,
  type Surface,
  standing,
  strip,
  trench,
  type Vector,
  WHITE,
  YELLOW,
} from "../scenes/index.ts";
import { strokesOf } from "./lettering.ts";

/** Something built on the demo's first job, seen by a phone, with a card of its step beside it. Metres; the ground lies at height 0 or near it. */
export interface Scene {
  readonly surfaces: readonly Surface[];
  readonly camera: Camera;
  /** How the card lies: on the plane in which the two ends lie. */
  readonly card: Lying;
  /** What was read by tape lies between them. */
  readonly ends: readonly [Vector, Vector];
}

const INCH = 0.0254;
/** A phone's main camera, 26 mm on film, its pictures made small: half the diagonal is 800. Its lens bends a corner of them by 0.1 %. */
const PHONE = { width: 1280, height: 960, lens: { focal: 960, k1: 0.001, k2: 0 } } as const;

const soil = (seed: number, key: number): Look => ({ shade: 0.3, uneven: 0.8, tint: EARTH, seed, key });
const smooth = (tint: number, shade: number, seed: number, key: number): Look => ({ shade, uneven: 0.1, tint, seed, key });
const dark = (key: number): Look => smooth(GREY, 0.05, 1, key);
const NORTH: Vector = [0, 1, 0];
const EAST: Vector = [1, 0, 0];
const UP: Vector = [0, 0, 1];

/** A pipe of 2 in is 2 3/8 in outside. */
const PIPE = 1.1875 * INCH;

const tape = (from: Vector, along: Vector, across: Vector, length: number, key: number): Surface =>
  strip({ from, along, across, length, width: 0.016 }, smooth(YELLOW, 0.6, 3, key), inchMarks(length, 0.016), 0.0012);

/** A number painted on a pipe that lies along x, seen from the south; its middle, and 30 mm high. */
const number = (text: string, x: number, y: number): readonly Stroke[] =>
  strokesOf(text, 0.03).map(([x0, y0, x1, y1]): Stroke => [x + x0 - 0.01, y + 0.015 - y0, x + x1 - 0.01, y + 0.015 - y1]);

/** Two glued joints at a coupling; the first one's mark is 2 1/16 in from the socket's mouth. */
function joints(): Scene {
  const axis = -PIPE;
  const [mouth, far] = [0, 0.11];
  const mark = mouth - 2.0625 * INCH;
  const across = (x: number): Stroke => [x, -PIPE, x, PIPE];
  const white = (key: number): Look => smooth(WHITE, 0.72, 5, key);
  const run = (from: number, to: number, strokes: readonly Stroke[], key: number): Surface =>
    painted(mantle([from, 0, axis], EAST, PIPE, to - from, white(key)), strokes, 0.003, dark(key + 1));
  const socket = 0.0365;
  return {
    surfaces: [
      level(-0.045, soil(11, 1)),
      run(-0.75, mouth, [across(mark), ...number("1", -0.12, 0)], 3),
      run(far, 0.75, [across(far + 2 * INCH), ...number("2", 0.23, 0)], 5),
      mantle([mouth, 0, axis], EAST, socket, far - mouth, smooth(WHITE, 0.64, 6, 7)),
      ring([mouth, 0, axis], EAST, PIPE, socket, smooth(WHITE, 0.5, 6, 8)),
      ring([far, 0, axis], EAST, PIPE, socket, smooth(WHITE, 0.5, 6, 9)),
      // a board, so that the card lies as high as the top of the pipe
      box([-0.2, -0.36, -0.05], [0.15, -0.05, -0.0005], smooth(EARTH, 0.45, 7, 10), { top: true, bottom: false }),
    ],
    camera: standing({ ...PHONE, aim: [-0.03, -0.1, 0], distance: 0.72, tilt: 24, side: -8, roll: 3 }),
    card: { middle: [-0.03, -0.2, 0], along: EAST, up: UP, seed: 12 },
    ends: [
      [mark, 0, 0],
      [mouth, 0, 0],
    ],
  };
}

/** The end of the open trench: a straight-edge across it on the ground, the top of the pipe 11 1/2 in below where it enters the soil. */
function cover(): Scene {
  const depth = 11.5 * INCH;
  const bottom = depth + 2 * PIPE;
  const [x, west, east] = [-0.1, -0.23, 0.23];
  return {
    surfaces: [
      ...trench(0, east - west, -2.4, 0, bottom, 21).surfaces,
      mantle([x, -2.4, PIPE - bottom], NORTH, PIPE, 2.4, smooth(WHITE, 0.72, 5, 4)),
      box([-0.5, 0, 0], [0.5, 0.09, 0.025], smooth(EARTH, 0.7, 22, 5), { top: true, bottom: false }),
      tape([x + 0.05, -2.2, 0.002 - bottom], NORTH, [-1, 0, 0], 2.1, 6),
      tape([x + 0.028, -0.001, -depth], UP, EAST, depth, 8),
    ],
    camera: standing({ ...PHONE, aim: [0.0, -0.05, -0.19], distance: 0.92, tilt: 54, side: 6, roll: -2 }),
    card: { middle: [0.1, -0.0005, -0.17], along: EAST, up: [0, -1, 0], seed: 23 },
    ends: [
      [x, 0, -depth],
      [x, 0, 0],
    ],
  };
}

/** A patch rolled onto the liner about a round cut; on its narrowest side 13/16 in lie between the cut and the patch's edge. */
function patch(): Scene {
  const cut = { round: true, x: 0, y: 0, radius: 1.5 * INCH } as const;
  const edge = cut.radius + 0.8125 * INCH;
  const sheet = { round: false, x0: -0.12, y0: -0.095, x1: edge, y1: 0.1 } as const;
  return {
    surfaces: [
      level(0, { ...smooth(LINER, 0.2, 31, 1), uneven: 0.25 }, [cut]),
      level(0.001, smooth(BLACK, 0.08, 32, 2), [cut], sheet),
      level(-0.03, soil(33, 3), [], { ...cut, radius: 0.09 }),
      tape([cut.radius, -0.012, 0.0015], EAST, [0, -1, 0], 0.42, 4),
    ],
    camera: standing({ ...PHONE, aim: [0.08, -0.02, 0], distance: 0.6, tilt: 22, side: 20, roll: -6 }),
    card: { middle: [0.19, 0.13, 0.001], along: EAST, up: UP, seed: 34 },
    ends: [
      [cut.radius, 0, 0.001],
      [edge, 0, 0.001],
    ],
  };
}

export const scenes = { joints, cover, patch } as const satisfies Readonly<Record<string, () => Scene>>;
export type SceneName = keyof typeof scenes;
