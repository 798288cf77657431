import { Worker } from "node:worker_threads";
import { OneThread } from "#functions/shared/index.ts";
import type { HeicAnswer, HeicAsked } from "./heic-worker.ts";

/** A decode that takes longer is given up and its thread ended; own. */
const DECODE_MS = 60_000;

/** Decodes HEIC in a thread of its own, one picture at a time: it takes half a second. */
export class HeicDecoder {
  readonly #thread = new OneThread<HeicAsked, HeicAnswer>({
    // The decoder prints its complaints; they are in the answer already.
    start: () => new Worker(new URL("./heic-worker.ts", import.meta.url), { stdout: true, stderr: true }),
    limit: DECODE_MS,
    failed: (says) => ({ ok: false, why: "undecodable", says }),
  });

  decode(asked: HeicAsked): Promise<HeicAnswer> {
    return this.#thread.ask(asked);
  }

  close(): Promise<void> {
    return this.#thread.close();
  }
}
