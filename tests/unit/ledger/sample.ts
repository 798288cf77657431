import { createHash } from "node:crypto";
import fc from "fast-check";
import {
  chain,
  contentDigest,
  type Draft,
  genesis,
  type Head,
  headAfter,
  type Json,
  type Ledger,
  type LedgerEntry,
  seal,
} from "#core/ledger/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import { digest } from "#infra/node-digest.ts";

export function taken<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}

/** Salts for samples only: spelled from a name, so that a frozen ledger can be made again. */
export const saltFrom = (name: string): string => createHash("sha256").update(`salt ${name}`).digest("hex");

export function draft(id: string, more: Partial<Draft> = {}): Draft {
  return {
    job: "job-7f3a",
    id,
    kind: "reading-taken",
    author: { person: "p-19c2", phone: "t-4b" },
    run: 0,
    made: 1_790_000_000_000,
    contents: {
      what: { item: "rim", typed: "23 3/8 in", micrometres: 593_725 },
      who: { name: "Name of one" },
      where: { north: 1, east: 2 },
    },
    salts: { what: saltFrom(`${id} what`), who: saltFrom(`${id} who`), where: saltFrom(`${id} where`) },
    ...more,
  };
}

/** A whole ledger from drafts in the order given; each is received a second after the one before. */
export async function ledgerOf(drafts: readonly Draft[], contents: readonly Json[] = []): Promise<Ledger> {
  let head: Head = genesis;
  const entries: LedgerEntry[] = [];
  for (const one of drafts) {
    const { sealed, body } = taken(await seal(digest, one));
    const envelope = chain(head, sealed, one.made + 500, 1_790_000_100_000 + 1000 * entries.length);
    entries.push({ envelope, body });
    head = taken(await headAfter(digest, envelope));
  }
  const versions = await Promise.all(
    contents.map(async (content) => ({ kind: "tolerance-sheet", digest: taken(await contentDigest(digest, content)), content })),
  );
  return { format: 1, job: drafts[0]?.job ?? "job-7f3a", head, entries, versions };
}

/** Four entries: two readings, an office note, and one without names or places, in a kind that this version does not know. */
export const sampleLedger = (): Promise<Ledger> =>
  ledgerOf(
    [
      draft("e-01"),
      draft("e-02", { run: 1, contents: { what: { item: "lap", typed: "8 in" } } }),
      draft("e-03", { run: 2, kind: "note-for-office", contents: { what: "call before ten", who: { name: "Name of one" } } }),
      draft("e-04", { run: 3, kind: "kind-of-a-later-version", contents: {} }),
    ],
    [{ name: "sheet of the sample", limits: [1, 2.5, -3e-7] }],
  );

const plainPoint = fc
  .oneof(fc.integer({ min: 0, max: 0x7f }), fc.integer({ min: 0x80, max: 0x10ffff }))
  .filter((point) => point < 0xd800 || point > 0xdfff);

/** Any well-formed text, short. */
export const anyText = fc.array(plainPoint, { maxLength: 8 }).map((points) => String.fromCodePoint(...points));
