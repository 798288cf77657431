import { describe, expect, it } from "vitest";
import type { RefusalCode } from "#core/outcome/index.ts";
import { type QuantityReading, readQuantity } from "#core/reading/index.ts";
import type { QuantityKind } from "#core/units/index.ts";

const read = (typed: string, kind: QuantityKind, unit: string, signed?: boolean): QuantityReading => {
  const outcome = readQuantity(typed, { kind, unit, ...(signed === undefined ? {} : { signed }) });
  if (!outcome.ok) throw new Error(`${typed}: ${JSON.stringify(outcome.refusal)}`);
  return outcome.value;
};

describe("quantities in the fixed unit of their kind", () => {
  it.each<readonly [string, QuantityKind, string, number, number, string]>([
    // NIST SP 811 App. B: 1 gal = 3.785411784 L, 1 lb = 0.45359237 kg, 1 ft² = 0.09290304 m²
    ["20", "volume", "gal", 75_708, 3_785, "gal"],
    ["17.5 gal", "volume", "L", 66_245, 379, "gal"],
    ["2 1/2 gallons", "volume", "L", 9_464, 1_893, "gal"],
    ["20 L", "volume", "gal", 20_000, 1_000, "L"],
    ["20 litros", "volume", "gal", 20_000, 1_000, "L"],
    ["100 lb", "mass", "kg", 45_359, 454, "lb"],
    ["45,5", "mass", "kg", 45_500, 100, "kg"],
    ["10 ft²", "area", "m2", 9_290, 929, "ft²"],
    ["10 sq. ft", "area", "m2", 9_290, 929, "ft²"],
    ["10 ft2", "area", "m2", 9_290, 929, "ft²"],
    // by hand: 68 °F = 20 °C, 50 °F = 10 °C, −40 °F = −40 °C, 1 °F = 5/9 °C
    ["68", "temperature", "°F", 20_000, 556, "°F"],
    ["68°", "temperature", "F", 20_000, 556, "°F"],
    ["50 ° F", "temperature", "C", 10_000, 556, "°F"],
    ["-40 °F", "temperature", "C", -40_000, 556, "°F"],
    ["31 ºF", "temperature", "C", -556, 556, "°F"],
    ["20,5 c", "temperature", "F", 20_500, 100, "°C"],
    ["120", "power", "W", 120_000, 1_000, "W"],
    ["0.12 kW", "power", "W", 120_000, 10_000, "kW"],
    ["12", "count", "1", 12, 1, "1"],
    ["12 Shims", "count", "shims", 12, 1, "1"],
    ["2", "ratio", "%", 20_000, 10_000, "%"],
    ["2.5%", "ratio", "%", 25_000, 1_000, "%"],
    ["3 1/2", "length", "ft-in", 88_900, 12_700, "in"],
  ])("%s as %s, %s expected", (typed, kind, unit, value, resolution, written) => {
    expect(read(typed, kind, unit)).toMatchObject({ kind, value, resolution, typed, unit: written });
  });

  it("keeps the marks of a length, and only of a length", () => {
    expect(read("3 1/2", "length", "in").marks).toBe(2);
    expect("marks" in read("89", "length", "mm")).toBe(false);
    expect("marks" in read("2 1/2", "volume", "gal")).toBe(false);
  });
});

describe("durations", () => {
  it.each<readonly [string, string, number, number]>([
    ["30", "min", 1_800_000, 60_000],
    ["30 min", "h", 1_800_000, 60_000],
    ["30 min.", "h", 1_800_000, 60_000],
    ["2 h", "min", 7_200_000, 3_600_000],
    ["1:30", "h", 5_400_000, 60_000],
    ["1:30:00", "min", 5_400_000, 1_000],
    ["2 h 15 min", "min", 8_100_000, 60_000],
    ["2h15", "min", 8_100_000, 60_000],
    ["2 hrs 15 minutes", "min", 8_100_000, 60_000],
    ["2 horas 15 minutos", "min", 8_100_000, 60_000],
    ["1 day", "h", 86_400_000, 86_400_000],
    ["1 día 6 h", "h", 108_000_000, 3_600_000],
    ["1 1/2 h", "min", 5_400_000, 1_800_000],
    ["1.5 h", "min", 5_400_000, 360_000],
    ["½ h", "min", 1_800_000, 1_800_000],
    ["45 s", "min", 45_000, 1_000],
    ["1 min 30.5 s", "min", 90_500, 100],
  ])("%s, %s expected", (typed, unit, value, resolution) => {
    expect(read(typed, "duration", unit)).toMatchObject({ value, resolution });
  });

  it("`1:30` is refused where it may be minutes and seconds, and both are named", () => {
    expect(readQuantity("1:30", { kind: "duration", unit: "min" })).toMatchObject({
      ok: false,
      refusal: { code: "reading-not-understood", column: 1, figures: { found: "1:30", hours: "1 h 30 min", minutes: "1 min 30 s" } },
    });
  });
});

describe("instants", () => {
  it.each<readonly [string, number, number]>([
    ["1970-01-01T00:00Z", 0, 60_000],
    ["2026-11-25T14:05:30+00:00", Date.UTC(2026, 10, 25, 14, 5, 30), 1_000],
    ["2026-11-25T14:05:30.25-07:00", Date.UTC(2026, 10, 25, 21, 5, 30, 250), 10],
    ["2024-02-29T23:30+05:30", Date.UTC(2024, 1, 29, 18, 0), 60_000],
    ["2000-03-01T00:00Z", Date.UTC(2000, 2, 1), 60_000],
  ])("%s", (typed, value, resolution) => {
    expect(read(typed, "instant", "")).toMatchObject({ value, resolution, unit: "ms" });
  });

  it.each<readonly [string, RefusalCode, number]>([
    ["2026-11-25T14:05", "reading-not-understood", 17],
    ["2026-11-25 14:05Z", "reading-not-understood", 1],
    ["2026-02-29T14:05Z", "reading-out-of-range", 1],
    ["1900-01-01T00:00Z", "reading-out-of-range", 1],
    ["2026-13-01T00:00Z", "reading-out-of-range", 1],
    ["2026-11-25T24:00Z", "reading-out-of-range", 12],
    ["2026-11-25T14:60Z", "reading-out-of-range", 12],
    ["2026-11-25T14:05-00:00", "reading-out-of-range", 17],
    ["2026-11-25T14:05+15:00", "reading-out-of-range", 17],
  ])("%s is refused", (typed, code, column) => {
    expect(readQuantity(typed, { kind: "instant", unit: "" })).toMatchObject({ ok: false, refusal: { code, column } });
  });
});

describe("refusals of the other kinds", () => {
  it.each<readonly [string, QuantityKind, string, RefusalCode, number]>([
    ["", "volume", "gal", "reading-empty", 1],
    ["20 gal 3 gal", "volume", "gal", "reading-two-readings", 8],
    ["20 30", "volume", "gal", "reading-two-readings", 4],
    ["1,000 gal", "volume", "gal", "reading-comma-ambiguous", 2],
    ["20 buckets", "volume", "gal", "reading-unit-unknown", 4],
    ["20 in", "volume", "gal", "reading-unit-kind", 4],
    ['20"', "volume", "gal", "reading-unit-kind", 3],
    ["-20", "volume", "gal", "reading-sign", 1],
    ["20 - 25", "volume", "gal", "reading-hyphen-ambiguous", 4],
    ["3 in 2", "area", "in2", "reading-two-readings", 6],
    ["1/3", "volume", "gal", "reading-denominator", 1],
    ["20000000 gal", "volume", "gal", "reading-out-of-range", 1],
    ["2.5", "count", "1", "reading-fraction", 1],
    ["1/2", "count", "1", "reading-fraction", 1],
    ["12 gal", "count", "1", "reading-unit-kind", 4],
    ["500 °C", "temperature", "C", "reading-out-of-range", 1],
    ["68 K", "temperature", "C", "reading-unit-unknown", 4],
    ["1e3", "power", "W", "reading-unit-unknown", 2],
    ["10 m", "duration", "min", "reading-unit-kind", 4],
    ["30'", "duration", "min", "reading-unit-kind", 3],
    ["2 h 75 min", "duration", "min", "reading-out-of-range", 5],
    ["15 min 2 h", "duration", "min", "reading-two-readings", 8],
    ["30 45", "duration", "min", "reading-two-readings", 4],
    ["1.5 h 10 min", "duration", "min", "reading-two-readings", 7],
    ["1:75", "duration", "h", "reading-not-understood", 1],
    ["1 :30", "duration", "h", "reading-not-understood", 1],
    ["1:30:", "duration", "h", "reading-not-understood", 1],
    ["5 fortnights", "duration", "h", "reading-unit-unknown", 3],
    ["1001 d", "duration", "h", "reading-out-of-range", 1],
  ])("%j as %s", (typed, kind, unit, code, column) => {
    expect(readQuantity(typed, { kind, unit, place: "here" })).toMatchObject({ ok: false, refusal: { code, column, place: "here" } });
  });

  it("a unit asked that the kind does not have is refused without a column", () => {
    const outcome = readQuantity("3", { kind: "volume", unit: "in" });
    expect(outcome).toEqual({ ok: false, refusal: { code: "reading-unit-unknown", place: "typed", figures: { found: "in" } } });
    expect(readQuantity("3", { kind: "length", unit: "gal" })).toMatchObject({ ok: false, refusal: { figures: { found: "gal" } } });
  });

  it("temperatures may be signed unless the item says no", () => {
    expect(read("-5", "temperature", "C").value).toBe(-5_000);
    expect(readQuantity("-5", { kind: "temperature", unit: "C", signed: false })).toMatchObject({
      ok: false,
      refusal: { code: "reading-sign" },
    });
    expect(read("-5", "volume", "L", true).value).toBe(-5_000);
    expect(read("-30", "duration", "min", true).value).toBe(-1_800_000);
  });
});
