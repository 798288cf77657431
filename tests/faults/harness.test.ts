import { beforeAll, describe, expect, test } from "vitest";
import { faultNames, roundOf } from "./harness/draws.ts";
import { reportOf } from "./harness/report.ts";
import { type FaultOutcome, runFaults } from "./harness/run.ts";

// The short form of `npm run faults`; a thousand rounds run by `npm run long`. A seed whose first rounds break most parts, and in which
// nobody has to wait until a silent store is given up on.
const SEED = 2183;
const ROUNDS = 8;

describe("the draws of a seed", () => {
  test("are the same again, whichever round is asked for first", () => {
    const alone = roundOf(SEED, 33, 20);
    const all = Array.from({ length: 33 }, (_, i) => roundOf(SEED, i + 1, 20));
    expect(all[32]).toEqual(alone);
    expect(roundOf(SEED + 1, 33, 20)).not.toEqual(alone);
  });

  test("break one or two things a round, and everything before anything a third time", () => {
    const rounds = Array.from({ length: 40 }, (_, i) => roundOf(SEED, i + 1, 20));
    expect(new Set(rounds.map(({ faults }) => faults.length))).toEqual(new Set([1, 2]));
    const names = rounds.flatMap(({ faults }) => faults.map(({ name }) => name));
    expect(new Set(names.slice(0, faultNames.length)).size).toBe(faultNames.length);
  });
});

describe(`${ROUNDS} rounds of seed ${SEED}, 20 phones sending`, () => {
  let outcome: FaultOutcome;
  beforeAll(async () => {
    const lines: string[] = [];
    outcome = await runFaults({ seed: SEED, rounds: Array.from({ length: ROUNDS }, (_, i) => i + 1), log: (line) => lines.push(line) });
    console.log([...lines, ...reportOf(outcome, SEED)].join("\n"));
  }, 180_000);

  test("every acknowledged entry and byte is there once, every chain verifies, every photo is read or unreadable, nothing hung", () => {
    expect(outcome.wrong).toEqual([]);
    expect(outcome.took).toHaveLength(ROUNDS);
  });

  test("and there was something to lose", () => {
    expect(outcome.told.entries.length).toBeGreaterThan(ROUNDS * 10);
    expect(outcome.told.photos.size).toBeGreaterThan(ROUNDS);
    expect(outcome.broke.filter(({ hits }) => hits > 0).length).toBeGreaterThan(ROUNDS / 2);
  });
});
