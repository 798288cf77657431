/** How long was waited: mean, and what 95 and 99 of 100 did not pass. Milliseconds. */
export interface Waits {
  readonly count: number;
  readonly mean: number;
  readonly p95: number;
  readonly p99: number;
}

/** Bins of 4 %, from a hundredth of a millisecond on; what is shorter counts as no wait. */
const STEP = Math.log(1.04);
const LEAST = 0.01;
const BINS = 600;

/** Counts waits in bins, so that millions of them have room. */
export class Tally {
  readonly #bins = new Uint32Array(BINS);
  #count = 0;
  #sum = 0;

  note(milliseconds: number): void {
    this.#count += 1;
    this.#sum += milliseconds;
    const bin = milliseconds < LEAST ? 0 : Math.min(BINS - 1, 1 + Math.floor(Math.log(milliseconds / LEAST) / STEP));
    this.#bins[bin] = (this.#bins[bin] ?? 0) + 1;
  }

  /** The upper end of the bin in which it lies. */
  #quantile(share: number): number {
    let left = share * this.#count;
    for (let bin = 0; bin < BINS; bin += 1) {
      left -= this.#bins[bin] ?? 0;
      if (left <= 0) return bin === 0 ? 0 : LEAST * Math.exp(bin * STEP);
    }
    return 0;
  }

  waits(): Waits {
    return {
      count: this.#count,
      mean: this.#count === 0 ? 0 : this.#sum / this.#count,
      p95: this.#quantile(0.95),
      p99: this.#quantile(0.99),
    };
  }
}

const HOUR_MS = 3_600_000;

/** Some servers with one queue: whoever came first is served first, by whichever server is free first. Times in milliseconds, never going back. */
export class Fifo {
  readonly #free: Float64Array;
  readonly #hours = new Map<number, { readonly tally: Tally; busy: number }>();

  constructor(servers: number) {
    this.#free = new Float64Array(servers);
  }

  /** When what arrives now, and takes so long, is done. */
  served(now: number, takes: number): number {
    let first = 0;
    for (let i = 1; i < this.#free.length; i += 1) if ((this.#free[i] ?? 0) < (this.#free[first] ?? 0)) first = i;
    const begins = Math.max(now, this.#free[first] ?? 0);
    this.#free[first] = begins + takes;
    const hour = Math.floor(now / HOUR_MS);
    const of = this.#hours.get(hour) ?? { tally: new Tally(), busy: 0 };
    this.#hours.set(hour, of);
    of.tally.note(begins - now);
    of.busy += takes;
    return begins + takes;
  }

  /** Waits of what came within an hour. */
  waitsIn(hour: number): Waits {
    return (this.#hours.get(hour)?.tally ?? new Tally()).waits();
  }

  /** The hour in which most work came: its number, the share of all servers' time that this work takes, and the waits. */
  busiest(): { readonly hour: number; readonly use: number; readonly waits: Waits } {
    let [hour, most] = [0, -1];
    for (const [one, { busy }] of this.#hours) if (busy > most) [hour, most] = [one, busy];
    return { hour, use: Math.max(0, most) / HOUR_MS / this.#free.length, waits: this.waitsIn(hour) };
  }
}
