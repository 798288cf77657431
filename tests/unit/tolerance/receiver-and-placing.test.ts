import { describe, expect, test } from "vitest";
import {
  contributingRoles,
  magnitude,
  placingHalfWidths,
  type Receiver,
  readingUncertainty,
  standardUncertainty,
  type Uncertain,
} from "#core/doubt/index.ts";
import { fitPlane, fourthPlace, outOfLevel } from "#core/geometry/index.ts";
import { canBeDecided, judge, leaveCore } from "#core/tolerance/index.ts";
import { inches, toMicrometres } from "#core/units/index.ts";
import { type RimTaken, rim, side } from "../geometry/rim.ts";

/** Limits of the default sheet (own): 1/2 in out of level each way, aim 1/4; fourth place within 1/2 in, aim 0. */
const halfInch = toMicrometres(inches(1 / 2));

function tilt(taken: RimTaken): Uncertain {
  const fit = fitPlane(rim(taken));
  const level = fit.ok ? outOfLevel(fit.value.plane, side, side) : fit;
  if (!level.ok) throw new Error(level.refusal.code);
  return magnitude(level.value.x);
}

function verdict(x: Uncertain, limits: { lower?: number; upper?: number }): string {
  const judgement = judge({ ...leaveCore(x), ...limits, rule: "guarded" });
  return judgement.ok ? judgement.value.verdict : judgement.refusal.code;
}

/** 3/8 in out of level: within by 1/8 in. */
const rods = [50, 50.375, 50.375, 50] as const;

describe("what was in the hand changes the verdict on the same figures", () => {
  test("only the receiver, from fine to coarse", () => {
    const of = (receiver: Receiver) => verdict(tilt({ rods, line: { kind: "laser", receiver } }), { upper: halfInch });
    expect(of("fine")).toBe("within");
    expect(of("coarse")).toBe("too close to call");
  });

  test("only the placing, from the wiped rim to gravel", () => {
    const of = (placing: keyof typeof placingHalfWidths) =>
      verdict(tilt({ rods, placing: placingHalfWidths[placing] / inches(1) }), { upper: halfInch });
    expect(of("wiped rim")).toBe("within");
    expect(of("gravel")).toBe("too close to call");
  });

  test("only the placing, of a single tape reading of 3 1/2 in against at least 3 in", () => {
    const of = (placing: keyof typeof placingHalfWidths) => {
      const taken = readingUncertainty({
        reading: "r",
        value: inches(3.5),
        resolution: inches(1 / 16),
        placingHalfWidth: placingHalfWidths[placing],
      });
      return taken.ok && verdict(taken.value, { lower: toMicrometres(inches(3)) });
    };
    expect(of("hard edge")).toBe("within");
    expect(of("liner edge")).toBe("within");
    expect(of("turf")).toBe("too close to call");
  });

  test("only the distance to the laser", () => {
    const of = (distance: number) => verdict(tilt({ rods, line: { kind: "laser", receiver: "fine", distance } }), { upper: halfInch });
    expect(of(15)).toBe("within");
    expect(of(90)).toBe("too close to call");
  });

  test("the finding can say what would settle it", () => {
    expect(contributingRoles(tilt({ rods, line: { kind: "laser", receiver: "coarse" } }), 1)[0]?.source).toBe("receiver");
    expect(contributingRoles(tilt({ rods, placing: 1 / 4 }), 1)[0]?.source).toBe("placing");
  });
});

describe("the rim's limits can be decided with the receiver on fine and not on coarse", () => {
  const level = [50, 50, 50, 50] as const;
  test.each([
    ["fine", true],
    ["coarse", false],
  ] as const)("receiver on %s: %s", (receiver, decidable) => {
    const taken: RimTaken = { rods: level, line: { kind: "laser", receiver } };
    const eachWay = canBeDecided({ aim: inches(1 / 4), upper: inches(1 / 2), u: standardUncertainty(tilt(taken)), rule: "guarded" });
    const gap = fourthPlace(rim(taken));
    if (!gap.ok) throw new Error(gap.refusal.code);
    const fourth = canBeDecided({
      aim: 0,
      lower: -inches(1 / 2),
      upper: inches(1 / 2),
      u: standardUncertainty(gap.value),
      rule: "guarded",
    });
    expect(eachWay.ok && eachWay.value.decidable).toBe(decidable);
    expect(fourth.ok && fourth.value.decidable).toBe(decidable);
  });
});
