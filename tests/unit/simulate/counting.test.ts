import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { found } from "#infra/demo/founding.ts";
import { countedDatabase, type DatabaseCall } from "#infra/simulate/counted-database.ts";
import { type EdgeInNode, edgeInNode, type Worker } from "#infra/simulate/edge-in-node.ts";
import { withHistory } from "#infra/simulate/history.ts";
import { kindOf } from "#infra/simulate/work.ts";

let edge: EdgeInNode;

beforeAll(async () => {
  const source = fileURLToPath(new URL("../../../functions/edge/worker.ts", import.meta.url));
  edge = await edgeInNode(((await import(source)) as { default: Worker }).default);
});
afterAll(() => edge.stop());

test("one request, counted by hand: who is signed in", async () => {
  const { first } = await found(edge.address, edge.operatorKey, "c-1");
  edge.works.length = 0;
  await first.client.get("/api/session");
  edge.now += 1_000;
  await first.client.get("/api/session");
  const [once, again] = edge.works.map(({ kind, status, calls }) => ({
    kind,
    status,
    calls: calls.map(({ database, statements, writes, rows, written }) => [database, statements, writes, rows, written]),
  }));
  const home = [
    // the session with its person and company, behind the look at whether the company is closed
    ["home", 2, false, 1, 0],
    // the newest settings: those of the founding
    ["home", 1, false, 1, 0],
    // a token that is a day old would be replaced: a writing call, so that it looks again; this one is not old
    ["home", 2, true, 0, 0],
  ];
  // the first time the directory says where the token leads; for a minute that is remembered
  expect(once).toEqual({ kind: "GET /api/session", status: 200, calls: [["directory", 1, false, 1, 0], ...home] });
  expect(again).toEqual({ kind: "GET /api/session", status: 200, calls: home });
});

test("rows written: each row and each of its indexes, of a table without row ids its key is the table", () => {
  const calls: DatabaseCall[] = [];
  const { sqlite, d1 } = countedDatabase("home", (call) => calls.push(call));
  sqlite.exec("CREATE TABLE one (a TEXT, b TEXT, PRIMARY KEY (a)) STRICT; CREATE INDEX one_b ON one (b)");
  sqlite.exec("CREATE TABLE two (a TEXT PRIMARY KEY, b TEXT) STRICT, WITHOUT ROWID");
  const insert = (table: string, a: string) => d1.prepare(`INSERT INTO ${table} (a, b) VALUES (?1, 'four')`).bind(a);
  return (async () => {
    await d1.batch([insert("one", "x"), insert("one", "y"), insert("two", "x")]);
    await d1.prepare("UPDATE two SET b = 'later'").run();
    expect(await d1.prepare("SELECT a, b FROM one ORDER BY a").all()).toEqual({
      results: [
        { a: "x", b: "four" },
        { a: "y", b: "four" },
      ],
    });
    // two rows with their key's and their own index, one row alone; then one row changed; then ten characters read
    expect(calls.map(({ statements, written, rows, characters, writes }) => [statements, written, rows, characters, writes])).toEqual([
      [3, 7, 0, 0, true],
      [1, 1, 0, 0, true],
      [1, 0, 2, 10, false],
    ]);
  })();
});

test("a batch that fails leaves nothing behind, as in D1", async () => {
  const { sqlite, d1 } = countedDatabase("home", () => undefined);
  sqlite.exec("CREATE TABLE two (a TEXT PRIMARY KEY) STRICT, WITHOUT ROWID");
  const insert = () => d1.prepare("INSERT INTO two (a) VALUES ('x')");
  await expect(d1.batch([insert(), insert()])).rejects.toThrow("UNIQUE");
  expect(sqlite.prepare("SELECT count(*) AS n FROM two").get()).toEqual({ n: 0 });
});

test("a past has names of its own, and what is the company's keeps its name", () => {
  const { sqlite } = edge.home;
  const [job, entry, digest, sheet] = ["1".repeat(32), "2".repeat(32), "3".repeat(64), "4".repeat(64)];
  sqlite.prepare("INSERT INTO job (company, id, opened) VALUES ('c-2', ?, 5)").run(job);
  const body = JSON.stringify({ job, entry, sheet });
  sqlite
    .prepare("INSERT INTO entry (company, job, number, id, kind, digest, hash, envelope, body) VALUES ('c-2', ?, 1, ?, 'k', ?, ?, '{}', ?)")
    .run(job, entry, digest, digest, body);
  withHistory(sqlite, "c-2", job, 2);
  const rows = sqlite.prepare("SELECT job, id, body FROM entry WHERE company = 'c-2' ORDER BY job").all();
  const renamed = (mark: string, name: string): string => `${mark}${name.slice(6)}`;
  expect(rows).toEqual(
    ["000001", "000002", undefined].map((mark) => {
      const [j, e] = mark === undefined ? [job, entry] : [renamed(mark, job), renamed(mark, entry)];
      return { job: j, id: e, body: JSON.stringify({ job: j, entry: e, sheet }) };
    }),
  );
});

test("kinds of requests: ids, hashes and tokens are one", () => {
  expect(kindOf("GET", `/api/jobs/${"a".repeat(32)}/ledger?x=1`)).toBe("GET /api/jobs/:id/ledger");
  expect(kindOf("PUT", `/api/photos/${"0f".repeat(32)}`)).toBe("PUT /api/photos/:id");
  expect(kindOf("GET", "/api/about-to-be-buried")).toBe("GET /api/about-to-be-buried");
});
