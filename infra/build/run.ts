import { spawn } from "node:child_process";
import { constants, getPriority, setPriority } from "node:os";
import { join } from "node:path";
import { project } from "./project.ts";

/** What a command said and how it ended. */
export interface Ran {
  readonly code: number;
  readonly output: string;
  readonly seconds: number;
}

/**
 * Runs a command in the project's root, on this Node where it is one of the installed tools.
 * @param show passes its words on while it runs
 * @param last lets whatever else runs on this machine go first
 */
export const run = (
  command: string,
  args: readonly string[],
  show: boolean,
  env: Readonly<Record<string, string>> = {},
  last = false,
): Promise<Ran> =>
  new Promise((resolve) => {
    const began = performance.now();
    const child = spawn(command, args, { cwd: project, stdio: ["ignore", "pipe", "pipe"], env: { ...process.env, ...env } });
    if (last && child.pid !== undefined) setPriority(child.pid, Math.max(getPriority(), constants.priority.PRIORITY_BELOW_NORMAL));
    let output = "";
    const hear = (bytes: Buffer): void => {
      output += bytes.toString("utf8");
      if (show) process.stdout.write(bytes);
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    const done = (code: number): void => resolve({ code, output, seconds: (performance.now() - began) / 1000 });
    child.once("error", (error) => {
      output += error.message;
      done(1);
    });
    child.once("close", (code) => done(code ?? 1));
  });

/** A script of an installed package, run on this Node. */
export const runTool = (
  script: string,
  args: readonly string[],
  show: boolean,
  env: Readonly<Record<string, string>> = {},
  last = false,
): Promise<Ran> => run(process.execPath, [join(project, script), ...args], show, env, last);
