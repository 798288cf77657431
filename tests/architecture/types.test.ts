import { spawnSync } from "node:child_process";
import { cp, mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { project } from "./project.ts";

/** What the core must not know, and what Node cannot run as it stands. Each in a file of its own. */
const planted = [
  { what: "the process", file: "process.ts", text: "export const at = process.env;\n" },
  { what: "the network", file: "network.ts", text: 'export const at = fetch("http://localhost");\n' },
  { what: "the platform's cryptography", file: "crypto.ts", text: "export const at = crypto.randomUUID();\n" },
  { what: "a timer", file: "timer.ts", text: "export const at = setTimeout(() => 1, 1);\n" },
  { what: "a page", file: "page.ts", text: "export const at = document.title;\n" },
  { what: "a module of Node", file: "node.ts", text: 'export { readFileSync } from "node:fs";\n' },
  { what: "an enum", file: "enum.ts", text: "export enum Way {\n  In = 1,\n}\n" },
  { what: "a type imported as code", file: "type.ts", text: 'import { Length } from "./sound.ts";\nexport type Depth = Length;\n' },
  { what: "an entry of a list taken for granted", file: "entry.ts", text: "export const first = (list: string[]): string => list[0];\n" },
  {
    what: "an undefined where a property may only be absent",
    file: "absent.ts",
    text: "export const depth: { metres?: number } = { metres: undefined };\n",
  },
] as const;

let root = "";
let output = "";

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), "asburied-types-"));
  await mkdir(join(root, "infra/build"), { recursive: true });
  await mkdir(join(root, "src/job"), { recursive: true });
  for (const file of ["tsconfig.json", "infra/build/tsconfig.core.json"]) await cp(join(project, file), join(root, file));
  await writeFile(join(root, "package.json"), '{ "type": "module" }\n');
  await writeFile(
    join(root, "src/job/sound.ts"),
    "export type Length = number;\nexport const at = (when: number): Date => new Date(when);\n",
  );
  for (const { file, text } of planted) await writeFile(join(root, "src/job", file), text);
  const tsc = join(project, "node_modules/typescript/bin/tsc");
  output = spawnSync(process.execPath, [tsc, "-p", "infra/build/tsconfig.core.json", "--pretty", "false"], {
    cwd: root,
    encoding: "utf8",
  }).stdout;
});
afterAll(() => rm(root, { recursive: true, force: true }));

test.each(planted)("the compiler refuses $what in the core", ({ file }) => {
  expect(output).toContain(`src/job/${file}(`);
});

test("what is sound passes", () => {
  expect(output).not.toContain("sound.ts");
});
