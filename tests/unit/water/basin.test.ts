import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contributors, expanded } from "#core/doubt/index.ts";
import { inches } from "#core/units/index.ts";
import { basinWater, figure, ofFactor, planArea, usableWater, waterFactors, waterOverDepth } from "#core/water/index.ts";
import { certain, gallons, inchesOf, inGallons, squareFeet, taken } from "./given.ts";

const matrix = { kind: "dimensions", area: squareFeet(25), depth: inchesOf(24), displacedShare: certain(0.05) } as const;

describe("water that a basin holds", () => {
  test("25 ft² by 24 in with blocks that take 5 % (worked by hand: 50 ft³ × 0.95 × 7.4805)", () => {
    const water = taken(basinWater(matrix));
    expect(inGallons(water.gross)).toBeCloseTo(355.3247, 3);
    expect(inGallons(taken(waterOverDepth(water.perDepth, inches(1))))).toBeCloseTo(355.3247 / 24, 4);
  });

  test("rated 300 gal over 24 in: 12.5 gal to the inch", () => {
    const water = taken(basinWater({ kind: "rating", volume: gallons(300), depth: inchesOf(24) }));
    expect(inGallons(taken(waterOverDepth(water.perDepth, inches(1))))).toBeCloseTo(12.5, 10);
  });

  test("4 in below the intake and half an inch out of level", () => {
    const water = taken(basinWater({ kind: "rating", volume: gallons(300), depth: inchesOf(24) }));
    const used = taken(usableWater(water, { intakeHeight: inchesOf(4), outOfLevel: inchesOf(0.5) }));
    expect(inGallons(used.belowIntake)).toBeCloseTo(50, 9);
    expect(inGallons(used.lostToTilt)).toBeCloseTo(3.125, 9);
    expect(inGallons(used.usable)).toBeCloseTo(246.875, 9);
    expect(used.answer).toBe("water above the intake");
    const none = taken(usableWater(water, { intakeHeight: inchesOf(25) }));
    expect(none.answer).toBe("no water above the intake");
  });

  test("doubt: the area's share counts once in gross and in what lies below the intake, with the voids' own beside it", () => {
    const area = figure("plan-area", 2, 0.1);
    const displacedShare = certain(0.6);
    const water = taken(basinWater({ kind: "dimensions", area, depth: certain(0.5), displacedShare }));
    const used = taken(usableWater(water, { intakeHeight: certain(0.5) }));
    // All of it lies below the intake: what the area is not known by cancels whole.
    expect(expanded(used.usable)).toBeLessThan(1e-15);
    const voids = ofFactor(waterFactors.stoneVoids);
    const stone = taken(basinWater({ kind: "rating", volume: figure("rated-volume", 1, 0.05), depth: certain(0.6) }));
    expect(contributors(stone.gross).map(({ source }) => source)).toEqual(["figure:rated-volume"]);
    expect(contributors(voids).map(({ source }) => source)).toEqual(["factor:stone-voids"]);
  });

  test("plan area", () => {
    expect(taken(planArea({ kind: "rectangle", length: certain(2), width: certain(3) })).value).toBe(6);
    expect(taken(planArea({ kind: "round", diameter: certain(2) })).value).toBeCloseTo(Math.PI, 12);
  });

  test("more depth, more area hold more; more displaced, more tilt, a higher intake leave less", () => {
    const size = fc.double({ min: 0.05, max: 5, noNaN: true });
    const share = fc.double({ min: 0, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(size, size, share, size, (area, depth, displaced, more) => {
        const usable = (a: number, d: number, s: number, intake = 0, tilt = 0): number =>
          taken(
            usableWater(taken(basinWater({ kind: "dimensions", area: certain(a), depth: certain(d), displacedShare: certain(s) })), {
              intakeHeight: certain(intake),
              outOfLevel: certain(tilt),
            }),
          ).usable.value;
        const base = usable(area, depth, displaced);
        expect(usable(area + more, depth, displaced)).toBeGreaterThan(base);
        expect(usable(area, depth + more, displaced)).toBeGreaterThan(base);
        expect(usable(area, depth, displaced + 0.05)).toBeLessThan(base);
        expect(usable(area, depth, displaced, more)).toBeLessThan(base);
        expect(usable(area, depth, displaced, 0, more)).toBeLessThan(base);
      }),
    );
  });

  test.each([
    [{ ...matrix, area: certain(0) }, "number-not-positive", "basin/area"],
    [{ ...matrix, depth: certain(-1) }, "number-not-positive", "basin/depth"],
    [{ ...matrix, depth: certain(Number.POSITIVE_INFINITY) }, "number-not-finite", "basin/depth"],
    [{ ...matrix, displacedShare: certain(-0.1) }, "number-not-positive", "basin/displacedShare"],
    [{ ...matrix, displacedShare: certain(1) }, "number-not-positive", "basin/freeShare"],
    [{ kind: "rating", volume: certain(Number.NaN), depth: certain(1) }, "number-not-finite", "basin/volume"],
    [{ kind: "rating", volume: certain(1), depth: certain(0) }, "number-not-positive", "basin/depth"],
    [
      { kind: "rating", volume: { value: 1, parts: new Map([["figure:x", Number.NaN]]) }, depth: certain(1) },
      "number-not-finite",
      "basin/volume",
    ],
  ] as const)("refuses by name %#", (size, code, place) => {
    expect(basinWater(size)).toMatchObject({ ok: false, refusal: { code, place } });
  });

  test("refuses losses and depths below zero", () => {
    const water = taken(basinWater(matrix));
    expect(usableWater(water, { intakeHeight: certain(-0.1) })).toMatchObject({ refusal: { place: "basin/intakeHeight" } });
    expect(usableWater(water, { outOfLevel: certain(Number.NaN) })).toMatchObject({ refusal: { place: "basin/outOfLevel" } });
    expect(waterOverDepth(water.perDepth, inches(-1))).toMatchObject({ refusal: { place: "basin/depth" } });
    expect(planArea({ kind: "round", diameter: certain(0) })).toMatchObject({ refusal: { place: "plan/diameter" } });
    expect(planArea({ kind: "rectangle", length: certain(1), width: certain(-1) })).toMatchObject({ refusal: { place: "plan/width" } });
  });
});
