import { expect, test } from "vitest";
import { reportOf } from "../faults/harness/report.ts";
import { runFaults } from "../faults/harness/run.ts";

const ROUNDS = 1_000;
const SEED = Number(process.env.ASBURIED_SEED ?? 7);

test(`${ROUNDS} rounds of seed ${SEED} lose nothing`, { timeout: 3 * 3_600_000 }, async () => {
  const rounds = Array.from({ length: ROUNDS }, (_, i) => i + 1);
  const outcome = await runFaults({ seed: SEED, rounds, log: (line) => console.log(line) });
  console.log(reportOf(outcome, SEED).join("\n"));
  expect(outcome.wrong).toEqual([]);
});
