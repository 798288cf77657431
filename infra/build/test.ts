import "../node-version.mjs";
import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { browserEnvironment } from "../browser/index.ts";
import { buildApp } from "./app.ts";
import { bundleEdge } from "./edge.ts";
import { forbiddenImports } from "./imports/index.ts";
import { project } from "./project.ts";
import { countProcesses, judgeRun, type Line, table } from "./report.ts";
import { runTool } from "./run.ts";
import { givenStack, startTestStack } from "./test-stack.ts";
import { checkTypes, typeProjects } from "./type-projects.ts";

// `npm test`: everything that can fail, one table, and `N passed, N failed` as the last line

// Three pieces of work at a time on two cores, the longest first: now and then each waits, for what it killed, for a page or for a clock.
const AT_A_TIME = 3;
const work: readonly (() => Promise<void>)[] = [
  () => onOneStack(["record", "browser"]),
  () => onOneStack(["contract", "functions"]),
  () => onOneStack(["phone-short"]),
  () => oneAfterAnother(["unit"]),
  () => oneAfterAnother(["faults"]),
  () => types(),
  () => lintAndImports(),
  () => oneAfterAnother(["reference", "architecture"]),
];
/** At the end and with the machine to itself: what measures. */
const measured = ["measured"];
/** Prints what the reference tests were checked against; its last line goes into the table. */
const sourcesReporter = "./tests/reference/reporter.ts";
const mustRun = ["workerd", "store", "media", "print", "browser"];

const lines: Line[] = [];
const add = (line: Line): void => {
  lines.push(line);
  console.log(table([line]));
};
const one = (name: string, good: boolean, seconds: number, output: string): void => {
  if (!good) console.log(output.trim());
  add({ name, passed: good ? 1 : 0, failed: good ? 0 : 1, seconds, note: "" });
};

const out = join(project, "out");
const processLog = join(out, "processes.jsonl");
await mkdir(join(out, "tests"), { recursive: true });
await writeFile(processLog, "");
// whatever starts a process writes into it, this one and all below it
process.env.ASBURIED_PROCESS_LOG = processLog;
// the tests start the same few programs dozens of times: what Node made of their sources is kept between starts
process.env.NODE_COMPILE_CACHE = join(out, "compiled");

async function types(): Promise<void> {
  for (const name of typeProjects) {
    const ran = await checkTypes(name);
    one(`types ${name}`, ran.code === 0, ran.seconds, ran.output);
  }
}

async function lintAndImports(): Promise<void> {
  const lint = await runTool("node_modules/@biomejs/biome/bin/biome", ["check", "--error-on-warnings", "--colors=off"], false);
  one("lint", lint.code === 0, lint.seconds, lint.output);

  const began = performance.now();
  const imports = await forbiddenImports(project).catch((error: Error) => error);
  one(
    "imports",
    !(imports instanceof Error) && imports.violations.length === 0,
    (performance.now() - began) / 1000,
    imports instanceof Error ? imports.message : imports.violations.map(({ from, to, rule }) => `${from} → ${to} (${rule})`).join("\n"),
  );
}

async function tests(name: string, env: Readonly<Record<string, string>> = {}): Promise<void> {
  const file = join(out, "tests", `${name}.json`);
  await rm(file, { force: true });
  const ran = await runTool(
    "node_modules/vitest/vitest.mjs",
    ["run", "--project", name, "--reporter=default", "--reporter=json", `--outputFile.json=${file}`, `--reporter=${sourcesReporter}`],
    false,
    { ...env, NO_COLOR: "1" },
  );
  const judged = judgeRun(await readFile(file, "utf8").catch(() => undefined), ran.code);
  if (judged.failed > 0) console.log(ran.output.trim());
  const sources = /^reference: (.*)$/m.exec(ran.output)?.[1];
  add({ name, ...judged, note: [judged.note, sources ?? ""].filter((part) => part !== "").join(", "), seconds: ran.seconds });
}

async function oneAfterAnother(names: readonly string[], env: Readonly<Record<string, string>> = {}): Promise<void> {
  for (const name of names) await tests(name, env);
}

/** The same stack for all of them: starting one takes a build and some seconds. */
async function onOneStack(names: readonly string[]): Promise<void> {
  const began = performance.now();
  const started = await startTestStack().catch((error: Error) => error);
  if (started instanceof Error) return one("stack", false, (performance.now() - began) / 1000, started.stack ?? started.message);
  try {
    await oneAfterAnother(names, { [givenStack]: JSON.stringify(started.stack) });
  } finally {
    await started.stop();
  }
}

// what every stack is started from is made before anything runs beside it, and found by all of them
await Promise.all([buildApp(), bundleEdge("local"), browserEnvironment()]);
const left = [...work];
const oneByOne = async (): Promise<void> => {
  for (let next = left.shift(); next !== undefined; next = left.shift()) await next();
};
await Promise.all(Array.from({ length: AT_A_TIME }, oneByOne));
await onOneStack(measured);

const counts = countProcesses(await readFile(processLog, "utf8"));
const missing = mustRun.filter((name) => !counts.has(name));
add({
  name: "processes",
  passed: mustRun.length - missing.length,
  failed: missing.length,
  seconds: 0,
  note: mustRun.map((name) => `${name} ${counts.get(name) ?? 0}`).join(", "),
});

const passed = lines.reduce((sum, line) => sum + line.passed, 0);
const failed = lines.reduce((sum, line) => sum + line.failed, 0);
console.log(`\n${table(lines)}\n`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
