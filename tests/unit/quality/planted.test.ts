import { describe, expect, test } from "vitest";
import { planted, rates, seedsFrom } from "../../helpers/planted-company.ts";

/** Twenty seeds of each; a hundred, and 10,000 jobs, by `npm run long`. Six of twenty at a rate of one in twenty: 3 in 10,000. */
const seeds = seedsFrom(1, 20);
const MOST_BY_CHANCE = 5;

const mostOf = (counts: Readonly<Record<string, number>>): number => Math.max(0, ...Object.values(counts));

/** Seconds alone; a loaded machine takes its time. */
const timeout = 120_000;

describe("200 jobs", { timeout }, () => {
  test("every planted effect is found, and nothing else more often than is stated", () => {
    const { found, unplanted } = rates(200, seeds, planted(200));
    expect(Object.keys(found).sort()).toEqual([
      "comes back by season",
      "instrument drifts",
      "item never finds anything",
      "part fails",
      "picture used again",
      "typed the nominal",
    ]);
    for (const [what, times] of Object.entries(found)) expect(times, what).toBeGreaterThanOrEqual(18);
    expect(mostOf(unplanted), JSON.stringify(unplanted)).toBeLessThanOrEqual(MOST_BY_CHANCE);
  });

  test("where nothing is planted, no question says something more often than is stated", () => {
    const { unplanted } = rates(200, seeds, {});
    expect(mostOf(unplanted), JSON.stringify(unplanted)).toBeLessThanOrEqual(MOST_BY_CHANCE);
  });
});

describe("60 jobs", { timeout }, () => {
  test("what can be told is found; an item that never finds anything cannot be told, and is not", () => {
    const { found, unplanted } = rates(60, seeds, planted(60));
    for (const what of ["typed the nominal", "picture used again", "part fails", "comes back by season"])
      expect(found[what], what).toBeGreaterThanOrEqual(18);
    // 0.96^60 = 0.09: before sixteen items are compared
    expect(found["item never finds anything"]).toBe(0);
    expect(mostOf(unplanted), JSON.stringify(unplanted)).toBeLessThanOrEqual(MOST_BY_CHANCE);
  });
});
