import { describe, expect, test } from "vitest";
import type { ToleranceSheet } from "#core/job/index.ts";
import { budgetOf, everydayLimits, everydayTags } from "#infra/sheets/budget.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";

const sheet = defaultSheet();

describe("budget of the default sheet", () => {
  test("one everyday job asks for no more than the limits", () => {
    const budget = budgetOf(sheet, everydayTags);
    expect(budget.holdingReadings).toBeLessThanOrEqual(everydayLimits.holdingReadings);
    expect(budget.readings).toBeLessThanOrEqual(everydayLimits.readings);
    expect(budget.pictures).toBeLessThanOrEqual(everydayLimits.pictures);
    expect(budget.taps).toBeLessThanOrEqual(everydayLimits.taps);
  });

  test("the count itself: a change of the sheet must be meant", () => {
    // taps: 46 answers and 5 coverings; holding: 7 rim + 2 last joints + 1 cover + 4 ties + 2 lip + 3 liner + 3 water + 4 (two edges, two lip gaps)
    expect(budgetOf(sheet, everydayTags)).toEqual({ holdingReadings: 26, readings: 43, pictures: 29, taps: 51 });
  });

  test("tags multiply, and a crossing takes the answer 'none here' away", () => {
    const plain = budgetOf(sheet, everydayTags);
    const crossing = budgetOf(sheet, { ...everydayTags, "pipe-crossing": 1 });
    expect(crossing.pictures).toBe(plain.pictures + 1);
    expect(crossing.holdingReadings).toBe(plain.holdingReadings + 2);
    expect(crossing.taps).toBe(plain.taps - 1);
    expect(budgetOf(sheet, { ...everydayTags, "edge-stretch": 3 }).holdingReadings).toBe(plain.holdingReadings + 1);
  });

  test("one more holding reading breaks the limit", () => {
    const [reading] = sheet.items.filter((item) => item.kind === "reading" && item.weight === "holds" && item.tags === undefined);
    if (reading === undefined) throw new Error("no holding reading");
    const more: ToleranceSheet = { ...sheet, items: [...sheet.items, { ...reading, id: "one-more" }] };
    expect(budgetOf(more, everydayTags).holdingReadings).toBeGreaterThan(everydayLimits.holdingReadings);
  });
});
