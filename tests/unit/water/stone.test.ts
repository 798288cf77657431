import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contributors, expanded } from "#core/doubt/index.ts";
import { boulderWeight, KILOGRAMS_PER_POUND, layerWeight, stoneAgainstLoad, stoneWeight } from "#core/water/index.ts";
import { certain, feetOf, inchesOf, pounds, squareFeet, taken } from "./given.ts";

const layer = { depth: inchesOf(6), area: squareFeet(20) };
const boulder = { length: feetOf(2), width: feetOf(1.5), height: feetOf(1) };

describe("stone on the lid", () => {
  test("6 in over 20 ft² is 1000 lb; a boulder of 2 by 1.5 by 1 ft 297 lb (worked by hand)", () => {
    expect(taken(layerWeight(layer)).value / KILOGRAMS_PER_POUND).toBeCloseTo(1000, 8);
    expect(taken(boulderWeight(boulder)).value / KILOGRAMS_PER_POUND).toBeCloseTo(297, 8);
  });

  test("25 % of a boulder, as the half-width of a rectangle", () => {
    const weight = taken(boulderWeight(boulder));
    expect(expanded(weight) / weight.value).toBeCloseTo((2 * 0.25) / Math.sqrt(3), 10);
    expect(contributors(weight).map(({ source }) => source)).toEqual(["factor:boulder-shape"]);
  });

  test("two boulders share their doubt: it adds in full", () => {
    const one = taken(stoneWeight({ layers: [], boulders: [boulder] }));
    const two = taken(stoneWeight({ layers: [], boulders: [boulder, boulder] }));
    expect(expanded(two.mass)).toBeCloseTo(2 * expanded(one.mass), 9);
    expect(two.heaviestBoulder?.value).toBe(one.mass.value);
    const small = { ...boulder, height: feetOf(0.5) };
    for (const boulders of [
      [small, boulder],
      [boulder, small],
    ]) {
      expect(taken(stoneWeight({ layers: [], boulders })).heaviestBoulder?.value).toBe(one.mass.value);
    }
  });

  test("no load stated: ask the maker, with the weight all the same", () => {
    const answer = taken(stoneAgainstLoad({ layers: [layer], boulders: [] }));
    expect(answer.answer).toBe("ask the maker");
    expect(answer.mass.value / KILOGRAMS_PER_POUND).toBeCloseTo(1000, 8);
    expect("room" in answer).toBe(false);
  });

  test("against a load in all and per area", () => {
    const inAll = taken(stoneAgainstLoad({ layers: [layer], boulders: [boulder] }, { kind: "in all", mass: pounds(1500) }));
    expect(inAll.answer === "compared" && inAll.room.value / KILOGRAMS_PER_POUND).toBeCloseTo(203, 8);
    const perArea = { kind: "per area", massPerArea: certain(pounds(60).value / squareFeet(1).value), lidArea: squareFeet(20) } as const;
    const over = taken(stoneAgainstLoad({ layers: [layer], boulders: [boulder] }, perArea));
    expect(over.answer === "compared" && over.room.value / KILOGRAMS_PER_POUND).toBeCloseTo(-97, 8);
  });

  test("the three sizes of a boulder may be turned about; deeper and wider layers weigh more", () => {
    const size = fc.double({ min: 0.05, max: 2, noNaN: true });
    fc.assert(
      fc.property(size, size, size, (a, b, c) => {
        const weigh = (length: number, width: number, height: number): number =>
          taken(boulderWeight({ length: certain(length), width: certain(width), height: certain(height) })).value;
        expect(weigh(c, a, b)).toBeCloseTo(weigh(a, b, c), 6);
        const lay = (depth: number, area: number): number => taken(layerWeight({ depth: certain(depth), area: certain(area) })).value;
        expect(lay(a + c, b)).toBeGreaterThan(lay(a, b));
        expect(lay(a, b + c)).toBeGreaterThan(lay(a, b));
      }),
    );
  });

  test.each([
    [{ layers: [{ ...layer, depth: certain(-0.1) }], boulders: [] }, "number-not-positive", "layer/depth"],
    [{ layers: [{ ...layer, area: certain(0) }], boulders: [] }, "number-not-positive", "layer/area"],
    [{ layers: [], boulders: [{ ...boulder, height: certain(0) }] }, "number-not-positive", "boulder/height"],
    [{ layers: [], boulders: [{ ...boulder, width: certain(Number.NaN) }] }, "number-not-finite", "boulder/width"],
  ] as const)("refuses by name %#", (stone, code, place) => {
    expect(stoneAgainstLoad(stone)).toMatchObject({ ok: false, refusal: { code, place } });
  });

  test("refuses a load of nothing: none stated is absent, not zero", () => {
    const stone = { layers: [layer], boulders: [] };
    expect(stoneAgainstLoad(stone, { kind: "in all", mass: certain(0) })).toMatchObject({ refusal: { place: "load/mass" } });
    const perArea = { kind: "per area", massPerArea: certain(100), lidArea: certain(-1) } as const;
    expect(stoneAgainstLoad(stone, perArea)).toMatchObject({ refusal: { place: "load/lidArea" } });
  });
});
