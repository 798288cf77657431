import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, contributors, expanded } from "#core/doubt/index.ts";
import {
  binFillTime,
  binVolume,
  compareFlow,
  type Explanation,
  explainFlow,
  flowByCounter,
  flowByMeter,
  flowFromBin,
  flowFromDrawDown,
  gallonsPerMinute,
  operatingPoint,
  pumpCurve,
  timeByHand,
  toGallonsPerMinute,
} from "#core/plumbing/index.ts";
import { CUBIC_METRES_PER_GALLON, feet, inches } from "#core/units/index.ts";
import { answer, asGpm, codeOf, doubted, gpm, NOT_NUMBERS, parabola, section, system, toFeet } from "./assumed.ts";

const gallons = (n: number): number => n * CUBIC_METRES_PER_GALLON;

describe("flow as measured", () => {
  test("a 5 gal bucket at 50 gpm fills in 6 s: refused by name, with the bin that would do", () => {
    const refused = binFillTime(gallons(5), gallonsPerMinute(50));
    expect(refused).toMatchObject({ ok: false, refusal: { code: "flow-bin-too-fast", figures: { milliseconds: 6000, least: 20_000 } } });
    if (refused.ok) throw new Error("taken");
    expect(Number(refused.refusal.figures.enough) / 1e6 / CUBIC_METRES_PER_GALLON).toBeCloseTo(16.67, 2);
    expect(codeOf(flowFromBin(binVolume(gallons(5)), timeByHand(6)))).toBe("flow-bin-too-fast");
    expect(answer(binFillTime(gallons(20), gallonsPerMinute(50)))).toBeCloseTo(24, 9);
  });

  test("20 gal in 24 s is 50 gpm, and the mark brings more doubt than the watch", () => {
    const flow = answer(flowFromBin(binVolume(gallons(20)), timeByHand(24)));
    expect(asGpm(flow)).toBeCloseTo(50, 9);
    expect(contributors(flow)[0]?.source).toBe("bin/mark");
    expect(toGallonsPerMinute(expanded(flow))).toBeCloseTo((2 / Math.sqrt(3)) * 50 * Math.hypot(0.03, 0.5 / 24, 0.5 / 24), 6);
  });

  test("the basin's own draw-down: area × drop over time", () => {
    const flow = answer(flowFromDrawDown(certain(14 * feet(1) ** 2), doubted(inches(3), "drop", inches(1 / 8)), timeByHand(30)));
    expect(asGpm(flow)).toBeCloseTo((((14 * 144 * 3) / 231) * 60) / 30, 6);
    expect(contributors(flow)[0]?.source).toBe("drop");
  });

  test("a meter: shown, or counted between two readings of its count", () => {
    expect(expanded(answer(flowByMeter(gpm(50)))) / gallonsPerMinute(50)).toBeCloseTo((2 * 0.05) / Math.sqrt(3), 12);
    expect(asGpm(answer(flowByCounter(certain(gallons(1000)), certain(gallons(1100)), certain(120), 0.02)))).toBeCloseTo(50, 9);
    expect(codeOf(flowByCounter(certain(2), certain(1), certain(60)))).toBe("number-not-positive");
    expect(codeOf(flowByCounter(certain(1), certain(1), certain(60)))).toBe("number-not-positive");
  });

  test("shorter time for the same bin is more flow", () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 600, noNaN: true }), (seconds) => {
        const flow = (t: number) => answer(flowFromBin(binVolume(gallons(20)), timeByHand(t))).value;
        expect(flow(seconds + 1)).toBeLessThan(flow(seconds));
      }),
    );
  });

  test("refuses senseless figures", () => {
    expect(codeOf(flowFromBin(certain(0), certain(30)))).toBe("number-not-positive");
    expect(codeOf(flowFromBin(certain(1), certain(0)))).toBe("number-not-positive");
    expect(codeOf(flowFromDrawDown(certain(1), certain(-0.1), certain(30)))).toBe("number-not-positive");
    expect(codeOf(flowByMeter(gpm(0)))).toBe("number-not-positive");
    expect(codeOf(flowByMeter(gpm(1), -1))).toBe("number-not-positive");
    for (const odd of NOT_NUMBERS) {
      expect(codeOf(flowFromBin(certain(odd), certain(30)))).toBe("number-not-finite");
      expect(codeOf(binFillTime(1, odd))).toBe("number-not-finite");
      expect(codeOf(compareFlow(gpm(odd), gpm(50)))).toBe("number-not-finite");
    }
  });
});

describe("measured against expected", () => {
  const curve = answer(pumpCurve(parabola(24, 0.004)));
  const assumed = {
    staticHead: doubted(feet(6), "static head", feet(0.25)),
    sections: [
      {
        length: doubted(feet(60), "length", feet(4)),
        bore: doubted(inches(2.047), "bore", inches(0.026)),
        coefficient: doubted(150, "C", 10),
      },
    ],
  };
  const outcome = answer(operatingPoint(curve, assumed));
  if (outcome.kind !== "one point") throw new Error(outcome.kind);
  const { point } = outcome;
  const explained = (q: number): readonly Explanation[] => answer(explainFlow(curve, assumed, point, gpm(q)));

  test("agrees within the doubt of the difference, or says which way", () => {
    const against = (q: number) => answer(compareFlow(point.flow, doubted(gallonsPerMinute(q), "bin", gallonsPerMinute(1.5)))).verdict;
    expect(against(asGpm(point.flow) - 1)).toBe("agree within their doubt");
    expect(against(40)).toBe("less than expected");
    expect(against(75)).toBe("more than expected");
  });

  test("each cause, put into the system at the size it would have to have, gives the measured flow", () => {
    const flowOf = (changed: Partial<typeof assumed>): number => {
      const found = answer(operatingPoint(curve, { ...assumed, ...changed }));
      if (found.kind !== "one point") throw new Error(found.kind);
      return asGpm(found.point.flow);
    };
    const by = Object.fromEntries(explained(50).map((one) => [one.cause, one]));
    const [part] = assumed.sections;
    if (part === undefined) throw new Error("no section");
    expect(flowOf({ staticHead: certain(by["static head"]?.wouldBe ?? 0) })).toBeCloseTo(50, 6);
    expect(flowOf({ sections: [{ ...part, coefficient: certain(by.C?.wouldBe ?? 0) }] })).toBeCloseTo(50, 6);
    expect(flowOf({ sections: [{ ...part, bore: certain(part.bore.value * (by.blockage?.asBoreShare ?? 0)) }] })).toBeCloseTo(50, 6);
    const weaker = answer(pumpCurve(curve.points.map(({ flow, head }) => ({ flow, head: head * (by["wrong curve"]?.wouldBe ?? 0) }))));
    const found = answer(operatingPoint(weaker, assumed));
    expect(found.kind === "one point" && asGpm(found.point.flow)).toBeCloseTo(50, 6);
    expect(by.air?.wouldBe).toBeCloseTo(1 - 50 / asGpm(point.flow), 12);
  });

  test("ranked by how far off each would have to be; what cannot be stands last", () => {
    for (const q of [30, 45, 55]) {
      const list = explained(q);
      expect(list).toHaveLength(5);
      const could = list.filter(({ cannot }) => cannot === undefined).map(({ timesOrdinary }) => timesOrdinary);
      expect([...could].sort((a, b) => a - b)).toEqual(could);
    }
    const more = explained(70);
    expect(more.slice(-2).map(({ cannot }) => cannot)).toEqual([expect.any(String), expect.any(String)]);
    expect(
      more
        .filter(({ cannot }) => cannot === "wrong direction")
        .map(({ cause }) => cause)
        .sort(),
    ).toEqual(["air", "blockage"]);
  });

  test("a static head that nobody knows well comes first; known well, it goes back", () => {
    const place = (halfWidth: number): number =>
      answer(explainFlow(curve, { ...assumed, staticHead: doubted(feet(6), "static head", feet(halfWidth)) }, point, gpm(50))).findIndex(
        ({ cause }) => cause === "static head",
      );
    expect(place(6)).toBe(0);
    expect(place(0.1)).toBeGreaterThan(0);
  });

  test("no pipe, no C to explain with; beyond the card nothing is explained", () => {
    const bare = { staticHead: certain(feet(6)), sections: [] };
    const list = answer(explainFlow(curve, bare, point, gpm(50)));
    expect(list.find(({ cause }) => cause === "C")).toMatchObject({ cannot: "not possible" });
    expect(codeOf(explainFlow(curve, assumed, point, gpm(90)))).toBe("pump-beyond-curve");
    expect(codeOf(explainFlow(curve, assumed, point, gpm(0)))).toBe("number-not-positive");
    expect(codeOf(explainFlow(curve, system(6, section(60, 0)), point, gpm(50)))).toBe("number-not-positive");
    expect(toFeet(1)).toBeCloseTo(3.28084, 5);
  });
});
