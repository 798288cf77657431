const SIZE = 1 << 18;
/** A phone on a thin line needs long for a block; one that sends nothing for this long is gone. */
const SILENCE_MS = 120_000;

/** The blocks of a request's body, 256 KiB each but the last: what comes in is hashed and sent on while the next one comes. */
export class Blocks {
  readonly #reader: ReadableStreamBYOBReader | undefined;
  #ended: boolean;
  #broken = false;
  #last: Promise<unknown> = Promise.resolve();

  constructor(body: ReadableStream<Uint8Array> | null) {
    this.#reader = body?.getReader({ mode: "byob" });
    this.#ended = body === null;
  }

  /** Whether the sender broke off or fell silent. */
  get broken(): boolean {
    return this.#broken;
  }

  /** The next block, nothing at the end. Throws when the sender broke off. May be asked for before the one before has come. */
  next(): Promise<Uint8Array | undefined> {
    // workerd refuses a second read beside one that waits, and would take it for a sender that broke off
    const turn = this.#last.then(() => this.#read());
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  async #read(): Promise<Uint8Array | undefined> {
    if (this.#ended || this.#reader === undefined) return undefined;
    let silent: () => void = () => {};
    const silence = new Promise<never>((_, reject) => {
      silent = () => reject(new Error("silent"));
    });
    const timer = setTimeout(() => silent(), SILENCE_MS);
    try {
      const { value, done } = await Promise.race([this.#reader.readAtLeast(SIZE, new Uint8Array(SIZE)), silence]);
      if (done) this.#ended = true;
      return value && value.length > 0 ? value : undefined;
    } catch (thrown) {
      this.#ended = true;
      this.#broken = true;
      await this.#reader.cancel().catch(() => undefined);
      throw thrown;
    } finally {
      clearTimeout(timer);
    }
  }

  /** Reads what is left, up to so many bytes, and keeps nothing. */
  async discard(most: number): Promise<void> {
    try {
      for (let count = 0; count < most; ) {
        const block = await this.next();
        if (block === undefined) return;
        count += block.length;
      }
      await this.#reader?.cancel();
    } catch {
      // broken off: there is nothing left to read
    }
  }
}
