import { readFileSync } from "node:fs";
import { DatabaseSync } from "node:sqlite";
import { describe, expect, test } from "vitest";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { d1Over } from "../../helpers/d1-over-sqlite.ts";
import type { Loose } from "../../helpers/edge.ts";
import { migrations } from "../../helpers/stack-folder.ts";
import { verifyLedger } from "../../helpers/verifier.ts";

/*
 * A removal that breaks off at each of its writes, on the frozen company of tests/samples/database/0012.sql, and is asked again. By variable
 * names: the edge is written for another platform's types than the tests.
 */
const [servicesFile, changeFile, requestsFile, foundFile, removeFile] = [
  "#functions/edge/services.ts",
  "#functions/edge/company/change.ts",
  "#functions/edge/persons/requests.ts",
  "#functions/edge/persons/found.ts",
  "#functions/edge/persons/remove.ts",
];
const company = "frozen";
const now = Date.UTC(2027, 0, 1);
const request = "asked-1";
const script = readFileSync(new URL("../../samples/database/0012.sql", import.meta.url), "utf8");

/** A company whose writes break off at one of them, counted from 1; 0: at none. */
class Breaking {
  readonly database = new DatabaseSync(":memory:");
  services: Loose;
  breaksAt = 0;
  writes = 0;

  async begin(): Promise<this> {
    this.database.exec(script);
    const d1 = d1Over(this.database);
    await migrate(d1 as unknown as Database, migrations, "2026-11-28T00:00:00.000Z");
    const batch = async (list: Parameters<typeof d1.batch>[0]) => {
      this.writes += 1;
      if (this.writes === this.breaksAt) throw new Error("the database went away");
      return d1.batch(list);
    };
    const { servicesOf } = await import(servicesFile);
    const environment = {
      DB: { ...d1, batch },
      STORE_ENDPOINT: "http://store.invalid",
      STORE_REGION: "r",
      STORE_BUCKET: "b",
      SERVICE_SECRET: "s",
    };
    this.services = { ...servicesOf(environment, () => now), store: { remove: async () => ({ ok: true, value: null }) } };
    const { change } = await import(changeFile);
    const who = { names: ["Ines Marlow"] };
    const asked = { id: request, kind: "person-asked", what: { asks: "removal", day: "2026-12-01" }, who };
    expect((await change(this.services, this.author, asked, () => [])).ok).toBe(true);
    return this;
  }

  get author() {
    const office = this.rows("SELECT id FROM person WHERE role = 'office'")[0]?.id;
    return { company, person: office, role: "office" };
  }

  rows = (sql: string, ...values: readonly string[]): readonly Loose[] => this.database.prepare(sql).all(...values);

  async ask(): Promise<string | undefined> {
    const { requestsOf } = await import(requestsFile);
    const { foundOf, soughtOf } = await import(foundFile);
    const { removeFound } = await import(removeFile);
    const [asked] = await requestsOf(this.services, company, { year: 2027, month: 1, day: 1 });
    if (asked.state === "answered") return asked.state;
    const found = await foundOf(this.services, company, soughtOf(asked), new Set());
    const told = (counts: object) => ({ id: "answer-1", kind: "person-answered", what: { request, ...counts } });
    const removed = await removeFound(this.services, this.author, found, { request, reason: "asked for", now, told });
    return removed.ok ? "answered" : undefined;
  }

  /** Where in the database something still stands, without the one sentence that stays. */
  where = (text: string): readonly string[] =>
    ["entry", "site", "old_warranty", "released_record", "others_link", "after_work", "listed", "finding", "observed"].filter((table) =>
      JSON.stringify(this.rows(`SELECT * FROM ${table}`)).includes(text),
    );

  faults = (): readonly unknown[] =>
    this.rows("SELECT DISTINCT job FROM entry").flatMap(({ job }) => {
      const rows = this.rows("SELECT envelope, body, hash FROM entry WHERE job = ? ORDER BY number", job);
      const entries = rows.map(({ envelope, body }) => ({ envelope: JSON.parse(envelope), body: JSON.parse(body) }));
      return verifyLedger(JSON.stringify({ format: 1, job, head: { number: rows.length, hash: rows.at(-1)?.hash }, entries, versions: [] }))
        .faults;
    });
}

const whole = await new Breaking().begin();
const from = whole.writes;
await whole.ask();
const writes = whole.writes - from;

test("whole, it takes the name and address out of everything in several writes", () => {
  expect(writes).toBeGreaterThan(4);
  expect([whole.where("Ines Marlow"), whole.where("Example Row"), whole.faults()]).toEqual([[], [], []]);
});

describe.each(Array.from({ length: writes }, (_, i) => i + 1))("broken off at write %i", (at) => {
  test("and asked again it ends as if it had not broken off", async () => {
    const company_ = await new Breaking().begin();
    company_.breaksAt = company_.writes + at;
    const first = await company_.ask().catch((error: Error) => error.message);
    company_.breaksAt = 0;
    expect(await company_.ask()).toBe("answered");
    expect([first, company_.where("Ines Marlow"), company_.where("Example Row"), company_.faults()]).toEqual([
      "the database went away",
      [],
      [],
      [],
    ]);
    const answers = company_.rows("SELECT id FROM entry WHERE kind = 'person-answered'");
    expect(answers).toHaveLength(1);
  });
});
