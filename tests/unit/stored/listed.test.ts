import { readFileSync } from "node:fs";
import { DatabaseSync } from "node:sqlite";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { d1Over } from "../../helpers/d1-over-sqlite.ts";
import type { Loose } from "../../helpers/edge.ts";
import { migrations } from "../../helpers/stack-folder.ts";

/*
 * The list of jobs on the frozen company of tests/samples/database/0012.sql, whose program kept no rows for it. By variable names: the
 * edge is written for another platform's types than the tests.
 */
const [servicesFile, viewFile, buriedFile] = [
  "#functions/edge/services.ts",
  "#functions/edge/jobs/view.ts",
  "#functions/edge/jobs/buried-list.ts",
];
let database: DatabaseSync;
let services: Loose;
const company = "frozen";
const now = Date.UTC(2026, 10, 29, 12);
const list = async (): Promise<readonly Loose[]> => (await (await import(viewFile)).listOf(services, company)).jobs;
const buried = async (): Promise<Loose> => (await import(buriedFile)).buriedList(services, company);
const rows = (sql: string): readonly Loose[] => database.prepare(sql).all();
/** What the edge asked of the database since this was last emptied. */
const asked: string[] = [];

beforeAll(async () => {
  database = new DatabaseSync(":memory:");
  database.exec(readFileSync(new URL("../../samples/database/0012.sql", import.meta.url), "utf8"));
  await migrate(d1Over(database) as unknown as Database, migrations, "2026-11-28T00:00:00.000Z");
  const { servicesOf } = await import(servicesFile);
  const over = d1Over(database) as Loose;
  const DB = {
    ...over,
    batch: (statements: unknown) => over.batch(statements),
    prepare: (sql: string) => {
      asked.push(sql);
      return over.prepare(sql);
    },
  };
  const environment = { DB, STORE_ENDPOINT: "http://store.invalid", STORE_REGION: "r", STORE_BUCKET: "b", SERVICE_SECRET: "s" };
  services = servicesOf(environment, () => now);
});
afterAll(() => database.close());

test("jobs of an older program are computed once, and after that no finding and no ledger is read for the list", async () => {
  expect(rows("SELECT count(*) AS kept FROM listed")).toEqual([{ kept: 0 }]);
  const first = await list();
  expect(first.map(({ title, entries }) => [title, entries]).sort()).toEqual([
    ["Elm Street 4", 15],
    ["Elm Street 4", 3],
    ["Terrace fall", 6],
  ]);
  expect(rows("SELECT number FROM listed ORDER BY number").map(({ number }) => number)).toEqual([3, 6, 15]);
  const lines = await buried();
  asked.length = 0;
  expect(await list()).toEqual(first);
  expect(await buried()).toEqual(lines);
  expect(asked.length).toBeGreaterThan(2);
  expect(asked.filter((sql) => /\bfinding\b|\bbody\b|\benvelope\b/.test(sql))).toEqual([]);
});

test("a row behind its ledger or the rules is computed anew, and only that one", async () => {
  const [grown, older] = [
    "UPDATE listed SET number = 14, content = '{}' WHERE number = 15",
    "UPDATE listed SET rules = 0 WHERE number = 6",
  ];
  const before = await list();
  for (const sql of [grown, older]) {
    database.exec(sql);
    asked.length = 0;
    expect(await list()).toEqual(before);
    expect(asked.filter((sql) => sql.startsWith("INSERT INTO listed")).length).toBe(1);
  }
  expect(rows("SELECT number, rules FROM listed ORDER BY number").map(({ number, rules }) => [number, rules])).toEqual([
    [3, 1],
    [6, 1],
    [15, 1],
  ]);
});
