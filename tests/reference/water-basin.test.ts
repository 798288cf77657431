import { describe, test } from "vitest";
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
import { byHand, disagreement, published, same, source } from "./checked.ts";

function of<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`${outcome.refusal.code} at ${outcome.refusal.place}`);
  return outcome.value;
}
const gallonsOf = (cubicMetres: number): number => cubicMetres / CUBIC_METRES_PER_GALLON;
const poundsPerCubicFoot = (kilogramsPerCubicMetre: number): number => (kilogramsPerCubicMetre * feet(1) ** 3) / KILOGRAMS_PER_POUND;
const block = (area: number, depth: number) =>
  of(basinWater({ kind: "dimensions", area: certain(area), depth: certain(depth), displacedShare: certain(0) }));

describe("volumes of a basin in gallons", () => {
  test("a cubic foot holds 7.4805 gal", () => {
    const oas = source("Organization of American States, unit tables", "chapter 42", "seen");
    published(oas, "gal in a basin of a cubic foot", gallonsOf(block(feet(1) ** 2, feet(1)).gross.value), 7.4805, { digits: 4 });
  });

  test("1 in over 1 ft² 0.623377 gal, 1/4 in over 100 ft² 15.584 gal, 1 mm over 1 m² 1 L", () => {
    const over = byHand("depth × area, 231 in³");
    const inch = of(waterOverDepth(block(feet(1) ** 2, 1).perDepth, inches(1)));
    const quarter = of(waterOverDepth(block(100 * feet(1) ** 2, 1).perDepth, inches(1 / 4)));
    published(over, "gal an inch of a basin of 1 ft²", gallonsOf(inch.value), 0.623377, { digits: 6 });
    published(over, "gal over 1/4 in of a basin of 100 ft²", gallonsOf(quarter.value), 15.584, { digits: 3 });
    published(over, "L of a basin of 1 m², 1 mm deep", 1000 * block(squareMetres(1), 0.001).gross.value, 1, { digits: 12 });
  });

  test("a round basin 4 ft across and 2 ft deep: 188 gal", () => {
    const area = of(planArea({ kind: "round", diameter: certain(feet(4)) }));
    const water = of(basinWater({ kind: "dimensions", area, depth: certain(feet(2)), displacedShare: certain(0) }));
    published(byHand("π/4 d² h × 7.480519"), "gal", gallonsOf(water.gross.value), Math.PI * 8 * 7.480519, { digits: 3 });
  });

  test("contents of a pipe, 0.0408 d² gal a foot: a column of 1.610 in 0.10576, of 2.067 in 0.17432", () => {
    const chart = source("A conversion chart of a digital library", "pipe contents 0.0408 d²", "seen");
    for (const [bore, gallons] of [
      [1.61, 0.10576],
      [2.067, 0.17432],
    ] as const) {
      const area = of(planArea({ kind: "round", diameter: certain(inches(bore)) }));
      const perFoot = gallonsOf(block(area.value, feet(1)).gross.value);
      published(byHand("π/4 d² with 231 in³"), "gal a foot as a round basin", perFoot, gallons, { digits: 5 });
      published(chart, "gal a foot as a round basin", perFoot, 0.0408 * bore * bore, { share: 0.001 });
    }
  });
});

describe("weights", () => {
  test("the pound 0.45359237 kg, exact", () => {
    same(source("International pound", "agreement of 1959", "from memory"), "kg", KILOGRAMS_PER_POUND, 0.45359237);
  });

  test("water 62.4 lb/ft³ in common use; ours 62.30 ± 0.19 holds it and Crane TP-410's 995.7 kg/m³ at 30 °C", () => {
    const { value, halfWidth } = waterFactors.waterDensity;
    const [ours, ourDoubt] = [poundsPerCubicFoot(value), poundsPerCubicFoot(halfWidth)];
    const use = source("Weight of water", "62.4 lb/ft³", "common practice");
    published(byHand("998 kg/m³"), "lb/ft³", ours, 62.3, { digits: 1 });
    published(use, "lb/ft³", ours, 62.4, { absolute: ourDoubt });
    published(source("Crane TP-410", "example 7-1, water at 30 °C, quoted in CalebBell/fluids", "quoted"), "kg/m³", value, 995.7, {
      absolute: halfWidth,
    });
    disagreement(
      "weight of a cubic foot of water, lb",
      [
        [use, 62.4],
        [source("A conversion chart of a digital library", "weight of water", "seen"), 63.43],
      ],
      "62.3 ± 0.19; the chart's lies outside",
    );
  });

  test("a 45 in square basin of 75 lb rises on about 1.0 in", () => {
    const lift = of(liftDepth({ mass: certain(75 * KILOGRAMS_PER_POUND), area: certain(inches(45) ** 2) }));
    const archimedes = byHand("Archimedes, 75 / 62.4 / 14.06 ft²");
    published(archimedes, "in", lift.risesOn.value / inches(1), (75 / 62.4 / (3.75 * 3.75)) * 12, { digits: 2 });
    published(source("Float of an empty basin", "45 in square, 75 lb: about 1.0 in", "own"), "in", lift.risesOn.value / inches(1), 1.0, {
      digits: 1,
    });
  });

  test("stone 100 lb/ft³ as it lies, boulders 165 × 0.6", () => {
    const stone = source("Stone on a lid", "100 lb/ft³ as it lies; 165 lb/ft³ × 0.6 ± 25 %", "own");
    const cubicFoot = of(layerWeight({ depth: certain(feet(1)), area: certain(feet(1) ** 2) }));
    const cube = of(boulderWeight({ length: certain(feet(1)), width: certain(feet(1)), height: certain(feet(1)) }));
    const pounds = [cubicFoot.value / KILOGRAMS_PER_POUND, cube.value / KILOGRAMS_PER_POUND];
    published(stone, "lb of a cubic foot: layer, boulder", pounds, [100, 99], { digits: 9 });
    published(byHand("an ellipsoid fills π/6 of its block"), "share of the block", 0.6, Math.PI / 6, { share: 0.25 });
  });
});

describe("common practice (no source)", () => {
  test("open blocks leave about 0.95 for water, stone 0.30 to 0.40", () => {
    const practice = source("Void share", "open blocks, washed stone", "common practice");
    const { value, halfWidth } = waterFactors.stoneVoids;
    published(practice, "open blocks", waterFactors.blockVoids.value, 0.95, { digits: 9 });
    published(practice, "washed stone, least and most", [value - halfWidth, value + halfWidth], [0.3, 0.4], { digits: 9 });
  });

  test("a reserve of 2 to 3 times what is in transit", () => {
    const practice = source("Reserve", "2 to 3 times the water in transit", "common practice");
    const away = of(waterInTransit({ pieces: [{ length: certain(4), width: certain(0.5), depth: certain(0.025) }], pools: [] }));
    published(byHand("125 L over 4 × 0.5 × 0.025 m³"), "reserve ratio", of(reserve(certain(0.125), away.whole)).ratio.value, 2.5, {
      digits: 9,
    });
    const { value, halfWidth } = waterFactors.reserveRatio;
    published(practice, "least and most", [value - halfWidth, value + halfWidth], [2, 3], { digits: 9 });
  });

  test("an inch of rain on 80 ft² of liner brings 49.87 gal: it fills 4 in of 12.5 gal an inch to the brim", () => {
    const perDepth = certain((12.5 * CUBIC_METRES_PER_GALLON) / inches(1));
    const answer = of(overflow({ perDepth, freeboard: certain(inches(4)), linedArea: certain(80 * feet(1) ** 2) }));
    const rain = answer.answer === "room for rain" ? answer.rainToOverflow.value / inches(1) : Number.NaN;
    published(byHand("50 gal over 0.623377 × 80"), "in of rain", rain, 50 / 49.87, { digits: 3 });
  });

  test("open water loses about 1.05 of what grass does", () => {
    published(source("FAO-56", "table 12, Kc of shallow open water", "from memory"), "coefficient", waterFactors.openWater.value, 1.05, {
      digits: 9,
    });
  });

  test("still water indoors of 4.16 mm a day costs 20 ft² of it 2.0 gal a day", () => {
    const { still } = of(poolEvaporation({ water: certain(27), air: certain(27), humidity: certain(50), wind: certain(0) }));
    const ours = gallonsOf(still.value * 20 * feet(1) ** 2);
    published(byHand("4.16 mm × 20 ft²"), "gal a day", ours, 2.04, { digits: 2 });
  });
});
