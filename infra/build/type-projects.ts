import { existsSync } from "node:fs";
import { join } from "node:path";
import { project } from "./project.ts";
import { type Ran, runTool } from "./run.ts";

/** Each project with the folder without which it has nothing to check. */
const projects = [
  { name: "core", needs: "src" },
  { name: "edge", needs: "functions/edge" },
  { name: "node", needs: "infra" },
  { name: "app", needs: "src/screens" },
  { name: "tests", needs: "tests" },
] as const;

/** The type projects that there are files for. */
export const typeProjects: readonly string[] = projects.filter(({ needs }) => existsSync(join(project, needs))).map(({ name }) => name);

/** Runs the compiler over one project; `last` lets whatever else runs go first. */
export const checkTypes = (name: string, last = false): Promise<Ran> =>
  runTool("node_modules/typescript/bin/tsc", ["-p", `infra/build/tsconfig.${name}.json`, "--pretty", "false"], false, {}, last);
