import { coveredOf } from "./covered.ts";
import type { Finding } from "./finding.ts";
import { factsOf, type JobState } from "./state.ts";

/** One covering in ten is read again by someone else (own). */
const ONE_IN = 10;

/** Fowler, Noll and Vo's hash, 32 bits (FNV-1a, from memory): the same answer on every phone, and known to nobody beforehand by sight. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  // the last bits of this hash follow the last letters: they are mixed once more
  hash ^= hash >>> 16;
  hash = Math.imul(hash, 0x7feb352d);
  return (hash ^ (hash >>> 15)) >>> 0;
}

/** Whether a covering of a job is among those that are read again: it follows from the job's id alone. */
export const isReadAgainAsked = (job: string, covering: string): boolean => hashOf(`${job}/${covering}`) % ONE_IN === 0;

/** One reading that someone else is asked to read again, without seeing what was read. */
export interface ReadAgain {
  readonly covering: string;
  /** The entry that it repeats, its item and tag, and who must not be the one. */
  readonly reading: string;
  readonly item: string;
  readonly tag?: string;
  readonly notBy: string;
}

/** What is to be read again before it is covered: the readings that hold a chosen covering, entered, and not read again yet. */
export function readAgainDue(job: string, state: JobState, all: readonly Finding[]): readonly ReadAgain[] {
  const done = new Set(factsOf(state, "read-again").map(({ what }) => what.reading));
  const readings = new Map(factsOf(state, "reading-taken").map((fact) => [fact.id, fact]));
  const due = new Map<string, ReadAgain>();
  for (const { holds, entries, kind } of all) {
    if (holds === undefined || kind !== "length" || coveredOf(state, holds) !== undefined || !isReadAgainAsked(job, holds)) continue;
    for (const id of entries) {
      const fact = readings.get(id);
      if (fact === undefined || done.has(id)) continue;
      const { item, tag } = fact.what;
      const notBy = fact.entry.author.person;
      due.set(id, { covering: holds, reading: id, item, notBy, ...(tag === undefined ? {} : { tag }) });
    }
  }
  return [...due.values()];
}
