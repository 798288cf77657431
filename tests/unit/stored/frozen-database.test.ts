import { readdirSync, readFileSync } from "node:fs";
import { DatabaseSync } from "node:sqlite";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { findings, jobLedgerOf, jobState, RULES } from "#core/job/index.ts";
import { type AttachedVersion, contentDigest, type Ledger, type LedgerEntry, verify } from "#core/ledger/index.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { digest } from "#infra/node-digest.ts";
import { d1Over } from "../../helpers/d1-over-sqlite.ts";
import { migrations } from "../../helpers/stack-folder.ts";
import { verifyLedger } from "../../helpers/verifier.ts";

/*
 * Dumps of whole databases as a version of the program left them, with a small company that never was: three jobs, one by the office's
 * own opening; a photo, read and blurred in part; a paper; a body withheld; entries moved; a link for others, used; a record, released;
 * a callback; an old warranty. A dump is never made again: what it holds must stay readable. With a migration that changes rows comes a dump
 * of the version before it: every table of the platform's database but its own (_cf…), as SQL, and its counts below.
 */
const folder = fileURLToPath(new URL("../../samples/database/", import.meta.url));
const dumps = readdirSync(folder).filter((name) => name.endsWith(".sql"));

interface Row {
  readonly [column: string]: string | number | null;
}
/** What was there when the dump was made, counted in it by hand. */
const counted: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  "0012.sql": { company: 1, person: 3, job: 3, photo: 1, paper: 2, record: 1, released_record: 1, site: 1, old_warranty: 1, seal_key: 1 },
};

test("there is a dump, and each is counted", () => {
  expect(dumps.length).toBeGreaterThan(0);
  expect(dumps).toEqual(Object.keys(counted));
});

describe.each(dumps)("stored data as of %s, brought up to today", (name) => {
  let database: DatabaseSync;
  let before: Readonly<Record<string, readonly Row[]>>;
  const rows = (sql: string, ...values: readonly string[]): readonly Row[] => database.prepare(sql).all(...values) as Row[];
  const tables = (): readonly string[] =>
    rows("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name").map((row) => String(row.name));

  const ledgers = (): readonly Ledger[] =>
    rows("SELECT DISTINCT job FROM entry ORDER BY job").map(({ job }) => {
      const entries = rows("SELECT envelope, body, hash FROM entry WHERE job = ? ORDER BY number", String(job));
      const list = entries.map((row) => ({
        envelope: JSON.parse(String(row.envelope)),
        body: JSON.parse(String(row.body)),
      })) as readonly LedgerEntry[];
      const wanted = new Set(list.flatMap(({ body }) => takenOver(body)));
      const versions = rows("SELECT kind, digest, content FROM version GROUP BY digest ORDER BY digest")
        .filter((row) => wanted.has(String(row.digest)))
        .map((row) => ({ kind: row.kind, digest: row.digest, content: JSON.parse(String(row.content)) })) as readonly AttachedVersion[];
      return { format: 1, job: String(job), head: { number: list.length, hash: String(entries.at(-1)?.hash) }, entries: list, versions };
    });
  const takenOver = (body: LedgerEntry["body"]): readonly string[] => {
    const what = (body.what as { content?: { thing?: unknown; digest?: unknown } } | undefined)?.content;
    return what?.thing !== undefined && typeof what.digest === "string" ? [what.digest] : [];
  };

  beforeAll(async () => {
    database = new DatabaseSync(":memory:");
    database.exec(readFileSync(new URL(name, `file://${folder}`), "utf8"));
    before = Object.fromEntries(tables().map((table) => [table, rows(`SELECT * FROM ${table}`)]));
    await migrate(d1Over(database) as unknown as Database, migrations, "2026-11-28T00:00:00.000Z");
  });
  afterAll(() => database.close());

  test("no row is lost or changed: every column that was there says what it said", () => {
    for (const [table, number] of Object.entries(counted[name] ?? {})) expect([table, before[table]?.length]).toEqual([table, number]);
    for (const [table, old] of Object.entries(before)) {
      if (table === "migration") continue;
      const columns = Object.keys(old[0] ?? {});
      if (columns.length === 0) continue;
      const now = rows(`SELECT ${columns.join(", ")} FROM ${table}`).map((row) => JSON.stringify(row));
      expect([table, now.sort()]).toEqual([table, old.map((row) => JSON.stringify(row)).sort()]);
    }
  });

  test("every ledger verifies, by the program and by the second reader", async () => {
    const all = ledgers();
    expect(all).toHaveLength(4);
    for (const ledger of all) {
      expect((await verify(digest, ledger)).faults).toEqual([]);
      expect(verifyLedger(JSON.stringify(ledger)).faults).toEqual([]);
    }
    const withheld = await Promise.all(all.map(async (ledger) => (await verify(digest, ledger)).withheld));
    expect(withheld.flat()).toEqual([{ number: 5, part: "who", reason: "erasure" }]);
  });

  test("the findings that were stored come out again, by the same rules", () => {
    const stored = rows("SELECT job, number, rules, computed FROM finding ORDER BY job");
    expect(stored).toHaveLength(3);
    for (const { job, number, rules, computed } of stored) {
      const ledger = ledgers().find((one) => one.job === job);
      if (ledger === undefined) throw new Error(`no ledger of ${job}`);
      expect([number, rules]).toEqual([ledger.head.number, RULES]);
      const again = JSON.parse(JSON.stringify(findings(jobState(jobLedgerOf(ledger)))));
      expect(again).toEqual(JSON.parse(String(computed)).findings);
    }
  });

  test("a record names a head that its job's ledger has, and versions have their digests", async () => {
    for (const record of rows("SELECT job, head_number, head_hash FROM record")) {
      const [entry] = rows("SELECT hash FROM entry WHERE job = ? AND number = ?", String(record.job), String(record.head_number));
      expect(entry?.hash).toBe(record.head_hash);
    }
    for (const { content, digest: of } of rows("SELECT content, digest FROM version"))
      expect(await contentDigest(digest, JSON.parse(String(content)))).toEqual({ ok: true, value: of });
  });
});
