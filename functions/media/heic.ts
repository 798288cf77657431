import { Worker } from "node:worker_threads";
import type { HeicAnswer, HeicAsked } from "./heic-worker.ts";

/** A decode that takes longer is given up and its thread ended; own. */
const DECODE_MS = 60_000;

/**
 * Decodes HEIC in a thread of its own, one picture at a time: it takes half a second, during which the process would
 * answer nobody. A thread that dies or hangs costs its picture, and the next one gets a new thread.
 */
export class HeicDecoder {
  #worker: Worker | undefined;
  #before: Promise<unknown> = Promise.resolve();

  decode(asked: HeicAsked): Promise<HeicAnswer> {
    const answer = this.#before.then(() => this.#ask(asked));
    this.#before = answer;
    return answer;
  }

  async close(): Promise<void> {
    await this.#worker?.terminate();
    this.#worker = undefined;
  }

  #start(): Worker {
    // The decoder prints its complaints; they are in the answer already.
    const worker = new Worker(new URL("./heic-worker.ts", import.meta.url), { stdout: true, stderr: true });
    const forget = (): void => {
      if (this.#worker === worker) this.#worker = undefined;
    };
    return worker.on("error", forget).on("exit", forget);
  }

  #ask(asked: HeicAsked): Promise<HeicAnswer> {
    this.#worker ??= this.#start();
    const worker = this.#worker;
    return new Promise((resolve) => {
      const end = (answer: HeicAnswer): void => {
        clearTimeout(limit);
        worker.off("message", end).off("error", broke).off("exit", stopped);
        resolve(answer);
      };
      const fail = (says: string): void => {
        this.#worker = undefined;
        end({ ok: false, why: "undecodable", says });
        void worker.terminate();
      };
      const broke = (error: unknown): void => fail(error instanceof Error ? error.message : String(error));
      const stopped = (): void => fail("the decoder stopped");
      const limit = setTimeout(() => fail("the decoder took too long"), DECODE_MS);
      worker.on("message", end).on("error", broke).on("exit", stopped);
      worker.postMessage(asked);
    });
  }
}
