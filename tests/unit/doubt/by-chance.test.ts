import { describe, expect, test } from "vitest";
import { standardUncertainty, type Uncertain } from "#core/doubt/index.ts";
import { agrees, byChance, type DoubtCase, draws, isStraight } from "../../helpers/doubt/by-chance.ts";
import { heightCases } from "../../helpers/doubt/cases-heights.ts";
import { lineCases } from "../../helpers/doubt/cases-line.ts";
import { productOfThree, waterCases } from "../../helpers/doubt/cases-water.ts";
import { given } from "../../helpers/doubt/given.ts";

const DRAWS = 100_000;
const yes = { mean: true, u: true, covers: true };
const cases = [...waterCases, ...lineCases, ...heightCases];

/** `npm run long` does the same with more draws and seeds, and prints the figures. */
describe("U of every derived figure, first order against chance (GUM Supplement 1)", () => {
  test.each(cases.map((one) => [one.name, one] as const))("%s", { timeout: 60_000 }, (_, one) => {
    const found = byChance(one, Math.round(DRAWS / (one.slow ?? 1)), 3);
    expect(found.undrawn).toEqual([]);
    expect(found.u).toBeGreaterThan(0);
    expect(agrees(one, found)).toEqual(yes);
    // with fewer draws chance hides the bend
    if (one.bent && one.slow === undefined) expect(isStraight(found), one.bent.why).toBe(false);
  });
});

describe("the check itself", () => {
  test("a product of three: variance (2² + σ²)(3² + σ²)(5² + σ²) − 30², σ² = 0.2²/3", () => {
    const { deviation, mean } = byChance(productOfThree, DRAWS, 11);
    const variance = 0.04 / 3;
    const exact = Math.sqrt((4 + variance) * (9 + variance) * (25 + variance) - 900);
    expect(Math.abs(deviation / exact - 1)).toBeLessThan(0.01);
    expect(Math.abs(mean - 30)).toBeLessThan(0.02 * exact);
  });

  test("a source that two inputs share is drawn once: their difference does not move", () => {
    const next = draws({ a: given("tape", 5, 1), b: given("tape", 2, 1) }, 1);
    for (let i = 0; i < 20; i++) {
      const { a, b } = next();
      expect(a.value - b.value).toBeCloseTo(3, 12);
    }
  });

  const tampered = (change: (answer: Uncertain) => Uncertain): DoubtCase => ({
    ...productOfThree,
    figure: (inputs) => change(productOfThree.figure(inputs)),
    drawn: (inputs) => productOfThree.figure(inputs).value,
  });

  test("a doubt that is 3 % too large or too small is found, and so is a value off by a twentieth of u", () => {
    const scaled = (by: number) =>
      tampered(({ value, parts }) => ({ value, parts: new Map([...parts].map(([source, part]) => [source, by * part])) }));
    const verdict = (one: DoubtCase) => agrees(one, byChance(one, DRAWS, 5));
    expect(verdict(productOfThree)).toEqual(yes);
    expect(verdict(scaled(1.03)).u).toBe(false);
    expect(verdict(scaled(0.97)).u).toBe(false);
    expect(verdict(tampered((x) => ({ ...x, value: x.value + 0.05 * standardUncertainty(x) }))).mean).toBe(false);
  });

  test("a source that no input brings is named", () => {
    const { undrawn } = byChance(
      tampered((x) => ({ ...x, parts: new Map([...x.parts, ["factor:of its own", 1]]) })),
      10,
      1,
    );
    expect(undrawn).toEqual(["factor:of its own"]);
  });
});
