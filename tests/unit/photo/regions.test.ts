import { describe, expect, test } from "vitest";
import { isRegion, pixelsOf } from "#core/photo/index.ts";

describe("parts of a picture", () => {
  test.each([
    ["the whole", { x: 0, y: 0, width: 1_000_000, height: 1_000_000 }, true],
    ["one millionth", { x: 999_999, y: 0, width: 1, height: 1 }, true],
    ["past the right edge", { x: 600_000, y: 0, width: 400_001, height: 1 }, false],
    ["past the foot", { x: 0, y: 1, width: 1, height: 1_000_000 }, false],
    ["without a width", { x: 0, y: 0, width: 0, height: 1 }, false],
    ["below zero", { x: -1, y: 0, width: 1, height: 1 }, false],
    ["not whole", { x: 0.5, y: 0, width: 1, height: 1 }, false],
    ["no number", { x: Number.NaN, y: 0, width: 1, height: 1 }, false],
    ["a side missing", { x: 0, y: 0, width: 1 }, false],
    ["nothing", null, false],
  ])("%s: %j, %s", (_, region, fits) => {
    expect(isRegion(region)).toBe(fits);
  });

  test("pixels are rounded outwards and stay in the picture", () => {
    const picture = { width: 1000, height: 7 };
    // 0.2505 of 1000 is 250.5, 0.7505 is 750.5; 0.5 of 7 is 3.5, 0.6 is 4.2
    expect(pixelsOf({ x: 250_500, y: 500_000, width: 500_000, height: 100_000 }, picture)).toEqual({
      left: 250,
      top: 3,
      width: 501,
      height: 2,
    });
    expect(pixelsOf({ x: 999_999, y: 999_999, width: 1, height: 1 }, picture)).toEqual({ left: 999, top: 6, width: 1, height: 1 });
    expect(pixelsOf({ x: 0, y: 0, width: 1_000_000, height: 1_000_000 }, picture)).toEqual({ left: 0, top: 0, width: 1000, height: 7 });
  });
});
