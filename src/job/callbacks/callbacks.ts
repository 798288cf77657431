import { coveredOf } from "../covered.ts";
import type { BorneBy } from "../fact.ts";
import { factsOf, type JobState } from "../state.ts";

/** How a callback ended. `confirmed`: its cause was seen; otherwise it is what was supposed. */
export interface CallbackClosed {
  readonly entry: string;
  /** Milliseconds. */
  readonly at: number;
  readonly cause: string;
  readonly confirmed: boolean;
  readonly supposed?: string;
  readonly part?: string;
  readonly borneBy?: BorneBy;
  readonly minutes?: number;
  readonly travelMinutes?: number;
  /** Hundredths of the company's currency. */
  readonly partsCost?: number;
  readonly recovered?: number;
}

export interface Callback {
  readonly entry: string;
  /** One of the list, or as it was typed. */
  readonly symptom: string;
  readonly said?: string;
  /** When it was opened, ms, and its place in the order of the work. */
  readonly at: number;
  readonly position: number;
  readonly closed?: CallbackClosed;
  /** Coverings that were opened up again for it, and whether they are covered again. */
  readonly opened: readonly { readonly covering: string; readonly entry: string; readonly covered: boolean }[];
}

/** Closings by the callback that they name; one that names none closes the last that was opened before it and not yet closed. */
function closings(state: JobState): ReadonlyMap<string, CallbackClosed> {
  const opened = factsOf(state, "callback-opened");
  const found = new Map<string, CallbackClosed>();
  for (const fact of factsOf(state, "callback-closed")) {
    const { callback, cause, confirmed = true, ...more } = fact.what;
    const open = opened.filter(({ id, position }) => position < fact.position && !found.has(id)).at(-1)?.id;
    const of = callback ?? open;
    if (of !== undefined) found.set(of, { entry: fact.id, at: fact.at, cause, confirmed, ...more });
  }
  return found;
}

/** Every callback of a job, in the order of the work. */
export function callbacksOf(state: JobState): readonly Callback[] {
  const closed = closings(state);
  const all = factsOf(state, "callback-opened");
  const places = new Map(state.facts.map(({ id, position }) => [id, position]));
  return all.map(({ id, at, position, what: { symptom, said } }) => {
    const end = closed.get(id);
    const until = (end && places.get(end.entry)) ?? Number.POSITIVE_INFINITY;
    const opened = factsOf(state, "opened-up-again").filter((fact) => fact.position > position && fact.position < until);
    return {
      entry: id,
      symptom,
      ...(said === undefined ? {} : { said }),
      at,
      position,
      ...(end === undefined ? {} : { closed: end }),
      opened: opened.map((fact) => ({
        covering: fact.what.covering,
        entry: fact.id,
        covered: coveredOf(state, fact.what.covering) !== undefined,
      })),
    };
  });
}
