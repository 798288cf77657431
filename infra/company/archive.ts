import { createHash } from "node:crypto";
import { Zip, ZipPassThrough } from "fflate";
import type { Ledger } from "#core/ledger/index.ts";
import type { JobObserved } from "#core/quality/index.ts";
import { ARCHIVE_KIND, type ArchiveList } from "#core/wire/index.ts";
import { idFrom } from "./entries.ts";
import type { versionsDrawn } from "./ledger.ts";

const sha256 = (bytes: string | Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** Everybody who entered something, by the id that the ledgers have. */
export const peopleOf = (company: string, jobs: readonly JobObserved[]): ArchiveList["people"] => {
  const named = new Set(jobs.flatMap(({ crew, readings }) => [...crew, ...readings.map(({ person }) => person)]));
  const crew = [...named].sort().map((name) => ({ id: idFrom(`${company} ${name}`), name: name.replace("-", " "), role: "crew" as const }));
  return [...crew, { id: idFrom(`${company} office-1`), name: "office 1", role: "office" }];
};

/**
 * A drawn job's archive as another installation would have made it: its own numbers and times of receipt, photos as facts without bytes.
 * A plain ZIP in which nothing is compressed.
 */
export function archiveDrawn(
  ledger: Ledger,
  job: JobObserved,
  versions: Awaited<ReturnType<typeof versionsDrawn>>,
  company: string,
): Uint8Array<ArrayBuffer> {
  const encoder = new TextEncoder();
  const bytes = encoder.encode(JSON.stringify(ledger));
  const taken = ledger.entries.at(-1)?.envelope.received ?? 0;
  const attached = new Set(ledger.versions.map(({ digest }) => digest));
  const list: ArchiveList = {
    kind: ARCHIVE_KIND,
    format: 1,
    job: ledger.job,
    company,
    taken,
    head: ledger.head,
    ledger: { name: "ledger.json", bytes: bytes.length, sha256: sha256(bytes) },
    versions: Object.fromEntries(versions.filter(({ digest }) => attached.has(digest)).map(({ digest, name }) => [digest, name])),
    people: [...peopleOf(company, [job])],
    photos: [],
    records: [],
  };
  const listed = encoder.encode(JSON.stringify(list));
  return zipped([
    [`list-${sha256(listed)}.json`, listed],
    ["ledger.json", bytes],
  ]);
}

/** A plain ZIP with the sizes behind the bytes, as an installation writes its own. */
function zipped(files: readonly (readonly [string, Uint8Array])[]): Uint8Array<ArrayBuffer> {
  const blocks: Uint8Array[] = [];
  const zip = new Zip((error, block) => {
    if (error) throw error;
    blocks.push(block);
  });
  for (const [name, bytes] of files) {
    const entry = new ZipPassThrough(name);
    zip.add(entry);
    entry.push(bytes, true);
  }
  zip.end();
  return new Uint8Array(Buffer.concat(blocks));
}
