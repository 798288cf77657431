import type { Json } from "../ledger/index.ts";
import type { Entry, EntryReference, MovedEntry, Whats } from "./fact.ts";
import { type Ordered, workOrder } from "./order.ts";

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
  readonly standing: "counts" | "withdrawn" | "moved out" | "withheld";
  /** Came with a `moved-in` entry from another job. */
  readonly movedFrom?: string;
}

const isRecord = (value: unknown): value is { readonly [key: string]: Json } =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The `what` of a fact in its kind's shape. The edge has checked the shape; a withheld `what` reads as empty. */
export function whatOf<K extends keyof Whats>(live: Live, _kind: K): Whats[K] {
  return live.what as unknown as Whats[K];
}

function movedIn(ordered: Ordered): Ordered[] {
  const what = ordered.entry.what;
  if (ordered.entry.kind !== "moved-in" || !isRecord(what) || !Array.isArray(what.entries)) return [];
  return (what.entries as unknown as readonly MovedEntry[]).map((moved) => ({
    at: moved.made,
    doubt: ordered.doubt,
    entry: {
      ...ordered.entry,
      id: moved.id,
      kind: moved.kind,
      author: moved.author,
      run: moved.run,
      made: moved.made,
      what: moved.what,
      digest: ordered.entry.digest,
    },
  }));
}

/** Every fact of the job in the order of the work, corrections, withdrawals and moves applied; nothing is dropped. */
export function liveFacts(entries: readonly Entry[]): readonly Live[] {
  const own = workOrder(entries);
  const foreign = own.flatMap((ordered) =>
    movedIn(ordered).map((moved) => ({ moved, from: String((ordered.entry.what as { from?: Json }).from ?? "") })),
  );
  const origin = new Map(foreign.map(({ moved, from }) => [moved.entry.id, from]));
  const all = [...own, ...foreign.map(({ moved }) => moved)];
  // a moved entry takes its place by its own time; the order among the job's own stays as it was
  const placed =
    foreign.length === 0 ? all : [...all].sort((a, b) => a.at - b.at || own.indexOf(a) - own.indexOf(b) || a.entry.run - b.entry.run);
  const corrections = new Map<string, { what: { readonly [key: string]: Json }; withdrawn: boolean; by: string }>();
  const movedOut = new Set<string>();
  for (const { entry } of placed) {
    if (!isRecord(entry.what)) continue;
    if (entry.kind === "corrected") {
      const correction = entry.what as unknown as Whats["corrected"];
      const before = corrections.get(correction.entry.id);
      corrections.set(correction.entry.id, {
        what: { ...before?.what, ...correction.replace },
        withdrawn: correction.withdrawn === true,
        by: entry.id,
      });
    }
    if (entry.kind === "moved-out")
      for (const reference of (entry.what as { entries?: readonly EntryReference[] }).entries ?? []) movedOut.add(reference.id);
  }
  return placed.map(({ entry, at, doubt }, position) => {
    const correction = corrections.get(entry.id);
    const what = isRecord(entry.what) ? { ...entry.what, ...correction?.what } : {};
    const movedFrom = origin.get(entry.id);
    const standing = !isRecord(entry.what)
      ? "withheld"
      : movedOut.has(entry.id)
        ? "moved out"
        : correction?.withdrawn
          ? "withdrawn"
          : "counts";
    return {
      id: entry.id,
      kind: entry.kind,
      what,
      entry,
      position,
      at,
      doubt,
      standing,
      ...(correction ? { correctedBy: correction.by } : {}),
      ...(movedFrom === undefined ? {} : { movedFrom }),
    };
  });
}
