import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, expanded, rectangular, type Uncertain, withSource } from "#core/doubt/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import { cordReach, coverDepthFigures, voltageDrop, voltageDropByArea, WIRING_CAUTION } from "#core/power/index.ts";
import { feet, inches, metres, toInches } from "#core/units/index.ts";

const answer = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
};
const codeOf = (outcome: Outcome<unknown>): string => (outcome.ok ? "ok" : outcome.refusal.code);
const asFeet = (length: Uncertain): number => toInches(metres(length.value)) / 12;
const run = (amperes: number, length: number) =>
  ({ current: certain(amperes), oneWay: certain(feet(length)), nominal: certain(120), wire: "14" }) as const;

describe("every figure of this room", () => {
  test("carries the caution, and none is a verdict", () => {
    const results = [
      answer(cordReach(certain(feet(20)), [certain(feet(5))], certain(feet(2)))),
      answer(voltageDrop(run(8, 100))),
      answer(voltageDropByArea(run(8, 100))),
      answer(coverDepthFigures(inches(12))),
      answer(coverDepthFigures()),
    ];
    for (const result of results) {
      expect(result.caution).toBe(WIRING_CAUTION);
      expect(JSON.stringify(Object.keys(result))).not.toMatch(/verdict|within|outside|against|reaches|enough/);
    }
  });
});

describe("cord", () => {
  test("leg by leg along its way, with the basin's depth and 3 ft to spare", () => {
    const legs = [certain(feet(4)), withSource(certain(feet(6)), "tape", rectangular(feet(0.5))), certain(0)] as const;
    const reach = answer(cordReach(certain(feet(15)), legs, certain(feet(2))));
    expect([asFeet(reach.way), asFeet(reach.slack), asFeet(reach.needed), asFeet(reach.left)]).toEqual(
      [10, 5, 15, 0].map((n) => expect.closeTo(n, 12)),
    );
    expect(expanded(reach.left)).toBeCloseTo((2 * feet(0.5)) / Math.sqrt(3), 12);
  });

  test("a longer way or a deeper basin leaves less", () => {
    const length = fc.double({ min: 0.1, max: 30, noNaN: true });
    fc.assert(
      fc.property(length, length, length, (cord, way, depth) => {
        const left = (w: number, d: number) => answer(cordReach(certain(cord), [certain(w)], certain(d))).left.value;
        expect(left(way + 0.1, depth)).toBeLessThan(left(way, depth));
        expect(left(way, depth + 0.1)).toBeLessThan(left(way, depth));
      }),
    );
  });
});

describe("voltage drop", () => {
  test("grows with run and current; at the noted run it is the noted share", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 20, noNaN: true }), fc.double({ min: 5, max: 300, noNaN: true }), (amperes, length) => {
        const here = answer(voltageDrop(run(amperes, length)));
        expect(answer(voltageDrop(run(amperes, length * 1.1))).drop.value).toBeGreaterThan(here.drop.value);
        expect(answer(voltageDrop(run(amperes * 1.1, length))).drop.value).toBeGreaterThan(here.drop.value);
        const noted = answer(voltageDrop({ ...run(amperes, 1), oneWay: here.runAtNotedShare }));
        expect(noted.share.value).toBeCloseTo(0.03, 9);
      }),
    );
  });

  test("a doubtful current makes a doubtful drop, and feet and metres agree", () => {
    const drop = answer(voltageDrop({ ...run(8, 100), current: withSource(certain(8), "plate", rectangular(0.8)) })).drop;
    expect(expanded(drop) / drop.value).toBeCloseTo(0.2 / Math.sqrt(3), 12);
    const noted = answer(voltageDrop({ ...run(8, 100), current: withSource(certain(8), "plate", rectangular(0.8)) })).runAtNotedShare;
    expect(noted.parts.get("plate")).toBeCloseTo((-noted.value * 0.1) / Math.sqrt(3), 9);
    const metric = answer(voltageDrop({ ...run(8, 100), oneWay: certain(30.48) })).drop;
    expect(metric.value).toBeCloseTo(drop.value, 12);
  });

  test("refuses senseless figures, and wire that the table lacks", () => {
    expect(codeOf(voltageDrop(run(0, 100)))).toBe("number-not-positive");
    expect(codeOf(voltageDrop(run(8, -1)))).toBe("number-not-positive");
    expect(codeOf(voltageDropByArea(run(8, 100), 0))).toBe("number-not-positive");
    expect(codeOf(voltageDrop({ ...run(8, 100), wire: "16", stranding: "solid" }))).toBe("wire-size-unknown");
    expect(codeOf(cordReach(certain(0), [certain(1)], certain(1)))).toBe("number-not-positive");
    expect(codeOf(cordReach(certain(5), [certain(-1)], certain(1)))).toBe("number-not-positive");
    expect(codeOf(coverDepthFigures(0))).toBe("number-not-positive");
    for (const odd of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(codeOf(voltageDrop(run(odd, 100)))).toBe("number-not-finite");
      expect(codeOf(cordReach(certain(odd), [certain(1)], certain(1)))).toBe("number-not-finite");
      expect(codeOf(coverDepthFigures(odd))).toBe("number-not-finite");
    }
  });
});
