import { isMainThread } from "node:worker_threads";
import "../node-version.mjs";

/**
 * Loaded ahead of each child of the stack (`node --import`): its standard input is a pipe whose other end the stack
 * holds, so the end of that pipe is the end of the stack, however it came, and the child stops too.
 */
const stop = (): void => {
  process.kill(process.pid, "SIGTERM");
  setTimeout(() => process.exit(1), 3_000).unref();
};

// a thread of the child loads this too, and its standard input, which is none, ends at once
if (isMainThread) {
  process.stdin.on("end", stop);
  process.stdin.on("error", stop);
  process.stdin.resume();
  // the pipe alone must not keep a process alive whose work is done
  (process.stdin as { unref?: () => void }).unref?.();
}
