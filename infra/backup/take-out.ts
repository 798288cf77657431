import type { DatabaseSync } from "node:sqlite";
import { type Body, type Envelope, type PartName, partNames, withhold } from "#core/ledger/index.ts";
import type { Erased } from "./erased-list.ts";

/** Keys of the store that are never put back. */
export const erasedKeys = (erased: readonly Erased[]): ReadonlySet<string> =>
  new Set(erased.flatMap(({ kind, ref }) => (kind === "object" ? [ref] : [])));

/** Rows about a photo or a paper whose bytes are gone. */
const ABOUT_PHOTO = ["photo", "photo_use", "photo_look", "seen_before", "blurred", "blurred_before", "paper"] as const;
/** Made from the ledger, and made again from it when somebody asks. */
const DERIVED = ["finding", "after_work", "listed", "observed"] as const;

/** A backup may be older than a table. */
const isThere = (database: DatabaseSync, table: string): boolean =>
  database.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = ?").get(table) !== undefined;

function objectOut(database: DatabaseSync, { company, ref }: Erased): void {
  const sha256 = /\/(?:originals|papers)\/([0-9a-f]{64})$/.exec(ref)?.[1];
  if (sha256 === undefined) return;
  for (const table of ABOUT_PHOTO)
    if (isThere(database, table)) database.prepare(`DELETE FROM ${table} WHERE company = ? AND sha256 = ?`).run(company, sha256);
  database.prepare("DELETE FROM seen_before WHERE company = ? AND before = ?").run(company, sha256);
  database.prepare("DELETE FROM owed WHERE company = ? AND (ref = ? OR ref LIKE '%/' || ?)").run(company, sha256, sha256);
}

function bodyOut(database: DatabaseSync, { company, ref, content }: Erased): void {
  const [job = "", id = ""] = ref.split("/");
  const row = database.prepare("SELECT envelope, body FROM entry WHERE company = ? AND job = ? AND id = ?").get(company, job, id);
  // the entry itself came after this backup
  if (row === undefined) return;
  const said = JSON.parse(content ?? "[]") as readonly string[];
  const parts = partNames.filter((part) => said.includes(part)) as readonly PartName[];
  const entry = { envelope: JSON.parse(String(row.envelope)) as Envelope, body: JSON.parse(String(row.body)) as Body };
  const without = withhold(entry, parts, "erasure");
  if (!without.ok) return;
  database
    .prepare("UPDATE entry SET body = ? WHERE company = ? AND job = ? AND id = ?")
    .run(JSON.stringify(without.value.body), company, job, id);
  for (const table of DERIVED)
    if (isThere(database, table)) database.prepare(`DELETE FROM ${table} WHERE company = ? AND job = ?`).run(company, job);
}

const inPlace: Readonly<Record<string, string>> = {
  person: "UPDATE person SET name = ?3 WHERE company = ?1 AND id = ?2",
  site: "UPDATE site SET content = ?3 WHERE company = ?1 AND id = ?2",
  release: "UPDATE released_record SET receiver = ?3 WHERE company = ?1 AND hash = ?2",
  "others link": "UPDATE others_link SET what = ?3 WHERE company = ?1 AND hash = ?2",
  "old warranty": "UPDATE old_warranty SET content = ?3 WHERE company = ?1 AND number = ?2 ->> 0 AND part = ?2 ->> 1",
};

/**
 * Takes out of a database what was erased after it was taken, and notes it there as erased. The chain of every ledger still verifies:
 * bodies are withheld as they were, envelopes stay. The file keeps no page on which a row once stood.
 */
export function takeOut(database: DatabaseSync, erased: readonly Erased[]): void {
  const notes = isThere(database, "erased");
  for (const one of erased) {
    if (one.kind === "object") objectOut(database, one);
    else if (one.kind === "body") bodyOut(database, one);
    else if (inPlace[one.kind] !== undefined) database.prepare(inPlace[one.kind] ?? "").run(one.company, one.ref, one.content);
    if (notes)
      database
        .prepare("INSERT OR REPLACE INTO erased (company, kind, ref, content, at) VALUES (?, ?, ?, ?, ?)")
        .run(one.company, one.kind, one.ref, one.content, one.at);
  }
  database.exec("VACUUM");
}
