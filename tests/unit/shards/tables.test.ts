import { DatabaseSync } from "node:sqlite";
import { fileURLToPath } from "node:url";
import { beforeEach, expect, test } from "vitest";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { shards } from "#infra/shards/index.ts";
import { d1Over } from "../../helpers/d1-over-sqlite.ts";
import { migrations } from "../../helpers/stack-folder.ts";
import { columnsOf, tablesOf } from "./filled.ts";

interface Part {
  readonly table: string;
  readonly key: readonly string[];
  readonly doors?: readonly string[];
}
const file = fileURLToPath(new URL("../../../functions/edge/shards/tables.ts", import.meta.url));
const { parts, staying } = (await import(file)) as { parts: readonly Part[]; staying: readonly string[] };

let database: DatabaseSync;
beforeEach(async () => {
  database = new DatabaseSync(":memory:");
  await migrate(d1Over(database) as unknown as Database, migrations, "2026-11-28T00:00:00.000Z");
});

/** Tables of which a move knows nothing. */
const unknown = (): readonly string[] => {
  const known = [...parts.map(({ table }) => table), ...staying];
  return tablesOf(database).filter((table) => !known.includes(table));
};

test("a move knows every table that the migrations make, and a new one is found", () => {
  expect(unknown()).toEqual([]);
  database.exec("CREATE TABLE planted (company TEXT NOT NULL, id TEXT NOT NULL, PRIMARY KEY (company, id)) STRICT");
  expect(unknown()).toEqual(["planted"]);
  expect(parts.map(({ table }) => table).filter((table) => !tablesOf(database).includes(table))).toEqual([]);
});

test("a table with a company in it is among those that go with the company", () => {
  const directory = ["placed", "door", "moving", "closed", "changed"];
  const withCompany = tablesOf(database).filter((table) => columnsOf(database, table).some(({ name }) => name === "company"));
  expect(withCompany.filter((table) => !parts.some((part) => part.table === table)).sort()).toEqual([...directory].sort());
});

test("the key of each table, with the company, is unique in it", () => {
  for (const { table, key } of parts) {
    const names = columnsOf(database, table).map(({ name }) => name);
    expect(key.filter((name) => !names.includes(name))).toEqual([]);
    const indexes = database.prepare(`SELECT name FROM pragma_index_list('${table}') WHERE "unique" = 1`).all();
    const unique = indexes.map(({ name }) =>
      database
        .prepare("SELECT name FROM pragma_index_info(?)")
        .all(String(name))
        .map((row) => String(row.name))
        .sort()
        .join(),
    );
    const own = names.includes("company") ? ["company"] : table === "company" ? ["id"] : [];
    const wanted = [[...own, ...key].sort().join(), [...key].sort().join()];
    expect([table, wanted.some((one) => unique.includes(one))]).toEqual([table, true]);
  }
});

test("whatever somebody comes in by is a door: what is unique over all companies", () => {
  const single = tablesOf(database).flatMap((table) =>
    parts.some((part) => part.table === table)
      ? columnsOf(database, table)
          .filter(({ name }) => {
            const info = database.prepare(
              `SELECT count(*) AS n, max(i.name) AS name FROM pragma_index_list('${table}') AS l, pragma_index_info(l.name) AS i
                WHERE l."unique" = 1 GROUP BY l.name HAVING n = 1`,
            );
            return info.all().some((row) => row.name === name);
          })
          .map(({ name }) => `${table}.${name}`)
      : [],
  );
  const doors = parts.flatMap(({ table, doors = [] }) => doors.map((column) => `${table}.${column}`));
  // these three name a company or a session, and nobody comes in by them; one key in use is one of a company
  const named = ["company.id", "period_day.company", "seal_key.company", "session.hash"];
  expect([...doors, ...named].sort()).toEqual([...single].sort());
});

test("bindings are DB, DB_2 and so on, as the edge finds them", () => {
  expect(shards.map(({ binding }) => binding)).toEqual(shards.map((_, n) => (n === 0 ? "DB" : `DB_${n + 1}`)));
});
