import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

/** What a covering can be held by: the same to the last digit in every engine, so only + − × ÷ and a square root. */
const canHold = [
  "water/plan-area",
  "water/basin",
  "water/float",
  "water/float-occasions",
  "water/stone",
  "water/draw-down",
  "water/leak-test",
  "water/leak-settling",
  "doubt/propagation",
  "doubt/uncertain",
  "doubt/fit",
  "water/factors",
];
const exact = new Set(["sqrt", "abs", "max", "min", "round", "PI"]);

/** Powers and functions that engines may round differently, comments left out. */
function inexactIn(source: string): string[] {
  const code = source.replaceAll(/\/\*[\s\S]*?\*\/|\/\/[^\n]*/g, "");
  const calls = [...code.matchAll(/Math\.(\w+)/g)].map(([, name]) => name ?? "");
  return [...calls.filter((name) => !exact.has(name)), ...(code.includes("**") ? ["**"] : [])];
}

describe("checks that can hold", () => {
  test.each(canHold)("%s keeps to exact arithmetic", (name) => {
    const source = readFileSync(new URL(`../../../src/${name}.ts`, import.meta.url), "utf8");
    expect(source.length).toBeGreaterThan(300);
    expect(inexactIn(source)).toEqual([]);
  });

  test("the search bites", () => {
    expect(inexactIn("const a = b ** 2; // Math.exp\nMath.pow(a, 1.5) + Math.sqrt(a) + Math.cbrt(a);")).toEqual(["pow", "cbrt", "**"]);
  });
});
