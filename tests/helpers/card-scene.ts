import {
  EARTH,
  jpegOf,
  type Lying,
  letterSheet,
  level,
  project,
  render,
  sheetSurface,
  spotOnSheet,
  standing,
  type Vector,
} from "#infra/scenes/index.ts";

export interface CardScene {
  readonly jpeg: Buffer;
  /** The corners of each code as the camera sees them, pixels, code upright and clockwise, by the code's text. */
  readonly truth: ReadonlyMap<string, readonly (readonly [x: number, y: number])[]>;
}

export type FourTexts = readonly [string, string, string, string];

export interface CardSceneAsked {
  /** Of each card, which lie beside each other. */
  readonly cards: readonly FourTexts[];
  readonly width: number;
  readonly height: number;
  /** Degrees from straight down; metres. */
  readonly tilt: number;
  readonly distance: number;
  readonly seed: number;
}

/** Letter sheets that lie on earth, as a phone's camera takes them. */
export async function cardScene({ cards, width, height, tilt, distance, seed }: CardSceneAsked): Promise<CardScene> {
  const lens = { focal: 0.75 * width, k1: 0.002, k2: 0 };
  const camera = standing({ width, height, lens, aim: [0, 0, 0], distance, tilt, side: 20, roll: 12 });
  const truth = new Map<string, readonly (readonly [number, number])[]>();
  const surfaces = cards.map((texts, n) => {
    const sheet = letterSheet(texts);
    const middle: Vector = [0.25 * (n - (cards.length - 1) / 2), 0, 0];
    const lying: Lying = { middle, along: [1, 0, 0], up: [0, 0, 1], seed: seed + n };
    for (const { text, x, y, side } of sheet.codes)
      truth.set(
        text,
        [
          [x, y],
          [x + side, y],
          [x + side, y + side],
          [x, y + side],
        ].map(([a, b]) => project(camera, spotOnSheet(sheet, lying, a as number, b as number)) as readonly [number, number]),
      );
    return sheetSurface(sheet, lying, 20 + 10 * n);
  });
  const ground = level(-0.02, { shade: 0.3, uneven: 0.8, tint: EARTH, seed: seed + 50, key: 10 });
  const light = { sun: [0.3, 0.4, 0.866], sky: 0.35, exposure: 0.9, shadows: false } as const;
  const sensor = { blur: 0.7, noise: 0.01, seed };
  return { jpeg: await jpegOf(render([ground, ...surfaces], camera, light, sensor)), truth };
}
