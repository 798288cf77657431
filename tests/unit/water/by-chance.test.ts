import { describe, expect, test } from "vitest";
import { certain, rectangular, standardUncertainty, type Uncertain, withSource } from "#core/doubt/index.ts";
import { inches } from "#core/units/index.ts";
import {
  evaporationOfDay,
  type FloatingBasin,
  figure,
  KILOGRAMS_PER_POUND,
  type LeakTest,
  leakTest,
  lipFlowRatio,
  ofFactor,
  waterFactors,
  waterToLeave,
} from "#core/water/index.ts";
import { chance, taken } from "./given.ts";

/**
 * The first-order propagation against chance, as GUM Supplement 1 does (JCGM 101, from memory): draw every input from its
 * distribution, work each draw out by itself, compare mean and standard deviation. Seeded, so the same every time.
 */
const DRAWS = 20_000;
/** A standard deviation of 20 000 draws is itself worth 1 in √(2 × 20 000); four of those, and the second order, below 3 %. */
const TOLERANCE = 0.03;

interface Spread {
  readonly mean: number;
  readonly deviation: number;
}

function spreadOf(seed: number, draw: (within: (middle: number, halfWidth: number) => number) => number): Spread {
  const random = chance(seed);
  const within = (middle: number, halfWidth: number): number => middle + halfWidth * (2 * random() - 1);
  let [mean, squares] = [0, 0];
  for (let n = 1; n <= DRAWS; n++) {
    const y = draw(within);
    const step = y - mean;
    mean += step / n;
    squares += step * (y - mean);
  }
  return { mean, deviation: Math.sqrt(squares / (DRAWS - 1)) };
}

function agree(answer: Uncertain, spread: Spread): void {
  const u = standardUncertainty(answer);
  expect(Math.abs(spread.deviation / u - 1)).toBeLessThan(TOLERANCE);
  expect(Math.abs(spread.mean - answer.value)).toBeLessThan(0.05 * u);
}

/** The same reading role named twice, once for each end: a tape's own error, which must cancel. */
const down = (id: string, value: number, placing: number, tape: number): Uncertain =>
  withSource(withSource(certain(value), `reading:${id}/placing`, rectangular(placing)), "set-up:tape/permitted-error", rectangular(tape));

describe("first order against chance (GUM Supplement 1)", () => {
  test("water to leave inside a basin", () => {
    const [mass, area, outside, displaced] = [75 * KILOGRAMS_PER_POUND, 1.3, 0.2, 0.3];
    const basin = (m: Uncertain, a: Uncertain, s: Uncertain): FloatingBasin => ({ mass: m, area: a, displacedShare: s });
    const answer = taken(
      waterToLeave(
        basin(figure("mass", mass, 4), figure("area", area, 0.04), figure("displaced", displaced, 0.05)),
        figure("outside", outside, 0.013),
      ),
    );
    const density = ofFactor(waterFactors.waterDensity).value;
    const spread = spreadOf(3, (within) => {
      // The density is a factor inside: drawn here, it comes in through the weight, which stands over it.
      const heavier = within(density, 3) / density;
      const drawn = basin(certain(within(mass, 4) / heavier), certain(within(area, 0.04)), certain(within(displaced, 0.05)));
      return taken(waterToLeave(drawn, certain(within(outside, 0.013)))).inside.value;
    });
    agree(answer.inside, spread);
  });

  test("loss a day of a leak test, its tape's error shared by all four readings", () => {
    const [placing, tape, seconds] = [inches(1 / 16), 0.001, 20 * 3600];
    const levels = [0.076, 0.089, 0.05, 0.056] as const;
    const loss = (
      first: Uncertain,
      last: Uncertain,
      bucket: readonly [Uncertain, Uncertain],
      a: Uncertain,
      wet: Uncertain,
      time: Uncertain,
    ): Uncertain => {
      const given: LeakTest = {
        kind: "basin, pump off",
        level: { first, last },
        duration: time,
        perDepth: a,
        evaporatingArea: wet,
        evaporated: { by: "control bucket", level: { first: bucket[0], last: bucket[1] } },
        conditions: { makeUpShut: true, rain: false, pump: "off" },
      };
      const answer = taken(leakTest(given));
      if (answer.answer !== "counts") throw new Error("does not count");
      return answer.lossPerDay;
    };
    const [a, b, c, d] = levels;
    const answer = loss(
      down("a", a, placing, tape),
      down("b", b, placing, tape),
      [down("c", c, placing, tape), down("d", d, placing, tape)],
      figure("area", 1.8, 0.1),
      figure("wet", 2.4, 0.4),
      figure("clock", seconds, 600),
    );
    const spread = spreadOf(13, (within) => {
      const error = within(0, tape);
      const read = (middle: number): Uncertain => certain(within(middle, placing) + error);
      const [first, last, bucketFirst, bucketLast] = [read(a), read(b), read(c), read(d)];
      return loss(
        first,
        last,
        [bucketFirst, bucketLast],
        certain(within(1.8, 0.1)),
        certain(within(2.4, 0.4)),
        certain(within(seconds, 600)),
      ).value;
    });
    agree(answer, spread);
  });

  test("flow ratio of a lip out of level", () => {
    const ratio = (h: Uncertain, d: Uncertain): Uncertain => {
      const flow = taken(lipFlowRatio(h, d));
      if (flow.answer !== "runs all along") throw new Error("dry");
      return flow.ratio;
    };
    const answer = ratio(figure("head", 0.02, 0.001), figure("lip", 0.003, 0.0008));
    agree(
      answer,
      spreadOf(7, (within) => ratio(certain(within(0.02, 0.001)), certain(within(0.003, 0.0008))).value),
    );
  });

  test("evaporation of a day from typed weather", () => {
    const typed = { highest: [30, 1], lowest: [18, 1], humidity: [60, 8], wind: [3, 0.8], sun: [0.6, 0.1] } as const;
    const grass = (of: (name: keyof typeof typed) => Uncertain): Uncertain =>
      taken(
        evaporationOfDay({
          highest: of("highest"),
          lowest: of("lowest"),
          humidity: { kind: "mean", mean: of("humidity") },
          wind: of("wind"),
          windHeight: 10,
          sun: { kind: "share", share: of("sun") },
          latitude: 40,
          elevation: 200,
          dayOfYear: 200,
        }),
      ).grass;
    const answer = grass((name) => figure(name, typed[name][0], typed[name][1]));
    agree(
      answer,
      spreadOf(5, (within) => grass((name) => certain(within(typed[name][0], typed[name][1]))).value),
    );
  });
});
