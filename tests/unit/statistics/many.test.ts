import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  betaPrior,
  betweenEventsLimits,
  capability,
  crossedVariance,
  differenceOfShares,
  holm,
  kaplanMeier,
  looksNeeded,
  mostOff,
  runsOnOneSide,
  shrunk,
  trend,
  wilson,
} from "#core/statistics/index.ts";

describe("by hand", () => {
  test("Holm: 0.01 stands under 0.05/3; 0.03 does not under 0.05/2, and nothing after it", () => {
    expect(holm([0.01, 0.04, 0.03], 0.05)).toEqual([true, false, false]);
    expect(holm([0.04, 0.01, 0.02], 0.05)).toEqual([true, true, true]);
    expect(holm([], 0.05)).toEqual([]);
  });

  test("a straight line through 1, 2, 2, 4 has slope 0.9", () => {
    const found = trend([1, 2, 2, 4].map((y, x) => ({ x, y })));
    // Σ(x - 1.5)(y - 2.25) = 4.5 over 5; residual squares 0.7, two degrees: error √(0.35/5)
    expect(found?.slope).toBeCloseTo(0.9, 12);
    expect(found?.error).toBeCloseTo(Math.sqrt(0.07), 12);
    // t = 3.4017 with two degrees: 1 - t/√(2 + t²)
    const t = 0.9 / Math.sqrt(0.07);
    expect(found?.p).toBeCloseTo(1 - t / Math.sqrt(2 + t * t), 10);
    expect(trend([{ x: 1, y: 1 }])).toBeUndefined();
  });

  test("a run counts on one side only, and a value on the centre ends it", () => {
    expect(runsOnOneSide([1, 1, 1, -1, 1, 1, 1, 1], 0, 3)).toEqual([2, 6, 7]);
    expect(runsOnOneSide([1, 1, 0, 1], 0, 3)).toEqual([]);
  });

  test("gaps between events: limits are chances of the geometric distribution", () => {
    const { centre, lower, upper } = betweenEventsLimits([9, 11, 10, 10], 0.0027);
    expect(centre).toBe(10);
    expect(lower).toBeGreaterThanOrEqual(0);
    // chance = 0.75/(10 + 0.75); 1 - (1 - chance)^(k + 1) = 0.99865
    expect(upper).toBeCloseTo(Math.log(0.00135) / Math.log(1 - 0.75 / 10.75) - 1, 9);
  });

  test("groups that are alike are drawn together, groups that differ keep their own share", () => {
    const alike = betaPrior([10, 10, 10, 10].map((hits) => ({ hits, n: 20 })));
    const unlike = betaPrior([1, 19, 2, 18].map((hits) => ({ hits, n: 20 })));
    if (alike === undefined || unlike === undefined) throw new Error("no prior");
    expect(alike.a + alike.b).toBeGreaterThan(1000);
    expect(shrunk(alike, { hits: 20, n: 20 }, 0.05).value).toBeCloseTo(0.5, 1);
    expect(shrunk(unlike, { hits: 19, n: 20 }, 0.05).value).toBeGreaterThan(0.85);
    expect(betaPrior([{ hits: 1, n: 2 }])).toBeUndefined();
  });

  test("capability of sigma 0 or without a limit is none", () => {
    expect(capability({ mean: 0, sigma: 0, n: 9 }, { upper: 1 }, 0.05)).toBeUndefined();
    expect(capability({ mean: 0, sigma: 1, n: 9 }, {}, 0.05)).toBeUndefined();
    expect(capability({ mean: 1, sigma: 1, n: 9 }, { upper: 4 }, 0.05)?.cpk.value).toBeCloseTo(1, 12);
  });

  test("an analysis of variance with a cell left out is none", () => {
    expect(
      crossedVariance([
        [[1, 2], [1]],
        [
          [1, 2],
          [1, 2],
        ],
      ]),
    ).toBeUndefined();
  });
});

describe("properties", () => {
  const counts = fc.tuple(fc.nat(200), fc.nat(200)).map(([a, b]) => ({ hits: Math.min(a, b), n: Math.max(a, b, 1) }));

  test("an interval holds its own share and stays within 0 and 1; a difference of a share with itself holds 0", () => {
    fc.assert(
      fc.property(counts, ({ hits, n }) => {
        const { value, low, high } = wilson(hits, n, 0.05);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(value).toBeGreaterThanOrEqual(low - 1e-12);
        expect(value).toBeLessThanOrEqual(high + 1e-12);
        const { low: from, high: to } = differenceOfShares(wilson(hits, n, 0.05), wilson(hits, n, 0.05));
        expect(from).toBeLessThanOrEqual(0);
        expect(to).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test("so many looks leave at most so many off", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 60 }), fc.nat(20), (lot, allowed) => {
        const looked = looksNeeded(lot, Math.min(allowed, lot - 1), 0.05);
        expect(mostOff(lot, looked, 0, 0.05)).toBeLessThanOrEqual(allowed);
        if (looked > 1) expect(mostOff(lot, looked - 1, 0, 0.05)).toBeGreaterThan(Math.min(allowed, lot - 1) - 1);
      }),
      { numRuns: 60 },
    );
  });

  test("a curve of survival never rises, and without anything left out it is the plain share", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(30), { minLength: 1, maxLength: 40 }), (times) => {
        const steps = kaplanMeier(
          times.map((time) => ({ time, event: true })),
          0.05,
        );
        for (const { time, survival } of steps) {
          expect(survival).toBeCloseTo(times.filter((one) => one > time).length / times.length, 10);
        }
      }),
    );
  });
});
