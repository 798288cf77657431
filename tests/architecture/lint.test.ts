import { spawnSync } from "node:child_process";
import { cp, mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { project } from "./project.ts";

/** Faults for the linter, each in a file of its own, with the rule that must name it. */
const planted = [
  { what: "a clock in the core", file: "src/job/clock.ts", text: "export const at = (): number => Date.now();\n", rule: "plugin" },
  { what: "a date of now in the core", file: "src/job/date.ts", text: "export const at = (): Date => new Date();\n", rule: "plugin" },
  { what: "chance in the core", file: "src/job/chance.ts", text: "export const id = (): number => Math.random();\n", rule: "plugin" },
  {
    what: "an import without its ending",
    file: "src/job/ending.ts",
    text: 'export { at } from "./clock";\n',
    rule: "lint/correctness/useImportExtensions",
  },
  {
    what: "a cycle",
    file: "src/job/one.ts",
    text: 'import { two } from "./two.ts";\n\nexport const one = (): unknown => two;\n',
    rule: "lint/suspicious/noImportCycles",
  },
] as const;

const sound = {
  "src/job/two.ts": 'import { one } from "./one.ts";\n\nexport const two = (): unknown => one;\n',
  "src/job/given.ts": "export const at = (milliseconds: number): Date => new Date(milliseconds);\n",
  "functions/edge/clock.ts": "export const at = (): number => Date.now();\n",
  "src/screens/clock.ts": "export const at = (): number => Date.now();\n",
};

interface Report {
  readonly diagnostics: readonly { readonly category: string; readonly location: { readonly path: string | { readonly file: string } } }[];
}

let root = "";
let found: readonly { readonly file: string; readonly rule: string }[] = [];

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), "asburied-lint-"));
  await cp(join(project, "biome.json"), join(root, "biome.json"));
  await mkdir(join(root, "infra/build"), { recursive: true });
  await cp(join(project, "infra/build/pure.grit"), join(root, "infra/build/pure.grit"));
  for (const [file, text] of Object.entries({ ...sound, ...Object.fromEntries(planted.map(({ file, text }) => [file, text])) })) {
    await mkdir(dirname(join(root, file)), { recursive: true });
    await writeFile(join(root, file), text);
  }
  const ran = spawnSync(
    process.execPath,
    [join(project, "node_modules/@biomejs/biome/bin/biome"), "lint", "--reporter=json", "--max-diagnostics=none"],
    {
      cwd: root,
      encoding: "utf8",
    },
  );
  const { diagnostics } = JSON.parse(ran.stdout) as Report;
  found = diagnostics.map(({ category, location: { path } }) => ({ file: typeof path === "string" ? path : path.file, rule: category }));
});
afterAll(() => rm(root, { recursive: true, force: true }));

test.each(planted)("the linter finds $what", ({ file, rule }) => {
  expect(found.filter((one) => one.file.endsWith(file)).map((one) => one.rule)).toContain(rule);
});

test("a time that is handed in, and a clock outside the core, pass", () => {
  expect(found.filter(({ file }) => /given\.ts$|edge\/clock\.ts$|screens\/clock\.ts$/.test(file))).toEqual([]);
});
