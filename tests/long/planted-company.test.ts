import { describe, expect, test } from "vitest";
import { planted, rates, seedsFrom } from "../helpers/planted-company.ts";
import { print } from "./ran.ts";

/**
 * Sizes of effects were set on other seeds (1 to 20, 1001 to 1100, 2001 to 2100); these were first used to confirm them. At 10,000 jobs
 * the share that types the nominal was too small (27 of the seeds 50001 to 50031) and was raised: its seeds begin anew.
 * 13 of 100 at a rate of one in twenty: about one in a thousand.
 */
const NOTHING = 60_001;
const SEEDS = 100;
const MOST = 12;
/** Of 10,000 jobs some seconds for each seed. */
const timeout = 4 * 3_600_000;

const cases = [
  { jobs: 60, first: 50_001, told: ["typed the nominal", "picture used again", "part fails", "comes back by season"] },
  { jobs: 200, first: 50_001, told: undefined },
  { jobs: 10_000, first: 80_001, told: undefined },
] as const;

describe.each(cases)("$jobs jobs", ({ jobs, first, told }) => {
  const said = (of: Readonly<Record<string, number>>): string =>
    Object.entries(of)
      .map(([what, times]) => `${what} ${times}`)
      .join(", ");

  test("planted effects are found in nine of ten", { timeout }, () => {
    const { found, unplanted } = rates(jobs, seedsFrom(first, SEEDS), planted(jobs));
    print(`${jobs} jobs, of ${SEEDS}: found ${said(found)}; unplanted ${said(unplanted)}`);
    for (const what of told ?? Object.keys(found)) expect(found[what], what).toBeGreaterThanOrEqual(0.9 * SEEDS);
    for (const [question, times] of Object.entries(unplanted)) expect(times, question).toBeLessThanOrEqual(MOST);
  });

  test("nothing planted, nothing found beyond the stated rate", { timeout }, () => {
    const { unplanted } = rates(jobs, seedsFrom(NOTHING, SEEDS), {});
    print(`${jobs} jobs without anything planted, of ${SEEDS}: ${said(unplanted)}`);
    for (const [question, times] of Object.entries(unplanted)) expect(times, question).toBeLessThanOrEqual(MOST);
  });
});
