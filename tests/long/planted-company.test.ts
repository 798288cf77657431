import { describe, expect, test } from "vitest";
import { planted, rates, seedsFrom } from "../helpers/planted-company.ts";
import { print } from "./ran.ts";

/** 13 of 100, or 4 of 10, at a rate of one in twenty: about one in a thousand each. */
const cases = [
  { jobs: 60, seeds: 100, most: 12, told: ["typed the nominal", "picture used again", "part fails", "comes back by season"] },
  { jobs: 200, seeds: 100, most: 12, told: undefined },
  { jobs: 10_000, seeds: 10, most: 3, told: undefined },
] as const;

describe.each(cases)("$jobs jobs, $seeds seeds", ({ jobs, seeds, most, told }) => {
  const said = (of: Readonly<Record<string, number>>): string =>
    Object.entries(of)
      .map(([what, times]) => `${what} ${times}`)
      .join(", ");

  test("planted effects are found in nine of ten", { timeout: 1_200_000 }, () => {
    const { found, unplanted } = rates(jobs, seedsFrom(1001, seeds), planted(jobs));
    print(`${jobs} jobs, of ${seeds}: found ${said(found)}; unplanted ${said(unplanted)}`);
    for (const what of told ?? Object.keys(found)) expect(found[what], what).toBeGreaterThanOrEqual(0.9 * seeds);
    for (const [question, times] of Object.entries(unplanted)) expect(times, question).toBeLessThanOrEqual(most);
  });

  test("nothing planted, nothing found beyond the stated rate", { timeout: 1_200_000 }, () => {
    const { unplanted } = rates(jobs, seedsFrom(2001, seeds), {});
    print(`${jobs} jobs without anything planted, of ${seeds}: ${said(unplanted)}`);
    for (const [question, times] of Object.entries(unplanted)) expect(times, question).toBeLessThanOrEqual(most);
  });
});
