import fc from "fast-check";
import { expect, it } from "vitest";
import type { Refusal } from "#core/outcome/index.ts";
import { dayOrders, type LengthUnit, readDay, readLength, readQuantity } from "#core/reading/index.ts";
import { makeSayer } from "#core/record/index.ts";
import { daysInMonth, type QuantityKind } from "#core/units/index.ts";
import { damagedText } from "../../helpers/damage.ts";
import { fuzz, patience } from "../../helpers/fuzz.ts";

/** What a crew types, in English and Spanish, as the tests of readings have it word for word. */
const lengths = [
  `5' 3 3/16"`,
  "5 ft 3 in",
  "5-3/16",
  "23 3/8 in",
  "10½ pulgadas",
  "3 pies 2 pulgadas",
  "3’ 2½”",
  "1,5 m",
  "254.0 mm",
  "-1/4",
  "+ 2 cm",
  "12.75 in.",
  "„5“",
  "0",
];
const quantities: readonly (readonly [QuantityKind, string, readonly string[]])[] = [
  ["area", "ft²", ["12 sq. ft", "3.5 m²", "40 ft2"]],
  ["volume", "gal", ["120 gal", "55 galones", "400 litros"]],
  ["flow", "gpm", ["20 gpm", "1 200 gph", "75 L/min"]],
  ["flowPerLength", "gph/in", ["150 gph/in", "40 l/min/m"]],
  ["velocity", "ft/s", ["5 ft/s", "2 km/h"]],
  ["angle", "°", ["39.7392", "-104.9903°", "12 grados"]],
  ["radiation", "MJ/m²", ["22.1 MJ/m²", "6 kWh/m2"]],
  ["duration", "min", ["2 h 15", "1:30:00", "45 segundos", "2 d 3 h", "1.5 horas"]],
  ["instant", "", ["2026-05-04T07:30-05:00", "2026-05-04T12:30:15.250Z"]],
  ["temperature", "°F", ["64 °F", "-5 °C", "18º C", "70"]],
  ["power", "W", ["300 W", "0.4 kW"]],
  ["voltage", "V", ["118.5 V", "120 voltios"]],
  ["current", "A", ["3.2 amps", "2 A"]],
  ["mass", "lb", ["75 lbs", "34 kilos"]],
  ["count", "stones", ["3", "12 stones"]],
  ["ratio", "%", ["40 %", "0.4", "250 ppm"]],
];
const days = [
  "2026-05-04",
  "5/6/2026",
  "5.6.26",
  "5-Jun-26",
  "June 5, 2026",
  "5 de junio de 2026",
  "46023.5",
  "4/5/2026 7:30 a. m.",
  "2026-05-04T17:05:00",
];
const pieces = [..."0123456789/.,:-'\"°²½⅓⅟ "].concat(
  "ft",
  "in",
  "pies",
  "h",
  "min",
  "de ",
  "am",
  "p.m.",
  "1/2",
  "T",
  "Z",
  "+05:00",
  "junio",
);

const say = (["en", "es"] as const).map((language) => makeSayer({ language, units: "inch", zone: "UTC" }));

/** Whoever typed it is told in his language where to look, without half a sign. */
function told(refusal: Refusal, typed: string): Refusal {
  expect(refusal.code).toMatch(/^reading-/);
  expect(refusal.column ?? 1).toBeLessThanOrEqual(typed.length + 1);
  for (const sayer of say) {
    const sentence = sayer.refusal(refusal);
    expect(sentence).toMatch(/^\S.{10,600}$/su);
    // what was typed is quoted, and may be anything
    expect(sentence.replaceAll(String(refusal.figures.found ?? "\u0000"), "")).not.toMatch(/undefined|NaN|\[object|\{\w+\}/);
  }
  expect(
    Object.values(refusal.figures).every((figure) => typeof figure === "number" || (figure.isWellFormed() && figure.length <= 200)),
  ).toBe(true);
  return refusal;
}

it(
  "lengths",
  async () => {
    const unit = fc.constantFrom<LengthUnit>("in", "ft", "ft-in", "mm", "cm", "m");
    await fuzz({
      kind: "typed lengths",
      inputs: fc.tuple(damagedText(lengths, pieces), unit, fc.boolean()),
      read([typed, expected, signed]) {
        const outcome = readLength(typed, expected, { signed });
        if (!outcome.ok) return told(outcome.refusal, typed);
        const { micrometres, resolution } = outcome.value;
        expect(outcome.value.typed).toBe(typed);
        expect([Number.isSafeInteger(micrometres), Number.isSafeInteger(resolution) && resolution >= 1]).toEqual([true, true]);
        expect(Math.abs(micrometres)).toBeLessThanOrEqual(1_000_000_000);
        if (!signed) expect(micrometres).toBeGreaterThanOrEqual(0);
        return "taken";
      },
      least: { taken: 0.2, refused: 0.2 },
    });
  },
  patience(5),
);

it(
  "quantities, durations and instants",
  async () => {
    const typed = fc.oneof(...quantities.map(([kind, unit, texts]) => damagedText(texts, pieces).map((text) => ({ kind, unit, text }))));
    await fuzz({
      kind: "typed quantities",
      inputs: typed,
      read({ kind, unit, text }) {
        const outcome = readQuantity(text, { kind, unit, place: "reading" });
        if (!outcome.ok) return told(outcome.refusal, text);
        const { value, resolution } = outcome.value;
        expect(outcome.value).toMatchObject({ kind, typed: text });
        expect([Number.isSafeInteger(value), Number.isSafeInteger(resolution) && resolution >= 1]).toEqual([true, true]);
        return "taken";
      },
      least: { taken: 0.2, refused: 0.2 },
    });
  },
  patience(5),
);

it(
  "days",
  async () => {
    await fuzz({
      kind: "typed days",
      inputs: fc.tuple(damagedText(days, pieces), fc.constantFrom(...dayOrders)),
      read([typed, order]) {
        const outcome = readDay(typed, { order, place: "start" });
        if (!outcome.ok) return told(outcome.refusal, typed);
        const { year, month, day, hour, minute } = outcome.value;
        expect(month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month)).toBe(true);
        expect(hour >= 0 && hour <= 23 && minute >= 0 && minute <= 59 && year >= 1900 && year <= 9999).toBe(true);
        return "taken";
      },
      least: { taken: 0.1, refused: 0.2 },
    });
  },
  patience(5),
);
