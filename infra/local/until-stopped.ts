import { type Stack, type StackOptions, startStack } from "./stack.ts";

export interface Started {
  readonly stack: Stack;
  readonly isStopping: () => boolean;
}

/**
 * A stack that Ctrl-C or SIGTERM stops, `told` of it first, and the process with it. Where it cannot start, the reason is printed and the
 * process ends with 1.
 */
export async function startUntilStopped(options: StackOptions, told: () => void): Promise<Started> {
  let stop: (() => Promise<void>) | undefined;
  let stopping = false;
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.on(signal, () => {
      if (stopping) return;
      stopping = true;
      told();
      // still starting: what has been started must be known before it can be stopped
      if (stop) void stop().finally(() => process.exit(0));
    });
  }
  const stack = await startStack(options).catch((error: Error) => {
    console.error(error.message);
    process.exit(1);
  });
  stop = stack.stop;
  if (stopping) {
    await stop();
    process.exit(0);
  }
  return { stack, isStopping: () => stopping };
}
