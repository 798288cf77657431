import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clearances, findings, guarded, jobState, unguarded } from "#core/job/index.ts";
import { type Cell, csvLine, exportHeads, exportRows, exportTables, makeSayer } from "#core/record/index.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";
import { twoDayLedger } from "../../samples/two-day-job.ts";

describe("a line of CSV (RFC 4180)", () => {
  test("quotes what has commas, quotation marks, ends of lines or blanks at its ends, and nothing else", () => {
    expect(csvLine(["a", 'b "c"', "d,e", "f\r\ng", " h", "", undefined, 1.5, -2])).toBe('a,"b ""c""","d,e","f\r\ng"," h",,,1.5,-2\r\n');
  });

  test("text that a spreadsheet would take for a formula is text; a number of the program's own stays one", () => {
    for (const text of ["=1+1", "+1", "-1/4", "@SUM(A1)", " =1", "\u200b=1", "'=1", "＝1"]) {
      const [[cell = ""] = []] = parse(csvLine([text])) as string[][];
      expect(cell).toBe(`'${text}`);
      expect(unguarded(cell)).toBe(text);
    }
    // where another sign than ours cuts the cells, what stands behind it begins one
    expect(guarded("\t=1")).toBe("'\t'=1");
    expect(guarded("a;=cmd|'x'!A0;b\n-1")).toBe("a;'=cmd|'x'!A0;b\n'-1");
    expect(guarded("a, -1; b = 2; 5'-6")).toBe("a, -1; b = 2; 5'-6");
    expect(csvLine([-0.25])).toBe("-0.25\r\n");
    expect(csvLine([Number.NaN])).toBe("\r\n");
  });

  test("whatever the cells, another reader has the same cells again, and none begins as a formula", () => {
    const cell = fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom('"', ",", "\n", "\r", "=", "+", "-", "@", " ", "x", "\t") }));
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1, maxLength: 6 }), (cells) => {
        const [read = []] = parse(csvLine(cells), { record_delimiter: "\r\n", skip_empty_lines: false }) as string[][];
        expect(read.map(unguarded)).toEqual(cells);
        for (const one of read) expect(one).not.toMatch(/^[=+\-@\t\r\n]|[;\t\r\n][\s"]*[=+\-@]/);
      }),
      { seed: 4180, numRuns: 300 },
    );
  });
});

describe.each(["en", "es"] as const)("the tables of a job, in %s", (language) => {
  const sheet = defaultSheet();
  const state = jobState(twoDayLedger(sheet, { order: "as listed" }));
  const found = findings(state);
  const exported = {
    job: "two-days",
    state,
    findings: found,
    clearances: clearances(state, found, 0),
    sayer: makeSayer({ language, units: "inch", zone: "UTC", sheet }),
    people: {},
    language,
  };
  const read = (table: (typeof exportTables)[number]) => {
    const lines: readonly (readonly Cell[])[] = [exportHeads(table, language), ...exportRows(table, exported)];
    return parse(lines.map(csvLine).join(""), { columns: true }) as Record<string, string>[];
  };

  test("each has as many cells in every line as heads, and no head twice", () => {
    for (const table of exportTables) {
      const heads = exportHeads(table, language);
      expect(new Set(heads).size).toBe(heads.length);
      const rows = exportRows(table, exported);
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) expect(row).toHaveLength(heads.length);
    }
  });

  test("every reading is there as it was typed, every finding with its verdict", () => {
    const taken = state.facts.filter(({ kind }) => kind === "reading-taken");
    const [typed, item, says] = language === "en" ? ["as typed", "item", "in words"] : ["como se escribió", "elemento", "en palabras"];
    const readings = read("readings");
    expect(readings).toHaveLength(taken.length);
    expect(readings.map((row) => row[item ?? ""])).toEqual(taken.map(({ what }) => what.item));
    expect(readings.map((row) => row[typed ?? ""]?.replace(/^'/, ""))).toEqual(taken.map(({ what }) => String(what.typed)));
    const rows = read("findings");
    expect(rows).toHaveLength(found.length);
    for (const row of rows) expect(row[says ?? ""]).not.toBe("");
  });

  test("figures of findings are in SI units: a length of 25 400 µm is 0.0254 m", () => {
    const at = found.findIndex(({ kind, value }) => kind === "length" && value !== undefined);
    const rows = read("findings");
    const value = language === "en" ? "value (SI)" : "valor (SI)";
    expect(Number(rows[at]?.[value])).toBeCloseTo((found[at]?.value ?? Number.NaN) / 1e6, 12);
  });
});
