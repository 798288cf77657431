import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { edgeAcross, type Grey, LEAST_EDGE_DOUBT } from "#core/photo/index.ts";
import { chanceFrom } from "#infra/chance/index.ts";
import { EARTH, jpegOf, level, type Pixel, project, render, standing, WHITE } from "#infra/scenes/index.ts";

/** Light of full light; what a camera's byte is: the root of the light, as the reader of profiles supposes it. */
const byteOf = (light: number): number => Math.round(255 * Math.sqrt(Math.max(0, Math.min(1, light))));

interface Edge {
  /** The line x cos a + y sin a = c, where it grows light. */
  readonly angle: number;
  readonly c: number;
  readonly dark?: number;
  readonly light?: number;
}

/** A picture of one straight edge, each pixel the mean over its square of a straight edge, blurred by a box of two pixels by sixteen by sixteen samples. */
function drawn({ angle, c, dark = 0.1, light = 0.6 }: Edge, noise = 0, size = 160): Grey {
  const { normal } = chanceFrom(7);
  const [a, b] = [Math.cos(angle), Math.sin(angle)];
  const pixels = Uint8Array.from({ length: size * size }, (_, n) => {
    const [x, y] = [n % size, Math.floor(n / size)];
    let sum = 0;
    for (let i = 0; i < 16; i++)
      for (let j = 0; j < 16; j++) {
        const [px, py] = [x - 0.5 + (i + 0.5) / 8, y - 0.5 + (j + 0.5) / 8];
        sum += a * px + b * py > c ? light : dark;
      }
    return byteOf(sum / 256 + noise * normal());
  });
  return { width: size, height: size, pixels };
}

/** One end of a board 60 cm long in a phone's photo from about a metre, looked for from up to 20 pixels away; `off`: pixels along the board. */
async function boardEnd(seed: number): Promise<{ readonly off: number; readonly u: number }> {
  const chance = chanceFrom(seed + 40);
  const shade = [0.6, 0.06, 0.45][seed % 3] as number;
  const board = level(0, { shade, uneven: 0.08, tint: WHITE, seed, key: 40 }, [], { round: false, x0: -0.3, y0: -0.06, x1: 0.3, y1: 0.06 });
  const ground = level(-0.02, { shade: 0.3, uneven: 0.8, tint: EARTH, seed: seed + 55, key: 10 });
  const about = { aim: [0, 0, 0], distance: 0.8 + 0.4 * chance.next(), tilt: 45 * chance.next() } as const;
  const turned = { side: 360 * chance.next(), roll: 360 * chance.next() };
  const camera = standing({ width: 4000, height: 3000, lens: { focal: 3000, k1: 0.004, k2: 0 }, ...about, ...turned });
  const [from, to] = [-0.3, 0.3].map((x) => project(camera, [x, 0.02, 0])) as [Pixel, Pixel];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const way = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const;
  const window = { x: 16 * Math.floor((to[0] - 100) / 16), y: 16 * Math.floor((to[1] - 100) / 16), width: 208, height: 208 };
  const light = { sun: [0.3, 0.4, 0.866], sky: 0.35, exposure: 0.9, shadows: false } as const;
  const jpeg = await jpegOf(render([ground, board], camera, light, { blur: 0.5 + 0.8 * chance.next(), noise: 0.02, seed }, window), 85);
  const { data } = await sharp(jpeg).greyscale().raw().toBuffer({ resolveWithObject: true });
  const [x, y, by] = [to[0] - window.x, to[1] - window.y, 40 * chance.next() - 20];
  const near = { x: x + by * way[0], y: y + by * way[1] };
  const edge = edgeAcross({ width: 208, height: 208, pixels: new Uint8Array(data) }, near, way, 30);
  return { off: edge === undefined ? Number.NaN : (edge.x - x) * way[0] + (edge.y - y) * way[1], u: edge?.u ?? 0 };
}

/** How far along the line the edge is crossed: from `at` in the direction of `way`. */
const crossedAt = ({ angle, c }: Edge, at: { x: number; y: number }, [dx, dy]: readonly [number, number]): number =>
  (c - at.x * Math.cos(angle) - at.y * Math.sin(angle)) / (dx * Math.cos(angle) + dy * Math.sin(angle));

const at = { x: 80.5, y: 79.5 };
const directionAt = (degrees: number): readonly [number, number] => [
  Math.cos((degrees * Math.PI) / 180),
  Math.sin((degrees * Math.PI) / 180),
];

describe("an edge that a line crosses", () => {
  test.each([
    ["straight across, to the right", 0, 0, 9.37],
    ["straight across, to the left", 0, 0, -12.8],
    ["along a diagonal", 45, 45, 4.21],
    ["slanted by 30°", 0, 30, 6.6],
    ["slanted by 50°, from the other side", 200, 250, -5.4],
    ["the line from below", 90, 110, 3.3],
  ])("%s: to a fifteenth of a pixel", (_, line, edge, along) => {
    const way = directionAt(line);
    const angle = (edge * Math.PI) / 180;
    const place = { x: at.x + along * way[0], y: at.y + along * way[1] };
    const one: Edge = { angle, c: place.x * Math.cos(angle) + place.y * Math.sin(angle) };
    expect(crossedAt(one, at, way)).toBeCloseTo(along, 6);
    const found = edgeAcross(drawn(one), at, way, 16);
    expect(Math.hypot((found?.x ?? Number.NaN) - place.x, (found?.y ?? Number.NaN) - place.y)).toBeLessThan(1 / 15);
    expect(found?.u).toBe(LEAST_EDGE_DOUBT);
  });

  test("in the noise of a dark corner: within three times its own doubt, in twenty places", () => {
    for (let n = 0; n < 20; n++) {
      const c = 70 + n * 1.037;
      const found = edgeAcross(drawn({ angle: 0, c, dark: 0.05, light: 0.16 }, 0.02), at, [1, 0], 16);
      expect(Math.abs((found?.x ?? Number.NaN) - c)).toBeLessThan(3 * (found?.u ?? 0));
    }
  });

  test("in rendered photos, stored as JPEG, of boards on earth at tilts up to 45°: each within twice its doubt", async () => {
    const found = await Promise.all(Array.from({ length: 8 }, (_, seed) => boardEnd(seed)));
    expect(found.map(({ off, u }) => Math.abs(off) <= 2 * u)).toEqual(found.map(() => true));
    expect(found.reduce((sum, { off }) => sum + Math.abs(off), 0) / found.length).toBeLessThan(0.2);
  });

  test("of two edges within reach the stronger one", () => {
    const [weak, strong] = [drawn({ angle: 0, c: 76, dark: 0.2, light: 0.3 }), drawn({ angle: 0, c: 90.25, dark: 0.3, light: 0.7 })];
    const pixels = weak.pixels.map((byte, n) => (n % 160 < 84 ? byte : (strong.pixels[n] as number)));
    expect(edgeAcross({ ...weak, pixels }, at, [1, 0], 16)?.x).toBeCloseTo(90.25, 1);
    // out of its reach the weaker one is the strongest
    expect(edgeAcross({ ...weak, pixels }, at, [1, 0], 7)?.x).toBeCloseTo(76, 1);
  });

  test("no edge is found on one shade, in noise alone, out of reach, along the edge itself, at the rim, or by what is no number", () => {
    const one = { angle: 0, c: 88.4 };
    const picture = drawn(one);
    expect(edgeAcross(picture, at, [1, 0], 16)).toBeDefined();
    expect(edgeAcross({ ...picture, pixels: picture.pixels.map(() => 120) }, at, [1, 0], 16)).toBeUndefined();
    expect(edgeAcross(drawn({ ...one, dark: 0.3, light: 0.3 }, 0.03), at, [1, 0], 16)).toBeUndefined();
    expect(edgeAcross(picture, at, [1, 0], 5)).toBeUndefined();
    expect(edgeAcross(picture, at, [0, 1], 16)).toBeUndefined();
    expect(edgeAcross(picture, { x: 155, y: 80 }, [1, 0], 16)).toBeUndefined();
    for (const [x, dx, reach] of [
      [Number.NaN, 1, 16],
      [80, Number.POSITIVE_INFINITY, 16],
      [80, 1, Number.NaN],
      [80, 1, 0],
    ] as const)
      expect(edgeAcross(picture, { x, y: 80 }, [dx, 0], reach)).toBeUndefined();
  });
});
