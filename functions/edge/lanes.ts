/**
 * One after another by name, inside this isolate. Only a speed-up: what must hold is held by the database's unique keys.
 * A waiter goes ahead after its time limit, so that a request that died does not hold the others.
 */
export class Lanes {
  readonly #last = new Map<string, Promise<void>>();

  async in<T>(name: string, limitMs: number, work: () => Promise<T>): Promise<T> {
    const before = this.#last.get(name);
    let leave: () => void = () => {};
    const mine = new Promise<void>((resolve) => {
      leave = resolve;
    });
    this.#last.set(name, mine);
    try {
      if (before) await Promise.race([before, pause(limitMs)]);
      return await work();
    } finally {
      leave();
      if (this.#last.get(name) === mine) this.#last.delete(name);
    }
  }
}

export const pause = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));
