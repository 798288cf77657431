import { describe, expect, test } from "vitest";
import type { FourCorners, RefinedCorner } from "#core/photo/index.ts";
import { cropAbout, fromCrop, roughIn, toCrop, wholeSize } from "#core/screens/field/cards/crops.ts";

const square = (left: number, top: number, side: number): FourCorners => [
  { x: left, y: top },
  { x: left + side, y: top },
  { x: left + side, y: top + side },
  { x: left, y: top + side },
];

describe("parts of a picture in which a code's corners are looked for", () => {
  test("a picture is drawn smaller to its long edge and never larger than it is", () => {
    expect(wholeSize({ width: 4000, height: 3000 }, 1600)).toEqual({ width: 1600, height: 1200 });
    expect(wholeSize({ width: 3000, height: 4000 }, 1600)).toEqual({ width: 1200, height: 1600 });
    expect(wholeSize({ width: 900, height: 1200 }, 1600)).toEqual({ width: 900, height: 1200 });
  });

  test("what was looked at at two fifths of the size lies two and a half times as far in the picture", () => {
    const at = { x: 10, y: 20 };
    const [corner] = roughIn(
      { topLeft: at, topRight: at, bottomRight: at, bottomLeft: at },
      { width: 4000, height: 3000 },
      { width: 1600, height: 1200 },
    );
    expect(corner).toEqual({ x: 25, y: 50 });
  });

  test("a crop has a quarter of the code around it and ends where the picture does", () => {
    // 0.24 of 100 and 4 more
    expect(cropAbout(square(500, 300, 100), { width: 4000, height: 3000 })).toEqual({ left: 472, top: 272, width: 156, height: 156 });
    expect(cropAbout(square(10, 2890, 100), { width: 4000, height: 3000 })).toEqual({ left: 0, top: 2862, width: 138, height: 138 });
  });

  test("what is found in a crop that was drawn at half its size is twice as far and twice as doubtful", () => {
    const crop = { left: 100, top: 200, width: 4000, height: 3000 };
    const size = { width: 2000, height: 1500 };
    const corners = square(300, 400, 1000);
    const within = toCrop(corners, crop, size);
    expect(within).toEqual(square(100, 100, 500));
    const seen = fromCrop(within.map((one) => ({ ...one, u: 0.1 })) as unknown as FourCorners<RefinedCorner>, crop, size);
    expect(seen).toEqual(corners.map((one) => ({ ...one, u: 0.2 })));
  });
});
