import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { normalDistribution, normalQuantile } from "#core/statistics/index.ts";

// Values computed to twenty digits with an arbitrary-precision library; Φ(1) and Φ(1.96) stand so in every printed table.
const known: readonly (readonly [number, number])[] = [
  [-8, 6.220960574271784e-16],
  [-5, 2.866515718791939e-7],
  [-3, 0.0013498980316300946],
  [-2.5, 0.006209665325776135],
  [0, 0.5],
  [0.5, 0.6914624612740131],
  [1, 0.8413447460685429],
  [1.96, 0.9750021048517795],
  [3, 0.9986501019683699],
  [3.5, 0.9997673709209645],
  [6, 0.9999999990134124],
];

describe("normal distribution", () => {
  test.each(known)("Φ(%f) to 1e-14 and, in the lower tail, to 1e-12 of itself", (z, p) => {
    expect(Math.abs(normalDistribution(z) - p)).toBeLessThan(1e-14);
    expect(Math.abs(normalDistribution(z) / p - 1)).toBeLessThan(1e-12);
  });

  test("the two ways of computing meet where one takes over from the other", () => {
    for (const z of [-3, 3]) {
      const [under, over] = [normalDistribution(z - 1e-9), normalDistribution(z + 1e-9)];
      expect(over - under).toBeGreaterThan(0);
      expect(over - under).toBeCloseTo(2e-9 * 0.0044318484, 14);
    }
  });

  test("far out it ends at 0 and 1, and nothing stays nothing", () => {
    expect(normalDistribution(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalDistribution(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalDistribution(-60)).toBe(0);
    expect(normalDistribution(Number.NaN)).toBeNaN();
  });

  test("symmetric and never falling", () => {
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true }), (z, step) => {
        expect(normalDistribution(z) + normalDistribution(-z)).toBeCloseTo(1, 14);
        expect(normalDistribution(z + step)).toBeGreaterThanOrEqual(normalDistribution(z) - 1e-16);
      }),
    );
  });

  test("the quantile undoes it", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (p) => {
        expect(Math.abs(normalDistribution(normalQuantile(p)) - p)).toBeLessThan(1e-13);
      }),
    );
    expect(normalQuantile(1e-300)).toBeCloseTo(-37.0470963, 6);
    expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
    expect([-0.1, 1.1, Number.NaN].map(normalQuantile)).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });
});
