import { describe, expect, it } from "vitest";
import {
  calendarDay,
  dayNumber,
  formatLength,
  formatQuantity,
  type LengthUnit,
  nearest,
  type QuantityKind,
  type TapeMarks,
} from "#core/units/index.ts";

describe("lengths as text", () => {
  it.each<readonly [number, LengthUnit, TapeMarks | undefined, string]>([
    [88_900, "in", 16, "3 1/2 in"],
    [88_900, "in", undefined, "3 1/2 in"],
    [1_612_900, "ft-in", 16, "5 ft 3 1/2 in"],
    [1_612_900, "in", 16, "63 1/2 in"],
    [-6_350, "in", 16, "-1/4 in"],
    [-1_612_900, "ft-in", 16, "-5 ft 3 1/2 in"],
    [0, "in", 16, "0 in"],
    [0, "ft-in", 16, "0 in"],
    [-1, "in", 16, "0 in"],
    [1_524_000, "ft-in", 16, "5 ft 0 in"],
    [89_000, "mm", undefined, "89 mm"],
    [89_000, "cm", undefined, "8.9 cm"],
    [90_000, "cm", undefined, "9 cm"],
    [1_230_000, "m", undefined, "1.23 m"],
    [1_234_000, "m", undefined, "1.234 m"],
    [1_612_900, "ft", undefined, "5.29 ft"],
    [1_524_000, "ft", undefined, "5 ft"],
    [-500, "mm", undefined, "-1 mm"],
    [-499, "mm", undefined, "0 mm"],
  ])("%i um as %s to 1/%s: %s", (micrometres, as, marks, text) => {
    expect(formatLength(micrometres, as, marks)).toBe(text);
  });

  it("M15: rounded once when printed, to the tape's marks", () => {
    expect(formatLength(111_919, "in", 32)).toBe("4 13/32 in");
    expect(formatLength(111_919, "in", 16)).toBe("4 7/16 in"); // 4 13/32 lies between 4 6/16 and 4 7/16, a hair above the middle
    expect(formatLength(111_919, "in", 2)).toBe("4 1/2 in");
  });

  it("a half mark goes away from zero on both sides", () => {
    expect(formatLength(3_175, "in", 4)).toBe("1/4 in");
    expect(formatLength(-3_175, "in", 4)).toBe("-1/4 in");
    expect(formatLength(6_350, "in", 2)).toBe("1/2 in");
  });

  it("rounding up carries into inches and feet", () => {
    expect(formatLength(304_799, "ft-in", 16)).toBe("1 ft 0 in");
    expect(formatLength(25_399, "in", 16)).toBe("1 in");
    expect(formatLength(914_399, "ft-in", 64)).toBe("3 ft 0 in");
  });

  it("a plus where asked, never on zero or below", () => {
    expect(formatLength(6_350, "in", 16, { plus: true })).toBe("+1/4 in");
    expect(formatLength(0, "in", 16, { plus: true })).toBe("0 in");
    expect(formatLength(-6_350, "in", 16, { plus: true })).toBe("-1/4 in");
    expect(formatLength(500_000, "m", 16, { plus: true })).toBe("+0.5 m");
  });

  it("what is no stored integer is a bug and throws", () => {
    for (const wrong of [Number.NaN, Number.POSITIVE_INFINITY, 0.5]) {
      expect(() => formatLength(wrong, "in")).toThrow(RangeError);
      expect(() => formatQuantity("volume", wrong, { lengths: "inch" })).toThrow(RangeError);
      expect(() => formatQuantity("instant", wrong, { lengths: "inch" })).toThrow(RangeError);
    }
  });
});

describe("quantities as text", () => {
  it.each<readonly [QuantityKind, number, string, string]>([
    ["length", 88_900, "3 1/2 in", "89 mm"],
    ["length", 1_612_900, "5 ft 3 1/2 in", "1.613 m"],
    // NIST SP 811 App. B: 1 gal = 3.785411784 L, 1 lb = 0.45359237 kg, 1 ft² = 0.09290304 m²
    ["volume", 66_245, "17.5 gal", "66.2 L"],
    ["volume", 75_708, "20 gal", "75.7 L"],
    ["volume", 946, "0.25 gal", "0.95 L"],
    ["volume", 3_785_412, "1000 gal", "3785 L"],
    ["area", 9_290, "10 ft²", "0.93 m²"],
    ["mass", 45_359, "100 lb", "45.4 kg"],
    ["temperature", 20_000, "68 °F", "20 °C"],
    ["temperature", 20_556, "69 °F", "20.6 °C"],
    ["temperature", -40_000, "-40 °F", "-40 °C"],
    ["temperature", -17_778, "0 °F", "-17.8 °C"],
    ["power", 120_000, "120 W", "120 W"],
    ["power", 1_500, "1.5 W", "1.5 W"],
    ["count", 12, "12", "12"],
    ["ratio", 25_000, "2.5 %", "2.5 %"],
    ["ratio", 125, "0.01 %", "0.01 %"],
    ["instant", 1_764_079_530_000, "2025-11-25T14:05:30Z", "2025-11-25T14:05:30Z"],
    ["instant", 1_764_079_530_250, "2025-11-25T14:05:30.250Z", "2025-11-25T14:05:30.250Z"],
  ])("%s %i", (kind, value, inch, metric) => {
    expect(formatQuantity(kind, value, { lengths: "inch" })).toBe(inch);
    expect(formatQuantity(kind, value, { lengths: "metric" })).toBe(metric);
  });

  it.each<readonly [number, string]>([
    [0, "0 s"],
    [500, "0.5 s"],
    [45_000, "45 s"],
    [59_960, "1 min"],
    [90_000, "1 min 30 s"],
    [1_800_000, "30 min"],
    [3_599_700, "1 h"],
    [8_100_000, "2 h 15 min"],
    [8_129_999, "2 h 15 min"],
    [8_130_000, "2 h 16 min"],
    [86_400_000, "24 h"],
    [129_600_000, "36 h"],
    [259_199_999, "3 d"],
    [367_200_000, "4 d 6 h"],
    [-8_100_000, "-2 h 15 min"],
  ])("duration %i ms: %s", (milliseconds, text) => {
    expect(formatQuantity("duration", milliseconds, { lengths: "inch" })).toBe(text);
  });

  it("follows the company's marks and way of writing", () => {
    expect(formatQuantity("length", 111_919, { lengths: "inch", marks: 32 })).toBe("4 13/32 in");
    expect(formatQuantity("length", 1_612_900, { lengths: "inch", lengthAs: "in" })).toBe("63 1/2 in");
    expect(formatQuantity("length", 1_612_900, { lengths: "metric", lengthAs: "cm" })).toBe("161.3 cm");
  });
});

describe("rounding and calendar", () => {
  it("goes to the nearest, half away from zero", () => {
    expect([nearest(7n, 2n), nearest(-7n, 2n), nearest(5n, 3n), nearest(4n, 3n), nearest(0n, 5n)]).toEqual([4n, -4n, 2n, 1n, 0n]);
  });

  it("agrees with the platform's calendar for every day of eight centuries", () => {
    for (let number = -150_000; number < 150_000; number += 1) {
      const day = calendarDay(number);
      if (dayNumber(day) !== number || Date.UTC(day.year, day.month - 1, day.day) !== number * 86_400_000) throw new Error(`day ${number}`);
    }
    expect(calendarDay(0)).toEqual({ year: 1970, month: 1, day: 1 });
  });
});
