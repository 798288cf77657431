import { existsSync, readdirSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { DatabaseSync } from "node:sqlite";
import type { BackupList } from "./list.ts";

/** A database of a stack: its file, and where that lies below the edge's folder. */
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
export function databasesIn(directory: string): readonly [Found, ...Found[]] {
  const edge = join(directory, "edge");
  const d1 = join(edge, "d1");
  const files = existsSync(d1) ? readdirSync(d1, { recursive: true, encoding: "utf8" }) : [];
  const found = files
    .filter((name) => /^[^/\\]+[/\\][0-9a-f]{64}\.sqlite$/.test(name))
    .map((name) => join(d1, name))
    .filter(hasEntries)
    .sort();
  const [first, ...further] = found.map((file) => ({ file, place: relative(edge, file).split(sep).join("/") }));
  if (first === undefined) throw new Error(`There is no stack in ${directory}: no database lies in it.`);
  return [first, ...further];
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

/**
 * Rows of several databases are those of several moments: a company on its way from one to the other could be in both, or in neither.
 * @throws where one is, or where one has left rows behind
 */
export function refuseMoving(database: DatabaseSync): void {
  const has = database.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'moving'").get() !== undefined;
  if (has && database.prepare("SELECT 1 FROM moving").get() !== undefined)
    throw new Error(
      "A company is being moved, or has left rows behind. Let its move end, with --remove (npm run move), and take the backup then.",
    );
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
