import { describe, expect, test } from "vitest";
import { type Turn, turns, undone } from "#core/photo/index.ts";
import { dragged, type MarkedPart, partOf, regionOf } from "#core/screens/office/marked-parts.ts";
import { siteTyped } from "#core/screens/office/site-typed.ts";
import { turnedSpot } from "#core/screens/office/turned-spot.ts";

describe("parts of a picture that are marked", () => {
  test("a drag is rounded outwards to a tenth of a per cent, whichever corner came first", () => {
    // 12.34 % … 56.78 % across, 20.01 % … 30 % down
    const region = { x: 123_000, y: 200_000, width: 445_000, height: 100_000 };
    expect(dragged({ x: 0.1234, y: 0.2001 }, { x: 0.5678, y: 0.3 })).toEqual(region);
    expect(dragged({ x: 0.5678, y: 0.3 }, { x: 0.1234, y: 0.2001 })).toEqual(region);
    expect(dragged({ x: 0.5678, y: 0.2001 }, { x: 0.1234, y: 0.3 })).toEqual(region);
  });

  test("a drag that leaves the picture ends at its edge", () => {
    expect(dragged({ x: 0.9, y: 0.9 }, { x: 1.7, y: 12 })).toEqual({ x: 900_000, y: 900_000, width: 100_000, height: 100_000 });
    expect(dragged({ x: 0.1, y: 0.1 }, { x: -0.2, y: -3 })).toEqual({ x: 0, y: 0, width: 100_000, height: 100_000 });
  });

  test("a slip of the hand, and a drag that lies beside the picture, mark nothing", () => {
    expect(dragged({ x: 0.5, y: 0.5 }, { x: 0.5, y: 0.5 })).toBeUndefined();
    expect(dragged({ x: 0.5, y: 0.5 }, { x: 0.9, y: 0.504 })).toBeUndefined();
    expect(dragged({ x: 1.1, y: 0.2 }, { x: 1.5, y: 0.4 })).toBeUndefined();
  });

  test("fields and region say the same", () => {
    const part = partOf(1, { x: 123_000, y: 200_000, width: 445_000, height: 100_000 });
    expect(part).toEqual({ key: 1, x: "12.3", y: "20", width: "44.5", height: "10" });
    expect(regionOf(part)).toEqual({ x: 123_000, y: 200_000, width: 445_000, height: 100_000 });
    expect(regionOf(partOf(1, { x: 1, y: 0, width: 999_999, height: 1_000_000 }))).toEqual({
      x: 1,
      y: 0,
      width: 999_999,
      height: 1_000_000,
    });
  });

  test.each<Partial<MarkedPart>>([
    { x: "" },
    { x: " " },
    { width: "0" },
    { height: "-1" },
    { x: "60", width: "40.1" },
    { y: "95", height: "6" },
    { x: "a" },
    { width: "Infinity" },
  ])("%o lies outside the picture or is no number", (wrong) => {
    expect(regionOf({ key: 1, x: "10", y: "10", width: "10", height: "10", ...wrong })).toBeUndefined();
  });
});

describe("a spot of a picture that is turned", () => {
  // a quarter in from the left, a tenth down
  const spot = { x: 0.25, y: 0.1 };
  // worked out on paper: 3 is half a turn, 6 a quarter to the right (what is on top comes to the right), 8 to the left
  test.each<[Turn, number, number]>([
    [1, 0.25, 0.1],
    [2, 0.75, 0.1],
    [3, 0.75, 0.9],
    [4, 0.25, 0.9],
    [5, 0.1, 0.25],
    [6, 0.9, 0.25],
    [7, 0.9, 0.75],
    [8, 0.1, 0.75],
  ])("turn %i", (turn, x, y) => {
    const there = turnedSpot(turn, spot);
    expect(there.x).toBeCloseTo(x, 12);
    expect(there.y).toBeCloseTo(y, 12);
  });

  test("the turn that undoes it leads back", () => {
    for (const turn of turns) {
      const back = turnedSpot(undone(turn), turnedSpot(turn, spot));
      expect(
        [back.x, back.y].map((share) => share.toFixed(12)),
        String(turn),
      ).toEqual(["0.250000000000", "0.100000000000"]);
    }
  });
});

describe("a site's place as it is typed", () => {
  const typed = { latitude: "41.508", longitude: "-93.6", accuracy: "", reaches: "" };

  test("degrees in 1e-7, accuracy in millimetres rounded up, reach in micrometres", () => {
    expect(siteTyped(typed, "ft")).toEqual({ ok: true, value: { latitude: 415_080_000, longitude: -936_000_000 } });
    // 16 ft = 4.8768 m; 250 ft = 76.2 m
    expect(siteTyped({ ...typed, accuracy: "16", reaches: "250 ft" }, "ft")).toEqual({
      ok: true,
      value: { latitude: 415_080_000, longitude: -936_000_000, accuracy: 4_877, reaches: 76_200_000 },
    });
    expect(siteTyped({ ...typed, accuracy: "5", reaches: "75" }, "m")).toMatchObject({ value: { accuracy: 5_000, reaches: 75_000_000 } });
    // the sign for minus, as a map may give it, and a degree sign
    expect(siteTyped({ ...typed, latitude: "\u221233.856784°" }, "m")).toMatchObject({ value: { latitude: -338_567_840 } });
  });

  test.each([
    ["latitude", "", "reading-empty"],
    ["latitude", "90.000001", "reading-out-of-range"],
    ["latitude", "-95", "reading-out-of-range"],
    ["longitude", "180.5", "reading-out-of-range"],
    ["longitude", "93.6 ft", "reading-unit-kind"],
    ["latitude", "41.508, -93.6", "reading-comma-ambiguous"],
    ["accuracy", "0", "reading-out-of-range"],
    ["accuracy", "about 5", "reading-not-understood"],
    ["reaches", "-3", "reading-sign"],
  ] as const)("%s %o is refused at its field: %s", (field, text, code) => {
    expect(siteTyped({ ...typed, [field]: text }, "ft")).toMatchObject({ ok: false, refusal: { code, place: field } });
  });
});
