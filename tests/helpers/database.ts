import { readdirSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";

/** A row of the table of entries as it lies on the disk. */
export interface EntryRow {
  readonly number: number;
  readonly id: string;
  readonly hash: string;
  readonly envelope: string;
}

const files = (directory: string): readonly string[] =>
  readdirSync(directory, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".sqlite"))
    .map((name) => join(directory, name));

/** Asks every database file of a stack that has this table, past the edge; read only. */
export function rowsIn<T>(stackDirectory: string, table: string, sql: string, ...values: readonly string[]): readonly T[] {
  return files(join(stackDirectory, "edge")).flatMap((file) => {
    const database = new DatabaseSync(file, { readOnly: true });
    try {
      const there = database.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = ?").get(table);
      return there === undefined ? [] : (database.prepare(sql).all(...values) as T[]);
    } finally {
      database.close();
    }
  });
}

/** The entries of a ledger, in the order of their numbers. */
export const entryRows = (stackDirectory: string, job: string): readonly EntryRow[] =>
  rowsIn(stackDirectory, "entry", "SELECT number, id, hash, envelope FROM entry WHERE job = ? ORDER BY number", job);
