import type { Place } from "../adapters/ledgers.ts";
import type { ReadJob } from "./read-job.ts";

/** As many entries as one isolate holds, over all its jobs: some ten megabytes of an isolate's 128. */
const MOST_ENTRIES = 8_000;

/**
 * Jobs as this isolate read them last. Only a speed-up: whoever takes one out asks the database what has come since, and
 * whether it is still the same ledger. Those asked for longest ago go first.
 */
export class HeldJobs {
  readonly #jobs = new Map<string, ReadJob>();
  #entries = 0;

  get(place: Place): ReadJob | undefined {
    const key = keyOf(place);
    const job = this.#jobs.get(key);
    if (job === undefined) return undefined;
    this.#jobs.delete(key);
    this.#jobs.set(key, job);
    return job;
  }

  put(place: Place, job: ReadJob): void {
    this.drop(place);
    // one without entries would weigh nothing, and never go
    if (job.stored.length === 0 || job.stored.length > MOST_ENTRIES) return;
    this.#jobs.set(keyOf(place), job);
    this.#entries += job.stored.length;
    for (const key of this.#jobs.keys()) {
      if (this.#entries <= MOST_ENTRIES) break;
      this.#remove(key);
    }
  }

  drop(place: Place): void {
    this.#remove(keyOf(place));
  }

  #remove(key: string): void {
    this.#entries -= this.#jobs.get(key)?.stored.length ?? 0;
    this.#jobs.delete(key);
  }
}

const keyOf = ({ company, job }: Place): string => `${company}/${job}`;
