import { describe, expect, it } from "vitest";
import type { RefusalCode } from "#core/outcome/index.ts";
import { type LengthUnit, readLength } from "#core/reading/index.ts";

/** typed, code, column, what the refusal quotes */
type Row = readonly [string, RefusalCode, number, string?];

const refused = (typed: string, expected: LengthUnit = "in", signed = false) => {
  const outcome = readLength(typed, expected, { signed, place: "entries/3/what/typed" });
  if (outcome.ok) throw new Error(`${typed} was read as ${outcome.value.micrometres}`);
  return outcome.refusal;
};
const refusals = (title: string, rows: readonly Row[]) =>
  it.each(rows.map(([typed, code, column, found]) => ({ typed, code, column, found })))(
    `${title}: $typed`,
    ({ typed, code, column, found }) => {
      const refusal = refused(typed);
      expect(refusal).toMatchObject({ code, column, place: "entries/3/what/typed" });
      if (found !== undefined) expect(refusal.figures.found).toBe(found);
    },
  );

describe("a tape reading is refused with code and column", () => {
  refusals("nothing typed", [
    ["", "reading-empty", 1],
    [" \u00a0\u200b ", "reading-empty", 1],
  ]);

  refusals("M12, fractions that are none", [
    ["1/0", "reading-fraction", 1, "1/0"],
    ["0/0", "reading-fraction", 1, "0/0"],
    ["1/2/3", "reading-fraction", 1, "1/2/3"],
    ["1.5/2", "reading-fraction", 1, "1.5/2"],
    ["/2", "reading-fraction", 1, "/2"],
    ["1/", "reading-fraction", 1, "1/"],
    ["3 1/", "reading-fraction", 3, "1/"],
    ["1/2.5", "reading-fraction", 1, "1/2.5"],
    ["1.5 1/2", "reading-fraction", 1],
    ["1.5½", "reading-fraction", 1],
    ["½/2", "reading-fraction", 1],
    ["½8", "reading-fraction", 2, "8"],
    ["½½", "reading-fraction", 2],
    ["1/½", "reading-fraction", 1],
    ["5.5' 3\"", "reading-fraction", 1, "5.5"],
  ]);

  refusals("a whole number lost in the numerator", [
    ["11/2", "reading-fraction", 1, "11/2"],
    ["8/8", "reading-fraction", 1],
    ["3 5/4", "reading-fraction", 3, "5/4"],
  ]);

  refusals("denominators that no tape has", [
    ["1/7", "reading-denominator", 1, "1/7"],
    ["3 1/3", "reading-denominator", 3, "1/3"],
    ["3⅓", "reading-denominator", 2, "⅓"],
    ["1/128", "reading-denominator", 1],
    ["1/1", "reading-denominator", 1],
    ["5 1/10 in", "reading-denominator", 3],
    ["3 1/2 cm", "reading-denominator", 1, "3 1/2 cm"],
  ]);

  refusals("two readings in one", [
    ["3 1/2 4 1/4", "reading-two-readings", 7, "4 1/4"],
    ["12 13", "reading-two-readings", 4, "13"],
    ["1 2 3/4", "reading-two-readings", 3, "2 3/4"],
    ["1 000 mm", "reading-two-readings", 3],
    ["3 in 4 in", "reading-two-readings", 6],
    ["3\" 5'", "reading-two-readings", 4],
    ["5' 4'", "reading-two-readings", 4],
    ["5' 3 4", "reading-two-readings", 6],
    ["1 m 23 cm", "reading-two-readings", 5],
    ["1\u200b1", "reading-two-readings", 3],
  ]);

  refusals("M10, commas that can be read in two ways", [
    ["1,000", "reading-comma-ambiguous", 2, "1,000"],
    ["1,250 mm", "reading-comma-ambiguous", 2],
    ["1.234,5", "reading-comma-ambiguous", 6],
    ["1,234.5", "reading-comma-ambiguous", 2],
    ["1,234,567", "reading-comma-ambiguous", 2],
    ["3, 5", "reading-comma-ambiguous", 2],
  ]);

  refusals("M02, hyphens that may be a minus", [
    ["4 - 3/8", "reading-hyphen-ambiguous", 3, "- 3/8"],
    ["4 -3/8", "reading-hyphen-ambiguous", 3],
    ["4- 3/8", "reading-hyphen-ambiguous", 2],
    ["4 – 3/8", "reading-hyphen-ambiguous", 3],
    ["4−3/8", "reading-hyphen-ambiguous", 2],
    ["4—3/8", "reading-hyphen-ambiguous", 2],
    ["5-3", "reading-hyphen-ambiguous", 2],
    ["5' -3\"", "reading-hyphen-ambiguous", 4],
    ["3 in - 2 in", "reading-hyphen-ambiguous", 6],
  ]);

  refusals("a foot of inches beside feet", [
    ["5' 12\"", "reading-inches-over-foot", 4],
    ["5' 12 1/2", "reading-inches-over-foot", 4],
    ["5 ft 63.5", "reading-inches-over-foot", 6],
    ["1'000", "reading-inches-over-foot", 3],
  ]);

  refusals("M17 and leftovers", [
    ["3 in in trench", "reading-not-understood", 6, "in trench"],
    ["in 3", "reading-not-understood", 1],
    ["abc", "reading-not-understood", 1],
    ["1.2.3", "reading-not-understood", 1],
    ["5.", "reading-not-understood", 2],
    ["5 .3", "reading-not-understood", 3],
    ["5 ft.3 in", "reading-not-understood", 5],
    ["5'\"", "reading-not-understood", 3],
    ["-", "reading-not-understood", 1],
    ["٣", "reading-not-understood", 1],
    ["NaN", "reading-not-understood", 1],
    ["~5", "reading-not-understood", 1],
    ["5 \ud83d", "reading-not-understood", 3, "\ufffd"],
  ]);

  refusals("units", [
    ["10 furlongs", "reading-unit-unknown", 4, "furlongs"],
    ["1e5", "reading-unit-unknown", 2, "e"],
    ["3 in trench", "reading-unit-unknown", 6, "trench"],
    ["10 gal", "reading-unit-kind", 4, "gal"],
    ["10 min", "reading-unit-kind", 4],
    ["2 %", "reading-unit-kind", 3],
  ]);

  refusals("M03, a sign where none can be", [
    ["-1 1/2", "reading-sign", 1, "-"],
    ["+3", "reading-sign", 1],
    ["−3", "reading-sign", 1],
  ]);

  it("signs that are doubled, or dashes that stand apart", () => {
    expect(refused("--3", "in", true)).toMatchObject({ code: "reading-sign", column: 2 });
    expect(refused("– 3", "in", true)).toMatchObject({ code: "reading-not-understood", column: 1 });
  });

  it("1000 m at most, 64 characters at most", () => {
    expect(readLength("1000 m", "m").ok).toBe(true);
    expect(refused("1000.000001 m")).toMatchObject({ code: "reading-out-of-range", column: 1 });
    expect(refused("9".repeat(64))).toMatchObject({ code: "reading-out-of-range", column: 1 });
    expect(refused(" ".repeat(65))).toMatchObject({ code: "reading-out-of-range", column: 65, figures: { length: 65, longest: 64 } });
    expect(readLength(`${" ".repeat(63)}5`, "in").ok).toBe(true);
  });

  it("names `typed` as the place where none is given", () => {
    expect(readLength("x", "in")).toMatchObject({ ok: false, refusal: { place: "typed" } });
  });
});
