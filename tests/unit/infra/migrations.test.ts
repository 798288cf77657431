import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync, type SQLInputValue } from "node:sqlite";
import { afterEach, beforeEach, expect, test } from "vitest";
import { type Database, migrate } from "#infra/local/migrations.ts";

/** As much of D1 as the migrations use, over SQLite in memory; a batch is one transaction, as in D1. */
const databaseOver = (sqlite: DatabaseSync): Database => {
  const prepare = (sql: string, values: readonly unknown[] = []): ReturnType<Database["prepare"]> => ({
    bind: (...bound) => prepare(sql, bound),
    run: async () => sqlite.prepare(sql).run(...(values as SQLInputValue[])),
    all: async () => ({ results: sqlite.prepare(sql).all(...(values as SQLInputValue[])) }),
  });
  return {
    prepare: (sql) => prepare(sql),
    batch: async (list) => {
      sqlite.exec("BEGIN");
      try {
        for (const statement of list) await statement.run();
        sqlite.exec("COMMIT");
      } catch (error) {
        sqlite.exec("ROLLBACK");
        throw error;
      }
    },
  };
};

let folder = "";
let sqlite: DatabaseSync;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "asburied-migrations-"));
  sqlite = new DatabaseSync(":memory:");
});
afterEach(async () => {
  sqlite.close();
  await rm(folder, { recursive: true, force: true });
});

const write = (name: string, sql: string): Promise<void> => writeFile(join(folder, name), sql);
const run = (): Promise<string[]> => migrate(databaseOver(sqlite), folder, "2026-01-01T00:00:00Z");

test("files are applied once, in the order of their names", async () => {
  await write("0002-more.sql", "ALTER TABLE note ADD COLUMN more TEXT;");
  await write("0001-first.sql", "CREATE TABLE note (text TEXT) STRICT;");
  expect(await run()).toEqual(["0001-first.sql", "0002-more.sql"]);
  expect(await run()).toEqual([]);
  sqlite.exec("INSERT INTO note (text, more) VALUES ('a', 'b')");
});

test("a file that fails half way leaves nothing", async () => {
  await write("0001-first.sql", "CREATE TABLE note (text TEXT) STRICT; CREATE TABLE note (text TEXT) STRICT;");
  await expect(run()).rejects.toThrow("already exists");
  await write("0001-first.sql", "CREATE TABLE note (text TEXT) STRICT;");
  expect(await run()).toEqual(["0001-first.sql"]);
});

test("a file that changed after it was applied, or is gone, stops the start", async () => {
  await write("0001-first.sql", "CREATE TABLE note (text TEXT) STRICT;");
  await run();
  await write("0001-first.sql", "CREATE TABLE note (text TEXT, more TEXT) STRICT;");
  await expect(run()).rejects.toThrow("has changed since");
  await rm(join(folder, "0001-first.sql"));
  await expect(run()).rejects.toThrow("not in");
});
