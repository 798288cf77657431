import type { Book } from "./book.ts";
import type { Reading } from "./read.ts";
import type { KeepState } from "./state.ts";
import type { Stored } from "./stored.ts";

// What the state becomes; nothing here knows the store, the network or a clock.

/** The state with some members set and others gone. */
export function changed(state: KeepState, some: Partial<KeepState>, without: readonly (keyof KeepState)[] = []): KeepState {
  const next: Record<string, unknown> = { ...state, ...some };
  for (const key of without) delete next[key];
  return next as unknown as KeepState;
}

/** After the edge was asked for what is new. `now`: the phone's clock, ms. Whoever is not let in any more keeps what he has. */
export function afterReading(state: KeepState, reading: Reading, now: number): KeepState {
  if (reading.is === "read") return changed(state, { signedOut: false, anothers: false }, ["awaySince"]);
  if (reading.is === "another's") return changed(state, { anothers: true }, ["awaySince"]);
  if (reading.is === "away") return changed(state, { awaySince: state.awaySince ?? now });
  return reading.problem.status === 401 ? changed(state, { signedOut: true }, ["awaySince"]) : state;
}

/** After the store was read: what it holds takes the place of what was shown of it, and what only the page knows stays. */
export function afterStored(
  state: KeepState,
  { heads, entries, photos, session, today, skew, read, phone }: Stored,
  books: readonly Book[],
  whole: boolean,
): KeepState {
  const { session: _, today: __, phone: ___, readAt: ____, ...rest } = state;
  return {
    ...rest,
    ...(session === undefined ? {} : { session: session.session }),
    people: session?.people ?? [],
    ...(today === undefined ? {} : { today }),
    ...(phone === undefined ? {} : { phone: phone.id }),
    ...(read === undefined ? {} : { readAt: read.at }),
    skew: skew?.milliseconds ?? 0,
    heads,
    whole,
    books,
    entries,
    photos,
  };
}

/** The first wait of an edge in trouble and the longest, ms (own). */
export const FIRST_WAIT_MS = 2_000;
export const LONGEST_WAIT_MS = 300_000;

/**
 * In how many milliseconds an edge in trouble is asked again, and from how long a wait the next one is reckoned. `chance`, 0 to 1: so
 * that phones that lost it together do not come back together. Ten entries made without signal are ten attempts, and must not make
 * the wait ten times longer: while one is awaited, it stays.
 */
export function nextTry(
  now: number,
  { triesAgain = now }: Pick<KeepState, "triesAgain">,
  wait: number,
  chance: number,
): { readonly after: number; readonly wait: number } {
  if (triesAgain > now) return { after: triesAgain - now, wait };
  return { after: wait * (0.75 + chance / 2), wait: Math.min(wait * 2, LONGEST_WAIT_MS) };
}
