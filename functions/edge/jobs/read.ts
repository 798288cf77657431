import { type Entry, entryOf, type JobLedger, jobState } from "#core/job/index.ts";
import { type AttachedVersion, genesis, type Json, type Ledger } from "#core/ledger/index.ts";
import type { Place, StoredEntry } from "../adapters/ledgers.ts";
import type { Services } from "../services.ts";
import type { ReadJob } from "./read-job.ts";

export const readEntry = ({ envelope, body, digest }: StoredEntry): Entry => entryOf({ envelope, body }, digest);

/** Digests of the company's things that these entries take over. */
export const takenOver = (entries: readonly { readonly kind: string; readonly what?: Json }[]): readonly string[] =>
  entries.flatMap(({ kind, what }) => {
    const digest = kind === "version-taken-over" ? (what as { digest?: unknown } | undefined)?.digest : undefined;
    return typeof digest === "string" ? [digest] : [];
  });

export const jobLedger = (entries: readonly Entry[], versions: readonly AttachedVersion[]): JobLedger => ({
  entries,
  versions: Object.fromEntries(versions.map(({ digest, content }) => [digest, content])),
});

/** A job from its ledger alone. What proves something, or is handed out, is made from this. */
export async function readJob(services: Services, place: Place): Promise<ReadJob> {
  return readFrom(services, place, await services.ledgers.read(place));
}

/** The same, where this isolate has read most of it before: only what has come since is asked for. */
export async function currentJob(services: Services, place: Place): Promise<ReadJob> {
  const held = services.held.get(place);
  if (held === undefined) return readJob(services, place);
  return jobSince(services, place, held, await services.ledgers.readSince(place, headOf(held.stored)));
}

/** The same, where what has come since is known, since the beginning where nothing is held; undefined: the ledger does not have what is held. */
export async function jobSince(
  services: Services,
  place: Place,
  held: ReadJob | undefined,
  since: readonly StoredEntry[] | undefined,
): Promise<ReadJob> {
  if (held === undefined) return readFrom(services, place, since ?? []);
  if (since === undefined || since.some(isRewriting)) return readJob(services, place);
  return since.length === 0 ? held : readFrom(services, place, [...held.stored, ...since], held.versions);
}

/** Takes parts out of the bodies of entries before it. */
const isRewriting = ({ envelope }: StoredEntry): boolean => envelope.kind === "body-withheld";

/** `known`: versions that need not be read again. A version is named by its digest, so it never changes. */
async function readFrom(
  services: Services,
  place: Place,
  stored: readonly StoredEntry[],
  known: readonly AttachedVersion[] = [],
): Promise<ReadJob> {
  const entries = stored.map(readEntry);
  const digests = new Set(takenOver(entries));
  const missing = [...digests].filter((digest) => !known.some((one) => one.digest === digest));
  const versions = [...known, ...(await services.ledgers.versions(place.company, missing))];
  const ledger = jobLedger(entries, versions);
  const job = { stored, ledger, versions, state: jobState(ledger) };
  // a version that is not there yet may come without another entry
  if (versions.length === digests.size) services.held.put(place, job);
  else services.held.drop(place);
  return job;
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
