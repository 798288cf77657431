/** How long the store may take to take a block, or to answer once it has them all: the phone that sends holds its line that long. */
export const STORE_SILENCE_MS = 20_000;

/** Waits for the store as long as it may be silent; then gives up on it. */
export class StorePatience {
  readonly #ended = new AbortController();
  readonly #silence: number;

  constructor(silence: number = STORE_SILENCE_MS) {
    this.#silence = silence;
  }

  /** For the request that is to end with it. */
  get signal(): AbortSignal {
    return this.#ended.signal;
  }

  /** What the work gives. When it takes too long the request is ended; the work then ends by that, or this throws. */
  async over<T>(work: Promise<T>): Promise<T> {
    const timer = setTimeout(() => this.#ended.abort(), this.#silence);
    let end: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<never>((_, reject) => {
      end = setTimeout(() => reject(new Error("store silent")), this.#silence + 1_000);
    });
    try {
      return await Promise.race([work, late]);
    } finally {
      clearTimeout(timer);
      clearTimeout(end);
    }
  }
}
