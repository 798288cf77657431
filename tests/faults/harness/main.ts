import "../../../infra/node-version.mjs";
import { parseArgs } from "node:util";
import { reportOf } from "./report.ts";
import { runFaults } from "./run.ts";

/**
 * `npm run faults -- --rounds 200 --seed 7`: breaks the local stack in so many rounds and says what was lost. `--round 33` or
 * `--round 30-40` runs these alone, with the same draws. Exit 1 where anything is wrong.
 */
const { values } = parseArgs({
  options: { rounds: { type: "string", default: "20" }, seed: { type: "string", default: "7" }, round: { type: "string" } },
});
const seed = Number(values.seed);
const [first = 1, last = first] = values.round === undefined ? [1, Number(values.rounds)] : values.round.split("-").map(Number);
if (![seed, first, last].every(Number.isSafeInteger) || first < 1 || last < first) {
  console.error("Whole numbers, please: npm run faults -- --rounds 200 --seed 7, or -- --seed 7 --round 33");
  process.exit(2);
}
const rounds = Array.from({ length: last - first + 1 }, (_, i) => first + i);
const outcome = await runFaults({ seed, rounds, log: (line) => console.log(line) });
const stopped = outcome.took.at(-1)?.number;
console.log(`\n${reportOf(outcome, seed).join("\n")}`);
if (outcome.wrong.length > 0) console.log(`Again: npm run faults -- --seed ${seed} --round ${stopped ?? first}`);
process.exit(outcome.wrong.length === 0 ? 0 : 1);
