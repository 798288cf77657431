import { type EntryReference, type MovedEntry, ofItsJob, type Whats } from "#core/job/index.ts";
import { canonical, type Json } from "#core/ledger/index.ts";
import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import type { Place, StoredEntry } from "../adapters/ledgers.ts";
import { type Appended, contentOf, type Incoming, laneOf, plan, untilFirst } from "../ledger/index.ts";
import type { Services } from "../services.ts";
import { usesOf } from "./consequences.ts";

/** Both entries of a move, as judged on their own, and what they must agree with. */
export interface MoveAsked {
  readonly from: Place;
  readonly to: Place;
  readonly entries: readonly EntryReference[];
  readonly out: Incoming;
  readonly in: Incoming;
}

const LANE_MS = 5_000;

/**
 * Writes moved-out and moved-in in one database batch: both or neither. Refuses `entry-unknown-entry` when an entry is not
 * in the job that it is said to be in, `entry-not-applicable` when it says something about its own job alone, `entry-shape`
 * when the two entries and what was asked do not say the same.
 */
export async function move(services: Services, asked: MoveAsked, received: number): Promise<Outcome<{ out: number; in: number }>> {
  const fault = await disagreement(services, asked);
  if (fault) return { ok: false, refusal: fault };
  // In one order for everybody, so that two moves in opposite directions do not wait for each other.
  const [first = "", second = ""] = [laneOf(asked.from), laneOf(asked.to)].sort();
  return services.lanes.in(first, LANE_MS, () =>
    services.lanes.in(second, LANE_MS, () =>
      untilFirst(asked.from, async () => {
        const out = await plan(services, asked.from, [asked.out], received, { whole: true });
        if (!out.ok) return out;
        const into = await plan(services, asked.to, [asked.in], received, { whole: true });
        if (!into.ok) return into;
        const numbers = { out: numberOf(out.value), in: numberOf(into.value) };
        const additions = [
          { place: asked.from, rows: out.value.rows },
          { place: asked.to, rows: into.value.rows },
        ];
        if (additions.every(({ rows }) => rows.length === 0)) return ok(numbers);
        const written = await services.ledgers.write(additions, usesOf(services, asked.to, into.value.rows));
        return written ? ok(numbers) : "taken by another";
      }),
    ),
  );
}

function numberOf({ answers }: Appended): number {
  const answer = answers[0];
  return answer && "number" in answer ? answer.number : 0;
}

async function disagreement(services: Services, { from, to, entries, out, in: into }: MoveAsked): Promise<Refusal | undefined> {
  const outWhat = await whatOf<"moved-out">(out, "moved-out");
  const inWhat = await whatOf<"moved-in">(into, "moved-in");
  if (!outWhat || outWhat.to !== to.job) return refuse("entry-shape", "outEntry/what/to", { why: "disagrees" }).refusal;
  if (!inWhat || inWhat.from !== from.job) return refuse("entry-shape", "inEntry/what/from", { why: "disagrees" }).refusal;
  if (textOf(outWhat.entries) !== textOf(entries)) return refuse("entry-shape", "outEntry/what/entries", { why: "disagrees" }).refusal;
  if (inWhat.entries.length !== entries.length) return refuse("entry-shape", "inEntry/what/entries", { why: "disagrees" }).refusal;
  const stored = new Map((await services.ledgers.read(from)).map((row) => [row.envelope.id, row]));
  for (const [i, { id, digest }] of entries.entries()) {
    const row = stored.get(id);
    if (row?.digest !== digest) return refuse("entry-unknown-entry", `entries/${i}`, { id }).refusal;
    if (ofItsJob.has(row.envelope.kind)) return refuse("entry-not-applicable", `entries/${i}`, { kind: row.envelope.kind }).refusal;
    if (textOf(movedOf(row)) !== textOf(inWhat.entries[i]))
      return refuse("entry-shape", `inEntry/what/entries/${i}`, { why: "disagrees" }).refusal;
  }
  return undefined;
}

/** An entry as the other job takes it over. */
export const movedOf = ({ envelope, body }: StoredEntry): MovedEntry => {
  const { id, kind, author, run, made } = envelope;
  return { id, kind, author, run, made, what: contentOf(body, "what") ?? null };
};

async function whatOf<K extends "moved-out" | "moved-in">(incoming: Incoming, kind: K): Promise<Whats[K] | undefined> {
  const entry = await incoming.sealed({ number: 0, hash: "" });
  if (!entry.ok || entry.value.sealed.kind !== kind) return undefined;
  return contentOf(entry.value.body, "what") as unknown as Whats[K];
}

const textOf = (value: unknown): string => {
  const text = canonical(value as Json);
  return text.ok ? text.value : "";
};
