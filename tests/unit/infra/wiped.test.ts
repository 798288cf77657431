import { mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { afterEach, beforeEach, expect, test } from "vitest";
import { wipeErased } from "#infra/local/index.ts";

let persist: string;
let file: string;
const NAME = "Kit Lowenstein-Perez";
const count = (): number => readFileSync(file).toString("latin1").split(NAME).length - 1;

beforeEach(() => {
  persist = mkdtempSync(join(tmpdir(), "asburied-wiped-"));
  const folder = join(persist, "d1", "miniflare-D1DatabaseObject");
  mkdirSync(folder, { recursive: true });
  file = join(folder, `${"a".repeat(64)}.sqlite`);
});
afterEach(() => rmSync(persist, { recursive: true, force: true }));

/** As the worker leaves a database: in its log mode, rows cleared in place. */
function withErased(): DatabaseSync {
  const database = new DatabaseSync(file);
  database.exec(
    "PRAGMA journal_mode = WAL; CREATE TABLE entry (id INTEGER PRIMARY KEY, body TEXT); CREATE TABLE erased (ref TEXT, at INTEGER)",
  );
  const insert = database.prepare("INSERT INTO entry (body) VALUES (?)");
  for (let n = 0; n < 50; n += 1) insert.run(`${NAME} ${"x".repeat(300)} ${n}`);
  database.exec("UPDATE entry SET body = ''");
  return database;
}

test("what a cleared row held is in the file until it is written anew, and then it is not", () => {
  const database = withErased();
  database.prepare("INSERT INTO erased VALUES ('1', 7)").run();
  database.close();
  expect(count()).toBeGreaterThan(0);
  expect(wipeErased(persist)).toBe(1);
  expect(count()).toBe(0);
  const again = new DatabaseSync(file);
  expect(again.prepare("SELECT count(*) AS rows FROM entry").get()).toEqual({ rows: 50 });
  again.close();
});

test("only where something was erased since", () => {
  const database = withErased();
  expect(wipeErased(persist)).toBe(0);
  database.prepare("INSERT INTO erased VALUES ('1', 7)").run();
  expect(wipeErased(persist)).toBe(1);
  expect(wipeErased(persist)).toBe(0);
  database.prepare("INSERT INTO erased VALUES ('2', 7)").run();
  database.close();
  expect(wipeErased(persist)).toBe(1);
  expect(wipeErased(persist)).toBe(0);
});

test("a stack that has no database yet, or one of another make, is left alone", () => {
  expect(wipeErased(join(persist, "none"))).toBe(0);
  const database = new DatabaseSync(file);
  database.exec("CREATE TABLE entry (id INTEGER)");
  database.close();
  expect(wipeErased(persist)).toBe(0);
});
