import { describe, expect, test } from "vitest";
import {
  certain,
  expanded,
  type LevelLine,
  magnitude,
  mean,
  readingUncertainty,
  standardUncertainty,
  type Uncertain,
  withSource,
} from "#core/doubt/index.ts";
import {
  fitPlane,
  fourthPlace,
  heightFromRod,
  lipOutOfLevel,
  movedSince,
  outOfLevel,
  type RimShape,
  rimBelowFinishedGrade,
  waterLostToTilt,
} from "#core/geometry/index.ts";
import { cubicMetres, inches, metres, squareMetres, toGallons, toInches } from "#core/units/index.ts";
import { type RimTaken, rim, rod, side } from "./rim.ts";

function levelOf(taken: RimTaken, shape: RimShape = "rectangular") {
  const fit = fitPlane(rim(taken));
  if (!fit.ok) throw new Error(fit.refusal.code);
  const level = outOfLevel(fit.value.plane, side, side, shape);
  if (!level.ok) throw new Error(level.refusal.code);
  return level.value;
}

function gapOf(taken: RimTaken): Uncertain {
  const gap = fourthPlace(rim(taken));
  if (!gap.ok) throw new Error(gap.refusal.code);
  return gap.value;
}

const asInches = (x: Uncertain): number => toInches(metres(x.value));

describe("out of level", () => {
  test("the low side, each way and in all", () => {
    const level = levelOf({ rods: [50, 50.25, 50.25, 50] });
    expect(asInches(level.x)).toBeCloseTo(-0.25, 12);
    expect(asInches(level.y)).toBeCloseTo(0, 12);
    expect(asInches(level.total)).toBeCloseTo(0.25, 12);
    expect(level.low?.x).toBeCloseTo(1, 12);
    const both = levelOf({ rods: [50, 50.25, 50.375, 50.125] });
    expect(asInches(both.total)).toBeCloseTo(0.375, 12);
    expect(both.low?.x).toBeCloseTo(2 / Math.sqrt(5), 12);
    expect(both.low?.y).toBeCloseTo(1 / Math.sqrt(5), 12);
    expect(asInches(levelOf({ rods: [50, 50.3, 50.7, 50.4] }, "round").total)).toBeCloseTo(0.5, 12);
  });

  test("a twisted and a tilted rim with the same highest and lowest corners get different findings", () => {
    const tilted = { rods: [50, 50.5, 50.5, 50] } as const;
    const twisted = { rods: [50, 50.5, 50, 50.5] } as const;
    expect(asInches(levelOf(tilted).total)).toBeCloseTo(0.5, 12);
    expect(asInches(gapOf(tilted))).toBeCloseTo(0, 12);
    expect(asInches(levelOf(twisted).total)).toBeCloseTo(0, 12);
    expect(asInches(gapOf(twisted))).toBeCloseTo(1, 12);
  });

  test("an error of the height mark shifts all four places and leaves out of level and the fourth place alone", () => {
    const rods = [50, 50.25, 50.375, 50.0625] as const;
    const [right, wrong] = [rim({ rods }), rim({ rods, mark: 40.75 })];
    for (const [i, place] of wrong.entries()) expect(place.height.value - (right[i]?.height.value ?? 0)).toBeCloseTo(inches(0.75), 12);
    const [a, b] = [levelOf({ rods }), levelOf({ rods, mark: 40.75 })];
    expect(b.x.value).toBeCloseTo(a.x.value, 14);
    expect(b.y.value).toBeCloseTo(a.y.value, 14);
    expect(gapOf({ rods, mark: 40.75 }).value).toBeCloseTo(gapOf({ rods }).value, 14);
    for (const x of [a.x, a.y, gapOf({ rods })]) {
      for (const [source, part] of x.parts) {
        if (source.startsWith("set-up:") || source.startsWith("reading:mark/"))
          expect(Math.abs(part), source).toBeLessThan(1e-4 * standardUncertainty(x));
      }
    }
  });

  test("each way carries the doubt of one rod reading, the fourth place twice that", () => {
    const rods = [50, 50, 50, 50] as const;
    expect(standardUncertainty(levelOf({ rods }).x) * 1000).toBeCloseTo(1.449, 3);
    expect(standardUncertainty(gapOf({ rods })) * 1000).toBeCloseTo(2.898, 3);
  });

  test("a level rim has no low side", () => {
    const level = outOfLevel({ a: certain(0), b: certain(0), c: certain(0) }, 1, 1, "round");
    expect(level).toEqual({ ok: true, value: { x: certain(0), y: certain(0), total: certain(0) } });
  });

  test.each([
    [0, 1, "number-not-positive", "extentX"],
    [1, -2, "number-not-positive", "extentY"],
    [Number.NaN, 1, "number-not-finite", "extentX"],
  ] as const)("refuses extents %f and %f by name", (x, y, code, place) => {
    expect(outOfLevel({ a: certain(0), b: certain(0), c: certain(0) }, x, y)).toMatchObject({ ok: false, refusal: { code, place } });
  });
});

describe("water that a tilt costs", () => {
  const lost = (taken: RimTaken, shape?: RimShape) => {
    const volume = waterLostToTilt(squareMetres(side * side), levelOf(taken, shape));
    if (!volume.ok) throw new Error(volume.refusal.code);
    return volume.value;
  };

  test("plan area × half the tilt: 45 in square, 1/2 in one way, is 45 × 45 × 1/4 cubic inches", () => {
    const volume = lost({ rods: [50, 50.5, 50.5, 50] });
    expect(toGallons(cubicMetres(volume.value))).toBeCloseTo((45 * 45 * 0.25) / 231, 10);
    expect(expanded(volume)).toBeGreaterThan(0);
  });

  test("both ways add on a rectangular rim and not on a round one", () => {
    const rods = [50, 50.3, 50.7, 50.4] as const;
    expect(toGallons(cubicMetres(lost({ rods }).value))).toBeCloseTo((45 * 45 * 0.35) / 231, 10);
    expect(toGallons(cubicMetres(lost({ rods }, "round").value))).toBeCloseTo((45 * 45 * 0.25) / 231, 10);
  });

  test("what runs out over a tilted rectangular rim, summed over its area, is the same", () => {
    const n = 200;
    let volume = 0;
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) volume += (0.012 * (i + 0.5)) / n + (0.005 * (j + 0.5)) / n;
    const lostHere = waterLostToTilt(2, { total: certain(0.017) });
    expect(lostHere.ok && lostHere.value.value).toBeCloseTo((volume / (n * n)) * 2, 12);
  });

  test("refuses an area that is none", () => {
    expect(waterLostToTilt(0, { total: certain(1) })).toMatchObject({ ok: false, refusal: { code: "number-not-positive" } });
    expect(waterLostToTilt(Number.NaN, { total: certain(1) })).toMatchObject({ ok: false, refusal: { code: "number-not-finite" } });
  });
});

describe("rim against finished grade, and moved since", () => {
  test("below the stake by the mean of the rim; the line of the set-up drops out", () => {
    const rods = [50, 50.25, 50.25, 50] as const;
    const [first, ...rest] = rods.map((value, i) => heightFromRod(rod(`r${i}`, value)));
    if (!first) throw new Error("no place");
    const below = rimBelowFinishedGrade([first, ...rest], heightFromRod(rod("stake", 46.125)));
    expect(asInches(below)).toBeCloseTo(4, 12);
    expect(standardUncertainty(below) * 1000).toBeCloseTo(Math.sqrt(2.1 + 2.1 / 4), 2);
  });

  test("down is negative", () => {
    expect(movedSince(certain(0.2), certain(0.19)).value).toBeCloseTo(-0.01, 12);
    expect(standardUncertainty(movedSince(withSource(certain(0.2), "mark", 1), withSource(certain(0.19), "mark", 1)))).toBe(0);
  });
});

describe("level along a lip", () => {
  const gap = (reading: string, value: number, lay: "first" | "turned"): Uncertain => {
    const line: LevelLine = { kind: "spirit level", distance: 1.2, lay };
    const taken = readingUncertainty({
      reading,
      setUp: "lip",
      value: inches(value),
      resolution: inches(1 / 32),
      placingHalfWidth: 0,
      instrument: { permittedErrorHalfWidth: 0 },
      line,
    });
    if (!taken.ok) throw new Error(taken.refusal.code);
    return taken.value;
  };

  test("a level that lies by 1/16 in reads 1/8 and 0 on a lip that is 1/16 out; turned end for end, the mean is right", () => {
    const lip = lipOutOfLevel([gap("a", 1 / 8, "first"), gap("b", 0, "turned")]);
    expect(asInches(lip)).toBeCloseTo(1 / 16, 12);
    expect(standardUncertainty(lip)).toBeCloseTo(inches(1 / 32) / 2 / Math.sqrt(3) / Math.SQRT2, 12);
    expect(standardUncertainty(gap("a", 1 / 8, "first"))).toBeGreaterThan(2 * standardUncertainty(lip));
  });

  test("on a level lip the two gaps are opposite and the mean is none", () => {
    expect(lipOutOfLevel([gap("a", 1 / 16, "first"), gap("b", -1 / 16, "turned")]).value).toBeCloseTo(0, 15);
    expect(magnitude(mean([gap("a", -1 / 16, "first"), gap("b", -1 / 8, "turned")])).value).toBeCloseTo(inches(3 / 32), 12);
  });
});
