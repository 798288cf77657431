import { type Entry, entryOf, type JobLedger, type JobState, jobState } from "#core/job/index.ts";
import { type AttachedVersion, genesis, type Json, type Ledger } from "#core/ledger/index.ts";
import type { Place, StoredEntry } from "../adapters/ledgers.ts";
import type { Services } from "../services.ts";

export const readEntry = ({ envelope, body, digest }: StoredEntry): Entry => entryOf({ envelope, body }, digest);

/** Digests of the company's things that these entries take over. */
export const takenOver = (entries: readonly { readonly kind: string; readonly what?: Json }[]): readonly string[] =>
  entries.flatMap(({ kind, what }) => {
    const digest = kind === "version-taken-over" ? (what as { digest?: unknown } | undefined)?.digest : undefined;
    return typeof digest === "string" ? [digest] : [];
  });

export interface ReadJob {
  readonly stored: readonly StoredEntry[];
  readonly ledger: JobLedger;
  readonly versions: readonly AttachedVersion[];
  readonly state: JobState;
}

export const jobLedger = (entries: readonly Entry[], versions: readonly AttachedVersion[]): JobLedger => ({
  entries,
  versions: Object.fromEntries(versions.map(({ digest, content }) => [digest, content])),
});

export async function readJob(services: Services, place: Place): Promise<ReadJob> {
  const stored = await services.ledgers.read(place);
  const entries = stored.map(readEntry);
  const versions = await services.ledgers.versions(place.company, takenOver(entries));
  const ledger = jobLedger(entries, versions);
  return { stored, ledger, versions, state: jobState(ledger) };
}

export const headOf = (stored: readonly StoredEntry[]) => {
  const last = stored.at(-1);
  return last ? { number: last.envelope.number, hash: last.hash } : genesis;
};

/** The ledger as it is handed out: every envelope and body, and the versions that the job took over. */
export const ledgerOf = (job: string, stored: readonly StoredEntry[], versions: readonly AttachedVersion[]): Ledger => ({
  format: 1,
  job,
  head: headOf(stored),
  entries: stored.map(({ envelope, body }) => ({ envelope, body })),
  versions,
});
