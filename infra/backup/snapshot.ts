import { existsSync, readdirSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { DatabaseSync } from "node:sqlite";
import type { BackupList } from "./list.ts";

/** The database of a stack: its file, and where that lies below the edge's folder. */
export interface Found {
  readonly file: string;
  readonly place: string;
}

const hasEntries = (file: string): boolean => {
  const database = new DatabaseSync(file, { readOnly: true });
  try {
    return database.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'entry'").get() !== undefined;
  } finally {
    database.close();
  }
};

/** @throws when no file below the edge's folder is this program's database */
export function databaseOf(directory: string): Found {
  const edge = join(directory, "edge");
  const d1 = join(edge, "d1");
  const files = existsSync(d1) ? readdirSync(d1, { recursive: true, encoding: "utf8" }) : [];
  const found = files.filter((name) => /^[^/\\]+[/\\][0-9a-f]{64}\.sqlite$/.test(name)).find((name) => hasEntries(join(d1, name)));
  if (found === undefined) throw new Error(`There is no stack in ${directory}: no database lies in it.`);
  const file = join(d1, found);
  return { file, place: relative(edge, file).split(sep).join("/") };
}

/**
 * The rows of one moment as a file of their own, taken while others write: VACUUM INTO reads them in one transaction, keeps nobody
 * waiting in the log mode of the platform's database, and carries no page along that a row once stood on and stands on no more.
 */
export function snapshotInto(file: string, to: string): void {
  const database = new DatabaseSync(file, { readOnly: true, timeout: 10_000 });
  try {
    database.prepare("VACUUM INTO ?").run(to);
  } finally {
    database.close();
  }
}

/** What the rows say of themselves: the migrations that built them, and the last entry of each ledger. */
export function saidBy(database: DatabaseSync): Pick<BackupList, "migrations" | "ledgers"> {
  const migrations = database.prepare("SELECT name, digest FROM migration ORDER BY name").all();
  const ledgers = database
    .prepare(
      `SELECT company, job, number, hash FROM entry AS e
        WHERE number = (SELECT max(number) FROM entry AS f WHERE f.company = e.company AND f.job = e.job) ORDER BY company, job`,
    )
    .all();
  return {
    migrations: migrations.map((row) => ({ ...row })) as unknown as BackupList["migrations"],
    ledgers: ledgers.map((row) => ({ ...row })) as unknown as BackupList["ledgers"],
  };
}
