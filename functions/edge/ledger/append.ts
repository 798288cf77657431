import { type Body, chain, genesis, type Head, headAfter, type SealedEntry } from "#core/ledger/index.ts";
import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import type { Place, Stand, StoredEntry } from "../adapters/ledgers.ts";
import type { Statement } from "../adapters/statement.ts";
import { pause } from "../lanes.ts";
import type { Services } from "../services.ts";
import type { Incoming } from "./item.ts";

export type Answer =
  | { readonly id: string; readonly number: number; readonly outcome: "taken" | "already there" }
  | { readonly id: string; readonly refusal: Refusal };

export interface Appended {
  readonly head: Head;
  readonly answers: readonly Answer[];
  /** What was written now. */
  readonly rows: readonly StoredEntry[];
}

/** Whether an entry may stand in the ledger, given those before it. */
export type Admission = (entry: SealedEntry, incoming: Incoming) => Promise<Outcome<void>> | Outcome<void>;

/** What an admission is made from. */
export interface Admitting {
  /** Up to where the ledger is known already; what came since is read with its head. */
  readonly after: Head;
  readonly admission: (since: Stand["since"]) => Promise<Admission>;
}

export interface AppendOptions {
  readonly admitting?: () => Admitting;
  /** What is written with the rows, or not at all. */
  readonly also?: (rows: readonly StoredEntry[]) => readonly Statement[] | Promise<readonly Statement[]>;
  /** Every entry or none. */
  readonly whole?: boolean;
  /** The ledger begins with the first of these: refused `job-exists` when it began with another. */
  readonly begins?: boolean;
  /** There is such a ledger: refused `job-unknown` when it has no entry. */
  readonly isThere?: boolean;
}

/** Tries until another phone is not first; with fifty at once eight or nine were needed at most. */
const TRIES = 40;
/** A waiter in the lane goes ahead after this. */
const LANE_MS = 5_000;

/**
 * Judges each entry against the ledger, writes the good ones in one batch, answers every one. Same id and same digest:
 * the same number again, nothing written. Refuses `database-busy` when others were always first, `job-exists`, `job-unknown`.
 */
export async function append(
  services: Services,
  place: Place,
  incoming: readonly Incoming[],
  received: number,
  options: AppendOptions = {},
): Promise<Outcome<Appended>> {
  return services.lanes.in(laneOf(place), LANE_MS, () =>
    untilFirst(place, async () => {
      const planned = await plan(services, place, incoming, received, options);
      if (!planned.ok || planned.value.rows.length === 0) return planned;
      const { rows } = planned.value;
      return (await services.ledgers.write([{ place, rows }], (await options.also?.(rows)) ?? [])) ? planned : "taken by another";
    }),
  );
}

/** Where a ledger is held up to its head. */
interface Held {
  readonly head: Head;
  readonly admission: Admission;
}

/**
 * The same in one question to the database, where the ledger is held (`held` is asked in its lane) and every entry is good: written only
 * while that is still its head, and by what `also` gives. Undefined: nothing was written, and nothing may be told by it.
 */
export async function appendAsHeld(
  services: Services,
  place: Place,
  incoming: readonly Incoming[],
  received: number,
  { held, also }: Required<Pick<AppendOptions, "also">> & { readonly held: () => Promise<Held | undefined> },
): Promise<Appended | undefined> {
  return services.lanes.in(laneOf(place), LANE_MS, async () => {
    const known = await held();
    if (known === undefined) return undefined;
    const { answers, rows, head } = await entering(services, { head: known.head, known: new Map() }, incoming, received, known.admission);
    if (rows.length === 0 || answers.some((answer) => "refusal" in answer)) return undefined;
    const together = [...(await also(rows)), services.ledgers.unlessMoved(place, known.head)];
    return (await services.ledgers.write([{ place, rows }], together)) ? { answers, rows, head } : undefined;
  });
}

export const laneOf = ({ company, job }: Place): string => `append ${company}/${job}`;

/** Tries again, with some chance in between, as long as another was first. */
export async function untilFirst<T>(place: Place, attempt: () => Promise<Outcome<T> | "taken by another">): Promise<Outcome<T>> {
  for (let tried = 0; tried < TRIES; tried += 1) {
    const outcome = await attempt();
    if (outcome !== "taken by another") return outcome;
    await pause(Math.random() * Math.min(20 * (tried + 1), 300));
  }
  return refuse("database-busy", `jobs/${place.job}`, {});
}

/** What an append would write, and its answers. */
export async function plan(
  services: Services,
  place: Place,
  incoming: readonly Incoming[],
  received: number,
  options: AppendOptions,
): Promise<Outcome<Appended>> {
  const ids = incoming.map(({ id }) => id);
  const admitting = options.admitting?.();
  const { head, known, since } = await services.ledgers.stand(place, ids, admitting?.after);
  if (options.isThere && head.number === genesis.number) return refuse("job-unknown", "job", {});
  const admission = await admitting?.admission(since);
  if (options.begins && head.number > 0 && !known.has(incoming[0]?.id ?? "")) return refuse("job-exists", "entries/0/sealed/job", {});
  const appended = await entering(services, { head, known }, incoming, received, admission);
  if (options.whole || options.begins) {
    const { answers } = appended;
    const bad = options.whole ? answers.find((answer) => "refusal" in answer) : answers.slice(0, 1).find((answer) => "refusal" in answer);
    if (bad && "refusal" in bad) return { ok: false, refusal: bad.refusal };
  }
  return ok(appended);
}

/** Chains the good entries to the ledger's head. */
async function entering(
  services: Services,
  { head, known }: Stand,
  incoming: readonly Incoming[],
  received: number,
  admission: Admission | undefined,
): Promise<Appended> {
  const answers: Answer[] = [];
  const rows: StoredEntry[] = [];
  const seen = new Map(known);
  let last = head;
  for (const one of incoming) {
    const sealed = await one.sealed(last);
    if (!sealed.ok) {
      answers.push({ id: one.id, refusal: sealed.refusal });
      continue;
    }
    const there = seen.get(one.id);
    if (there) {
      answers.push(
        one.once || there.digest === sealed.value.digest
          ? { id: one.id, number: there.number, outcome: "already there" }
          : { id: one.id, refusal: refuse("entry-id-used", `${one.place}/sealed/id`, { number: there.number }).refusal },
      );
      continue;
    }
    const admitted = admission ? await admission(sealed.value, one) : ok(undefined);
    if (!admitted.ok) {
      answers.push({ id: one.id, refusal: { ...admitted.refusal, place: `${one.place}/${admitted.refusal.place}` } });
      continue;
    }
    const envelope = chain(last, sealed.value.sealed, one.sent, received);
    const next = await headAfter(services.digest, envelope);
    if (!next.ok) throw new Error(`a judged entry could not be chained: ${next.refusal.code} at ${next.refusal.place}`);
    last = next.value;
    rows.push({ envelope, body: sealed.value.body as Body, digest: sealed.value.digest, hash: last.hash });
    seen.set(one.id, { number: last.number, digest: sealed.value.digest });
    answers.push({ id: one.id, number: last.number, outcome: "taken" });
  }
  return { head: last, answers, rows };
}
