import "../node-version.mjs";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { project } from "./project.ts";
import { runTool } from "./run.ts";

/**
 * `npm run long`: what `npm test` has no time for. Every U against a million draws, and every property test of the unit project
 * tried for seconds instead of a moment; faults at chosen moments and in 1,000 rounds; the owner's questions against bare SQL;
 * appends to a company of 10,000 jobs; every fuzz of a reader with 100,000 inputs a kind, and as many requests over all routes. Own
 * files are named on the command line: `npm run long tests/unit/geometry`.
 */
const unit = join(project, "tests/unit");
const asked = process.argv.slice(2);
/** Inputs of a kind; the setup of the long run does not cut these short. */
const FUZZ_RUNS = process.env.FUZZ_RUNS ?? "100000";

async function withProperties(): Promise<readonly string[]> {
  const files = (await readdir(unit, { recursive: true })).filter((name) => name.endsWith(".test.ts"));
  const texts = await Promise.all(files.map(async (name) => [name, await readFile(join(unit, name), "utf8")] as const));
  return texts
    .filter(([, text]) => /fc\.assert\(|helpers\/fuzz\.ts"/.test(text))
    .map(([name]) => `tests/unit/${name.replaceAll("\\", "/")}`);
}

const files =
  asked.length > 0
    ? asked
    : [
        "tests/long",
        "tests/faults/nothing-lost.test.ts",
        "tests/faults/company-moves.test.ts",
        "tests/record/many-pictures.test.ts",
        "tests/functions/edge-questions-cost.test.ts",
        "tests/functions/edge-history-cost.test.ts",
        ...(await withProperties()),
      ];
const ran = await runTool(
  "node_modules/vitest/vitest.mjs",
  ["run", "--project", "long", "--reporter=default", "--reporter=./tests/long/reporter.ts", ...files],
  true,
  { ASBURIED_LONG: "1", FUZZ_RUNS },
);
// the routes need the whole stack, which the long project does not start
const requests =
  asked.length > 0
    ? undefined
    : await runTool("node_modules/vitest/vitest.mjs", ["run", "--project", "functions", "tests/functions/edge-fuzz.test.ts"], true, {
        FUZZ_RUNS,
      });
process.exitCode = ran.code === 0 ? (requests?.code ?? 0) : ran.code;
