import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { build } from "vite";
import { project } from "./project.ts";

/** Where the built file of a version of the rules lies. */
export const rulesFile = (version: number): string => join(project, `infra/rules/${version}.js`);

/** Today's judging as one file that needs nothing else: the same text for the same sources. */
export async function builtRules(): Promise<string> {
  const output = await build({
    configFile: false,
    root: project,
    publicDir: false,
    logLevel: "warn",
    build: {
      write: false,
      target: "es2022",
      minify: false,
      reportCompressedSize: false,
      rollupOptions: { treeshake: { moduleSideEffects: false } },
      lib: { entry: join(project, "src/proof/judging.ts"), formats: ["es"], fileName: "rules" },
    },
  });
  const [first] = [output].flat();
  if (first === undefined || !("output" in first) || first.output.length !== 1) throw new Error("The rules were not built into one file.");
  const [file] = first.output;
  if (file.imports.length > 0 || file.dynamicImports.length > 0) throw new Error("The rules' file needs another file.");
  return file.code;
}

/** The number of the rules that a built file judges by. */
export async function rulesOf(code: string): Promise<number> {
  const { rules } = (await import(`data:text/javascript;base64,${Buffer.from(code).toString("base64")}`)) as { rules: number };
  return rules;
}

export const digestOfText = (text: string): string => createHash("sha256").update(text).digest("hex");

/** What `src/proof/rules-digests.ts` holds when `digests` are known. */
export const digestsModule = (digests: Readonly<Record<number, string>>): string =>
  [
    "/** SHA-256 of the built file of each version of the rules, `infra/rules/<version>.js`; written by `npm run rules`. */",
    "export const rulesDigests: Readonly<Record<number, string>> = {",
    ...Object.entries(digests).map(([version, digest]) => `  ${version}: "${digest}",`),
    "};",
    "",
  ].join("\n");

export const readRules = (version: number): Promise<string> => readFile(rulesFile(version), "utf8");
