import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

const style = readFileSync(join(fileURLToPath(new URL("../../../src/screens/style/", import.meta.url)), "drawing.css"), "utf8");
const colours = new Map([...style.matchAll(/--([a-z]+):\s*#([0-9a-f]{6});/g)].map(([, name = "", hex = ""]) => [name, hex]));

/** WCAG 2.2, relative luminance. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [0, 2, 4].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** WCAG 2.2, contrast ratio. */
function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

const colour = (name: string): string => {
  const hex = colours.get(name);
  if (hex === undefined) throw new Error(`the style sheet has no --${name}`);
  return hex;
};

// what is read in sun: WCAG 2.2, success criterion 1.4.6 (AAA), 7 : 1
describe("contrast of what is read in sun", () => {
  test("the formula gives black on white its published 21 : 1", () => {
    expect(contrast("000000", "ffffff")).toBeCloseTo(21, 6);
    expect(contrast("767676", "ffffff")).toBeGreaterThan(4.5);
    expect(contrast("777777", "ffffff")).toBeLessThan(4.5);
  });

  const pairs = ["ink", "soft", "red", "clear"].flatMap((text) => ["paper", "sheet", "grid"].map((under) => [text, under] as const));
  test.each(pairs)("%s on %s", (text, under) => {
    expect(contrast(colour(text), colour(under))).toBeGreaterThanOrEqual(7);
  });

  test("a button drawn the other way round", () => {
    expect(contrast(colour("sheet"), colour("ink"))).toBeGreaterThanOrEqual(7);
    expect(contrast(colour("sheet"), colour("soft"))).toBeGreaterThanOrEqual(7);
  });
});
