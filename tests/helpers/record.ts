import type { JobLedger } from "#core/job/index.ts";
import type { Body, Json, Ledger } from "#core/ledger/index.ts";
import { type Person, type PhotoKnown, type RecordModel, recordModel } from "#core/record/index.ts";
import { later } from "./job.ts";

const part = (content: Json | undefined, withheld: boolean): Body["what"] =>
  content === undefined ? undefined : withheld ? { withheld: "edition" } : { salt: "0".repeat(64), content };

/** A ledger as the record reads it; its chain is another test's matter. */
export function ledgerOf({ entries, versions }: JobLedger, edition: "customer" | "company" = "company"): Ledger {
  const hidden = edition === "customer";
  return {
    format: 1,
    job: "job-one",
    head: { number: entries.length, hash: "a".repeat(64) },
    entries: entries.map(({ id, kind, author, run, made, sent = made, received = made, number = 0, what, who, where }) => {
      const parts = { what: part(what, hidden && kind === "note-for-office"), who: part(who, hidden), where: part(where, hidden) };
      const body = Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined)) as Body;
      return { envelope: { format: 1, job: "job-one", id, kind, author, run, made, sent, received, number, before: "", parts: {} }, body };
    }),
    versions: Object.entries(versions).map(([digest, content]) => ({ kind: "sheet", digest, content })),
  };
}

export interface Recording {
  readonly edition?: "customer" | "company";
  readonly settings?: Json;
  readonly people?: Readonly<Record<string, Person>>;
  readonly photos?: Readonly<Record<string, PhotoKnown>>;
  /** Of the receiver, where it is another than the job's. */
  readonly language?: "en" | "es";
}

/** The record of a job, by default the company's edition, issued when no clock is left to wait for. */
export function recordOf(
  ledger: JobLedger,
  { edition = "company", settings = {}, people = {}, photos = {}, language }: Recording = {},
): RecordModel {
  const whole = ledgerOf(ledger);
  return recordModel({
    ledger: whole,
    attached: ledgerOf(ledger, edition),
    edition,
    version: 1,
    issuedAt: later,
    settings,
    people,
    photos,
    ...(language && { receiver: { language } }),
  });
}
