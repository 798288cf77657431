import {
  EARTH,
  jpegOf,
  type Lying,
  letterSheet,
  level,
  type Pixel,
  project,
  render,
  sheetSurface,
  standing,
  type Vector,
  WHITE,
} from "#infra/scenes/index.ts";

/** 24 in, metres. */
export const BOARD = 0.6096;

export interface MeasuredScene {
  readonly jpeg: Buffer;
  readonly width: number;
  readonly height: number;
  /** Where the middles of the board's two ends are seen, pixels: `BOARD` apart. */
  readonly ends: readonly [Pixel, Pixel];
}

/** A letter card and beside it a board 24 in long, both two centimetres over earth, as a phone's camera takes them. */
export async function measuredScene(texts: readonly [string, string, string, string]): Promise<MeasuredScene> {
  const [width, height] = [1600, 1200];
  const lens = { focal: 1200, k1: 0.002, k2: 0 };
  const camera = standing({ width, height, lens, aim: [0, -0.1, 0], distance: 0.95, tilt: 20, side: 0, roll: 4 });
  const lying: Lying = { middle: [0, 0, 0], along: [1, 0, 0], up: [0, 0, 1], seed: 5 };
  const [half, low, high] = [BOARD / 2, -0.33, -0.24];
  const board = level(0, { shade: 0.6, uneven: 0.08, tint: WHITE, seed: 9, key: 40 }, [], {
    round: false,
    x0: -half,
    y0: low,
    x1: half,
    y1: high,
  });
  const ground = level(-0.02, { shade: 0.3, uneven: 0.8, tint: EARTH, seed: 55, key: 10 });
  const light = { sun: [0.3, 0.4, 0.866], sky: 0.35, exposure: 0.9, shadows: false } as const;
  const rendered = render([ground, sheetSurface(letterSheet(texts), lying, 20), board], camera, light, { blur: 0.7, noise: 0.01, seed: 5 });
  const seen = [-half, half].map((x) => project(camera, [x, (low + high) / 2, 0] satisfies Vector));
  const [from, to] = seen;
  if (from === undefined || to === undefined) throw new Error("the board lies behind the camera");
  return { jpeg: await jpegOf(rendered), width, height, ends: [from, to] };
}
