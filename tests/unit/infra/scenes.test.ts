import { describe, expect, test } from "vitest";
import {
  basin,
  type Camera,
  hole,
  inchMarks,
  type Lying,
  letterSheet,
  level,
  nothing,
  painted,
  pipeInTrench,
  project,
  rayThrough,
  render,
  type Site,
  type Surface,
  sheetSurface,
  spotOnSheet,
  standing,
  strip,
  trench,
  type Vector,
} from "#infra/scenes/index.ts";

const lens = { focal: 300, k1: 0.02, k2: -0.005 };
const camera = (tilt: number, k = lens): Camera =>
  standing({ width: 400, height: 300, lens: k, aim: [0, 0, 0], distance: 1.5, tilt, side: 25, roll: 10 });
const light = { sun: [0.42, 0.35, 0.837], sky: 0.3, exposure: 0.9, shadows: true } as const;

describe("a camera", () => {
  test("by hand: square on from 1.5 m, 0.5 m to the right is 300 × 0.5 / 1.5 = 100 px, and 0.5 m to the north as much up", () => {
    const plain = standing({
      width: 400,
      height: 300,
      lens: { focal: 300, k1: 0, k2: 0 },
      aim: [0, 0, 0],
      distance: 1.5,
      tilt: 0,
      side: 0,
      roll: 0,
    });
    for (const [spot, x, y] of [
      [[0, 0, 0], 200, 150],
      [[0.5, 0, 0], 300, 150],
      [[0, 0.5, 0], 200, 50],
    ] as const) {
      const [u, v] = project(plain, spot) ?? [Number.NaN, Number.NaN];
      expect([u, v].map((value) => Math.round(value * 1e6) / 1e6)).toEqual([x, y]);
    }
  });

  test("by hand: at half the diagonal, 250 px, a distortion of 2 % moves a spot 5 px outwards", () => {
    const square = standing({
      width: 400,
      height: 300,
      lens: { focal: 300, k1: 0.02, k2: 0 },
      aim: [0, 0, 0],
      distance: 1.5,
      tilt: 0,
      side: 0,
      roll: 0,
    });
    // 250 px are 1.25 m from 1.5 m
    expect(project(square, [1.25, 0, 0])?.[0]).toBeCloseTo(200 + 255, 6);
  });

  test("a ray through where a spot is seen meets the spot, lens and all", () => {
    const through = rayThrough(camera(40));
    const way = new Float64Array(3);
    for (const spot of [
      [0.3, 0.2, 0],
      [-0.4, 0.1, 0],
      [0, -0.35, 0],
    ] as const) {
      const seen = project(camera(40), spot);
      through(seen?.[0] ?? 0, seen?.[1] ?? 0, way);
      const { position } = camera(40);
      const t = -position[2] / (way[2] as number);
      expect(Math.hypot(position[0] + t * (way[0] as number) - spot[0], position[1] + t * (way[1] as number) - spot[1])).toBeLessThan(1e-6);
    }
  });
});

describe("a bent sheet", () => {
  const sheet = letterSheet(["a", "b", "c", "d"]);
  const lying: Lying = { middle: [0, 0, 0], along: [1, 0, 0], up: [0, 0, 1], seed: 1 };

  test("by hand: bent to 0.5 m its edges lie 0.5 (1 - cos 0.2159) = 11.61 mm below its middle", () => {
    const up = spotOnSheet(sheet, { ...lying, bend: 0.5 }, sheet.width / 2, sheet.height / 2);
    const edge = spotOnSheet(sheet, { ...lying, bend: 0.5 }, 0, sheet.height / 2);
    expect([1e3 * up[2], 1e3 * edge[2]].map((z) => Math.round(z * 100) / 100)).toEqual([11.61, 0]);
    expect(1e3 * spotOnSheet(sheet, { ...lying, bend: -0.5 }, 0, 0)[2]).toBeCloseTo(11.61, 2);
  });

  test("its surface is where its spots are: rays to them end there", () => {
    for (const bend of [undefined, 0.5, -0.5]) {
      const bent: Lying = bend === undefined ? lying : { ...lying, bend };
      for (const [x, y] of [
        [0.02, 0.02],
        [0.2, 0.15],
        [0.1, 0.27],
      ] as const) {
        const spot = spotOnSheet(sheet, bent, x, y);
        const from: Vector = [0.2, -0.4, 1.2];
        const meeting = nothing();
        sheetSurface(sheet, bent, 20)(from, Float64Array.of(spot[0] - from[0], spot[1] - from[1], spot[2] - from[2]), meeting);
        expect(meeting.t).toBeCloseTo(1, 9);
      }
    }
  });
});

describe("paint and strips", () => {
  const plain = { shade: 0.5, uneven: 0, tint: 0, seed: 1, key: 1 };
  const seenFromAbove = (surface: Surface, x: number, y: number) => {
    const meeting = nothing();
    surface([x, y, 2], Float64Array.of(0, 0, -1), meeting);
    return meeting;
  };

  test("a stroke of 10 mm from (0, 0) to (0.1, 0) is painted 4 mm beside it and round its end, and nowhere else", () => {
    const ground = painted(level(0, plain), [[0, 0, 0.1, 0]], 0.01, { ...plain, shade: 0.05, key: 2 });
    const shades = (spots: readonly (readonly [number, number])[]) => spots.map(([x, y]) => seenFromAbove(ground, x, y).shade);
    expect(
      shades([
        [0.05, 0.004],
        [0.104, 0],
        [0.05, -0.004],
      ]),
    ).toEqual([0.05, 0.05, 0.05]);
    expect(
      shades([
        [0.05, 0.006],
        [0.106, 0],
        [0.104, 0.004],
      ]),
    ).toEqual([0.5, 0.5, 0.5]);
  });

  test("a tape of 2 in has marks at 0, 1 and 2 in, ends where it ends, and lies before what is under it", () => {
    const marks = inchMarks(0.0508, 0.016);
    expect(marks.map(([x]) => x)).toEqual([0, 0.0254, 0.0508].map((x) => expect.closeTo(x, 9)));
    const tape = strip({ from: [1, 0, 0.3], along: [0, 1, 0], across: [-1, 0, 0], length: 0.0508, width: 0.016 }, plain, marks, 0.001);
    // at half its width: the mark at nought runs all across, the one at an inch ends there
    expect([seenFromAbove(tape, 0.99, 0.0003).shade, seenFromAbove(tape, 0.99, 0.0254).shade]).toEqual([0.05, 0.5]);
    expect(seenFromAbove(tape, 0.995, 0.0254).shade).toBe(0.05);
    expect(seenFromAbove(tape, 0.99, 0.01).t).toBeCloseTo(1.7, 12);
    for (const [x, y] of [
      [1.001, 0.01],
      [0.983, 0.01],
      [0.99, -0.001],
      [0.99, 0.052],
    ] as const)
      expect(seenFromAbove(tape, x, y).t).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("sites", () => {
  const sites: readonly (readonly [string, Site])[] = [
    ["hole", hole(0, 0, 0.35, 0.5, 1)],
    ["basin", basin(0, 0, 0.3, 0.02, 0.4, 2)],
    ["trench", trench(0, 0.3, -0.4, 0.4, 0.45, 3)],
    ["pipe", pipeInTrench(0, 0.3, -0.4, 0.4, 0.45, 0.03, 4)],
  ];

  test.each(sites)(
    "%s: every mark lies on a surface that the camera sees there, and the same seed gives the same bytes",
    (_, { surfaces, marks }) => {
      const from = camera(15);
      for (const { name, spot } of marks) {
        const way = Float64Array.of(spot[0] - from.position[0], spot[1] - from.position[1], spot[2] - from.position[2]);
        const meeting = nothing();
        for (const surface of surfaces) surface(from.position, way, meeting);
        // a rim belongs to what it is the rim of or to what lies just beyond it
        expect(Math.abs(meeting.t - 1), name).toBeLessThan(0.35);
        expect(meeting.t, name).toBeGreaterThan(1 - 1e-9);
      }
      const sensor = { blur: 0.5, noise: 0.01, seed: 1 };
      const [once, again] = [0, 1].map(() => render(surfaces, from, light, sensor, { x: 100, y: 80, width: 120, height: 90 }).pixels);
      expect(once).toEqual(again);
      // light and dark both: a picture, not a blank
      expect(Math.max(...(once ?? [])) - Math.min(...(once ?? []))).toBeGreaterThan(40);
    },
  );
});
