import type { AddressInfo } from "node:net";
import { createServer, type Server } from "node:net";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { batchOf, Client, type Company, type Loose, newCompany, newId, newJob, type Reply, tenItems } from "../helpers/edge.ts";
import { readWords } from "../helpers/pdf.ts";

/** Whoever knocks here has fetched something that was only typed: a connection is enough, a request need not follow. */
let listener: Server;
let outside: string;
let knocks = 0;
let company: Company;
beforeAll(async () => {
  listener = createServer((socket) => {
    knocks += 1;
    socket.destroy();
  });
  await new Promise<void>((listening) => listener.listen(0, "127.0.0.1", listening));
  outside = `127.0.0.1:${(listener.address() as AddressInfo).port}`;
  company = await newCompany(inject("edge"), inject("operatorKey"));
});
afterAll(() => {
  listener.close();
});

const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
const bare = (words: string): string => words.replaceAll(/\s+/g, "");
const typed = () => ({
  title: `Elm <img src="http://${outside}/a.png" onerror=alert(1)>`,
  note: `Seen at http://169.254.169.254/latest and file:///etc/passwd </p></main><script src="http://${outside}/b.js"></script><iframe src="file:///etc/passwd">`,
  caption: `<link rel=preconnect href="http://${outside}"><style>@import "http://${outside}/c.css"; body{background:url(http://${outside}/d)}</style>`,
  name: `Kim "><svg/onload=fetch('http://${outside}/e')>`,
});

describe("what was typed with markup, addresses and scripts in it", () => {
  it("stands in the PDF and on the released page as it was typed; nobody fetches anything", async () => {
    const says = typed();
    const { job, phone } = await newJob(company);
    const { crew } = company.people;
    expect((await company.office.post(`/api/jobs/${job}/particulars`, { title: says.title, customer: { name: says.name } })).status).toBe(
      201,
    );
    const entries = [
      await phone.entry(job, crew, "note-for-record", { text: says.note, step: "top-of-footing" }),
      await phone.entry(job, crew, "picture-taken", {
        item: "footing-seen",
        photo: "ab".repeat(32),
        bytes: 9,
        type: "image/jpeg",
        caption: says.caption,
      }),
    ];
    const sent = await company.crew.post(`/api/jobs/${job}/entries`, batchOf(...entries));
    expect(sent.body.answers.map((one: Loose) => one.outcome)).toEqual(["taken", "taken"]);
    const issued = await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" });
    expect(issued.status, JSON.stringify(issued.body)).toBe(201);
    const pdf = await readWords((await company.office.get(issued.body.pdf)).bytes);
    for (const words of [says.title, says.note, says.caption]) expect(bare(pdf.text)).toContain(bare(words));
    const released = await company.office.post(`/api/records/${issued.body.record}/releases`, { to: says.name });
    const page = await new Client(inject("edge")).get(released.body.link);
    expect(page.status).toBe(200);
    const html = text(page.bytes);
    expect(html).not.toMatch(/<(script|iframe|img|link|svg\/onload)\b[^>]*(127\.0\.0\.1|passwd|onload)/i);
    expect(html).toContain(`&lt;img src=&quot;http://${outside}/a.png&quot;`);
    expect(page.headers.get("content-security-policy")).toMatch(/^default-src 'none'/);
    expect(knocks).toBe(0);
  }, 90_000);
});

describe("signs that deceive", () => {
  it("are kept as they were typed, and left out where they would be read", async () => {
    const name = "Elm Street \u202e4 gnidliub\u202c\u200b end";
    const { job } = await newJob(company);
    expect((await company.office.post(`/api/jobs/${job}/particulars`, { title: name })).status).toBe(201);
    const ledger = (await company.office.get(`/api/jobs/${job}/ledger`)).body.entries.at(-1);
    expect(ledger.body.what.content.title).toBe(name);
    const issued = await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" });
    expect(issued.status, JSON.stringify(issued.body)).toBe(201);
    const pdf = await readWords((await company.office.get(issued.body.pdf)).bytes);
    expect(bare(pdf.text)).toContain(bare("Elm Street 4 gnidliub end"));
    const flood = `a${"\u0301".repeat(500)}`;
    expect((await company.office.post(`/api/jobs/${job}/particulars`, { title: flood.slice(0, 200) })).status).toBe(201);
    expect((await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).status).toBe(201);
  }, 90_000);

  it("half of a pair is no text: it is refused wherever it is sent, with its place", async () => {
    const { job } = await newJob(company);
    const asked: readonly Reply[] = await Promise.all([
      company.office.ask("POST", `/api/jobs/${job}/particulars`, { json: { title: "x\ud800" } }),
      company.office.ask("POST", "/api/openings", { json: { title: "x\udfff", sheet: "gate-post" } }),
      company.owner.ask("POST", "/api/people", { json: { name: "\ud800", role: "crew" } }),
    ]);
    for (const { status, body } of asked) {
      expect([400, 422]).toContain(status);
      expect([body.code, typeof body.place]).toEqual(["ledger-text-surrogate", "string"]);
    }
  });

  it("a job number that looks like another's is that number", async () => {
    expect((await company.office.post("/api/company/sheets", tenItems)).status).toBeLessThan(500);
    const open = (ownNumber: string) => company.office.post("/api/openings", { id: newId(), title: "Elm", sheet: "gate-post", ownNumber });
    expect((await open("AB-26-1")).status).toBe(201);
    for (const other of ["АВ-26-1", "AB\u200b-26-1", "ＡＢ－26－1", "\u202eAB-26-1", " AB‑26–1 "])
      expect(await open(other), other).toMatchObject({ status: 409, body: { code: "own-number-used" } });
    const apart = await open("AB-26-I");
    expect(apart.status).toBe(201);
  });
});

describe("tables that are handed out", () => {
  it("hold no formula, whoever typed it", async () => {
    const { job } = await newJob(company);
    const formula = 'x;=HYPERLINK("http://x");y';
    await company.office.post(`/api/jobs/${job}/particulars`, { title: "=1+1", order: "@SUM(A1)", customer: { name: formula } });
    for (const table of ["jobs", "readings", "findings"]) {
      const csv = text((await company.office.get(`/api/tables/${table}`)).bytes);
      for (const cell of csv.split(/[;\t\r\n]|,(?=(?:[^"]*"[^"]*")*[^"]*$)/)) expect(cell).not.toMatch(/^[\s"]*[=@+]/);
    }
    expect(text((await company.office.get(`/api/tables/jobs?job=${job}`)).bytes)).toContain("'=1+1,'@SUM(A1)");
  });
});
