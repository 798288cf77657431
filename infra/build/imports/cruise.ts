import { existsSync, globSync } from "node:fs";
import { join } from "node:path";
import { cruise, type ICruiseResult } from "dependency-cruiser";
import { importRules } from "./rules.ts";

/** One import that a rule forbids. */
export interface Violation {
  readonly rule: string;
  readonly from: string;
  readonly to: string;
  readonly comment: string;
}

const folders = ["src", "functions", "templates", "infra", "tests"];

/** Every source file below `root`, by path from there. */
export const sourceFiles = (root: string): string[] =>
  globSync(
    folders.map((folder) => `${folder}/**/*.{ts,tsx}`),
    { cwd: root },
  ).filter((file) => !file.endsWith(".d.ts") && !file.startsWith("tests/samples/"));

/**
 * Checks the imports of the tree at `root` against every rule.
 * @throws when the checker looked at fewer files than there are: with a parser missing it finds nothing and calls that good
 */
export const forbiddenImports = async (root: string): Promise<{ readonly files: number; readonly violations: readonly Violation[] }> => {
  const files = sourceFiles(root);
  const { output } = await cruise(
    folders.filter((folder) => existsSync(join(root, folder))),
    {
      baseDir: root,
      parser: "swc",
      tsPreCompilationDeps: true,
      doNotFollow: { path: "node_modules" },
      exclude: { path: "^tests/samples/" },
      validate: true,
      ruleSet: { forbidden: [...importRules] },
    },
    {
      conditionNames: ["node", "import", "types", "default"],
      exportsFields: ["exports"],
      extensions: [".ts", ".tsx", ".js", ".mjs", ".cjs", ".json", ".d.ts"],
    } as never,
  );
  const { modules, summary } = output as ICruiseResult;
  const seen = new Set(modules.map((module) => module.source));
  const missed = files.filter((file) => !seen.has(file));
  if (files.length === 0 || missed.length > 0) {
    throw new Error(
      `The import checker saw ${files.length - missed.length} of ${files.length} files; missed ${missed.slice(0, 5).join(", ")}.`,
    );
  }
  const violations = summary.violations.map(({ rule, from, to }) => ({
    rule: rule.name,
    from,
    to,
    comment: importRules.find(({ name }) => name === rule.name)?.comment ?? "",
  }));
  return { files: files.length, violations };
};
