import { DatabaseSync } from "node:sqlite";
import { fileURLToPath } from "node:url";
import { beforeEach, expect, test } from "vitest";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { d1Over } from "../../helpers/d1-over-sqlite.ts";
import type { Loose } from "../../helpers/edge.ts";
import { migrations } from "../../helpers/stack-folder.ts";
import { fill, rowsOf, tablesOf } from "./filled.ts";

const edge = (path: string): Promise<Loose> => import(fileURLToPath(new URL(`../../../functions/edge/${path}`, import.meta.url)));
const { servicesOf } = await edge("services.ts");
const { at, behind, behindRemembered, isClosed, moveOn, openLate } = await edge("shards/index.ts");
const { parts, staying } = await edge("shards/tables.ts");

const [COMPANY, OTHER] = ["c1", "c2"];
let [first, second] = [new DatabaseSync(":memory:"), new DatabaseSync(":memory:")];
let now = 1_000_000;
let services: Loose;
/** What is done before a statement of the second shard, once. */
let meanwhile: (() => unknown) | undefined;

/** Every row of a company's tables in a shard. */
const all = (shard: DatabaseSync): string =>
  JSON.stringify(tablesOf(shard).flatMap((table) => (staying.includes(table) ? [] : [[table, rowsOf(shard, table)]])));
const count = (shard: DatabaseSync, sql: string): number => Number(Object.values(shard.prepare(sql).get() ?? {})[0]);

/** Batches one after another, as a database does them. */
const inTurn = (shard: DatabaseSync): Loose => {
  const database = d1Over(shard);
  let last: Promise<unknown> = Promise.resolve();
  const batch = (list: Loose): Promise<unknown> => {
    const mine = last.then(() => database.batch(list));
    last = mine.catch(() => undefined);
    return mine;
  };
  return { ...database, batch };
};

const withMeanwhile = (shard: DatabaseSync): Loose => {
  const database = inTurn(shard);
  const batch = async (list: Loose): Promise<unknown> => {
    const work = meanwhile;
    meanwhile = undefined;
    await work?.();
    return database.batch(list);
  };
  return { ...database, batch };
};

beforeEach(async () => {
  [first, second] = [new DatabaseSync(":memory:"), new DatabaseSync(":memory:")];
  for (const shard of [first, second]) await migrate(d1Over(shard) as unknown as Database, migrations, "2026-11-28T00:00:00.000Z");
  for (const { table } of parts) for (const company of [COMPANY, OTHER]) fill(first, table, company, 23);
  now = 1_000_000;
  meanwhile = undefined;
  const environment = { DB: inTurn(first), DB_2: withMeanwhile(second), STORE_ENDPOINT: "http://store.invalid", SERVICE_SECRET: "s" };
  services = servicesOf(environment, () => now);
});

async function moved(to: string, company = COMPANY): Promise<Loose> {
  for (let steps = 0; steps < 40; steps += 1) {
    const stand = await moveOn(services, { company, to, remove: false });
    if (!stand.ok) return stand;
    if (stand.value.stage === "moved" || stand.value.stage === "there") return stand;
  }
  throw new Error("a move that does not end");
}
async function removed(to: string, company = COMPANY): Promise<string> {
  now += 10_000;
  for (let steps = 0; steps < 40; steps += 1) {
    const stand = await moveOn(services, { company, to, remove: true });
    if (stand.value.stage === "there") return "there";
  }
  throw new Error("a removal that does not end");
}
const name = async (company: string): Promise<string> => (await (await at(services, company)).companies.get(company))?.name;

test("every row of every table is in the other shard as it was, and the other company's stay", async () => {
  const before = all(first);
  expect(count(first, "SELECT min(n) FROM (SELECT count(*) AS n FROM entry GROUP BY company)")).toBe(23);
  expect(await moved("DB_2")).toMatchObject({ ok: true, value: { stage: "moved" } });
  // both are there still, and the old ones answer nobody
  expect(all(first)).toBe(before);
  expect(await removed("DB_2")).toBe("there");
  for (const { table } of parts) {
    const [here, there] = [rowsOf(first, table), rowsOf(second, table)];
    expect([table, [...here, ...there].sort()]).toEqual([
      table,
      (JSON.parse(before) as [string, string[]][]).find(([one]) => one === table)?.[1],
    ]);
    expect([table, there.length > 0]).toEqual([table, true]);
  }
  expect(await moved("DB")).toMatchObject({ ok: true, value: { stage: "moved" } });
  expect(await removed("DB")).toBe("there");
  expect(all(first)).toBe(before);
  expect(count(second, "SELECT count(*) FROM entry")).toBe(0);
  expect(count(first, "SELECT count(*) FROM sqlite_master WHERE type = 'trigger'")).toBe(0);
  expect(count(first, "SELECT count(*) FROM closed") + count(first, "SELECT count(*) FROM changed")).toBe(0);
});

test("what changes while it is copied is there as it is in the end: new, changed, gone", async () => {
  await moveOn(services, { company: COMPANY, to: "DB_2", remove: false });
  // each before a batch that writes what was read already
  const happenings = [
    () => first.exec("UPDATE person SET name = 'Another' WHERE company = 'c1' AND id = 'person-id-c1-3'"),
    () => first.exec("DELETE FROM owed WHERE company = 'c1' AND kind >= ''"),
    () => first.exec("UPDATE session_token SET seen = 5 WHERE hash = 'session_token-hash-c1-4'"),
    () => first.exec("INSERT INTO job (company, id, opened) VALUES ('c1', 'later', 1), ('c2', 'later', 1)"),
    () => first.exec("UPDATE company SET name = 'Renamed' WHERE id = 'c1'"),
    () => first.exec("DELETE FROM job WHERE company = 'c1' AND id = 'later'"),
    () => first.exec("INSERT INTO job (company, id, opened) VALUES ('c1', 'last', 2)"),
  ];
  for (let steps = 0; steps < 60; steps += 1) {
    meanwhile = happenings.shift();
    // short steps, so that each happening comes into another
    now += 1;
    const stand = await moveOn(services, { company: COMPANY, to: "DB_2", remove: false });
    if (stand.value.stage === "moved") break;
  }
  expect(happenings.length).toBeLessThan(7);
  const mine = (shard: DatabaseSync) =>
    parts.map(({ table }: Loose) => [table, rowsOf(shard, table).filter((row) => /"c1"|-c1-/.test(row) && !/"c2"/.test(row))]);
  expect(mine(second)).toEqual(mine(first));
  expect(await name(COMPANY)).toBe("company-name-c1-0plain");
});

test("a shard that the company has left refuses what is asked of it, and who remembers it asks again", async () => {
  const remembered = await at(services, COMPANY);
  expect(await remembered.companies.get(COMPANY)).toMatchObject({ id: COMPANY });
  const key = "session_token-hash-c1-1";
  const seen = await behindRemembered(services, key, async (home: Loose) => home.companies.get(COMPANY));
  expect(seen).toMatchObject({ id: COMPANY });
  await moved("DB_2");
  const written = remembered.database.batch([
    remembered.companies.changeCompany({ id: COMPANY, name: "late", zone: "", units: "", language: "" }),
  ]);
  await expect(written.catch((thrown: unknown) => isClosed(thrown))).resolves.toBe(true);
  expect(count(first, "SELECT count(*) FROM company WHERE name = 'late'")).toBe(0);
  const [where, again] = await behindRemembered(services, key, async (home: Loose) => {
    const row = await home.companies.get(COMPANY);
    return [home.database, row];
  });
  expect(again).toMatchObject({ id: COMPANY });
  expect(where).not.toBe(undefined);
  await removed("DB_2");
  expect(await behindRemembered(services, key, async (home: Loose) => home.companies.get(COMPANY))).toMatchObject({ id: COMPANY });
  // every way in leads there, and one that nobody has leads nowhere
  for (const { table, doors = [] } of parts)
    for (const column of doors) {
      const value = second.prepare(`SELECT ${column} AS value FROM ${table} LIMIT 1`).get()?.value;
      expect([table, await (await behind(services, value)).companies.get(COMPANY)]).toMatchObject([table, { id: COMPANY }]);
    }
  expect(await (await behind(services, "none")).companies.get(COMPANY)).toBe(undefined);
});

test("the other company writes on while one is closed", async () => {
  await moved("DB_2");
  const other = await at(services, OTHER);
  await other.database.batch([other.companies.changeCompany({ id: OTHER, name: "works on", zone: "", units: "", language: "" })]);
  expect(await name(OTHER)).toBe("works on");
});

test("broken off anywhere it goes on, and the rows are the same", async () => {
  const mine = (shard: DatabaseSync) =>
    JSON.stringify(parts.map(({ table }: Loose) => rowsOf(shard, table).filter((row) => /"c1"|-c1-/.test(row) && !/"c2"/.test(row))));
  const wanted = mine(first);
  let broken = 0;
  for (let calls = 1; calls < 200; calls += 1) {
    let left = calls;
    meanwhile = function fail() {
      left -= 1;
      if (left > 0) {
        meanwhile = fail;
        return;
      }
      broken += 1;
      throw new Error("broken off");
    };
    const stand = await moveOn(services, { company: COMPANY, to: "DB_2", remove: false }).catch(() => undefined);
    if (stand?.value?.stage === "moved") break;
  }
  meanwhile = undefined;
  expect(broken).toBeGreaterThan(5);
  expect((await moved("DB_2")).value.stage).toBe("moved");
  expect(mine(second)).toBe(wanted);
});

test.each([
  ["clearing", 0],
  ["copying", 1],
  ["closing", 2],
])("a step that stands still while %s, until another has ended the move, writes nothing any more", async (_, before) => {
  const wanted = all(first);
  for (let steps = 0; steps < before; steps += 1) await moveOn(services, { company: COMPANY, to: "DB_2", remove: false });
  let whole: Loose;
  meanwhile = async () => {
    whole = await moved("DB_2");
    // the company works in its new place
    second.exec("UPDATE person SET name = 'since' WHERE company = 'c1'");
  };
  const stale = await moveOn(services, { company: COMPANY, to: "DB_2", remove: false });
  expect([whole.value.stage, stale.ok, stale.refusal?.code]).toEqual(["moved", false, "move-other"]);
  expect(count(second, "SELECT count(*) FROM closed")).toBe(0);
  expect(count(second, "SELECT count(*) FROM entry")).toBe(23);
  expect(count(second, "SELECT count(*) FROM person WHERE name = 'since'")).toBe(23);
  expect(all(first)).toBe(wanted);
});

test("what is not the same in both shards is said, and the company works on where it was", async () => {
  for (let steps = 0; steps < 2; steps += 1) await moveOn(services, { company: COMPANY, to: "DB_2", remove: false });
  meanwhile = () => second.exec("DELETE FROM paper WHERE sha256 IN (SELECT sha256 FROM paper LIMIT 1)");
  const said = await moveOn(services, { company: COMPANY, to: "DB_2", remove: false });
  expect(said.refusal).toEqual({ code: "move-differs", place: "company", figures: { what: "paper" } });
  expect(await name(COMPANY)).toBe("company-name-c1-0plain");
  expect(count(first, "SELECT count(*) FROM closed")).toBe(0);
  expect((await moved("DB_2")).value.stage).toBe("moved");
  expect(count(second, "SELECT count(*) FROM paper")).toBe(23);
});

test("a move that dies while the company is closed is given up after a minute, where the company was", async () => {
  for (let steps = 0; steps < 2; steps += 1) await moveOn(services, { company: COMPANY, to: "DB_2", remove: false });
  first.exec("UPDATE moving SET stage = 'closed', closed = 1000000; INSERT INTO closed VALUES ('c1', 1000000, 'dead')");
  const isOpen = async (): Promise<boolean> => {
    const home = await at(services, COMPANY);
    return home.companies.get(COMPANY).then(
      () => true,
      (thrown: unknown) => !isClosed(thrown),
    );
  };
  expect(await isOpen()).toBe(false);
  now += 59_000;
  await openLate(services);
  expect(await isOpen()).toBe(false);
  now += 2_000;
  await openLate(services);
  expect(await isOpen()).toBe(true);
  // what has left a shard stays closed there
  expect((await moved("DB_2")).value.stage).toBe("moved");
  now += 120_000;
  await openLate(services);
  expect(count(first, "SELECT count(*) FROM closed")).toBe(1);
});

test("refused: a shard that is not bound, a company that is not there, two moves at once", async () => {
  const code = async (company: string, to: string) => (await moveOn(services, { company, to, remove: false })).refusal?.code;
  expect(await code(COMPANY, "DB_3")).toBe("shard-unknown");
  expect(await code("nobody", "DB_2")).toBe("company-unknown");
  expect(await code("c1' OR 1", "DB_2")).toBe("company-unknown");
  await moveOn(services, { company: COMPANY, to: "DB_2", remove: false });
  expect(await code(COMPANY, "DB")).toBe("move-other");
  expect((await moveOn(services, { company: OTHER, to: "DB", remove: false })).value).toEqual({ stage: "there" });
});
