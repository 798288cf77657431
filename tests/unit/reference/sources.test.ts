import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { beginRecording, between, byHand, disagreement, endRecording, published, same, source } from "../../reference/checked.ts";
import { printout, shortLine } from "../../reference/printout.ts";

const folder = new URL("../../reference/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".test.ts"));
const table = source("A table", "page 1", "seen");

describe("no reference figure without its source", () => {
  test.each(files)("%s compares only by way of a source: it takes nothing but describe and test from vitest", (name) => {
    const text = readFileSync(new URL(name, folder), "utf8");
    expect([...text.matchAll(/import \{([^}]*)\} from "vitest"/g)].map(([, names]) => names?.trim())).toEqual(["describe, test"]);
    expect(text).not.toMatch(/\bexpect\s*\(|\bassert\b/);
  });

  test("a figure without a source is an error", () => {
    beginRecording();
    for (const from of [undefined, { ...table, section: "" }, { ...table, publication: "" }, { ...table, standing: "sure" }] as never[]) {
      expect(() => published(from, "m", 1, 1, { digits: 3 })).toThrow("a figure without a source");
      expect(() => same(from, "m", 1, 1)).toThrow("a figure without a source");
      expect(() => between(from, "m", 1, 0, 2)).toThrow("a figure without a source");
      expect(() => disagreement("m", [[from, 1]], "1")).toThrow("a figure without a source");
    }
  });

  test("a test that compares nothing is one", () => {
    beginRecording();
    expect(() => endRecording()).toThrow("compares no figure");
  });

  test("figures out of their tolerance, too few figures, sources that agree: each fails", () => {
    beginRecording();
    expect(() => published(table, "m", 1.0051, 1, { digits: 2 })).toThrow();
    expect(() => published(table, "m", 1.021, 1, { share: 0.02 })).toThrow();
    expect(() => published(table, "m", Number.NaN, 1, { absolute: 9 })).toThrow();
    expect(() => published(table, "m", [1], [1, 2], { absolute: 9 })).toThrow();
    expect(() => between(table, "m", 3, 1, 2)).toThrow();
    expect(() => between(table, "m", Number.NaN, 1, 2)).toThrow();
    expect(() => same(table, "m", [1, 2], [1, 3])).toThrow();
    expect(() => disagreement("m", [[table, 1] as const, [byHand("x"), 1] as const], "1")).toThrow();
  });
});

describe("the printout", () => {
  beginRecording();
  published(table, "head, ft", [1.46, 2.5], [1.5, 2.5], { share: 0.05 });
  same(table, "bands", [{ from: 1, to: 2 }], [{ from: 1, to: 2 }]);
  between(source("A habit", "reserve", "common practice"), "ratio", 2.5, 2, 3);
  disagreement("ft of a bend", [[table, 5.7] as const, [source("Another", "page 2", "quoted"), 6] as const], "5.7");
  const recorded = endRecording();

  test("counts, names the worst by what it used of its tolerance, sorts by what a source is worth", () => {
    const text = printout(recorded);
    expect(text).toMatch(
      /the page itself read \(4 values\)\n {2}A table: page 1\n {6}head, ft +2 values {2}worst 2.7 % off at 1.5, 5 % allowed\n/,
    );
    expect(text).toMatch(/bands +2 values {2}the same\n/);
    expect(text).toMatch(/Common practice, no source \(1 value\)\n {2}A habit: reserve\n {6}ratio +1 value {2}within the range\n/);
    expect(text).toContain("  ft of a bend\n      5.7  A table: page 1 (seen)\n      6  Another: page 2 (quoted)\n      here: 5.7\n");
  });

  test("in one line", () => {
    expect(shortLine(recorded)).toBe("reference: 5 values against 2 sources, 4 of them published (seen or quoted), 1 disagreement shown");
  });
});
