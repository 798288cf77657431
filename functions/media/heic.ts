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

  decode(bytes: Uint8Array, mostPixels: number): Promise<HeicAnswer> {
    const answer = this.#before.then(() => this.#ask({ bytes, mostPixels }));
    this.#before = answer;
    return answer;
  }

  async close(): Promise<void> {
    await this.#worker?.terminate();
    this.#worker = undefined;
  }

  #ask(asked: HeicAsked): Promise<HeicAnswer> {
    this.#worker ??= new Worker(new URL("./heic-worker.ts", import.meta.url), { stdout: true, stderr: true });
    const worker = this.#worker;
    return new Promise((resolve) => {
      const end = (answer: HeicAnswer): void => {
        clearTimeout(limit);
        worker.removeAllListeners();
        resolve(answer);
      };
      const fail = (says: string): void => {
        this.#worker = undefined;
        end({ ok: false, why: "undecodable", says });
        void worker.terminate();
      };
      const limit = setTimeout(() => fail("the decoder took too long"), DECODE_MS);
      worker.once("message", end);
      worker.once("error", (error) => fail(error instanceof Error ? error.message : String(error)));
      worker.once("exit", () => fail("the decoder stopped"));
      worker.postMessage(asked);
    });
  }
}
