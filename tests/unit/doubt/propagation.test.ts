import { describe, expect, test } from "vitest";
import { firstOrder, product, quotient, standardUncertainty, throughSteps, type Uncertain } from "#core/doubt/index.ts";

const x: Uncertain = { value: 4, parts: new Map([["a", 0.2]]) };
const y: Uncertain = { value: 2, parts: new Map([["b", 0.1]]) };

describe("doubt through products and quotients", () => {
  test("independent: relative doubts in quadrature", () => {
    expect(standardUncertainty(product(x, y)) / 8).toBeCloseTo(Math.sqrt(0.05 ** 2 + 0.05 ** 2), 12);
    expect(standardUncertainty(quotient(x, y)) / 2).toBeCloseTo(Math.sqrt(0.05 ** 2 + 0.05 ** 2), 12);
  });

  test("shared: a figure over itself has no doubt, times itself twice its own", () => {
    expect(quotient(x, x)).toEqual({ value: 1, parts: new Map() });
    expect(product(x, x).parts.get("a")).toBeCloseTo(2 * 4 * 0.2, 12);
  });

  test("by steps as by slopes, to the second order; a figure without doubt is not stepped", () => {
    const stepped = throughSteps({ x, y }, (at) => at.x ** 1.5 / at.y);
    const sloped = firstOrder(4, [
      { times: (1.5 * 2) / 2, of: x },
      { times: -2, of: y },
    ]);
    expect(stepped.value).toBe(4);
    expect(stepped.parts.get("a")).toBeCloseTo(sloped.parts.get("a") ?? 0, 3);
    expect(Math.abs((stepped.parts.get("b") ?? 0) / (sloped.parts.get("b") ?? 0) - 1)).toBeLessThan(0.003);
    expect(throughSteps({ x: { value: 3, parts: new Map() } }, (at) => at.x).parts.size).toBe(0);
  });
});
