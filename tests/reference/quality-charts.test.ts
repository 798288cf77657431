import { describe, test } from "vitest";
import {
  beyondLimits,
  binomialAtMost,
  capability,
  countLimits,
  hypergeometricAtMost,
  individuals,
  normalDistribution,
  rateLimits,
  shareLimits,
} from "#core/statistics/index.ts";
import { byHand, disagreement, published, same, source } from "./checked.ts";

const found = <T>(value: T | undefined): T => {
  if (value === undefined) throw new Error("no answer");
  return value;
};

describe("control charts", () => {
  const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  const nist = source("NIST/SEMATECH e-Handbook", "6.3.2.2 individuals, flow rate", "quoted");

  test("individuals and moving range", () => {
    const chart = found(individuals(flow));
    published(nist, "centre", chart.centre, 50.81, { digits: 2 });
    published(nist, "mean moving range", chart.rangeLimits.centre, 1.8778, { digits: 4 });
    published(nist, "limits", [chart.upper, chart.lower], [55.8041, 45.8159], { digits: 4 });
    published(byHand("3.267 × 1.8778"), "limit of the moving range", chart.rangeLimits.upper, 6.1347, { absolute: 1e-3 });
    disagreement(
      "d2 of two",
      [
        [nist, 1.128],
        [byHand("2/√π"), 1.128379],
      ],
      "1.128: only it gives the handbook's printed limits",
    );
  });

  test("counts", () => {
    const wafers = [16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14, 16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13];
    const from = source("NIST/SEMATECH e-Handbook", "6.3.3.1 c chart, wafers", "quoted");
    const limits = countLimits(wafers);
    same(from, "centre and limits", [limits.centre, limits.lower, limits.upper], [16, 4, 28]);
    same(
      from,
      "out",
      beyondLimits(wafers, [limits]).map((i) => i + 1),
      [24],
    );
  });

  test("shares", () => {
    const cans = [12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6];
    const from = source("Montgomery, Introduction to Statistical Quality Control", "p chart, orange juice cans", "quoted");
    const limits = shareLimits(
      cans,
      cans.map(() => 50),
    );
    const { centre = 0, upper = 0, lower = 0 } = limits[0] ?? {};
    published(from, "centre", centre, 0.2313333, { digits: 7 });
    published(from, "limits", [upper, lower], [0.4102391, 0.05242755], { absolute: 1e-7 });
    same(
      from,
      "out",
      beyondLimits(
        cans.map((x) => x / 50),
        limits,
      ).map((i) => i + 1),
      [15, 23],
    );
    const firstTwenty = shareLimits(
      cans.slice(0, 20),
      Array.from({ length: 20 }, () => 50),
    )[0];
    published(from, "first twenty", [firstTwenty?.centre ?? 0, firstTwenty?.upper ?? 0, firstTwenty?.lower ?? 0], [0.214, 0.388, 0.04], {
      digits: 3,
    });
  });

  test("rates", () => {
    const rolls = [14, 12, 20, 11, 7, 10, 21, 16, 19, 23];
    const units = [10, 8, 13, 10, 9.5, 10, 12, 10.5, 12, 12.5];
    const from = source(
      "Montgomery, Introduction to Statistical Quality Control",
      "u chart, dyed cloth (data as in a public package)",
      "quoted",
    );
    const limits = rateLimits(rolls, units);
    published(from, "centre", limits[0]?.centre ?? 0, 1.42326, { digits: 5 });
    const hand = byHand("153/107.5 ± 3 √(centre/n)");
    published(hand, "roll 1", [limits[0]?.upper ?? 0, limits[0]?.lower ?? 0], [2.555, 0.291], { digits: 3 });
    published(hand, "roll 3", [limits[2]?.upper ?? 0, limits[2]?.lower ?? 0], [2.416, 0.431], { digits: 3 });
    published(hand, "roll 10", [limits[9]?.upper ?? 0, limits[9]?.lower ?? 0], [2.436, 0.411], { digits: 3 });
  });
});

describe("capability", () => {
  test("Cp and Cpk", () => {
    const from = source("NIST/SEMATECH e-Handbook", "6.1.6 process capability", "quoted");
    const both = found(capability({ mean: 16, sigma: 2, n: 50 }, { lower: 8, upper: 20 }, 0.05));
    published(from, "Cp", both.cp?.value ?? 0, 1, { absolute: 1e-12 });
    published(from, "Cpk", both.cpk.value, 0.6667, { digits: 4 });
    const calculator = source("a public risk calculator's tests", "N(10.5, 0.4) in 9..11", "seen");
    published(calculator, "Cpk", found(capability({ mean: 10.5, sigma: 0.4, n: 2 }, { lower: 9, upper: 11 }, 0.05)).cpk.value, 0.416667, {
      digits: 6,
    });
    published(calculator, "outside", 1 - normalDistribution(1.25) + normalDistribution(-3.75), 0.10574, { digits: 5 });
  });
});

describe("operating characteristic", () => {
  test("hypergeometric", () => {
    const hand = byHand("sum of C(D,i) C(N-D,n-i) / C(N,n)");
    const of = (lot: number, off: number, n: number, most: number): number => hypergeometricAtMost(most, lot, off, n);
    published(hand, "N 100, D 5, n 20, c 1", of(100, 5, 20, 1), 0.739453, { digits: 6 });
    published(hand, "N 50, D 2, n 8, c 0", of(50, 2, 8, 0), 0.702857, { digits: 6 });
    published(hand, "N 50, D 1, n 8, c 0", of(50, 1, 8, 0), 0.84, { absolute: 1e-12 });
    published(hand, "N 150, D 5, n 20, c 1", of(150, 5, 20, 1), 0.867852, { digits: 6 });
    published(hand, "N 500, D 15, n 50, c 3", of(500, 15, 50, 3), 0.947227, { digits: 6 });
  });

  test("binomial", () => {
    const printed = [0.998, 0.98, 0.93, 0.845, 0.739, 0.62, 0.502, 0.394, 0.3, 0.223, 0.162, 0.115];
    const nist = source("NIST/SEMATECH e-Handbook", "6.2.3.2 n 52, c 3", "from memory");
    // remembered digits of p = 0.04 and 0.05 lie one unit of the last digit off what the formula gives
    published(
      nist,
      "p 0.01 to 0.12",
      printed.map((_, i) => binomialAtMost(3, 52, (i + 1) / 100)),
      printed,
      { absolute: 0.0015 },
    );
    published(
      source("a public package's vignette on sampling plans", "n 200, c 7 at 0.064", "seen"),
      "chance of acceptance",
      binomialAtMost(7, 200, 0.064),
      0.054,
      { digits: 3 },
    );
  });
});
