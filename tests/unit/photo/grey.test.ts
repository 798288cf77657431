import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exposure, judgePhoto, measureGrey, ownPhotoLimits, sharpness } from "#core/photo/index.ts";

const picture = (width: number, height: number, at: (x: number, y: number) => number): Uint8Array =>
  Uint8Array.from({ length: width * height }, (_, index) => at(index % width, Math.floor(index / width)));

describe("sharpness: variance of the Laplacian", () => {
  // Worked out from the kernel's definition (Pech-Pacheco et al., ICPR 2000, from memory), valid region, population variance.
  it("of a single point of 1 in 5 × 5 is 20/9", () => {
    expect(
      sharpness(
        picture(5, 5, (x, y) => (x === 2 && y === 2 ? 1 : 0)),
        5,
        5,
      ),
    ).toBeCloseTo(20 / 9, 12);
  });
  it("of a step of 10 between the third and fourth of six columns is 50", () => {
    expect(
      sharpness(
        picture(6, 6, (x) => (x < 3 ? 0 : 10)),
        6,
        6,
      ),
    ).toBe(50);
  });
  it("of an even slope is 0", () => {
    expect(
      sharpness(
        picture(6, 6, (x) => x * 7),
        6,
        6,
      ),
    ).toBe(0);
  });
  it("of a picture too small for the kernel is 0", () => {
    expect(sharpness(Uint8Array.of(1, 2, 3, 4), 2, 2)).toBe(0);
  });
  it("does not change when the picture is turned upside down or made a negative", () => {
    const pixels = fc.array(fc.integer({ min: 0, max: 255 }), { minLength: 35, maxLength: 35 });
    fc.assert(
      fc.property(pixels, (values) => {
        const grey = Uint8Array.from(values);
        const turned = Uint8Array.from(grey).reverse();
        const negative = grey.map((step) => 255 - step);
        expect(sharpness(turned, 7, 5)).toBe(sharpness(grey, 7, 5));
        expect(sharpness(negative, 7, 5)).toBe(sharpness(grey, 7, 5));
      }),
    );
  });
  it("takes a shape that does not fit for a bug", () => {
    expect(() => sharpness(new Uint8Array(10), 3, 3)).toThrow(RangeError);
  });
});

describe("exposure: shares of clipped pixels", () => {
  it("counts five steps at each end, in parts per million", () => {
    const grey = Uint8Array.of(0, 4, 5, 128, 250, 251, 255, 128);
    expect(exposure(grey)).toEqual({ dark: 250_000, bright: 250_000 });
  });
  it("of all black is a million dark", () => {
    expect(exposure(new Uint8Array(9))).toEqual({ dark: 1_000_000, bright: 0 });
  });
});

describe("judging a photo", () => {
  const good = { width: 1200, height: 900, sharpness: 250_000, exposure: { dark: 10_000, bright: 20_000 } };

  it("takes a picture with edges and light for readable", () => {
    expect(judgePhoto(good)).toEqual({ verdict: "readable" });
  });
  it.each([
    ["not-decoded", { width: null }],
    ["not-decoded", { sharpness: null }],
    ["too-small", { width: 180, height: 135 }],
    ["too-dark", { exposure: { dark: 950_000, bright: 0 } }],
    ["too-bright", { exposure: { dark: 0, bright: 950_000 } }],
    ["blurred", { sharpness: 400 }],
  ])("says %s", (reason, change) => {
    expect(judgePhoto({ ...good, ...change })).toEqual({ verdict: "unreadable", reason });
  });
  it("stands exactly on its limits without holding", () => {
    const { sharpnessAtLeast, darkAtMost, brightAtMost, longEdgeAtLeast } = ownPhotoLimits;
    const edge = { width: longEdgeAtLeast, height: 1, sharpness: sharpnessAtLeast, exposure: { dark: darkAtMost, bright: brightAtMost } };
    expect(judgePhoto(edge)).toEqual({ verdict: "readable" });
  });
  it("says dark of a lens cap and bright of fog, not blurred (D01)", () => {
    expect(
      judgePhoto({
        width: 400,
        height: 400,
        ...measureGrey(
          picture(40, 40, () => 2),
          40,
          40,
        ),
      }),
    ).toEqual({ verdict: "unreadable", reason: "too-dark" });
    expect(
      judgePhoto({
        width: 400,
        height: 400,
        ...measureGrey(
          picture(40, 40, () => 254),
          40,
          40,
        ),
      }),
    ).toEqual({ verdict: "unreadable", reason: "too-bright" });
  });
});
