import { readFileSync } from "node:fs";
import { DatabaseSync } from "node:sqlite";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { d1Over } from "../../helpers/d1-over-sqlite.ts";
import type { Loose } from "../../helpers/edge.ts";
import { migrations } from "../../helpers/stack-folder.ts";
import { verifyLedger } from "../../helpers/verifier.ts";

/*
 * The nightly look at periods, on the frozen company of tests/samples/database/0012.sql with the clock set far ahead. By variable names: the
 * edge is written for another platform's types than the tests.
 */
const [servicesFile, lookFile, viewFile, sayFile] = [
  "#functions/edge/services.ts",
  "#functions/edge/keeping/look.ts",
  "#functions/edge/keeping/view.ts",
  "#functions/edge/jobs/say-in-job.ts",
];
let database: DatabaseSync;
let services: Loose;
let now = Date.UTC(2046, 10, 28, 12);
const removed: string[] = [];
const company = "frozen";
const look = async (): Promise<void> => (await import(lookFile)).lookAtPeriods(services);
const view = async (): Promise<Loose> => (await import(viewFile)).keepingOfCompany(services, company);

const rows = (sql: string, ...values: readonly string[]): readonly Loose[] => database.prepare(sql).all(...values);
const ledgers = (): readonly string[] =>
  rows("SELECT DISTINCT job FROM entry ORDER BY job").map(({ job }) => {
    const entries = rows("SELECT envelope, body, hash FROM entry WHERE job = ? ORDER BY number", job);
    const list = entries.map(({ envelope, body }) => ({ envelope: JSON.parse(envelope), body: JSON.parse(body) }));
    return JSON.stringify({ format: 1, job, head: { number: list.length, hash: entries.at(-1)?.hash }, entries: list, versions: [] });
  });
const ended = (): readonly Loose[] =>
  rows("SELECT body FROM entry WHERE kind = 'period-ended' ORDER BY number").map(({ body }) => JSON.parse(body).what.content);
/** The job of which a kind of entry is the only one of its kind. */
const jobWith = (kind: string): string => rows("SELECT job FROM entry WHERE kind = ?", kind)[0]?.job;
const whole = (): string =>
  JSON.stringify(["entry", "site", "finding", "after_work", "listed", "observed"].map((table) => rows(`SELECT * FROM ${table}`)));

beforeAll(async () => {
  database = new DatabaseSync(":memory:");
  database.exec(readFileSync(new URL("../../samples/database/0012.sql", import.meta.url), "utf8"));
  await migrate(d1Over(database) as unknown as Database, migrations, "2026-11-28T00:00:00.000Z");
  const { servicesOf } = await import(servicesFile);
  const environment = {
    DB: d1Over(database),
    STORE_ENDPOINT: "http://store.invalid",
    STORE_REGION: "r",
    STORE_BUCKET: "b",
    SERVICE_SECRET: "s",
  };
  const store = {
    remove: async (key: string) => {
      removed.push(key);
      return { ok: true, value: null };
    },
  };
  services = { ...servicesOf(environment, () => now), store };
});
afterAll(() => database.close());

test("on the last day of the period nothing goes, and what will go is told before", async () => {
  const before = whole();
  await look();
  expect([ended(), whole()]).toEqual([[], before]);
  const { sites, isOwn, today } = await view();
  expect([isOwn, today]).toEqual([false, "2046-11-28"]);
  // one entered last on 28 November 2026; twenty years by the program's usual periods
  const site = sites.find(({ address }: Loose) => address === "9 Example Row, Nowhere County");
  expect(site).toMatchObject({
    from: "2026-11-28",
    waits: false,
    endings: ["names", "places", "pictures"].map((kind) => ({ kind, until: "2046-11-28" })),
    // who of the opening and of the site, where of the site; the company's own entry of the site
    goes: { kinds: ["names", "places", "pictures"], bodies: 4, files: 0 },
  });
  expect(sites.find(({ jobs }: Loose) => jobs[0].job === jobWith("callback-opened"))).toMatchObject({ waits: true });
});

test("the day after it goes, told in the company's ledger; a job with an open callback waits; every chain verifies", async () => {
  now += 86_400_000;
  await look();
  expect(ended()).toEqual([
    {
      site: rows("SELECT id FROM site")[0]?.id,
      jobs: [jobWith("site-taken-over")],
      from: "2026-11-28",
      kinds: ["names", "places", "pictures"],
      bodies: 4,
      files: 0,
      records: false,
    },
  ]);
  const text = whole();
  for (const gone of ["555-0160", "410021000", "ines@example.invalid"]) expect([gone, text.includes(gone)]).toEqual([gone, false]);
  expect(text).toContain("Lou Marsh");
  for (const ledger of ledgers()) expect(verifyLedger(ledger).faults).toEqual([]);
  expect(JSON.parse(rows("SELECT content FROM site")[0]?.content)).toEqual({
    address: "N. N.",
    heightMark: "nail in the door sill",
    tieMarks: ["A, corner of the garage", "B, gate post"],
  });
  expect(removed).toEqual([]);
});

test("looked at again the same day nothing is done twice, and on another neither", async () => {
  const before = whole();
  await look();
  now += 86_400_000;
  await look();
  expect(whole()).toBe(before);
});

test("when the callback is closed its job goes too: the photo and both papers leave the store, and backups read back", async () => {
  const job = jobWith("callback-opened");
  const { id: callback } = rows("SELECT id FROM entry WHERE kind = 'callback-opened'")[0];
  const office = rows("SELECT id FROM person WHERE role = 'office'")[0]?.id;
  const [{ sha256: photo }] = rows("SELECT sha256 FROM photo");
  const papers = rows("SELECT sha256 FROM paper").map(({ sha256 }) => sha256);
  const { sayInJob } = await import(sayFile);
  const author = { company, person: office, role: "office" };
  const closed = { kind: "callback-closed", contents: { what: { cause: "a leaf", callback } }, at: now };
  expect((await sayInJob(services, author, { company, job }, closed)).ok).toBe(true);
  now = Date.UTC(2070, 0, 1);
  await look();
  const last = ended().at(-1);
  expect(last).toMatchObject({ jobs: [job], files: 3, records: false });
  // of others and of the callback who; picture, what was read of it, its blur and the paper what
  expect(last.bodies).toBe(6);
  for (const sha of [photo, ...papers]) expect(removed).toContain(`${company}/${sha === photo ? "originals" : "papers"}/${sha}`);
  expect(rows("SELECT * FROM photo").concat(rows("SELECT * FROM paper"), rows("SELECT * FROM blurred"))).toEqual([]);
  expect(rows("SELECT ref FROM erased WHERE kind = 'object' AND gone IS NULL")).toEqual([]);
  for (const gone of ["Lou Marsh", "Ines Marlow"]) {
    const ofJobs = JSON.stringify(rows("SELECT body FROM entry WHERE job IN (SELECT id FROM job)"));
    expect([gone, ofJobs.includes(gone)]).toEqual([gone, false]);
  }
  expect(rows("SELECT receiver FROM released_record")).toEqual([{ receiver: "N. N." }]);
  for (const ledger of ledgers()) expect(verifyLedger(ledger).faults).toEqual([]);
  // the record stays: its period is not set
  expect(rows("SELECT * FROM record")).toHaveLength(1);
});
