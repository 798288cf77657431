import { describe, expect, test } from "vitest";
import { readSheet, type ToleranceSheet } from "#core/job/index.ts";
import { sheetWithStudies, studyFound, type TapeStudy, undecided } from "#core/quality/index.ts";
import { defaultSheetJson } from "#infra/sheets/index.ts";

/**
 * Two people, two marks, two trials, micrometres: the first person reads 10,000 and 12,000 at the first mark.
 * Means of the cells: 11,000 and 14,000 at the first mark, 21,000 and 24,000 at the second; trials lie 1,000 either side.
 */
const study = (placing = "wiped-rim"): TapeStudy => ({
  entry: "study",
  day: "2026-01-10",
  instrument: "tape-measure",
  placing,
  readings: [
    ["a", "1", [10_000, 12_000]],
    ["b", "1", [13_000, 15_000]],
    ["a", "2", [20_000, 22_000]],
    ["b", "2", [23_000, 25_000]],
  ].flatMap(([person, mark, values]) =>
    (values as readonly number[]).map((value, i) => ({ person: String(person), mark: String(mark), trial: i + 1, value })),
  ),
});

describe("tape study", () => {
  test("worked by hand", () => {
    const found = studyFound(study());
    if (!found) throw new Error("no analysis");
    const { variance } = found;
    // people: each mean 1,500 off the grand mean, four readings each: 8 × 1,500²; marks: 8 × 5,000²; no interaction; within: 8 × 1,000²
    expect(variance.person).toMatchObject({ squares: 18e6, degrees: 1 });
    expect(variance.part).toMatchObject({ squares: 200e6, degrees: 1 });
    expect(variance.interaction).toMatchObject({ squares: 0, degrees: 1 });
    expect(variance.within).toMatchObject({ squares: 8e6, degrees: 4 });
    expect(variance.repeatability).toBe(2e6);
    // (18e6 - 0) / (2 marks × 2 trials), the interaction less than nothing counts as nothing
    expect(variance.betweenPeople).toBe(4.5e6);
    expect(found.reproducibility).toBeCloseTo(Math.sqrt(6.5e6), 6);
    // √3 × 2,549.5 = 4,415.9, rounded up
    expect(found.halfWidth).toBe(4_416);
    expect(found.offsets).toEqual([
      { person: "a", offset: -1_500 },
      { person: "b", offset: 1_500 },
    ]);
  });

  test("one mark left out by one person: no study", () => {
    expect(studyFound({ ...study(), readings: study().readings.slice(1) })).toBeUndefined();
  });

  test("it takes the place of the placing's default, and names the limits that it leaves undecided", () => {
    const read = readSheet(defaultSheetJson);
    if (!read.ok) throw new Error(read.refusal.code);
    const sheet: ToleranceSheet = read.value;
    const found = studyFound(study());
    if (!found) throw new Error("no analysis");
    const changed = sheetWithStudies(sheet, [found]);
    expect(changed.placings.find(({ id }) => id === "wiped-rim")?.halfWidth).toBe(4_416);
    expect(changed.placings.filter(({ id }) => id !== "wiped-rim")).toEqual(sheet.placings.filter(({ id }) => id !== "wiped-rim"));
    const open = undecided(sheet, [found]);
    expect(open.length).toBeGreaterThan(0);
    // out of level, limit 1/2 in with an aim of 1/4: 6.35 mm of room cannot hold 3.65 u of a spread like this
    expect(open).toContain("level-along");
    expect(undecided(sheet, [{ ...found, halfWidth: 1_588 }])).toEqual([]);
  });
});
