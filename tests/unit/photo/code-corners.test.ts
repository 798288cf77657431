import { describe, expect, test } from "vitest";
import { codeCorners, type FourCorners, type Grey, greyFromRgba, stretched, stretches } from "#core/photo/index.ts";
import { EARTH, type Lying, letterSheet, level, project, render, sheetSurface, spotOnSheet, standing } from "#infra/scenes/index.ts";

const sheet = letterSheet(["AB1-7F3K-0042-A-01-9Q", "AB1-7F3K-0042-B-01-9Q", "AB1-7F3K-0042-C-01-9Q", "AB1-7F3K-0042-D-01-9Q"]);
/** Version 2: 21 + 4. */
const MODULES = 25;
const lying: Lying = { middle: [0, 0, 0], along: [1, 0, 0], up: [0, 0, 1], seed: 3 };

function code(tilt: number, distance: number, blur: number): { readonly grey: Grey; readonly truth: FourCorners } {
  const [printed] = sheet.codes;
  if (printed === undefined) throw new Error("a sheet without codes");
  const { x, y, side } = printed;
  const lens = { focal: 3000, k1: 0.003, k2: 0 };
  const camera = standing({ width: 4000, height: 3000, lens, aim: [-0.1, 0.1, 0], distance, tilt, side: 20, roll: 33 });
  const truth = [
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
  ].map(([a, b]) => project(camera, spotOnSheet(sheet, lying, a as number, b as number)) as readonly [number, number]);
  const [left, top] = [Math.floor(Math.min(...truth.map(([a]) => a))) - 30, Math.floor(Math.min(...truth.map(([, b]) => b))) - 30];
  const [right, below] = [Math.max(...truth.map(([a]) => a)) + 30, Math.max(...truth.map(([, b]) => b)) + 30];
  const window = { x: left, y: top, width: Math.ceil(right - left), height: Math.ceil(below - top) };
  const ground = level(-0.02, { shade: 0.3, uneven: 0.8, tint: EARTH, seed: 1, key: 10 });
  const light = { sun: [0.3, 0.4, 0.866], sky: 0.35, exposure: 0.9, shadows: false } as const;
  const { pixels } = render([ground, sheetSurface(sheet, lying, 20)], camera, light, { blur, noise: 0.015, seed: 8 }, window);
  const rgba = new Uint8Array(4 * window.width * window.height);
  for (let n = 0; n < pixels.length / 3; n++) rgba.set(pixels.subarray(3 * n, 3 * n + 3), 4 * n);
  const [a, b, c, d] = truth.map(([u, v]) => ({ x: u - left, y: v - top }));
  return { grey: greyFromRgba(rgba, window.width, window.height), truth: [a, b, c, d] as unknown as FourCorners };
}

/** As a decoder gives them: whole pixels, and off by up to two. */
const roughly = ([a, b, c, d]: FourCorners): FourCorners => {
  const off = ({ x, y }: { x: number; y: number }, dx: number, dy: number) => ({ x: Math.round(x + dx), y: Math.round(y + dy) });
  return [off(a, 0.6, -0.5), off(b, -0.4, 0.7), off(c, 1.2, -1.1), off(d, 0.2, 0.9)];
};

describe("corners of a code", () => {
  test.each([
    ["straight from above, to a fifteenth of a pixel", 0, 1, 0.7, 1 / 15],
    ["at 45° from 1.2 m, to a fifteenth of a pixel", 45, 1.2, 0.8, 1 / 15],
    ["at 55° from 1.5 m, blurred, modules of two pixels, to a fifth", 55, 1.5, 1.1, 1 / 5],
  ])("%s: three at finder patterns; the fourth within three times its doubt", (_, tilt, distance, blur, most) => {
    const { grey, truth } = code(tilt, distance, blur);
    const found = codeCorners(grey, roughly(truth), MODULES);
    const off = truth.map(({ x, y }, i) => Math.hypot((found?.[i]?.x ?? Number.NaN) - x, (found?.[i]?.y ?? Number.NaN) - y));
    for (const i of [0, 1, 3]) expect(off[i]).toBeLessThan(most);
    expect(off[2]).toBeLessThan(3 * Math.SQRT2 * (found?.[2].u ?? 0));
    expect(found?.[2].u).toBeGreaterThan(found?.[0].u ?? Number.NaN);
  });

  test("nothing is found on bare paper, at the picture's rim, or by corners that are no numbers", () => {
    const { grey, truth } = code(0, 1, 0.7);
    const blank: Grey = { ...grey, pixels: new Uint8Array(grey.pixels.length).fill(200) };
    expect(codeCorners(blank, truth, MODULES)).toBeUndefined();
    expect(codeCorners(grey, truth.map(({ x, y }) => ({ x: x - 60, y })) as unknown as FourCorners, MODULES)).toBeUndefined();
    expect(codeCorners(grey, truth.map(({ x }) => ({ x, y: Number.NaN })) as unknown as FourCorners, MODULES)).toBeUndefined();
  });
});

describe("a picture drawn out", () => {
  test("across by two: each pixel twice, and a spot finds its way back", () => {
    const { picture, back } = stretched(
      { width: 4, height: 3, pixels: Uint8Array.from([0, 0, 0, 0, 0, 100, 100, 0, 0, 0, 0, 0]) },
      [1, 0],
      2,
    );
    expect([picture.width, picture.height]).toEqual([8, 3]);
    // the middle of what was 100 is at 2, 1.5, and comes to 4, 1.5
    expect(back({ x: 4, y: 1.5 })).toEqual({ x: 2, y: 1.5 });
    expect(picture.pixels[8 + 3]).toBe(100);
  });

  test("along every direction the middle of a picture comes back to where it was", () => {
    for (const direction of stretches) {
      const { picture, back } = stretched({ width: 40, height: 20, pixels: new Uint8Array(800) }, direction, 1.6);
      const { x, y } = back({ x: picture.width / 2, y: picture.height / 2 });
      // sizes are rounded up to whole pixels
      expect(Math.hypot(x - 20, y - 10)).toBeLessThan(1);
    }
  });
});
