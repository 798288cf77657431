import "../node-version.mjs";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { project } from "./project.ts";
import { runTool } from "./run.ts";

/**
 * `npm run long`: what `npm test` has no time for. Every U against a million draws, and every property test of the unit project
 * tried for seconds instead of a moment. Own files are named on the command line: `npm run long tests/unit/geometry`.
 */
const unit = join(project, "tests/unit");
const asked = process.argv.slice(2);

async function withProperties(): Promise<readonly string[]> {
  const files = (await readdir(unit, { recursive: true })).filter((name) => name.endsWith(".test.ts"));
  const texts = await Promise.all(files.map(async (name) => [name, await readFile(join(unit, name), "utf8")] as const));
  return texts.filter(([, text]) => text.includes("fc.assert(")).map(([name]) => `tests/unit/${name.replaceAll("\\", "/")}`);
}

const files = asked.length > 0 ? asked : ["tests/long", ...(await withProperties())];
const ran = await runTool(
  "node_modules/vitest/vitest.mjs",
  ["run", "--project", "long", "--reporter=default", "--reporter=./tests/long/reporter.ts", ...files],
  true,
  { ASBURIED_LONG: "1" },
);
process.exitCode = ran.code;
