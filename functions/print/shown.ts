import { createHash } from "node:crypto";
import { Worker } from "node:worker_threads";
import { OneThread, type PrintShown } from "#functions/shared/index.ts";
import type { WordsRead } from "./words-worker.ts";

/** Own: a paper that is bound in may be made to hold a reader up. A record of 60 pictures takes a third of a second. */
const READ_MS = 30_000;

/**
 * In a thread of its own: a reader of PDF gives this process slow functions for base64, through which all that the browser says
 * would come. Started when the first record is printed.
 */
const reader = new OneThread<Uint8Array, WordsRead>({
  start: () => {
    const worker = new Worker(new URL("./words-worker.ts", import.meta.url));
    // nothing waits for it but who asked it
    worker.unref();
    return worker;
  },
  limit: READ_MS,
  failed: (says) => ({ failed: says }),
});

/** Reads the finished file as whoever checks it will read it. Throws where it cannot be read. */
export async function shownIn(pdf: Uint8Array, files: Pick<PrintShown, "pictures" | "papers">): Promise<PrintShown> {
  const read = await reader.ask(pdf);
  if ("failed" in read) throw new Error(`the printed record cannot be read: ${read.failed}`);
  return { pages: read.pages, ...files };
}

export const sha256Of = (content: string | Uint8Array): string => createHash("sha256").update(content).digest("hex");
