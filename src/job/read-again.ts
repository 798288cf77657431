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
  /** The mark that it was tied from, what it was read with, and the set-up that it belongs to: read again from the same ones only. */
  readonly mark?: string;
  readonly instrument?: string;
  readonly setUp?: string;
}

/** Whether a finding is of a length; one that waits for its readings has no kind of its own yet. */
function isOfLength({ sheet }: JobState, { check, kind }: Finding): boolean {
  const item = sheet?.items.find(({ id }) => id === check);
  const asked = sheet?.checks.find(({ id }) => id === check)?.kind ?? (item?.kind === "reading" ? (item.quantity ?? "length") : undefined);
  return (kind ?? asked) === "length";
}

/**
 * What is to be read again before it is covered: the lengths that hold a chosen covering and were not read again yet, once all of
 * them are in. Holds nothing: a covering that happens meanwhile asks for no second look any more.
 */
export function readAgainDue(job: string, state: JobState, all: readonly Finding[]): readonly ReadAgain[] {
  const open = all.filter((finding) => finding.verdict === "not taken" && isOfLength(state, finding));
  const waiting = new Set(open.map(({ holds }) => holds));
  const done = new Set(factsOf(state, "read-again").map(({ what }) => what.reading));
  const readings = new Map(factsOf(state, "reading-taken").map((fact) => [fact.id, fact]));
  const due = new Map<string, ReadAgain>();
  for (const { holds, entries, kind } of all) {
    if (holds === undefined || kind !== "length" || waiting.has(holds) || !isReadAgainAsked(job, holds)) continue;
    if (coveredOf(state, holds) !== undefined) continue;
    for (const id of entries) {
      const fact = readings.get(id);
      if (fact === undefined || done.has(id)) continue;
      const { item, tag, mark, instrument, setUp } = fact.what;
      if ((state.sheet?.items.find((one) => one.id === item)?.quantity ?? "length") !== "length") continue;
      due.set(id, {
        covering: holds,
        reading: id,
        item,
        notBy: fact.entry.author.person,
        ...(tag === undefined ? {} : { tag }),
        ...(mark === undefined ? {} : { mark }),
        ...(instrument === undefined ? {} : { instrument }),
        ...(setUp === undefined ? {} : { setUp }),
      });
    }
  }
  return [...due.values()];
}
