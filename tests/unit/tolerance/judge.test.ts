import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, withSource } from "#core/doubt/index.ts";
import {
  type DecisionRule,
  judge,
  leaveCore,
  type MeasuredAgainstLimits,
  MILLILITRES_PER_CUBIC_METRE,
  toInteger,
} from "#core/tolerance/index.ts";

function judged(figures: Omit<MeasuredAgainstLimits, "rule"> & { rule?: DecisionRule }) {
  const judgement = judge({ rule: "guarded", ...figures });
  if (!judgement.ok) throw new Error(judgement.refusal.code);
  return judgement.value;
}

describe("verdict from whole numbers", () => {
  test.each([
    // value, U, verdict with an upper limit of 100
    [90, 10, "within"],
    [90, 11, "too close to call"],
    [100, 0, "within"],
    [100, 1, "too close to call"],
    [101, 0, "outside"],
    [110, 10, "too close to call"],
    [111, 10, "outside"],
  ] as const)("%i ± %i under 100: %s", (value, expanded, verdict) => {
    expect(judged({ value, expanded, upper: 100 }).verdict).toBe(verdict);
    expect(judged({ value: -value, expanded, lower: -100 }).verdict).toBe(verdict);
  });

  test.each([
    [0, 10, "within"],
    [0, 11, "too close to call"],
    [21, 10, "outside"],
    [-21, 10, "outside"],
    [20, 10, "too close to call"],
    [0, 500, "too close to call"],
  ] as const)("%i ± %i between -10 and 10: %s", (value, expanded, verdict) => {
    expect(judged({ value, expanded, lower: -10, upper: 10 }).verdict).toBe(verdict);
  });

  test("simple acceptance takes the value alone", () => {
    expect(judged({ value: 100, expanded: 50, upper: 100, rule: "simple" }).verdict).toBe("within");
    expect(judged({ value: 101, expanded: 50, upper: 100, rule: "simple" }).verdict).toBe("outside");
  });

  test("says by how much, to which limit, and which U would settle it", () => {
    expect(judged({ value: 8, expanded: 1, lower: -10, upper: 10 })).toEqual({
      verdict: "within",
      side: "inside",
      nearest: "upper",
      by: 2,
    });
    expect(judged({ value: -13, expanded: 1, lower: -10, upper: 10 })).toEqual({
      verdict: "outside",
      side: "outside",
      nearest: "lower",
      by: 3,
    });
    expect(judged({ value: 8, expanded: 5, lower: -10, upper: 10 })).toMatchObject({ verdict: "too close to call", by: 2, needed: 2 });
    expect(judged({ value: 12, expanded: 5, lower: -10, upper: 10 })).toMatchObject({ verdict: "too close to call", by: 2, needed: 1 });
  });

  test.each([
    [{ value: Number.NaN, expanded: 1, upper: 1 }, "number-not-finite", "value"],
    [{ value: 1, expanded: Number.POSITIVE_INFINITY, upper: 1 }, "number-not-finite", "expanded"],
    [{ value: 1, expanded: -1, upper: 1 }, "number-not-positive", "expanded"],
    [{ value: 1, expanded: 1, upper: Number.NaN }, "number-not-finite", "limits/upper"],
    [{ value: 1, expanded: 1, lower: 5, upper: 4 }, "limits-crossed", "limits"],
    [{ value: 1, expanded: 1, aim: 3, lower: 4 }, "limits-crossed", "limits/aim"],
    [{ value: 1, expanded: 1, aim: 5, upper: 4 }, "limits-crossed", "limits/aim"],
    [{ value: 1, expanded: 1, aim: 5 }, "limits-missing", "limits"],
  ] as const)("refuses %j by name", (figures, code, place) => {
    expect(judge({ rule: "guarded", ...figures })).toMatchObject({ ok: false, refusal: { code, place } });
  });

  test("a fraction of a fixed unit is a bug of the caller", () => {
    expect(() => judge({ value: 0.5, expanded: 1, upper: 3, rule: "guarded" })).toThrow(TypeError);
  });

  const whole = fc.integer({ min: -100_000, max: 100_000 });
  const doubt = fc.integer({ min: 0, max: 50_000 });

  test("the needed U settles it, and one unit more does not", () => {
    fc.assert(
      fc.property(whole, doubt, whole, fc.nat(80_000), (value, expanded, lower, width) => {
        const limits = { lower, upper: lower + width };
        const first = judged({ value, expanded, ...limits });
        if (first.verdict !== "too close to call" || first.needed === undefined) return;
        expect(first.needed).toBeLessThan(expanded);
        expect(judged({ value, expanded: first.needed, ...limits }).verdict).not.toBe("too close to call");
        expect(judged({ value, expanded: first.needed + 1, ...limits }).verdict).toBe("too close to call");
      }),
    );
  });

  test("mirrored figures get the mirrored verdict; more doubt never turns within to outside", () => {
    fc.assert(
      fc.property(whole, doubt, doubt, whole, (value, expanded, more, upper) => {
        const { verdict } = judged({ value, expanded, upper });
        expect(judged({ value: -value, expanded, lower: -upper }).verdict).toBe(verdict);
        expect([verdict, "too close to call"]).toContain(judged({ value, expanded: expanded + more, upper }).verdict);
      }),
    );
  });
});

describe("leaving the core", () => {
  test("half away from zero, never a negative zero", () => {
    expect([0.5, -0.5, 1.49, -1.5, -0.2, 2.5].map(toInteger)).toEqual([1, -1, 1, -2, 0, 3]);
  });

  test("metres become micrometres, cubic metres millilitres, U = 2 u", () => {
    const x = withSource(certain(-0.0123456), "tape", 0.0007);
    expect(leaveCore(x)).toEqual({ value: -12346, expanded: 1400 });
    expect(leaveCore(withSource(certain(0.25), "tape", 0.001), MILLILITRES_PER_CUBIC_METRE)).toEqual({ value: 250_000, expanded: 2000 });
  });
});
