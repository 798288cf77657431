import { type ChildProcess, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

export interface Child {
  readonly port: number;
  readonly pid: number;
  /** What it has written to its error stream. */
  errors(): string;
  /** Sends the signal and waits for the end; gives the exit code or the signal that ended it. */
  end(signal?: NodeJS.Signals): Promise<number | NodeJS.Signals>;
}

/** Starts one of the project's entry files as a process of its own and waits for its line `{"ready":true,"port":N}`. */
export async function startChild(entry: string, environment: Readonly<Record<string, string>>): Promise<Child> {
  const child = spawn(process.execPath, [entry], { cwd: ROOT, env: environment, stdio: ["ignore", "pipe", "pipe"] });
  let errors = "";
  child.stderr.on("data", (chunk: Buffer) => {
    errors += chunk.toString();
  });
  const ended = new Promise<number | NodeJS.Signals>((resolve) => child.on("exit", (code, signal) => resolve(code ?? signal ?? 1)));
  const port = await Promise.race([readyPort(child), ended.then((how) => Promise.reject(new Error(`${entry} ended (${how}): ${errors}`)))]);
  return {
    port,
    pid: child.pid as number,
    errors: () => errors,
    end: (signal = "SIGTERM") => {
      child.kill(signal);
      return ended;
    },
  };
}

const readyPort = (child: ChildProcess): Promise<number> =>
  new Promise((resolve) => {
    let text = "";
    child.stdout?.on("data", (chunk: Buffer) => {
      text += chunk.toString();
      const line = text.split("\n").find((one) => one.startsWith('{"ready":true'));
      if (line) resolve((JSON.parse(line) as { port: number }).port);
    });
  });
