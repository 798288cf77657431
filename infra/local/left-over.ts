import { execFileSync } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** What `<directory>/running.json` says: the process that runs the stack, where it answers, and its children. */
export interface Running {
  readonly pid: number;
  readonly edge: string;
  /** Address of the store. */
  readonly store?: string;
  readonly children: readonly { readonly name: string; readonly pid: number }[];
}

const fileIn = (directory: string): string => join(directory, "running.json");

/** The command line of a living process; undefined when there is none, or only what a dead one left (a zombie). */
export const commandOf = (pid: number): string | undefined => {
  try {
    const text = readFileSync(`/proc/${pid}/cmdline`, "utf8").replaceAll("\0", " ").trim();
    return text === "" ? undefined : text;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT" && process.platform === "linux") return undefined;
  }
  try {
    return execFileSync("ps", ["-o", "command=", "-p", String(pid)], { encoding: "utf8" }).trim() || undefined;
  } catch {
    return undefined;
  }
};

/** Kills the process with this id when its command line holds `mark`, and waits until it is gone (2 s at most). */
export const killLeftOver = async (pid: number, mark: string): Promise<boolean> => {
  if (!commandOf(pid)?.includes(mark)) return false;
  try {
    process.kill(pid, "SIGKILL");
  } catch {
    return false;
  }
  for (let waited = 0; waited < 2_000 && commandOf(pid) !== undefined; waited += 20) {
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  return true;
};

const read = (directory: string): Running | undefined => {
  try {
    return JSON.parse(readFileSync(fileIn(directory), "utf8")) as Running;
  } catch {
    return undefined;
  }
};

/** The stack that runs in this folder now; undefined where none does. */
export const runningIn = (directory: string): Running | undefined => {
  const noted = read(directory);
  const command = noted && commandOf(noted.pid);
  return command === undefined ? undefined : noted;
};

/** The last argument of each child: a process id is used again by the system, this is not. */
export const stackMark = (directory: string): string => `--stack=[${directory}]`;

/** What tells this stack's workerd from every other: the address it listens on. */
export const workerdMark = (port: number | string): string => `entry=127.0.0.1:${port} `;

/**
 * Makes sure that nobody else works in this folder: stops what a killed stack left behind.
 * @throws when a stack is running in it now, naming its process and address.
 */
export const clearLeftOver = async (directory: string, log: (line: string) => void): Promise<void> => {
  const before = read(directory);
  if (before === undefined) return;
  const markOf = (name: string): string => (name === "workerd" ? workerdMark(new URL(before.edge).port) : stackMark(directory));
  const alive = before.children.filter((child) => commandOf(child.pid)?.includes(markOf(child.name)));
  if (alive.length > 0 && commandOf(before.pid) !== undefined) {
    throw new Error(`A stack is running in ${directory} already (process ${before.pid}, ${before.edge}). Stop that one first.`);
  }
  for (const child of alive) {
    if (await killLeftOver(child.pid, markOf(child.name))) log(`Stopped ${child.name} (process ${child.pid}), left over from before.`);
  }
  rmSync(fileIn(directory), { force: true });
};

/** Writes down what is running, for the next start to find. */
export const writeRunning = (directory: string, running: Running): void => {
  writeFileSync(fileIn(directory), `${JSON.stringify(running)}\n`, { mode: 0o600 });
};

/** Takes the note away after an orderly stop. */
export const removeRunning = (directory: string): void => rmSync(fileIn(directory), { force: true });
