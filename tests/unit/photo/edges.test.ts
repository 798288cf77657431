import { describe, expect, it } from "vitest";
import { weakestEdges } from "#core/photo/edges.ts";
import { greyFromRgba } from "#core/photo/index.ts";

const picture = (width: number, height: number, at: (x: number, y: number) => number): Uint8Array =>
  Uint8Array.from({ length: width * height }, (_, index) => at(index % width, Math.floor(index / width)));

describe("edges in their weakest direction", () => {
  it("of a single point of 16 in 7 × 7", () => {
    // Smoothed, over 16: 1 2 1 / 2 4 2 / 1 2 1 in the middle. Second differences of the inner 3 × 3 across: rows 1 2 1 give
    // 0 -2 0, the row 2 4 2 gives 0 -4 0; squares 4 + 16 + 4 = 24; down alike. Falling: corners on the diagonal 0 + 4 - 2 = 2,
    // corners off it 0 + 0 - 2 = -2, sides 0 + 2 - 4 = -2, middle 1 + 1 - 8 = -6; squares 2 x 4 + 2 x 4 + 4 x 4 + 36 = 68, over
    // 2.5 is 27.2; rising alike. The least is 24, over 9 pixels.
    expect(
      weakestEdges(
        picture(7, 7, (x, y) => (x === 3 && y === 3 ? 16 : 0)),
        7,
        7,
      ),
    ).toBeCloseTo(24 / 9, 12);
  });
  it("of upright stripes is nought, though the Laplacian finds them sharp", () => {
    expect(
      weakestEdges(
        picture(12, 12, (x) => (x % 4 < 2 ? 0 : 200)),
        12,
        12,
      ),
    ).toBe(0);
  });
  it("of slanting stripes is nought too", () => {
    expect(
      weakestEdges(
        picture(12, 12, (x, y) => ((x + y) % 4 < 2 ? 0 : 200)),
        12,
        12,
      ),
    ).toBe(0);
  });
  it("of an even slope and of a picture below 5 × 5 is nought", () => {
    expect(
      weakestEdges(
        picture(9, 9, (x, y) => 5 * x + 3 * y),
        9,
        9,
      ),
    ).toBe(0);
    expect(
      weakestEdges(
        Uint8Array.from({ length: 16 }, (_, n) => n * n),
        4,
        4,
      ),
    ).toBe(0);
  });
  it("takes a shape that does not fit for a bug", () => {
    expect(() => weakestEdges(new Uint8Array(30), 5, 5)).toThrow(RangeError);
  });
});

describe("grey from a canvas", () => {
  it("weighs red, green and blue by 0.2126, 0.7152 and 0.0722, and leaves the cover out", () => {
    const rgba = Uint8ClampedArray.of(255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 0, 90, 90, 90, 9);
    // 54.2, 182.4, 18.4 and 90
    expect([...greyFromRgba(rgba, 2, 2).pixels]).toEqual([54, 182, 18, 90]);
  });
  it("takes a shape that does not fit for a bug", () => {
    expect(() => greyFromRgba(new Uint8Array(15), 2, 2)).toThrow(RangeError);
  });
});
