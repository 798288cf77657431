import fc from "fast-check";
import jstat from "jstat";
import { cumulativeStdNormalProbability, quantileSorted, sampleVariance } from "simple-statistics";
import { describe, expect, test } from "vitest";
import {
  betaQuantile,
  betaShare,
  binomialAtMost,
  chiSquareAbove,
  chiSquareQuantile,
  fisherAbove,
  fisherExact,
  fisherQuantile,
  hypergeometricAtLeast,
  hypergeometricAtMost,
  logGamma,
  moments,
  normalDistribution,
  poissonAtMost,
  studentBeyond,
  studentQuantile,
} from "#core/statistics/index.ts";

const { jStat } = jstat;
const shares = [0.001, 0.025, 0.1, 0.5, 0.9, 0.975, 0.999];
const degrees = [1, 2, 3, 10, 57, 200];

// jstat ends its incomplete beta function where two terms agree to 3e-7: no closer than that can the two be told apart
const JSTAT_BETA = 6;

describe("beside jstat", () => {
  test.each([0.1, 0.5, 1, 2, 7.5, 33, 170])("ln Γ(%f)", (x) => {
    expect(Math.abs(logGamma(x) - jStat.gammaln(x))).toBeLessThan(1e-11 * Math.max(1, Math.abs(logGamma(x))));
  });

  test.each(degrees)("chi-square with %i degrees of freedom: share above, and back", (own) => {
    for (const x of [0.01, 0.5, 1, 3.84, 12, 60]) expect(chiSquareAbove(x, own)).toBeCloseTo(1 - jStat.chisquare.cdf(x, own), 9);
    for (const p of shares) expect(1 - chiSquareAbove(chiSquareQuantile(p, own), own)).toBeCloseTo(p, 10);
  });

  test.each(degrees)("Student's t with %i degrees of freedom", (own) => {
    for (const t of [0, 0.3, 1, 2.5, 6]) expect(studentBeyond(t, own)).toBeCloseTo(2 * (1 - jStat.studentt.cdf(t, own)), JSTAT_BETA);
    for (const p of shares) expect(studentQuantile(p, own)).toBeCloseTo(jStat.studentt.inv(p, own), 4);
  });

  test.each(degrees)("F with %i above, and 3, 12 and 60 below", (above) => {
    for (const below of [3, 12, 60]) {
      for (const x of [0.1, 1, 2.7, 9])
        expect(fisherAbove(x, above, below)).toBeCloseTo(1 - jStat.centralF.cdf(x, above, below), JSTAT_BETA);
      for (const p of [0.05, 0.5, 0.95]) expect(1 - fisherAbove(fisherQuantile(p, above, below), above, below)).toBeCloseTo(p, 10);
    }
  });

  test("beta", () => {
    for (const [a, b] of [
      [1, 1],
      [0.5, 8],
      [3, 60],
      [40, 2],
    ] as const) {
      for (const x of [0.01, 0.2, 0.7, 0.99]) expect(betaShare(x, a, b)).toBeCloseTo(jStat.beta.cdf(x, a, b), JSTAT_BETA);
      for (const p of shares) expect(betaQuantile(p, a, b)).toBeCloseTo(jStat.beta.inv(p, a, b), 6);
    }
  });

  test("counts: binomial, Poisson, hypergeometric", () => {
    for (const k of [0, 2, 5, 11]) {
      expect(binomialAtMost(k, 30, 0.13)).toBeCloseTo(jStat.binomial.cdf(k, 30, 0.13), JSTAT_BETA);
      expect(poissonAtMost(k, 4.2)).toBeCloseTo(jStat.poisson.cdf(k, 4.2), 10);
      expect(hypergeometricAtMost(k, 100, 17, 25)).toBeCloseTo(jStat.hypgeom.cdf(k, 100, 17, 25), 10);
    }
  });
});

describe("beside simple-statistics", () => {
  test("sample variance, and Φ to the four digits of its table", () => {
    const values = [2, 4, 4, 4, 5, 5, 7, 9];
    expect(moments(values).variance).toBeCloseTo(sampleVariance(values), 12);
    for (const z of [-2.1, 0, 0.44, 1.96]) expect(normalDistribution(z)).toBeCloseTo(cumulativeStdNormalProbability(z), 4);
  });

  test("a quantile of chi-square against its own draws: squares of the normal quantiles at even shares", () => {
    const drawn = Array.from({ length: 2001 }, (_, i) => chiSquareQuantile((i + 0.5) / 2001, 4));
    expect(quantileSorted(drawn, 0.5)).toBeCloseTo(3.3567, 3);
  });
});

describe("by hand", () => {
  test("closed forms: F with 2 above, t with 2, beta of 2 and 3, chi-square with 2", () => {
    for (const x of [0.1, 1, 2.7, 9, 80]) {
      expect(fisherAbove(x, 2, 12) / (1 + (2 * x) / 12) ** -6).toBeCloseTo(1, 11);
      expect(1 - studentBeyond(x, 2)).toBeCloseTo(x / Math.sqrt(2 + x * x), 12);
      expect(chiSquareAbove(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 12);
    }
    for (const x of [0.05, 0.3, 0.8]) expect(betaShare(x, 2, 3)).toBeCloseTo(6 * x ** 2 - 8 * x ** 3 + 3 * x ** 4, 13);
    // 1 - 0.99^30 - 30 × 0.01 × 0.99^29
    expect(binomialAtMost(1, 30, 0.01)).toBeCloseTo(0.99 ** 30 + 0.3 * 0.99 ** 29, 13);
  });

  test("the lady who tasted tea: 3 of 4 against 1 of 4 has 17 of 35 on each side of the middle", () => {
    // tables with these totals: 1, 16, 36, 16, 1 of 70; no likelier than 16/70: 1 + 16 + 16 + 1 = 34 of 70
    expect(fisherExact(3, 4, 1, 4)).toBeCloseTo(34 / 70, 12);
    expect(fisherExact(4, 4, 0, 4)).toBeCloseTo(2 / 70, 12);
    expect(fisherExact(0, 0, 3, 9)).toBe(1);
  });

  test("one of two off, one looked at: found in half of cases", () => {
    expect(hypergeometricAtLeast(1, 2, 1, 1)).toBeCloseTo(0.5, 12);
  });

  test("outside 0 to 1 there is no quantile, and at the ends the bounds", () => {
    expect(chiSquareQuantile(1.1, 3)).toBeNaN();
    expect(studentQuantile(Number.NaN, 3)).toBeNaN();
    expect([betaQuantile(0, 2, 3), betaQuantile(1, 2, 3)]).toEqual([0, 1]);
    expect(chiSquareQuantile(1, 3)).toBe(Number.POSITIVE_INFINITY);
  });

  test("binomial tails rise with the chance and add up", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0.01, max: 0.98, noNaN: true }), (n, p) => {
        const half = Math.floor(n / 2);
        expect(binomialAtMost(half, n, p)).toBeGreaterThanOrEqual(binomialAtMost(half, n, p + 0.01));
        expect(binomialAtMost(n, n, p)).toBe(1);
      }),
    );
  });
});
