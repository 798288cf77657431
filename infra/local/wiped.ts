import { existsSync, readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";

/** What had been erased from each database when its file was last written anew: their number and the latest moment. */
type Noted = Readonly<Record<string, string>>;

const notedIn = (file: string): Noted => (existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Noted) : {});

function erasedIn(database: DatabaseSync): string | undefined {
  const has = database.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'erased'").get() !== undefined;
  const row = has ? database.prepare("SELECT count(*) AS number, max(at) AS latest FROM erased").get() : undefined;
  return row === undefined || row.number === 0 ? undefined : `${row.number} ${row.latest}`;
}

/**
 * Writes the file of each database anew from which something was erased since that was last done: SQLite leaves what a row held on its
 * page until another row comes to lie there. Before the worker opens them, since it does not expect another writer.
 * @returns how many files were written anew
 */
export function wipeErased(persist: string): number {
  const d1 = join(persist, "d1");
  const files = existsSync(d1) ? readdirSync(d1, { recursive: true, encoding: "utf8" }) : [];
  const noteFile = join(persist, "wiped.json");
  const noted: Record<string, string> = { ...notedIn(noteFile) };
  let wiped = 0;
  for (const name of files.filter((one) => /^[^/\\]+[/\\][0-9a-f]{64}\.sqlite$/.test(one))) {
    const database = new DatabaseSync(join(d1, name));
    try {
      const erased = erasedIn(database);
      if (erased === undefined || noted[name] === erased) continue;
      database.exec("VACUUM");
      // what is in the log still holds the old pages
      database.exec("PRAGMA wal_checkpoint(TRUNCATE)");
      noted[name] = erased;
      wiped += 1;
    } finally {
      database.close();
    }
  }
  if (wiped > 0) {
    writeFileSync(`${noteFile}.part`, JSON.stringify(noted));
    renameSync(`${noteFile}.part`, noteFile);
  }
  return wiped;
}
