import { describe, expect, it } from "vitest";
import { type LengthUnit, readLength } from "#core/reading/index.ts";

const read = (typed: string, expected: LengthUnit = "in", signed = false) => {
  const outcome = readLength(typed, expected, { signed });
  if (!outcome.ok) throw new Error(`${typed}: ${JSON.stringify(outcome.refusal)}`);
  return outcome.value;
};

/** 63 1/2 in = 63.5 × 25.4 mm = 1612.9 mm, by hand from the international inch. */
const FIVE_FEET_THREE_AND_A_HALF = 1_612_900;

describe("one value in many spellings", () => {
  it.each([
    `5' 3 1/2"`,
    `5'3 1/2"`,
    `5'3-1/2"`,
    `5'-3 1/2"`,
    `5' - 3 1/2"`,
    `5 ' 3½ "`,
    "5′ 3½″",
    "5’ 3½”",
    "5‘ 3 ½“",
    "5´3½",
    "5ʹ 3ʺ".replace("3ʺ", "3½ʺ"),
    "5'3 1/2''",
    "5’ 3 1⁄2’’",
    "5 ft 3 1/2 in",
    "5ft3½in",
    "5 ft. 3-1/2 in.",
    "5 FEET 3 1/2 Inches",
    "5 foot 3 1/2",
    "  5 pies   3 1/2 pulgadas ",
    "5 pie 3½ pulg.",
    "5\u00a0ft\u2009 3\u202f1/2\tin",
    "5' 3.5\"",
    "5' 3,5",
    "63 1/2",
    "63-1/2",
    "63‑1/2 in",
    "63–1/2",
    '63½"',
    "63.5",
    "63,5 inches",
    "1612.9 mm",
    "161,29 cm",
    "1.6129 m",
    "1.6129 metros",
  ])("%j", (typed) => {
    expect(read(typed).micrometres).toBe(FIVE_FEET_THREE_AND_A_HALF);
    expect(read(typed).typed).toBe(typed);
  });

  it("M01: whole and fraction, however wide the blank between", () => {
    for (const typed of ["1 1/4", "1  1/4", "1\u00a01/4", "1\u20091/4", "1-1/4", "1¼"]) expect(read(typed).micrometres).toBe(31_750);
  });

  it("M02: a tight hyphen joins whole and fraction, in every kind of hyphen", () => {
    for (const typed of ['4-3/8"', "4–3/8", "4‑3/8", "4‐3/8", "4-⅜"]) expect(read(typed).micrometres).toBe(111_125);
  });

  it("M03: a sign covers the whole reading", () => {
    expect(read("-1 1/2", "in", true).micrometres).toBe(-38_100);
    expect(read(`-11'2"`, "in", true).micrometres).toBe(-134 * 25_400);
    expect(read("−1 1/2", "in", true).micrometres).toBe(-38_100);
    expect(read("–1½", "in", true).micrometres).toBe(-38_100);
    expect(read("- 1½", "in", true).micrometres).toBe(-38_100);
    expect(read("+ 1/4", "in", true).micrometres).toBe(6_350);
    expect(Object.is(read("-0", "in", true).micrometres, 0)).toBe(true);
  });

  it("M05: feet stay when the inches are a bare fraction", () => {
    for (const typed of [`5' 3/4"`, "5'3/4", `5'-0 3/4"`, "5'-3/4", "5 ft ¾ in"]) expect(read(typed).micrometres).toBe(1_543_050);
  });

  it("M07: curly, prime and doubled marks", () => {
    for (const typed of ["5′ 3½″", "5’ 3½”", "5` 3½˝", "5' 3½''"]) expect(read(typed).micrometres).toBe(FIVE_FEET_THREE_AND_A_HALF);
    expect(read("5‘ 3“").micrometres).toBe(63 * 25_400);
    expect(read("5´3").micrometres).toBe(63 * 25_400);
    expect(read("5''").micrometres).toBe(5 * 25_400);
  });

  it("M07: a mark that the keyboard opened as a quotation is read only where it can't matter", () => {
    expect(read("„5“").micrometres).toBe(5 * 25_400);
    expect(readLength("„5“", "cm").ok).toBe(false);
    expect(readLength("„5“", "ft").ok).toBe(false);
  });

  it("M08: a fraction sign never runs into the whole number", () => {
    for (const typed of ["1½", "1 ½", "1\u00a0½", "1-½"]) expect(read(typed).micrometres).toBe(38_100);
    expect(read("¼").micrometres).toBe(6_350);
    expect(read("⅜").micrometres).toBe(9_525);
    expect(read("⅟8").micrometres).toBe(3_175);
    expect(read("1⅟8").micrometres).toBe(28_575);
  });

  it("M10: a decimal comma is a decimal point", () => {
    expect(read("3,5", "cm").micrometres).toBe(35_000);
    expect(read("3,5 cm").micrometres).toBe(35_000);
    expect(read("0,125 m").micrometres).toBe(125_000);
    expect(read(",5 m").micrometres).toBe(500_000);
  });

  it("M13: exact until the one rounding: 2 1/16 in and its millimetres are the same integer to the micrometre", () => {
    // 2 1/16 in = 52.3875 mm exactly; the half micrometre goes away from zero.
    expect(read("2 1/16").micrometres).toBe(52_388);
    expect(read("52.3875 mm").micrometres).toBe(52_388);
    expect(read("-2 1/16", "in", true).micrometres).toBe(-52_388);
    expect(read("24 in").micrometres).toBe(read("2 ft").micrometres);
    expect(read("5.5 mm").micrometres).toBe(read("0.55 cm").micrometres);
    expect(read("0.3").micrometres).toBe(7_620);
  });

  it("M15: read to the micrometre, not to the tape's marks; 0.333 is not a third", () => {
    expect(read("4.40625").micrometres).toBe(111_919); // 4 13/32 in = 111.91875 mm
    expect(read("4 13/32").micrometres).toBe(111_919);
    expect(read("0.333").micrometres).toBe(8_458); // 8.4582 mm
  });

  it("M17: unit words from the closed list; the expected unit only where none was typed", () => {
    for (const typed of ["2 in", "2in.", "2 inches", "2 Inch", '2"', "2 pulgadas"]) expect(read(typed, "mm").micrometres).toBe(50_800);
    expect(read("10 m").micrometres).toBe(10_000_000);
    expect(read("10", "in")).toMatchObject({ micrometres: 254_000, unit: "in" });
    expect(read("10", "ft-in")).toMatchObject({ micrometres: 254_000, unit: "in" });
    expect(read("10", "ft")).toMatchObject({ micrometres: 3_048_000, unit: "ft" });
    expect(read("10", "mm")).toMatchObject({ micrometres: 10_000, unit: "mm" });
    expect(read("10", "cm")).toMatchObject({ micrometres: 100_000, unit: "cm" });
    expect(read("10", "m")).toMatchObject({ micrometres: 10_000_000, unit: "m" });
  });
});

describe("resolution comes from how it was written", () => {
  it.each([
    ["3", 25_400, 1],
    ["3 1/2", 12_700, 2],
    ["3 1/4", 6_350, 4],
    ["3 1/8", 3_175, 8],
    ["3 8/16", 1_588, 16],
    ["3 0/16", 1_588, 16],
    ["3 1/32", 794, 32],
    ["3 1/64", 397, 64],
    [`5' 3"`, 25_400, 1],
    [`5' 3 1/2"`, 12_700, 2],
    [`5' 3/4"`, 6_350, 4],
    [`5' 3.5"`, 2_540, undefined],
    ["63.5", 2_540, undefined],
    ["63.50", 254, undefined],
    ["5 ft", 304_800, undefined],
    ["5.29 ft", 3_048, undefined],
    ["5 1/2 ft", 152_400, undefined],
    ["89 mm", 1_000, undefined],
    ["89.5 mm", 100, undefined],
    ["8,9 cm", 1_000, undefined],
    ["9 cm", 10_000, undefined],
    ["1.23 m", 10_000, undefined],
    ["1.000001 in", 1, undefined],
  ] as const)("%s", (typed, resolution, marks) => {
    expect(read(typed)).toMatchObject({ resolution, marks });
  });

  it("names the unit it was written in", () => {
    expect(read("5' 3").unit).toBe("ft-in");
    expect(read("5'").unit).toBe("ft");
    expect(read("5''").unit).toBe("in");
  });
});
