import type { Json } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { ARCHIVE_KIND, type ArchiveFile, type ArchiveList } from "#core/wire/index.ts";
import { blurredKey } from "#functions/shared/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { RecordRow } from "../adapters/records.ts";
import { hex, sha256Hex } from "../chance.ts";
import { papersNamed, photosNamed } from "../jobs/consequences.ts";
import { ledgerOf, readJob } from "../jobs/read.ts";
import { fileKey, recordFiles } from "../records/files.ts";
import type { Services } from "../services.ts";

/** Bytes of one archive: a ZIP without its 64-bit parts ends at 4 GiB. */
const LARGEST_ARCHIVE = 4_000_000_000;

/** What stands in the store under a key, read to its end for its digest; undefined where there is nothing. */
async function measured(services: Services, name: string, key: string): Promise<Outcome<ArchiveFile | undefined>> {
  const found = await services.store.get(key);
  if (!found.ok) return found.refusal.code === "store-unavailable" ? found : ok(undefined);
  const digest = new crypto.DigestStream("SHA-256");
  await found.value.stream.pipeTo(digest);
  return ok({ name, bytes: found.value.length, sha256: hex(new Uint8Array(await digest.digest)) });
}

async function recordListed(services: Services, place: Place, row: RecordRow): Promise<Outcome<ArchiveList["records"][number]>> {
  const { id, version, edition, pages, bytes, sha256, issued } = row;
  const files: ArchiveFile[] = [];
  for (const { ending } of Object.values(recordFiles)) {
    const file = await measured(services, `records/${id}/${ending}`, fileKey({ ...place, id, version }, ending));
    if (!file.ok) return file;
    if (file.value) files.push(file.value);
  }
  return ok({ id, version, edition, head: { number: row.head_number, hash: row.head_hash }, pages, bytes, sha256, issued, files });
}

type Blurred = NonNullable<ArchiveList["photos"][number]["blurred"]>;

async function blurredListed(
  services: Services,
  company: string,
  sha256: string,
  parts: Omit<Blurred, "screen" | "print">,
  withBytes: boolean,
): Promise<Outcome<Blurred>> {
  if (!withBytes) return ok(parts);
  const files: { screen?: ArchiveFile; print?: ArchiveFile } = {};
  for (const which of ["screen", "print"] as const) {
    const file = await measured(services, `blurred/${sha256}/${which}.jpg`, blurredKey(company, sha256, which, parts.digest));
    if (!file.ok) return file;
    if (file.value) files[which] = file.value;
  }
  return ok({ ...parts, ...files });
}

/** What an archive of a job holds, and its ledger's text. `withBytes`: the photos' own bytes too. */
export async function listOf(
  services: Services,
  place: Place,
  withBytes: boolean,
  now: number,
): Promise<Outcome<{ readonly list: ArchiveList; readonly ledger: string }>> {
  const { company, job } = place;
  const [read, people, rows, blurs, records, own] = await Promise.all([
    readJob(services, place),
    services.companies.people(company),
    services.photos.ofJob(place),
    services.photos.blursOf(place),
    services.records.ofJob(place),
    services.companies.get(company),
  ]);
  const whole = ledgerOf(job, read.stored, read.versions);
  const ledger = JSON.stringify(whole);
  const photos: ArchiveList["photos"] = [];
  for (const { sha256, type, bytes } of rows) {
    const parts = blurs.get(sha256);
    const blurred = parts && (await blurredListed(services, company, sha256, parts, withBytes));
    if (blurred && !blurred.ok) return blurred;
    const file = withBytes ? { file: { name: `photos/${sha256}`, bytes, sha256 } } : {};
    // the type of every row was told from the photo's first bytes
    photos.push({
      sha256,
      type: type as ArchiveList["photos"][number]["type"],
      bytes,
      ...file,
      ...(blurred && { blurred: blurred.value }),
    });
  }
  const papers: ArchiveFile[] = [];
  for (const sha256 of new Set(read.stored.flatMap(papersNamed))) {
    const bytes = withBytes ? await services.papers.get(company, sha256) : undefined;
    if (bytes !== undefined) papers.push({ name: `papers/${sha256}`, bytes, sha256 });
  }
  const listed: ArchiveList["records"] = [];
  for (const row of records) {
    const record = await recordListed(services, place, row);
    if (!record.ok) return record;
    listed.push(record.value);
  }
  const authors = new Set(whole.entries.map(({ envelope }) => envelope.author.person));
  const named = new Set(read.stored.flatMap(photosNamed));
  const list: ArchiveList = {
    kind: ARCHIVE_KIND,
    format: 1,
    job,
    company: own?.name ?? company,
    taken: now,
    head: whole.head,
    ledger: { name: "ledger.json", bytes: new TextEncoder().encode(ledger).length, sha256: await sha256Hex(ledger) },
    versions: namesOfVersions(whole.entries.map(({ body }) => body.what)),
    people: people.filter(({ id }) => authors.has(id)).map(({ id, name, role }) => ({ id, name, role })),
    photos: photos.filter(({ sha256 }) => named.has(sha256) || rows.some((row) => row.sha256 === sha256)),
    ...(papers.length === 0 ? {} : { papers }),
    records: listed,
  };
  const ofPhotos = photos.reduce((sum, photo) => sum + (photo.file?.bytes ?? 0), list.ledger.bytes);
  const bytes = papers.reduce((sum, paper) => sum + paper.bytes, ofPhotos);
  return bytes > LARGEST_ARCHIVE ? refuse("batch-size", "archive", { bytes, most: LARGEST_ARCHIVE }) : ok({ list, ledger });
}

/** The names under which the job took its versions over, by their digests. */
function namesOfVersions(whats: readonly (object | undefined)[]): Readonly<Record<string, string>> & ArchiveList["versions"] {
  return Object.fromEntries(
    whats.flatMap((part) => {
      const what = (part as { content?: { thing?: Json; name?: Json; digest?: Json } } | undefined)?.content;
      return typeof what?.thing === "string" && typeof what.name === "string" && typeof what.digest === "string"
        ? [[what.digest, what.name]]
        : [];
    }),
  );
}
