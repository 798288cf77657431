import type { Worker } from "node:worker_threads";

export interface ThreadSettings<Answer> {
  readonly start: () => Worker;
  /** An answer that takes longer is given up and its thread ended, milliseconds. */
  readonly limit: number;
  /** The answer of a thread that hangs or dies. */
  readonly failed: (says: string) => Answer;
}

/**
 * Work that would keep the process from answering anybody, in a thread of its own, one piece at a time. A thread that dies or hangs
 * costs its piece, and the next one gets a new thread.
 */
export class OneThread<Asked, Answer> {
  readonly #settings: ThreadSettings<Answer>;
  #worker: Worker | undefined;
  #before: Promise<unknown> = Promise.resolve();

  constructor(settings: ThreadSettings<Answer>) {
    this.#settings = settings;
  }

  ask(asked: Asked): Promise<Answer> {
    const answer = this.#before.then(() => this.#ask(asked));
    this.#before = answer;
    return answer;
  }

  async close(): Promise<void> {
    await this.#worker?.terminate();
    this.#worker = undefined;
  }

  #start(): Worker {
    const worker = this.#settings.start();
    const forget = (): void => {
      if (this.#worker === worker) this.#worker = undefined;
    };
    return worker.on("error", forget).on("exit", forget);
  }

  #ask(asked: Asked): Promise<Answer> {
    this.#worker ??= this.#start();
    const worker = this.#worker;
    return new Promise((resolve) => {
      const end = (answer: Answer): void => {
        clearTimeout(limit);
        worker.off("message", end).off("error", broke).off("exit", stopped);
        resolve(answer);
      };
      const fail = (says: string): void => {
        this.#worker = undefined;
        end(this.#settings.failed(says));
        void worker.terminate();
      };
      const broke = (error: unknown): void => fail(error instanceof Error ? error.message : String(error));
      const stopped = (): void => fail("the decoder stopped");
      const limit = setTimeout(() => fail("the decoder took too long"), this.#settings.limit);
      worker.on("message", end).on("error", broke).on("exit", stopped);
      worker.postMessage(asked);
    });
  }
}
