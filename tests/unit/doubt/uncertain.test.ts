import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  add,
  certain,
  contributingRoles,
  contributors,
  expanded,
  magnitude,
  mean,
  ofReading,
  ofSetUp,
  scale,
  standardUncertainty,
  subtract,
  type Uncertain,
  uncertaintyOfDifference,
  withSource,
} from "#core/doubt/index.ts";

const of = (value: number, sources: Record<string, number>): Uncertain =>
  Object.entries(sources).reduce((x, [source, u]) => withSource(x, source, u), certain(value));

describe("a value with its doubt", () => {
  test("independent sources add in quadrature", () => {
    const sum = add(of(1, { tape: 3 }), of(2, { rod: 4 }));
    expect(sum.value).toBe(3);
    expect(standardUncertainty(sum)).toBe(5);
    expect(expanded(sum)).toBe(10);
  });

  test("a shared source cancels in a difference and doubles in a sum", () => {
    const [a, b] = [of(5, { line: 3 }), of(2, { line: 3 })];
    expect(standardUncertainty(subtract(a, b))).toBe(0);
    expect(subtract(a, b).parts.size).toBe(0);
    expect(standardUncertainty(add(a, b))).toBe(6);
  });

  test("the same source given twice is one cause", () => {
    expect(standardUncertainty(withSource(of(0, { line: 3 }), "line", 4))).toBe(7);
  });

  test("scaling by a negative number keeps the size of the doubt and turns its sign", () => {
    const x = scale(of(2, { line: 3 }), -2);
    expect(x.value).toBe(-4);
    expect(x.parts.get("line")).toBe(-6);
    expect(standardUncertainty(x)).toBe(6);
    expect(magnitude(x).value).toBe(4);
    expect(magnitude(x).parts.get("line")).toBe(6);
  });

  test("a mean keeps a shared source whole and divides its own by √n", () => {
    const x = mean([of(1, { a: 2, line: 3 }), of(2, { b: 2, line: 3 }), of(3, { c: 2, line: 3 }), of(6, { d: 2, line: 3 })]);
    expect(x.value).toBe(3);
    expect(x.parts.get("line")).toBe(3);
    expect(standardUncertainty(x)).toBeCloseTo(Math.sqrt(1 + 9), 14);
  });

  test("the largest contributors come first, with their share", () => {
    const x = of(0, { tape: 1, rod: 3, line: -2, stone: 1 });
    expect(contributors(x).map(({ source, u }) => [source, u])).toEqual([
      ["rod", 3],
      ["line", 2],
      ["stone", 1],
    ]);
    expect(contributors(x)[0]?.share).toBeCloseTo(9 / 15, 14);
    expect(contributors(certain(1))).toEqual([]);
  });

  test("contributing roles gather all readings", () => {
    const x = of(0, { [ofReading("a", "receiver")]: 3, [ofReading("b", "receiver")]: -4, [ofSetUp("s", "line")]: 2, other: 9 });
    expect(contributingRoles(x).map(({ source, u }) => [source, u])).toEqual([
      ["receiver", 5],
      ["line", 2],
    ]);
  });

  const quantity = fc
    .tuple(
      fc.double({ min: -10, max: 10, noNaN: true }),
      fc.dictionary(fc.constantFrom("p", "q", "r", "s"), fc.double({ min: -1, max: 1, noNaN: true })),
    )
    .map(([value, sources]) => of(value, sources));

  test("the order of what is averaged changes no bit", () => {
    fc.assert(
      fc.property(fc.array(quantity, { minLength: 2, maxLength: 6 }), fc.integer({ min: 1, max: 5 }), ([first, ...rest], turn) => {
        if (!first) return;
        const list = [first, ...rest];
        const k = turn % list.length;
        const [head, ...tail] = [...list.slice(k), ...list.slice(0, k)].reverse();
        if (!head) return;
        const [a, b] = [mean([first, ...rest]), mean([head, ...tail])];
        expect(b.value).toBe(a.value);
        expect(standardUncertainty(b)).toBe(standardUncertainty(a));
      }),
    );
  });

  test("adding and taking away again leaves the value and its doubt", () => {
    fc.assert(
      fc.property(quantity, quantity, (a, b) => {
        const back = subtract(add(a, b), b);
        expect(back.value).toBeCloseTo(a.value, 12);
        expect(standardUncertainty(back)).toBeCloseTo(standardUncertainty(a), 12);
      }),
    );
  });

  test("the doubt of a difference alone is, to the last bit, that of the difference", () => {
    fc.assert(
      fc.property(quantity, quantity, (a, b) => {
        expect(uncertaintyOfDifference(a, b)).toBe(standardUncertainty(subtract(a, b)));
      }),
    );
    expect(uncertaintyOfDifference(of(5, { line: 3, tape: 4 }), of(2, { line: 3 }))).toBe(4);
  });
});
