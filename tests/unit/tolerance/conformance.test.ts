import { describe, expect, test } from "vitest";
import { conformanceProbability } from "#core/tolerance/index.ts";

describe("conformance probability", () => {
  test("one limit, two limits, none", () => {
    expect(conformanceProbability(10, 1, undefined, 10)).toEqual({ ok: true, value: 0.5 });
    const two = conformanceProbability(0, 1, -1.96, 1.96);
    expect(two.ok && two.value).toBeCloseTo(0.95, 4);
    expect(conformanceProbability(0, 1)).toEqual({ ok: true, value: 1 });
    const lower = conformanceProbability(11, 1, 10);
    expect(lower.ok && lower.value).toBeCloseTo(0.841345, 6);
  });

  test("without doubt it is yes or no, the limits included", () => {
    for (const [y, chance] of [
      [1, 1],
      [2, 1],
      [2.1, 0],
      [0.9, 0],
    ] as const) {
      expect(conformanceProbability(y, 0, 1, 2)).toEqual({ ok: true, value: chance });
    }
  });

  test.each([
    [Number.NaN, 1, 0, 1, "number-not-finite"],
    [0, Number.NaN, 0, 1, "number-not-finite"],
    [0, -1, 0, 1, "number-not-positive"],
    [0, 1, 2, 1, "limits-crossed"],
    [0, 1, Number.NaN, 1, "number-not-finite"],
  ] as const)("refuses %f, %f, %f, %f by name", (y, u, lower, upper, code) => {
    expect(conformanceProbability(y, u, lower, upper)).toMatchObject({ ok: false, refusal: { code } });
  });
});
