import "../node-version.mjs";
import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { browserEnvironment } from "../browser/index.ts";
import { buildApp } from "./app.ts";
import { bundleEdge } from "./edge.ts";
import { project } from "./project.ts";
import { countProcesses, judgeRun, type Line, table } from "./report.ts";
import { run, runTool } from "./run.ts";
import { givenStack, startTestStack } from "./test-stack.ts";
import { checkTypes, typeProjects } from "./type-projects.ts";

// `npm test`: everything that can fail, one table, and `N passed, N failed` as the last line

// Two pieces of work at a time on two cores, the longest first: each takes about one core. A third beside them would slow down what goes
// from process to process (a route's test waits for four of them in turn) more than it gets done itself.
const AT_A_TIME = 2;
const work: readonly (() => Promise<void>)[] = [
  () => onOneStack(["record", "browser"]),
  () => onOneStack(["contract", "functions"]),
  () => onOneStack(["phone-short"]),
  () => oneAfterAnother(["unit"]),
  () => oneAfterAnother(["faults"]),
  () => oneAfterAnother(["reference", "architecture"]),
];
/** What only computes and knows no time limit: in what the others leave of the cores while they wait for a page, a clock or what they killed. */
const between: readonly (() => Promise<void>)[] = [() => types(), () => lint(), () => imports()];
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
    const ran = await checkTypes(name, true);
    one(`types ${name}`, ran.code === 0, ran.seconds, ran.output);
  }
}

async function lint(): Promise<void> {
  const ran = await runTool("node_modules/@biomejs/biome/bin/biome", ["check", "--error-on-warnings", "--colors=off"], false, {}, true);
  one("lint", ran.code === 0, ran.seconds, ran.output);
}

async function imports(): Promise<void> {
  const ran = await run(process.execPath, [join(project, "infra/build/imports.ts")], false, {}, true);
  one("imports", ran.code === 0, ran.seconds, ran.output);
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
await Promise.all([buildApp(), bundleEdge("local"), bundleEdge("worker"), browserEnvironment()]);
const [left, leftBetween] = [[...work], [...between]];
const oneByOne = async (take: () => (() => Promise<void>) | undefined): Promise<void> => {
  for (let next = take(); next !== undefined; next = take()) await next();
};
await Promise.all([
  ...Array.from({ length: AT_A_TIME }, () => oneByOne(() => left.shift() ?? leftBetween.shift())),
  oneByOne(() => leftBetween.shift()),
]);
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
