import fc from "fast-check";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { jobLedgerOf, jobState, jobWho } from "#core/job/index.ts";
import { defaultSheetJson } from "#infra/sheets/default-sheet.ts";
import { type Company, type Loose, newCompany } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  expect((await company.office.post("/api/company/sheets", defaultSheetJson)).status).toBe(201);
});

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const take = (table: string | Uint8Array, query = "", of = company) =>
  of.office.ask("POST", `/api/tables/jobs?sheet=buried-basin${query}`, { bytes: typeof table === "string" ? bytes(table) : table });
const look = (table: string | Uint8Array, query = "") => take(table, `&look=1${query}`);
const jobs = async (): Promise<Loose[]> => (await company.office.get("/api/jobs")).body.jobs;
const stateOf = async (job: string) => {
  const ledger = await company.office.get(`/api/jobs/${job}/ledger`);
  expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
  return jobState(jobLedgerOf(ledger.body));
};
const numbered = async (number: string): Promise<string> => (await jobs()).find(({ ownNumber }) => ownNumber === number)?.job;

const table = [
  "Job number;Título;Customer;Customer phone;Site address;Locate ticket: dig from;Locate ticket: good until;Pipe run;Crew;Farbe",
  '"CS-1";"Low fall; with ""two"" steps";Ada Finch;555-0170;3 Sample Lane;5/11/2026;46177.5;18 ft;Sam Birch;red',
  "CS-2;Pond edge;Ada Finch;;3 Sample Lane;2026-05-11T08:00-04:00;11-Jun-26;unknown;;",
  '\r\nCS-3;"Line one\nline two";;;;;;;;',
].join("\r\n");

describe("a table of jobs", () => {
  it("is looked at line by line, and nothing is written by looking", async () => {
    const seen = await look(`\ufeff${table}`);
    expect(seen).toMatchObject({
      status: 200,
      body: { written: false, sum: { opens: 3, changes: 0, same: 0, bad: 0 }, unread: ["Farbe"] },
    });
    expect(seen.body.lines[0]).toMatchObject({
      line: 2,
      number: "CS-1",
      title: 'Low fall; with "two" steps',
      // New York keeps summer time in May and June; 46177.5 is noon of 4 June 2026 in Excel's count
      instants: { "ticket-dig-from": "2026-05-11T00:00-04:00", "ticket-good-until": "2026-06-04T12:00-04:00" },
    });
    expect(seen.body.lines[1].instants).toEqual({
      "ticket-dig-from": "2026-05-11T08:00-04:00",
      "ticket-good-until": "2026-06-11T00:00-04:00",
    });
    expect(await jobs()).toEqual([]);
  });

  it("opens its jobs; taken again it doubles nothing, and a changed line changes its job", async () => {
    expect((await take(table)).body).toMatchObject({ written: true, sum: { opens: 3 } });
    expect((await take(table)).body).toMatchObject({ written: true, sum: { opens: 0, changes: 0, same: 3, bad: 0 } });
    expect(await jobs()).toHaveLength(3);
    const state = await stateOf(await numbered("CS-1"));
    expect(state.opened).toMatchObject({ title: 'Low fall; with "two" steps', crew: [company.people.crew] });
    expect(jobWho(state)).toEqual({ address: "3 Sample Lane", customer: { name: "Ada Finch", phone: "555-0170" } });
    // both jobs at one address are jobs of one site
    expect((await company.office.get("/api/sites")).body.sites).toMatchObject([{ address: "3 Sample Lane", jobs: { length: 2 } }]);

    const changed = table.replace("Ada Finch;555-0170", "Ada Finch-Lowe;555-0170").replace("18 ft", "20 ft");
    expect((await look(changed)).body).toMatchObject({ sum: { opens: 0, changes: 1, same: 2, bad: 0 } });
    expect((await take(changed)).body).toMatchObject({ written: true, sum: { changes: 1, same: 2 } });
    const now = await stateOf(await numbered("CS-1"));
    expect(jobWho(now)).toMatchObject({ customer: { name: "Ada Finch-Lowe", phone: "555-0170" } });
    expect(now.facts.filter(({ kind }) => kind === "design-set").at(-1)?.what).toMatchObject({
      figures: { pipeRun: { typed: "20 ft", unit: "ft" } },
    });
    expect(await jobs()).toHaveLength(3);
  });

  it("is taken whole or not at all; each bad line says what is wrong with it", async () => {
    const before = await jobs();
    const bad = [
      "number,title,locate ticket: dig from,crew,pipe run,latitude,longitude,address",
      "B-1,Good one,,,,,,",
      ",No number,,,,,,",
      "B-2,,,,,,,",
      "B-3,Bad day,31/02/2026,,,,,",
      "B-4,Bad crew,,Nobody Here,,,,",
      "B-5,Bad run,,,three,,,",
      "B-1,Twice,,,,,,",
      "B-6,Bad place,,,,97,0,1 Far Road",
      "B-7,More cells,,,,,,,surplus",
    ].join("\n");
    const seen = await look(bad);
    expect(seen.body.sum).toEqual({ opens: 1, changes: 0, same: 0, bad: 8 });
    expect(seen.body.lines.map(({ refusals }: Loose) => refusals.map(({ code, place }: Loose) => `${code} ${place}`))).toEqual([
      [],
      ["table-number-missing number"],
      ["table-title-missing title"],
      ["reading-out-of-range ticket-dig-from"],
      ["table-name-unknown crew"],
      ["reading-not-understood pipeRun"],
      ["table-number-twice number"],
      ["reading-out-of-range latitude"],
      ["table-cells-more "],
    ]);
    expect(await take(bad)).toMatchObject({ status: 422, body: { code: "table-lines-bad", figures: { count: 8, line: 3 } } });
    expect(await jobs()).toEqual(before);
  });

  it("reads days in the order that is asked for, and never guesses the month", async () => {
    const days = (day: string) => `number,title,locate ticket: dig from\nD-1,Day,${day}`;
    const first = async (day: string, order: string) => (await look(days(day), `&days=${order}`)).body.lines[0];
    expect((await first("5/6/2026", "month first")).instants).toEqual({ "ticket-dig-from": "2026-05-06T00:00-04:00" });
    expect((await first("5/6/2026", "day first")).instants).toEqual({ "ticket-dig-from": "2026-06-05T00:00-04:00" });
    expect((await first("25/6/2026", "month first")).outcome).toBe("bad");
  });

  it("refuses what is no table, has no number, or says one thing in two columns; reads what Excel saves on Windows", async () => {
    expect(await look('number,title\n"A,never closed')).toMatchObject({ status: 422, body: { code: "table-unreadable" } });
    expect(await look("number,title\n")).toMatchObject({ status: 422, body: { code: "table-empty" } });
    expect(await look("title\nA")).toMatchObject({ status: 422, body: { code: "table-column-missing" } });
    expect(await look("number,job number,title\n1,2,A")).toMatchObject({ status: 422, body: { code: "table-column-twice" } });
    const western = new Uint8Array([...bytes("sep=;\r\nnumber;title\r\nE-1;Ca"), 0xf1, ...bytes("ada")]);
    expect((await look(western)).body.lines).toMatchObject([{ line: 3, number: "E-1", title: "Cañada", outcome: "opens" }]);
    const wide = Uint8Array.from(Buffer.from("\ufeffnumber\ttitle\r\nE-2\tCañada\r\n", "utf16le"));
    expect((await look(wide)).body.lines).toMatchObject([{ line: 2, number: "E-2", title: "Cañada", outcome: "opens" }]);
  });

  it("several at once with the same numbers: each number is one job", async () => {
    const many = `number,title\n${Array.from({ length: 20 }, (_, i) => `R-${i},Race ${i}`).join("\n")}`;
    const answers = await Promise.all([take(many), take(many), take(many)]);
    for (const { status, body } of answers) expect(status === 200 || body.code === "own-number-used").toBe(true);
    expect((await jobs()).filter(({ ownNumber }) => ownNumber?.startsWith("R-"))).toHaveLength(20);
  });

  it("five hundred lines are taken at once, one more is told", async () => {
    const lines = (count: number) => Array.from({ length: count }, (_, i) => `M-${i},Many ${i},${i % 90} Long Road,${i} ft`);
    const many = (count: number) => `number,title,address,pipe run\n${lines(count).join("\n")}`;
    expect(await take(many(501))).toMatchObject({ status: 413, body: { code: "table-too-long", figures: { most: 500 } } });
    const own = await newCompany(inject("edge"), inject("operatorKey"));
    await own.office.post("/api/company/sheets", defaultSheetJson);
    const began = performance.now();
    expect(await take(many(500), "", own)).toMatchObject({ status: 200, body: { written: true, sum: { opens: 500 } } });
    const taken = performance.now() - began;
    expect((await take(many(500), "", own)).body).toMatchObject({ sum: { opens: 0, changes: 0, same: 500 } });
    expect((await own.office.get("/api/sites")).body.sites).toHaveLength(90);
    console.log(`500 jobs from a table: ${Math.round(taken)} ms`);
  });

  it("nobody but the office takes one", async () => {
    expect((await company.crew.ask("POST", "/api/tables/jobs", { bytes: bytes("number,title\n1,a") })).status).toBe(403);
  });

  it("whatever a file holds, it is answered, and looking leaves nothing", async () => {
    const before = (await jobs()).length;
    const cell = fc.oneof(
      fc.constantFrom("", "X-1", "=1+1", '"', '""', "5/6/26", "46177", "1e9", "\u0000", "\ud800", "ñ", " \n ", "a;b", "unknown", "-0"),
      fc.string({ maxLength: 12 }),
    );
    const head = fc.constantFrom(
      "number",
      "title",
      "address",
      "latitude",
      "longitude",
      "crew",
      "sheet",
      "pipe run",
      "Locate ticket: dig from",
      "x",
    );
    const row = fc.array(cell, { maxLength: 8 });
    const anyTable = fc
      .tuple(
        fc.constantFrom(",", ";", "\t"),
        fc.uniqueArray(head, { minLength: 1, maxLength: 8 }),
        fc.array(row, { maxLength: 5 }),
        fc.constantFrom("\n", "\r\n"),
      )
      .map(([sign, heads, rows, end]) =>
        [heads, ...rows]
          .map((cells) => cells.map((one) => (one.includes(sign) ? `"${one.replaceAll('"', '""')}"` : one)).join(sign))
          .join(end),
      );
    await fc.assert(
      fc.asyncProperty(fc.oneof(anyTable, fc.uint8Array({ maxLength: 200 })), async (file) => {
        const answer = await look(file);
        expect([200, 413, 422]).toContain(answer.status);
      }),
      { numRuns: 120, seed: 6 },
    );
    expect((await jobs()).length).toBe(before);
  });
});
