import { jobState } from "#core/job/index.ts";
import { entryDigest, genesis, type Ledger, sealedOf } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { ArchiveList, ArchiveRead } from "#core/wire/index.ts";
import type { Place, StoredEntry } from "../adapters/ledgers.ts";
import { plainNumber } from "../adapters/own-numbers.ts";
import type { Statement } from "../adapters/statement.ts";
import { FIRST_DUE_MS, photosNamed, usesOf } from "../jobs/consequences.ts";
import { jobLedger, readEntry } from "../jobs/read.ts";
import type { ReadJob } from "../jobs/read-job.ts";
import type { Services } from "../services.ts";
import { expected, ledgerIn, listIn } from "./beginning.ts";
import { ArchiveEntries } from "./entries.ts";
import { storedFiles } from "./files.ts";
import { compared, putFile } from "./put.ts";

/** The rows of a verified ledger as they stood where it comes from: numbers, times of receipt and hashes are its own. */
async function rowsOf(services: Services, { entries, head }: Ledger): Promise<readonly StoredEntry[]> {
  return Promise.all(
    entries.map(async ({ envelope, body }, i) => {
      const digest = await entryDigest(services.digest, sealedOf(envelope));
      if (!digest.ok) throw new Error("a verified entry without its digest");
      // what the next one carries of it was verified
      return { envelope, body, digest: digest.value, hash: entries[i + 1]?.envelope.before ?? head.hash };
    }),
  );
}

/** Files into the store, each compared with the list; what the company has already is only compared. */
async function filesStored(services: Services, company: string, entries: ArchiveEntries, list: ArchiveList): Promise<Outcome<null>> {
  for (const stored of storedFiles(company, list)) {
    const there = await expected(entries, stored.file.name);
    if (!there.ok) return there;
    const { photo, paper } = stored;
    const known =
      (photo !== undefined && (await services.photos.get(company, photo)) !== undefined) ||
      (paper !== undefined && (await services.papers.get(company, paper)) !== undefined);
    const put = await (known ? compared(entries, stored.file) : putFile(services, entries, stored));
    if (!put.ok) return put;
  }
  const last = await entries.next();
  if (!last.ok) return last;
  return last.value === undefined ? ok(null) : refuse("archive-part-unexpected", last.value, {});
}

/** What is written beside the ledger, in the same batch. */
function statementsOf(
  services: Services,
  place: Place,
  list: ArchiveList,
  { stored: rows, state, versions }: ReadJob,
  now: number,
): readonly Statement[] {
  const { company } = place;
  const number = plainNumber(state.opened?.ownNumber ?? "");
  const opened = rows[0]?.envelope.received ?? now;
  return [
    services.jobs.addJob(place, opened),
    ...(number === "" ? [] : [services.ownNumbers.giveIfFree(place, number)]),
    ...versions.map(({ kind, digest, content }) =>
      services.companies.keepVersion(company, {
        kind: kind as "sheet",
        name: list.versions[digest] ?? digest.slice(0, 16),
        digest,
        content,
      }),
    ),
    ...list.people.map((person) => services.companies.keepPerson(company, { ...person, came: opened, left: now })),
    ...list.photos.flatMap(({ sha256, bytes, type, file, blurred }) => [
      ...(file ? services.photos.adding(company, { sha256, bytes, type }, now, now + FIRST_DUE_MS) : []),
      ...(blurred ? services.photos.blur(company, sha256, blurred) : []),
    ]),
    ...(list.papers ?? []).map((paper) => services.papers.adding(company, paper, now)),
    ...usesOf(services, place, rows),
    ...list.records.map(({ head, files: _, ...record }) =>
      services.records.add(company, { ...record, job: place.job, head_number: head.number, head_hash: head.hash }),
    ),
  ];
}

/**
 * Reads a job from an archive: the list, the ledger verified, every file compared with its digest, then everything written in one
 * batch. Refuses what does not verify with the part as its place, and `archive-job-differs`; nothing of it is kept then.
 */
export async function readArchive(
  services: Services,
  company: string,
  body: ReadableStream<Uint8Array> | null,
  now: number,
): Promise<Outcome<ArchiveRead>> {
  const entries = new ArchiveEntries(body);
  const outcome = await taken(services, company, entries, now);
  await entries.discard(4_294_967_295);
  return outcome;
}

async function taken(services: Services, company: string, entries: ArchiveEntries, now: number): Promise<Outcome<ArchiveRead>> {
  const list = await listIn(entries);
  if (!list.ok) return list;
  const ledger = await ledgerIn(services, entries, list.value);
  if (!ledger.ok) return ledger;
  const place = { company, job: list.value.job };
  const rows = await rowsOf(services, ledger.value);
  const named = new Set(rows.flatMap(photosNamed));
  const came = list.value.photos.filter(({ file }) => file !== undefined);
  const view = {
    job: place.job,
    entries: rows.length,
    photos: came.length,
    without: [...named].filter((sha256) => !came.some((photo) => photo.sha256 === sha256)).length,
    records: list.value.records.length,
  };
  const stored = await filesStored(services, company, entries, list.value);
  if (!stored.ok) return stored;
  const { head } = await services.ledgers.stand(place, []);
  if (head.hash === list.value.head.hash) return ok({ ...view, outcome: "already there" });
  if (head.hash !== genesis.hash) return refuse("archive-job-differs", "list.json/job", {});
  const { versions } = ledger.value;
  const jobOnly = jobLedger(rows.map(readEntry), versions);
  const job: ReadJob = { stored: rows, ledger: jobOnly, versions, state: jobState(jobOnly) };
  if (await services.ledgers.write([{ place, rows }], statementsOf(services, place, list.value, job, now))) {
    // what follows is made of it without reading it again
    services.held.put(place, job);
    return ok({ ...view, outcome: "read" });
  }
  // somebody else was first with this job, or with one of its records
  const after = await services.ledgers.stand(place, []);
  return after.head.hash === list.value.head.hash
    ? ok({ ...view, outcome: "already there" })
    : refuse("archive-job-differs", "list.json/job", {});
}
