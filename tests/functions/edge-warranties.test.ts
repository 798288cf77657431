import ICAL from "ical.js";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { type Company, newCompany, newJob, sha256 } from "../helpers/edge.ts";

const terms = {
  text: { en: ["Ours."], es: ["Las nuestras."] },
  terms: [
    { part: "Pump", months: 36, starts: "date of sale", register: { days: 30, with: "its maker" } },
    { part: "Workmanship", months: 24, starts: "handover", services: ["winter"] },
  ],
  services: [
    { kind: "winter", month: 10, day: 31 },
    { kind: "return visit", daysAfter: 30 },
  ],
};

describe("what comes after the work", () => {
  let company: Company;
  let job: string;
  const enter = (kind: string, what: unknown, more: object = {}) =>
    company.office.post(`/api/jobs/${job}/afterwards`, { kind, what, ...more });

  beforeAll(async () => {
    company = await newCompany(inject("edge"), inject("operatorKey"));
    ({ job } = await newJob(company));
    const { content } = (await company.office.get("/api/company")).body.settings;
    const set = await company.office.ask("PUT", "/api/company/settings", { json: { ...content, warranty: terms } });
    expect(set.status).toBe(200);
  });

  it("terms that no reader could use are not saved", async () => {
    const { content } = (await company.office.get("/api/company")).body.settings;
    const wrong = { ...content, warranty: { terms: [{ part: "Pump", months: 1.5, starts: "handover" }] } };
    const refused = await company.office.ask("PUT", "/api/company/settings", { json: wrong });
    expect(refused).toMatchObject({ status: 400, body: { code: "request-shape", place: "warranty/terms/0/months" } });
  });

  it("is entered by the office once, with names apart, and not by the crew", async () => {
    const id = "c".repeat(32);
    const text = "What was shown\n";
    const signed = { relation: "owner of the house", language: "en", text, textDigest: sha256(new TextEncoder().encode(text)) };
    const said = { id, who: { name: "Alma Reyes" } };
    const first = await enter("signed", signed, said);
    expect(first).toMatchObject({ status: 201, body: { entry: id } });
    expect((await enter("signed", signed, said)).body).toEqual(first.body);
    const ledger = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
    const { body } = ledger.entries.find((one: { envelope: { id: string } }) => one.envelope.id === id);
    expect(body.who.content).toEqual({ name: "Alma Reyes" });
    expect(JSON.stringify(body.what)).not.toContain("Alma");
    const crew = await company.crew.post(`/api/jobs/${job}/afterwards`, { kind: "signed", what: signed });
    expect(crew).toMatchObject({ status: 403, body: { code: "role-not-allowed" } });
  });

  it("a text that is not the one of its digest, a day that no month has, and a callback that never was are refused", async () => {
    const other = { relation: "x", language: "en", text: "one", textDigest: "0".repeat(64) };
    expect((await enter("signed", other)).body).toMatchObject({ code: "entry-digest-differs", place: "what/textDigest" });
    expect((await enter("in-use", { since: "2026-02-30", how: "seen" })).body).toMatchObject({ code: "entry-shape", place: "what/since" });
    expect((await enter("callback-closed", { cause: "x", callback: "nobody" })).body).toMatchObject({ code: "entry-unknown-entry" });
    expect((await enter("covered", {})).body).toMatchObject({ code: "request-shape", place: "kind" });
  });

  it("the register lists each part by the terms of the company, soonest to run out first", async () => {
    expect((await enter("cover-started", { rule: "date of sale", day: "2024-02-29", part: "Pump" })).status).toBe(201);
    const { status, body } = await company.office.get("/api/warranties");
    expect(status).toBe(200);
    const pump = body.covers.find((line: { part: string }) => line.part === "Pump");
    // 30 days after 29 February 2024: 30 March; 36 months: 28 February 2027
    expect(pump).toMatchObject({
      job,
      start: "2024-02-29",
      end: "2027-02-28",
      register: { with: "its maker", by: "2024-03-30", is: "late" },
    });
    const work = body.covers.find((line: { part: string }) => line.part === "Workmanship");
    expect(work.is).toBe("runs");
    const running = body.covers.filter((line: { is: string }) => line.is === "runs").map((line: { end: string }) => line.end);
    expect(running).toEqual([...running].sort());
    expect((await company.crew.get("/api/warranties")).status).toBe(403);
  });

  it("the calendar file is one that another reader reads, in whole days", async () => {
    const answer = await company.office.get(`/api/jobs/${job}/calendar`);
    expect(answer.headers.get("content-type")).toBe("text/calendar; charset=utf-8");
    const events = new ICAL.Component(ICAL.parse(new TextDecoder().decode(answer.bytes))).getAllSubcomponents("vevent");
    const read = events.map((one) => new ICAL.Event(one));
    expect(read.map(({ summary }) => summary)).toContain("Return visit: Elm Street 4");
    expect(read.find(({ summary }) => summary.startsWith("Last day of cover, Pump"))?.startDate.toString()).toBe("2027-02-28");
    expect(read.every(({ startDate }) => startDate.isDate)).toBe(true);
  });
});

describe("old warranties from a table", () => {
  let company: Company;
  const table = [
    "Number;Customer;Address;Part;Start;Months;Note",
    'A-1;"Reyes; Alma";"12 Mill Road, Hollow";Pump;1/31/2025;1;"two\nlines"',
    "A-2;Tom Ash;3 Fen Lane;Liner;45352;120;",
    "",
  ].join("\r\n");
  const send = (csv: string, dry: boolean) => company.office.post("/api/warranties/import", { csv, dry });
  const old = async () =>
    (await company.office.get("/api/warranties")).body.covers.map(
      (line: { ownNumber: string; part: string; start: string; end: string }) => [line.ownNumber, line.part, line.start, line.end],
    );

  beforeAll(async () => {
    company = await newCompany(inject("edge"), inject("operatorKey"));
  });

  it("a dry run tells every line and takes nothing", async () => {
    const { body } = await send(`\ufeff${table}`, true);
    expect(body.rows.map(({ outcome, number }: { outcome: string; number: string }) => [outcome, number])).toEqual([
      ["new", "A-1"],
      ["new", "A-2"],
    ]);
    expect(body.taken).toBe(0);
    expect(await old()).toEqual([]);
  });

  it("one line that does not read takes all others back", async () => {
    const { body } = await send(`${table}A-3;X;Y;Pump;31/1/2025;12;\r\n`, false);
    expect(body.rows[2]).toMatchObject({ line: 5, outcome: "does not read", column: "start" });
    expect(body.taken).toBe(0);
    expect(await old()).toEqual([]);
  });

  it("is taken over once, changed the second time, and never doubled", async () => {
    expect((await send(table, false)).body.taken).toBe(2);
    // 45352 is 1 March 2024; a month from 31 January ends on the 28th
    const first = [
      ["A-2", "Liner", "2024-03-01", "2034-03-01"],
      ["A-1", "Pump", "2025-01-31", "2025-02-28"],
    ];
    expect(await old()).toEqual(first);
    expect((await send(table, false)).body).toMatchObject({ taken: 0, rows: [{ outcome: "same" }, { outcome: "same" }] });
    const moved = await send(table.replace(";120;", ";60;"), false);
    expect(moved.body).toMatchObject({ taken: 1, rows: [{ outcome: "same" }, { outcome: "changed" }] });
    expect(await old()).toEqual([["A-2", "Liner", "2024-03-01", "2029-03-01"], first[1]]);
    const ledger = (await company.office.get("/api/company/ledger")).body;
    const set = ledger.entries.filter((one: { envelope: { kind: string } }) => one.envelope.kind === "old-warranty-set");
    expect(set).toHaveLength(3);
    expect(JSON.stringify(set.map((one: { body: { what: unknown } }) => one.body.what))).not.toContain("Reyes");
  });

  it("the same line twice, no such column, a quote that never ends, and nothing at all are told", async () => {
    expect((await send(`${table}A-1;X;Y;Pump;2025-01-31;12;\r\n`, true)).body.rows[2].outcome).toBe("does not read");
    expect((await send("Number;Part\r\n1;Pump\r\n", true)).body).toMatchObject({ code: "request-shape", place: "csv/customer" });
    expect((await send(`${table}A-9;"x`, true)).body).toMatchObject({ code: "table-unreadable", place: "csv" });
    expect((await send("", true)).body).toMatchObject({ code: "request-shape" });
  });

  it("a scanned paper must have been stored", async () => {
    const row = { number: "A-2", customer: "Tom Ash", address: "3 Fen Lane", part: "Liner", start: "2024-03-01", end: "2029-03-01" };
    const set = (more: object) => company.office.ask("PUT", "/api/warranties/old", { json: { ...row, ...more } });
    expect((await set({ paper: "a".repeat(64) })).body).toMatchObject({ code: "photo-unknown", place: "paper" });
    expect((await set({ end: "2024-02-29" })).body).toMatchObject({ code: "reading-out-of-range", place: "end" });
    expect((await set({ note: "seen" })).status).toBe(204);
  });
});
