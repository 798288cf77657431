import { describe, expect, test } from "vitest";
import {
  byKey,
  cropAbout,
  ENLARGED,
  fitted,
  GLASS_RADIUS,
  glassAt,
  inPicture,
  inside,
  nearView,
  onScreen,
  reachOf,
  setWithin,
  takenBy,
  wholeView,
} from "#core/screens/field/measure/view.ts";

const picture = { width: 4000, height: 3000 };
/** What 366 points of a phone's screen leave for it. */
const stage = { width: 366, height: 275 };

describe("the picture on the screen", () => {
  test("is as large as its room, in its own shape", () => {
    // 366 / 4000 × 3000 = 274.5
    expect(fitted(picture, { width: 366, height: 400 })).toEqual(stage);
    // upright, the height binds: 400 / 4000 × 3000 = 300
    expect(fitted({ width: 3000, height: 4000 }, { width: 366, height: 400 })).toEqual({ width: 300, height: 400 });
  });

  test("whole: its middle is the stage's, and a spot comes back from where it is seen", () => {
    const view = wholeView(picture, stage);
    expect(view).toEqual({ left: 0, top: 0, scale: 4000 / 366 });
    expect(inPicture(view, { x: 183, y: 0 }).x).toBeCloseTo(2000, 9);
    const back = inPicture(view, onScreen(view, { x: 1234.25, y: 567.75 }));
    expect([back.x, back.y]).toEqual([expect.closeTo(1234.25, 9), expect.closeTo(567.75, 9)]);
  });

  test("near an end: two points of the screen a pixel, the end in the middle, and nothing beyond the picture's rim", () => {
    // 366 points are 183 pixels, 275 are 137.5
    expect(nearView(picture, stage, { x: 2000, y: 1500 })).toEqual({ left: 1908.5, top: 1431.25, scale: 0.5 });
    expect(onScreen(nearView(picture, stage, { x: 2000, y: 1500 }), { x: 2000, y: 1500 })).toEqual({ x: 183, y: 137.5 });
    expect(nearView(picture, stage, { x: 10, y: 20 })).toEqual({ left: 0, top: 0, scale: 0.5 });
    expect(nearView(picture, stage, { x: 3990, y: 2990 })).toEqual({ left: 4000 - 183, top: 3000 - 137.5, scale: 0.5 });
  });

  test("a picture smaller than the stage is shown nearer than whole all the same", () => {
    const small = { width: 300, height: 225 };
    expect(nearView(small, stage, { x: 150, y: 112.5 }).scale).toBeCloseTo(wholeView(small, stage).scale / 2, 12);
  });

  test("an end stays in the picture, and is as sure as it was set: to a point of the screen, at best half a pixel", () => {
    expect(inside(picture, { x: -3, y: 3100 })).toEqual({ x: 0, y: 3000 });
    expect(setWithin(wholeView(picture, stage))).toBeCloseTo(10.93, 2);
    expect(setWithin(nearView(picture, stage, { x: 2000, y: 1500 }))).toBe(0.5);
  });
});

describe("a finger", () => {
  test("takes the nearest end within 36 points, and none that is not set", () => {
    expect(
      takenBy({ x: 100, y: 100 }, [
        { x: 130, y: 100 },
        { x: 100, y: 110 },
      ]),
    ).toBe(1);
    expect(takenBy({ x: 100, y: 100 }, [{ x: 130, y: 100 }, undefined])).toBe(0);
    expect(takenBy({ x: 100, y: 100 }, [{ x: 137, y: 100 }, undefined])).toBeUndefined();
    expect(takenBy({ x: 100, y: 100 }, [undefined, undefined])).toBeUndefined();
  });

  test("the round view stands over it; near the upper edge beside it, on the side that has room", () => {
    expect(glassAt({ x: 180, y: 250 }, stage)).toEqual({ x: 180, y: 146 });
    expect(glassAt({ x: 5, y: 250 }, stage)).toEqual({ x: GLASS_RADIUS, y: 146 });
    expect(glassAt({ x: 180, y: 60 }, stage)).toEqual({ x: 76, y: GLASS_RADIUS });
    expect(glassAt({ x: 90, y: 100 }, stage)).toEqual({ x: 194, y: 100 });
  });

  test("wherever it is, the round view is whole on the stage, at least three times as large, and not under it", () => {
    expect(ENLARGED).toBeGreaterThanOrEqual(3);
    for (const room of [stage, { width: 300, height: 400 }, { width: 366, height: 488 }])
      for (let x = 0; x <= room.width; x += 3)
        for (let y = 0; y <= room.height; y += 3) {
          const at = glassAt({ x, y }, room);
          expect(Math.min(at.x, at.y, room.width - at.x, room.height - at.y)).toBeGreaterThanOrEqual(GLASS_RADIUS);
          // half a thumb away from its rim; on a stage of 300 points, between the two sides, a quarter
          expect(Math.hypot(at.x - x, at.y - y)).toBeGreaterThanOrEqual(GLASS_RADIUS + (room.width > 320 ? 30 : 8));
        }
  });

  test("keys move by a pixel, with the shift key by ten, and no other key does", () => {
    expect(byKey("ArrowLeft", false)).toEqual({ x: -1, y: 0 });
    expect(byKey("ArrowDown", true)).toEqual({ x: 0, y: 10 });
    for (const key of ["Tab", "a", "constructor"]) expect(byKey(key, false)).toBeUndefined();
  });
});

describe("where an edge is looked for", () => {
  test("within four times what the end is doubtful by, six pixels at least and sixty at most", () => {
    expect(reachOf({ x: 0, y: 0, u: 0.5 })).toBe(6);
    expect(reachOf({ x: 0, y: 0, u: 8 })).toBe(32);
    expect(reachOf({ x: 0, y: 0, u: 100 })).toBe(60);
  });

  test("forty pixels more than that all around, as far as the picture goes", () => {
    expect(cropAbout(picture, { x: 100, y: 150, u: 0.5 })).toEqual({ left: 54, top: 104, width: 92, height: 92 });
    expect(cropAbout(picture, { x: 5, y: 2999, u: 0.5 })).toEqual({ left: 0, top: 2953, width: 51, height: 47 });
  });
});
