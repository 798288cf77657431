import { type ChildProcess, spawn } from "node:child_process";
import { createInterface } from "node:readline";
import { noteProcess } from "./process-log.ts";

/** How one child is started, again and again with the same command and port. */
export interface ChildPlan {
  readonly name: string;
  readonly command: string;
  readonly args: readonly string[];
  readonly env: Readonly<Record<string, string>>;
  readonly folder: string;
  /** False for a stand-in, which must not be counted among the processes that really ran. */
  readonly counted: boolean;
  readonly log: (line: string) => void;
  /** Called before each start, for clearing what the one before left. */
  readonly beforeStart?: () => Promise<void>;
  /** Called when the child's process changes. */
  readonly changed?: () => void;
  /** How long a start may take, in milliseconds. */
  readonly startLimit?: number;
}

/** A child that is started again when it ends by itself, until `stop`. */
export interface Supervised {
  readonly name: string;
  /** Its process id now; undefined while it is down. */
  pid(): number | undefined;
  /** Resolves when it listens; rejects when it has been stopped, or when its first start fails. */
  ready(): Promise<void>;
  /** Sends a signal; false when it is down. */
  kill(signal: NodeJS.Signals): boolean;
  /** Ends it and waits until the next one listens. */
  restart(): Promise<void>;
  stop(): Promise<void>;
}

const ending: ReadonlySet<string> = new Set(["SIGKILL", "SIGTERM", "SIGINT"]);
const QUICK = 100;
const SLOWEST = 5_000;

interface Attempt {
  readonly process: ChildProcess;
  readonly listening: Promise<void>;
  /** How it ended: a signal, an exit code, or why it never ran. */
  readonly ended: Promise<string>;
}

const isReadyLine = (line: string): boolean => {
  if (!line.startsWith("{")) return false;
  try {
    return (JSON.parse(line) as { ready?: unknown }).ready === true;
  } catch {
    return false;
  }
};

const startOnce = (plan: ChildPlan): Attempt => {
  // its own process group: Ctrl-C reaches the stack alone, which then stops its children in order
  const child = spawn(plan.command, plan.args, {
    stdio: ["pipe", "pipe", "pipe"],
    cwd: plan.folder,
    detached: true,
    env: { ...process.env, ...(plan.counted ? {} : { ASBURIED_PROCESS_LOG: "" }), ...plan.env },
  });
  child.stdin?.on("error", () => {});
  const ended = new Promise<string>((resolve) => {
    child.once("exit", (code, signal) => resolve(signal ?? `exit ${code}`));
    child.once("error", (error) => resolve(error.message));
  });
  const lastWords: string[] = [];
  const listening = new Promise<void>((resolve, reject) => {
    const limit = setTimeout(
      () => reject(new Error(`${plan.name} did not start within ${(plan.startLimit ?? 30_000) / 1000} s.`)),
      plan.startLimit ?? 30_000,
    );
    let heard = false;
    const hear = (line: string): void => {
      if (line.trim() === "") return;
      if (isReadyLine(line)) {
        heard = true;
        resolve();
      } else if (heard) plan.log(`${plan.name}: ${line}`);
      else {
        // kept for the message: what a start that fails has said is said once
        lastWords.push(line);
        if (lastWords.length > 20) lastWords.shift();
      }
    };
    if (child.stdout) createInterface({ input: child.stdout }).on("line", hear);
    if (child.stderr) createInterface({ input: child.stderr }).on("line", hear);
    child.once("error", (error) => reject(new Error(`${plan.name} could not be started: ${error.message}`)));
    // 'close' comes after the last line was read, 'exit' may come before
    child.once("close", (code, signal) =>
      reject(new Error(`${plan.name} ended (${signal ?? code}) before it listened.\n${lastWords.join("\n")}`)),
    );
    void ended.then(() => clearTimeout(limit));
    child.once("spawn", () => plan.counted && child.pid !== undefined && noteProcess(plan.name, child.pid));
  });
  listening.catch(() => {});
  return { process: child, listening, ended };
};

const end = async (attempt: Attempt): Promise<void> => {
  attempt.process.kill("SIGTERM");
  const late = setTimeout(() => attempt.process.kill("SIGKILL"), 5_000);
  await attempt.ended;
  clearTimeout(late);
};

/**
 * Starts a child that announces itself by one line `{"ready":true,"port":N}` on standard output. A child that ends by
 * itself is started again after 0.1 s, then 0.2, 0.4 ... up to 5 s while it keeps ending within 5 s.
 */
export const supervise = (plan: ChildPlan): Supervised => {
  let current: Attempt | undefined;
  let stopping = false;
  let everListened = false;
  let listensNow = false;
  let wait = QUICK;
  let waking: (() => void) | undefined;
  let nextReady = Promise.withResolvers<void>();
  nextReady.promise.catch(() => {});

  // whoever asks for `ready` from now on waits for the next process that listens
  const expectNext = (): void => {
    if (!listensNow) return;
    listensNow = false;
    nextReady = Promise.withResolvers<void>();
    nextReady.promise.catch(() => {});
  };

  const pause = (time: number): Promise<void> =>
    new Promise((resolve) => {
      const timer = setTimeout(resolve, time);
      waking = () => {
        clearTimeout(timer);
        resolve();
      };
    });

  const oneLife = async (): Promise<string> => {
    await plan.beforeStart?.();
    if (stopping) return "not started";
    const born = Date.now();
    const attempt = startOnce(plan);
    current = attempt;
    plan.changed?.();
    try {
      await attempt.listening;
      everListened = true;
      listensNow = true;
      nextReady.resolve();
    } catch (error) {
      attempt.process.kill("SIGKILL");
      if (!everListened) {
        stopping = true;
        nextReady.reject(error);
      } else if (!stopping) plan.log((error as Error).message);
    }
    const how = await attempt.ended;
    if (everListened) expectNext();
    current = undefined;
    wait = Date.now() - born > SLOWEST ? QUICK : Math.min(wait * 2, SLOWEST);
    plan.changed?.();
    return how;
  };

  const life = (async () => {
    for (;;) {
      const how = await oneLife();
      if (stopping) break;
      plan.log(`${plan.name} ended (${how}); starting it again.`);
      await pause(wait / 2);
      if (stopping) break;
    }
    nextReady.reject(new Error(`${plan.name} has been stopped.`));
  })();
  life.catch((error: unknown) => nextReady.reject(error));

  return {
    name: plan.name,
    pid: () => current?.process.pid,
    ready: () => nextReady.promise,
    kill: (signal) => {
      const sent = current?.process.kill(signal) ?? false;
      if (sent && ending.has(signal)) expectNext();
      return sent;
    },
    restart: async () => {
      const before = current;
      if (before !== undefined) {
        expectNext();
        await end(before);
      }
      wait = QUICK;
      waking?.();
      await nextReady.promise;
    },
    stop: async () => {
      stopping = true;
      waking?.();
      if (current !== undefined) await end(current);
      await life.catch(() => {});
    },
  };
};
