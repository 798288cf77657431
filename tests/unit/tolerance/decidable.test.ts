import { describe, expect, test } from "vitest";
import { normalDensity } from "#core/statistics/index.ts";
import { type AimedLimits, canBeDecided, type DecisionRule, judge, type Limits, roomFactors } from "#core/tolerance/index.ts";

function decided(figures: AimedLimits) {
  const answer = canBeDecided(figures);
  if (!answer.ok) throw new Error(answer.refusal.code);
  return answer.value;
}

/** Chance that `judge` says within when work lies exactly on its aim of 0 and readings scatter normally with u = 10 000 units. */
function chanceOfWithin(limits: Limits, rule: DecisionRule): number {
  const u = 10_000;
  let chance = 0;
  for (let z = -6; z <= 6; z += 0.001) {
    const judgement = judge({ value: Math.round(z * u), expanded: 2 * u, rule, ...limits });
    if (judgement.ok && judgement.value.verdict === "within") chance += normalDensity(z) * 0.001;
  }
  return chance;
}

describe("can it be decided?", () => {
  test("with exactly the room that the factors ask for, 95 cases of 100 come out within", () => {
    const at = (factor: number) => Math.round(factor * 10_000);
    expect(chanceOfWithin({ upper: at(roomFactors.oneSided) }, "guarded")).toBeCloseTo(0.95, 2);
    expect(chanceOfWithin({ lower: -at(roomFactors.twoSided), upper: at(roomFactors.twoSided) }, "guarded")).toBeCloseTo(0.95, 2);
    expect(chanceOfWithin({ upper: at(roomFactors.simple) }, "simple")).toBeCloseTo(0.95, 2);
    expect(chanceOfWithin({ upper: at(3.5) }, "guarded")).toBeLessThan(0.94);
    expect(chanceOfWithin({ lower: -at(3.65), upper: at(3.65) }, "guarded")).toBeLessThan(0.91);
  });

  test("under simple acceptance 1.65 u each way is 95 of 100 for one limit, 90 for two", () => {
    expect(chanceOfWithin({ lower: -16_500, upper: 16_500 }, "simple")).toBeCloseTo(0.9, 2);
  });

  test("one-sided, two-sided, simple", () => {
    expect(decided({ aim: 0, upper: 3.65, u: 1, rule: "guarded" })).toEqual({
      decidable: true,
      room: 3.65,
      needed: 3.65,
      largestUncertainty: 1,
    });
    expect(decided({ aim: 0, lower: -3.9, upper: 3.9, u: 1, rule: "guarded" })).toMatchObject({ decidable: false, needed: 3.96 });
    expect(decided({ aim: 0, lower: -4, upper: 4, u: 1, rule: "guarded" }).decidable).toBe(true);
    expect(decided({ aim: 0, lower: -2, upper: 2, u: 1, rule: "simple" })).toMatchObject({ decidable: true, needed: 1.65 });
  });

  test("an aim off the middle has the room of its nearer limit; on a limit it has none", () => {
    expect(decided({ aim: 3, lower: -4, upper: 4, u: 0.1, rule: "guarded" }).room).toBe(1);
    expect(decided({ aim: 4, lower: 4, u: 0.1, rule: "guarded" }).decidable).toBe(false);
  });

  test.each([
    [{ aim: Number.NaN, upper: 1, u: 1 }, "number-not-finite"],
    [{ aim: 0, upper: 1, u: Number.NaN }, "number-not-finite"],
    [{ aim: 0, upper: 1, u: -1 }, "number-not-positive"],
    [{ aim: 0, lower: 2, upper: 1, u: 1 }, "limits-crossed"],
    [{ aim: 2, upper: 1, u: 1 }, "limits-crossed"],
    [{ aim: 0, u: 1 }, "limits-missing"],
  ] as const)("refuses %j by name", (figures, code) => {
    expect(canBeDecided({ rule: "guarded", ...figures })).toMatchObject({ ok: false, refusal: { code } });
  });
});
