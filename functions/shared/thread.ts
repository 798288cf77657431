/** As much of Node's own thread as is needed here, so that this file knows no Node. */
interface Thread {
  on(event: string, then: (told: unknown) => void): unknown;
  off(event: string, then: (told: unknown) => void): unknown;
  postMessage(asked: unknown): void;
  terminate(): Promise<unknown>;
}

export interface ThreadSettings<Answer> {
  readonly start: () => Thread;
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
  #worker: Thread | undefined;
  #before: Promise<unknown> = Promise.resolve();

  constructor(settings: ThreadSettings<Answer>) {
    this.#settings = settings;
  }

  ask(asked: Asked): Promise<Answer> {
    const answer = this.#before.then(() => this.#ask(asked));
    // one that could not even be started keeps nobody else from trying
    this.#before = answer.catch(() => undefined);
    return answer;
  }

  async close(): Promise<void> {
    await this.#worker?.terminate();
    this.#worker = undefined;
  }

  #start(): Thread {
    const worker = this.#settings.start();
    const forget = (): void => {
      if (this.#worker === worker) this.#worker = undefined;
    };
    worker.on("error", forget);
    worker.on("exit", forget);
    return worker;
  }

  #ask(asked: Asked): Promise<Answer> {
    this.#worker ??= this.#start();
    const worker = this.#worker;
    return new Promise((resolve) => {
      const end = (answer: unknown): void => {
        clearTimeout(limit);
        worker.off("message", end);
        worker.off("error", broke);
        worker.off("exit", stopped);
        // what the thread answers is its own business and that of whoever started it
        resolve(answer as Answer);
      };
      const fail = (says: string): void => {
        this.#worker = undefined;
        end(this.#settings.failed(says));
        void worker.terminate();
      };
      const broke = (error: unknown): void => fail(error instanceof Error ? error.message : String(error));
      const stopped = (): void => fail("the thread stopped");
      const limit = setTimeout(() => fail("the thread took too long"), this.#settings.limit);
      worker.on("message", end);
      worker.on("error", broke);
      worker.on("exit", stopped);
      worker.postMessage(asked);
    });
  }
}
