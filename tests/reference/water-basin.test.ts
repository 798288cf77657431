import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import { CUBIC_METRES_PER_GALLON, feet, inches, squareMetres } from "#core/units/index.ts";
import {
  basinWater,
  boulderWeight,
  KILOGRAMS_PER_POUND,
  layerWeight,
  liftDepth,
  overflow,
  planArea,
  poolEvaporation,
  reserve,
  waterFactors,
  waterInTransit,
  waterOverDepth,
} from "#core/water/index.ts";

function of<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`${outcome.refusal.code} at ${outcome.refusal.place}`);
  return outcome.value;
}
const gallonsOf = (cubicMetres: number): number => cubicMetres / CUBIC_METRES_PER_GALLON;
const poundsPerCubicFoot = (kilogramsPerCubicMetre: number): number => (kilogramsPerCubicMetre * feet(1) ** 3) / KILOGRAMS_PER_POUND;
const block = (area: number, depth: number) =>
  of(basinWater({ kind: "dimensions", area: certain(area), depth: certain(depth), displacedShare: certain(0) }));

describe("volumes of a basin in gallons (231 in³ exact; SP 811 appendix B, quoted)", () => {
  test("a cubic foot holds 7.4805 gal (OAS table, SEEN)", () => {
    expect(gallonsOf(block(feet(1) ** 2, feet(1)).gross.value)).toBeCloseTo(7.4805, 4);
  });

  test("1 in over 1 ft² 0.623377 gal, 1/4 in over 100 ft² 15.584 gal, 1 mm over 1 m² 1 L (worked out)", () => {
    expect(gallonsOf(of(waterOverDepth(block(feet(1) ** 2, 1).perDepth, inches(1))).value)).toBeCloseTo(0.623377, 6);
    expect(gallonsOf(of(waterOverDepth(block(100 * feet(1) ** 2, 1).perDepth, inches(1 / 4))).value)).toBeCloseTo(15.584, 3);
    expect(block(squareMetres(1), 0.001).gross.value).toBeCloseTo(0.001, 15);
  });

  test("charts in circulation are wrong: 1729 in³ to the cubic foot, 0.7616 m³ to the cubic yard (right 1728, 0.7646)", () => {
    const cubicFoot = block(feet(1) ** 2, feet(1)).gross.value;
    expect(cubicFoot / inches(1) ** 3).toBeCloseTo(1728, 8);
    expect(block(feet(3) ** 2, feet(3)).gross.value).toBeCloseTo(0.7646, 4);
  });

  test("a round basin 4 ft across and 2 ft deep: 188 gal (π/4 d² h × 7.4805, worked out)", () => {
    const area = of(planArea({ kind: "round", diameter: certain(feet(4)) }));
    const water = of(basinWater({ kind: "dimensions", area, depth: certain(feet(2)), displacedShare: certain(0) }));
    expect(gallonsOf(water.gross.value)).toBeCloseTo(Math.PI * 8 * 7.480519, 3);
  });

  test("contents of a pipe, 0.0408 d² gal a foot (conversion chart, SEEN): a column of 1.610 in 0.10576, of 2.067 in 0.17432", () => {
    for (const [bore, gallons] of [
      [1.61, 0.10576],
      [2.067, 0.17432],
    ] as const) {
      const area = of(planArea({ kind: "round", diameter: certain(inches(bore)) }));
      const perFoot = gallonsOf(block(area.value, feet(1)).gross.value);
      expect(perFoot).toBeCloseTo(gallons, 5);
      expect(Math.abs(perFoot / (0.0408 * bore * bore) - 1)).toBeLessThan(0.001);
    }
  });
});

describe("weights", () => {
  test("the pound 0.45359237 kg (1959, exact)", () => expect(KILOGRAMS_PER_POUND).toBe(0.45359237));

  test("water 62.4 lb/ft³ in common use; ours 62.30 ± 0.19 holds it and Crane TP-410's 995.7 kg/m³ at 30 °C (SEEN, quoted)", () => {
    const { value, halfWidth } = waterFactors.waterDensity;
    expect(poundsPerCubicFoot(value)).toBeCloseTo(62.3, 1);
    expect(Math.abs(poundsPerCubicFoot(value) - 62.4)).toBeLessThan(poundsPerCubicFoot(halfWidth));
    expect(Math.abs(value - 995.7)).toBeLessThan(halfWidth);
    // A chart in circulation has 63.43: outside.
    expect(63.43 - poundsPerCubicFoot(value)).toBeGreaterThan(poundsPerCubicFoot(halfWidth));
  });

  test("a 45 in square basin of 75 lb rises on about 1.0 in (own; 75 / 62.4 / 14.06 ft²)", () => {
    const lift = of(liftDepth({ mass: certain(75 * KILOGRAMS_PER_POUND), area: certain(inches(45) ** 2) }));
    expect(lift.risesOn.value / inches(1)).toBeCloseTo((75 / 62.4 / (3.75 * 3.75)) * 12, 2);
    expect(lift.risesOn.value / inches(1)).toBeCloseTo(1.0, 1);
  });

  test("stone 100 lb/ft³ as it lies, boulders 165 × 0.6 (own, from memory)", () => {
    const cubicFoot = of(layerWeight({ depth: certain(feet(1)), area: certain(feet(1) ** 2) }));
    expect(cubicFoot.value / KILOGRAMS_PER_POUND).toBeCloseTo(100, 9);
    const cube = of(boulderWeight({ length: certain(feet(1)), width: certain(feet(1)), height: certain(feet(1)) }));
    expect(cube.value / KILOGRAMS_PER_POUND).toBeCloseTo(99, 9);
    // An ellipsoid of the same three sizes fills π/6 = 0.52 of their block: inside the 25 %.
    expect(Math.abs(Math.PI / 6 / 0.6 - 1)).toBeLessThan(0.25);
  });
});

describe("common practice (no source)", () => {
  test("open blocks leave about 0.95 for water, stone 0.30 to 0.40", () => {
    expect(waterFactors.blockVoids.value).toBe(0.95);
    const { value, halfWidth } = waterFactors.stoneVoids;
    expect([value - halfWidth, value + halfWidth].map((share) => Math.round(share * 100))).toEqual([30, 40]);
  });

  test("a reserve of 2 to 3 times what is in transit", () => {
    const away = of(waterInTransit({ pieces: [{ length: certain(4), width: certain(0.5), depth: certain(0.025) }], pools: [] }));
    const held = of(reserve(certain(0.125), away.whole));
    expect(held.ratio.value).toBeCloseTo(2.5, 10);
    expect(waterFactors.reserveRatio).toMatchObject({ value: 2.5, halfWidth: 0.5, source: "common practice" });
  });

  test("an inch of rain on 80 ft² of liner brings 49.87 gal (0.623377 × 80, worked out): it fills 4 in of 12.5 gal an inch to the brim", () => {
    const perDepth = certain((12.5 * CUBIC_METRES_PER_GALLON) / inches(1));
    const answer = of(overflow({ perDepth, freeboard: certain(inches(4)), linedArea: certain(80 * feet(1) ** 2) }));
    expect(answer.answer === "room for rain" && answer.rainToOverflow.value / inches(1)).toBeCloseTo(50 / 49.87, 3);
  });

  test("still water indoors of 4.16 mm a day costs 20 ft² of it 2.0 gal a day (ASHRAE × 0.74, worked out)", () => {
    const { still } = of(poolEvaporation({ water: certain(27), air: certain(27), humidity: certain(50), wind: certain(0) }));
    expect(still.value * 1000).toBeCloseTo(4.16, 2);
    expect(gallonsOf(still.value * 20 * feet(1) ** 2)).toBeCloseTo(2.04, 2);
  });
});
