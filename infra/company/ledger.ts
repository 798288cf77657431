import { createHash } from "node:crypto";
import { chain, contentDigest, genesis, type Head, headAfter, type Json, type Ledger, type LedgerEntry, seal } from "#core/ledger/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import type { JobObserved } from "#core/quality/index.ts";
import { digest } from "../node-digest.ts";
import { cardOf, entriesOf, idFrom, type TakenOver } from "./entries.ts";
import { parts, SHEET } from "./made-up.ts";
import { questionsSheet } from "./sheet.ts";

function sure<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`a drawn ledger was refused: ${outcome.refusal.code} at ${outcome.refusal.place}`);
}

/** What every job takes over: the tolerance sheet, and the kit cards of its parts. */
export async function versionsDrawn(): Promise<readonly (TakenOver & { readonly content: Json })[]> {
  const contents = [
    { thing: "sheet" as const, name: SHEET, content: questionsSheet() },
    ...parts.flat().map((part) => ({ thing: "kit card" as const, name: cardOf(part), content: { id: cardOf(part), part, facts: {} } })),
  ];
  return Promise.all(contents.map(async (one) => ({ ...one, digest: sure(await contentDigest(digest, one.content)) })));
}

const saltFrom = (name: string): string => createHash("sha256").update(`salt ${name}`).digest("hex");

/** A drawn job as its ledger: every entry sealed and chained, received a second after it was made. Ids are ids of the wire. */
export async function ledgerDrawn(job: JobObserved, versions: Awaited<ReturnType<typeof versionsDrawn>>, company: string): Promise<Ledger> {
  const id = idFrom(`${company} ${job.job}`);
  const scripted = entriesOf(
    job,
    versions.map(({ thing, name, digest: of }) => ({ thing, name, digest: of })),
  );
  const runs = new Map<string, number>();
  const entries: LedgerEntry[] = [];
  let head: Head = genesis;
  const idOf = (i: number): string => idFrom(`${company} ${job.job} ${i}`);
  const ids = new Map(scripted.flatMap(({ entry }, i) => (entry === undefined ? [] : [[entry, idOf(i)] as const])));
  for (const [i, { kind, at, person, what, repeats }] of scripted.entries()) {
    const run = runs.get(person) ?? 0;
    runs.set(person, run + 1);
    const name = `${company} ${job.job} ${i}`;
    const author = { person: idFrom(`${company} ${person}`), phone: idFrom(`${company} ${person} phone`) };
    const made = { job: id, id: idOf(i), kind, author, run, made: at };
    const sealed = sure(
      await seal(digest, {
        ...made,
        contents: { what: repeats === undefined ? what : { ...what, reading: ids.get(repeats) ?? "" } },
        salts: { what: saltFrom(name) },
      }),
    );
    const envelope = chain(head, sealed.sealed, at + 500, at + 1000);
    entries.push({ envelope, body: sealed.body });
    head = sure(await headAfter(digest, envelope));
  }
  const named = new Set(scripted.flatMap(({ kind, what }) => (kind === "version-taken-over" ? [String(what.digest)] : [])));
  const attached = versions.filter((version) => named.has(version.digest));
  return {
    format: 1,
    job: id,
    entries,
    versions: attached.map(({ thing, digest: of, content }) => ({ kind: thing, digest: of, content })),
    head,
  };
}
