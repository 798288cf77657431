import type { Json } from "../ledger/index.ts";
import { type Corrections, correctionsOf, type What } from "./corrections.ts";
import type { Entry, FactKind, Whats } from "./fact.ts";
import { type Ordered, workOrder } from "./order.ts";
import { isUnderstood } from "./what-shape.ts";

/** A fact as it counts now: its place in the work, its words as last corrected, and what became of it. */
export interface Live {
  readonly id: string;
  readonly kind: string;
  readonly what: { readonly [key: string]: Json };
  readonly entry: Entry;
  /** Place in the order of the work, from 0. */
  readonly position: number;
  readonly at: number;
  readonly doubt: number;
  /** Id of the correction that set it aside or changed it. */
  readonly correctedBy?: string;
  /** `not understood`: of a kind that is known, but not in its shape, or out of place here. It is kept, and counts for nothing. */
  readonly standing: "counts" | "withdrawn" | "moved out" | "withheld" | "not understood";
  /** Came with a `moved-in` entry from another job. */
  readonly movedFrom?: string;
}

/** The `what` of a fact in its kind's shape. A withheld `what` reads as empty: ask only facts that count. */
export function whatOf<K extends keyof Whats>(live: Pick<Live, "what">, _kind: K): Whats[K] {
  return live.what as unknown as Whats[K];
}

/** An entry that came with a `moved-in`, as one of this job's. */
interface Moved {
  readonly entry: Entry;
  readonly from: string;
  /** Id of the `moved-in`. */
  readonly by: string;
}

const readable = ({ kind, what }: Entry, wanted: keyof Whats): boolean => kind === wanted && what !== undefined && isUnderstood(kind, what);

function movedIn(entry: Entry): readonly Moved[] {
  if (!readable(entry, "moved-in")) return [];
  const { from, entries } = entry.what as unknown as Whats["moved-in"];
  const { received, number } = entry;
  return entries.map(({ id, kind, author, run, made, what }) => ({
    from,
    by: entry.id,
    entry: {
      id,
      digest: entry.digest,
      kind,
      author,
      run,
      made,
      ...(received === undefined ? {} : { received }),
      ...(number === undefined ? {} : { number }),
      // a body that was withheld in the other job came along empty
      ...(what === null ? {} : { what }),
    },
  }));
}

/** Position of the last `moved-out` that names an entry, by its id. */
function movedOutAt(placed: readonly Ordered[]): ReadonlyMap<string, number> {
  return new Map(
    placed.flatMap(({ entry }, position) =>
      readable(entry, "moved-out") ? (entry.what as unknown as Whats["moved-out"]).entries.map(({ id }) => [id, position] as const) : [],
    ),
  );
}

/** What says something about its own job alone, and means nothing in another. */
export const ofItsJob: ReadonlySet<string> = new Set<FactKind>([
  "job-opened",
  "version-taken-over",
  "moved-out",
  "moved-in",
  "record-issued",
  "record-released",
  "rules-moved",
  "opened-late",
  "particulars-set",
  "site-taken-over",
]);

const isRecord = (value: Json | undefined): value is What => typeof value === "object" && value !== null && !Array.isArray(value);

/** Whose word it was is no matter of correction. */
function corrected(what: What, correction: Corrections | undefined): What {
  if (correction === undefined) return what;
  const words = { ...what, ...correction.replace };
  return Object.hasOwn(what, "role") ? { ...words, role: what.role ?? null } : words;
}

interface Fate {
  readonly isMovedOut: boolean;
  /** It came from another job, where it belonged to that job alone. */
  readonly isOutOfPlace: boolean;
  readonly isWithdrawn: boolean;
}

function standingOf({ kind, what: original }: Entry, what: What, { isMovedOut, isOutOfPlace, isWithdrawn }: Fate): Live["standing"] {
  if (original === undefined) return "withheld";
  if (isMovedOut) return "moved out";
  if (isWithdrawn) return "withdrawn";
  return isRecord(original) && !isOutOfPlace && isUnderstood(kind, what) ? "counts" : "not understood";
}

/** Every fact of the job in the order of the work, corrections, withdrawals and moves applied; nothing is dropped. */
export function liveFacts(entries: readonly Entry[]): readonly Live[] {
  const moved = new Map(entries.flatMap(movedIn).map((m) => [m.entry, m]));
  const placed = workOrder([...entries, ...moved.keys()]);
  const places = new Map(placed.map(({ entry }, position) => [entry.id, position]));
  const out = movedOutAt(placed);
  const correctionOf = correctionsOf(
    placed.filter(({ entry }) => readable(entry, "corrected") && !out.has(entry.id)).map(({ entry }) => entry),
  );
  return placed.map(({ entry, at, doubt }, position) => {
    const came = moved.get(entry);
    const correction = correctionOf(entry.id);
    const what = isRecord(entry.what) ? corrected(entry.what, correction) : {};
    // what came in stays until it is moved out again; what was here before has gone once it was
    const outAt = out.get(entry.id);
    const isMovedOut = outAt !== undefined && (came === undefined || outAt > (places.get(came.by) ?? -1));
    const isWithdrawn = correction?.withdrawn === true || (came !== undefined && correctionOf(came.by)?.withdrawn === true);
    return {
      id: entry.id,
      kind: entry.kind,
      what,
      entry,
      position,
      at,
      doubt,
      standing: standingOf(entry, what, { isMovedOut, isOutOfPlace: came !== undefined && ofItsJob.has(entry.kind), isWithdrawn }),
      ...(correction ? { correctedBy: correction.by } : {}),
      ...(came ? { movedFrom: came.from } : {}),
    };
  });
}

/** The end of the year 9999, ms, as the wire has it: what is said to lie beyond it is no time. */
const LAST_INSTANT = 253_402_300_799_999;
export const isInstant = (said: unknown): said is number => Number.isSafeInteger(said) && Number(said) >= 0 && Number(said) <= LAST_INSTANT;

/**
 * When something happened: at the time that was said beside it, else when it was entered. What is said is told by the same
 * phone's clock as the entry, so the same correction holds for both.
 */
export const happenedAt = (fact: Live): number => (isInstant(fact.what.at) ? fact.at + (fact.what.at - fact.entry.made) : fact.at);
