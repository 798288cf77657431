import sharp from "sharp";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { blurredKey, originalKey, renditionKey, renditionNames } from "#functions/shared/index.ts";
import { rowsIn } from "../helpers/database.ts";
import { batchOf, Client, type Company, type Loose, newCompany, newJob, sha256, until } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

const NAME = "Ines Marlow";
const ADDRESS = "9 Example Row, Nowhere County";
const day = "2026-05-04";

let company: Company;
let sheet: string;
let theirs: string;
let other: string;
let own: string;
let shared: string;

const picture = (text: string): Uint8Array => new Uint8Array([0xff, 0xd8, 0xff, 0xe0, ...new TextEncoder().encode(text.repeat(40))]);
const inDatabase = (table: string, sql: string): readonly Loose[] => rowsIn(inject("stackDirectory"), table, sql, company.company);
const ledgerText = async (path: string): Promise<string> => new TextDecoder().decode((await company.office.get(path)).bytes);
const ask = (id: string, more: object = {}) =>
  company.office.post("/api/persons", { id, asks: "removal", names: [NAME], contacts: ["555 016 0012"], day, ...more });
const found = async (id: string, whole = "") => (await company.office.get(`/api/persons/${id}?whole=${whole}`)).body;

/** A job of the customer's, opened by the office, with a photo of its own and one that the other job names too. */
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  const beside = await newJob(company);
  other = beside.job;
  sheet = (await company.office.get("/api/company")).body.sheets[0].name;
  const opened = await company.office.post("/api/openings", {
    title: "Terrace fall",
    sheet,
    customer: { name: NAME, phone: "(555) 016-0012" },
    site: { address: ADDRESS, heightMark: "nail in the sill", place: { latitude: 410_021_000, longitude: -891_204_000, how: "the map" } },
  });
  expect(opened.status).toBe(201);
  theirs = opened.body.job;
  [own, shared] = ["own", "shared"].map((text) => sha256(picture(text))) as [string, string];
  for (const text of ["own", "shared"])
    expect((await company.crew.ask("PUT", `/api/photos/${sha256(picture(text))}`, { bytes: picture(text) })).status).toBe(201);
  const { phone } = beside;
  const photo = (sha: string) => ({ item: "footing-seen", photo: sha, bytes: 10, type: "image/jpeg" });
  const crew = company.people.crew;
  const entries = [
    await phone.entry(theirs, crew, "picture-taken", photo(own)),
    await phone.entry(theirs, crew, "picture-taken", photo(shared)),
    await phone.entry(theirs, crew, "note-for-record", { text: "Inés  Marlow was here, INES MARLOW'S dog too" }),
    await phone.entry(theirs, crew, "note-for-record", { text: "Gravel came wet" }),
    await phone.entry(theirs, crew, "left-to-do", { text: "Ines Marlow wants the gate closed", by: "crew" }),
  ];
  const sent = await company.crew.post(`/api/jobs/${theirs}/entries`, batchOf(...entries));
  expect(sent.body.answers.map((one: Loose) => one.outcome)).toEqual(Array(5).fill("taken"));
  const there = await phone.entry(other, crew, "picture-taken", photo(shared));
  const told = await phone.entry(other, crew, "note-for-office", { text: "Call 555 0160012 about the neighbour" });
  await company.crew.post(`/api/jobs/${other}/entries`, batchOf(there, told));
  await company.office.post("/api/warranties/import", {
    csv: `number,customer,address,part,start,months\nA-1,"Marlow, Ines",${ADDRESS.replace(",", "")},Pump,2010-05-01,12\nA-2,Kit Lowe,4 Example Lane,Pump,2010-05-01,12\n`,
    dry: false,
  });
  const issued = await company.office.post(`/api/jobs/${theirs}/records`, { edition: "customer" });
  await company.office.post(`/api/records/${issued.body.record}/releases`, { to: `${NAME}, by letter` });
  await until(
    async () => ledgerText(`/api/jobs/${theirs}/ledger`),
    (text) => text.split('"picture-read"').length > 2,
  );
}, 120_000);

describe("somebody asks for his data", () => {
  it("is entered once, and told with what names him, wherever it stands", async () => {
    const asked = await ask("asked-data", { asks: "data", names: [NAME, "Marlow, Ines"] });
    expect(asked.status).toBe(201);
    expect((await ask("asked-data", { asks: "data", names: [NAME, "Marlow, Ines"] })).body).toEqual(asked.body);
    const view = await found("asked-data");
    // opened; two notes by name; left to do; released; of the other job the telephone number
    expect(view.jobs).toEqual([
      expect.objectContaining({ job: theirs, title: "Terrace fall", entries: 4, isTheirs: true, isWhole: false }),
      expect.objectContaining({ job: other, entries: 1, isTheirs: false }),
    ]);
    expect(view.company).toEqual({ entries: 1, sites: 1, oldWarranties: 1, isPerson: false });
    expect(view.handedOut).toMatchObject([{ job: theirs, version: 1, releases: [{ to: `${NAME}, by letter` }] }]);
  });

  it("is given as one file that holds all of it and nobody else's", async () => {
    const answer = await company.office.get("/api/persons/asked-data/data");
    expect(answer.headers.get("content-disposition")).toContain("attachment");
    const data = answer.body;
    const [first, second] = data.jobs;
    expect(first).toMatchObject({ job: theirs, isCustomer: true });
    expect(first.names.map((one: Loose) => one.kind)).toEqual([
      "job-opened",
      "site-taken-over",
      "site-located",
      "note-for-record",
      "left-to-do",
      "record-released",
    ]);
    expect(first.names[0].who).toEqual({ address: ADDRESS, customer: { name: NAME, phone: "(555) 016-0012" } });
    expect(second.names).toMatchObject([{ kind: "note-for-office", what: { text: "Call 555 0160012 about the neighbour" } }]);
    expect(data.sites).toMatchObject([{ address: ADDRESS }]);
    expect(data.oldWarranties).toMatchObject([{ customer: "Marlow, Ines" }]);
    const text = new TextDecoder().decode(answer.bytes);
    for (const stranger of ["Kit Lowe", "Gravel", "Kim Alder"]) expect(text).not.toContain(stranger);
    const told = await company.office.post("/api/persons/asked-data/answer", {});
    expect(told).toMatchObject({ status: 201, body: { state: "answered", answered: { by: company.people.office, bodies: 0 } } });
    expect(await company.office.post("/api/persons/asked-data/answer", {})).toMatchObject({
      status: 409,
      body: { code: "person-request-answered" },
    });
  });

  it("is for office and owner, and of another company unknown", async () => {
    expect((await company.crew.get("/api/persons")).status).toBe(403);
    const stranger = await newCompany(inject("edge"), inject("operatorKey"));
    expect(await stranger.office.get("/api/persons/asked-data")).toMatchObject({ status: 404, body: { code: "person-request-unknown" } });
  });
});

describe("somebody asks that it be removed", () => {
  it("while a warranty runs it is refused with the day, held by whom it says, and answered after", async () => {
    const settings = (await company.office.get("/api/company")).body.settings.content;
    const set = (warranty: object | undefined) => company.office.ask("PUT", "/api/company/settings", { json: { ...settings, warranty } });
    expect((await set({ terms: [{ part: "Pump", months: 1200, starts: "invoice paid" }] })).status).toBe(200);
    const paid = { kind: "cover-started", what: { rule: "invoice paid", day } };
    expect((await company.office.post(`/api/jobs/${theirs}/afterwards`, paid)).status).toBe(201);
    await ask("asked-removal", { names: [NAME, "Marlow, Ines"] });
    expect((await found("asked-removal")).jobs[0]).toMatchObject({ coveredUntil: "2126-05-04" });
    expect(await company.office.post("/api/persons/asked-removal/answer", {})).toMatchObject({
      status: 409,
      body: { code: "person-covered", figures: { until: "2126-05-04" } },
    });
    const hold = (until: string) =>
      company.owner.post("/api/persons/asked-removal/hold", { because: "dispute", until, note: "letter of 4 May" });
    expect((await hold("2126-05-04")).body).toMatchObject({
      state: "held",
      held: { because: "dispute", until: "2126-05-04", by: company.people.owner, at: expect.any(Number) },
    });
    expect(await company.office.post("/api/persons/asked-removal/answer", {})).toMatchObject({
      status: 409,
      body: { code: "person-request-held", detail: expect.stringContaining("4 May 2126") },
    });
    // the dispute ended early, and the cover with the terms
    expect((await hold("2026-01-01")).body).toMatchObject({ state: "open" });
    expect((await set(undefined)).status).toBe(200);
  });

  it("takes the name out of everything, keeps what was found, and every chain still verifies", async () => {
    const before = (await company.office.get(`/api/jobs/${theirs}`)).body;
    const preview = await found("asked-removal");
    expect(preview.goes.files).toBe(0);
    expect(preview.stays).toEqual([
      { job: theirs, title: "Terrace fall", number: expect.any(Number), kind: "left-to-do", parts: ["what"] },
    ]);
    const done = await company.office.post("/api/persons/asked-removal/answer", {});
    expect(done).toMatchObject({
      status: 201,
      body: { state: "answered", names: [], answered: { bodies: preview.goes.bodies, stays: 1 } },
    });
    for (const path of [`/api/jobs/${theirs}/ledger`, `/api/jobs/${other}/ledger`, "/api/company/ledger"])
      expect(verifyLedger(await ledgerText(path)).faults).toEqual([]);
    const texts = [await ledgerText("/api/company/ledger"), await ledgerText(`/api/jobs/${other}/ledger`)];
    for (const text of texts) for (const gone of [NAME, "Marlow", "0160012", ADDRESS]) expect(text).not.toContain(gone);
    // what stays is what was told before
    const left = (await ledgerText(`/api/jobs/${theirs}/ledger`)).split("Marlow");
    expect(left).toHaveLength(2);
    expect(left[0]).toMatch(/"text":"Ines $/);
    const after = (await company.office.get(`/api/jobs/${theirs}`)).body;
    expect(after.findings).toEqual(before.findings);
    expect((await company.office.get("/api/sites")).body.sites).toMatchObject([{ address: "N. N.", heightMark: "nail in the sill" }]);
    const covers = (await company.office.get("/api/warranties")).body.covers.map((one: Loose) => one.title);
    expect(covers.filter((title: string) => title.startsWith("N. N."))).toHaveLength(1);
    expect(covers.join()).toContain("Kit Lowe");
    for (const table of [
      "entry",
      "finding",
      "after_work",
      "listed",
      "observed",
      "site",
      "old_warranty",
      "released_record",
      "others_link",
    ]) {
      const rows = JSON.stringify(inDatabase(table, `SELECT * FROM ${table} WHERE company = ?`)).replace(
        "Ines Marlow wants the gate closed",
        "",
      );
      expect([table, rows.includes("Marlow"), rows.includes("Example Row")]).toEqual([table, false, false]);
    }
  });

  it("a job that is not kept goes whole: its photo in the store too, but not the one that a kept job names", async () => {
    const customer = "Dov Tarn";
    const opened = await company.office.post("/api/openings", { title: "Lower fall", sheet, customer: { name: customer } });
    const { job } = opened.body;
    const phone = (await newJob(company)).phone;
    const lower = sharp({ create: { width: 320, height: 240, channels: 3, background: "#7a6a52" } });
    const bytes = new Uint8Array(await lower.jpeg().toBuffer());
    expect((await company.crew.ask("PUT", `/api/photos/${sha256(bytes)}`, { bytes })).status).toBe(201);
    const photo = (sha: string) => ({ item: "footing-seen", photo: sha, bytes: 10, type: "image/jpeg" });
    const crew = company.people.crew;
    const entries = [sha256(bytes), shared].map((sha) => phone.entry(job, crew, "picture-taken", photo(sha)));
    await company.crew.post(`/api/jobs/${job}/entries`, batchOf(...(await Promise.all(entries))));
    const first = sha256(bytes);
    await until(
      async () => (await company.crew.get(`/api/jobs/${job}`)).body.photos[first]?.state,
      (state) => state === "read",
    );
    const blurs: string[] = [];
    for (const width of [300_000, 600_000]) {
      const regions = [{ x: 0, y: 0, width, height: 300_000 }];
      const blurred = await company.office.post(`/api/photos/${first}/blurred`, { regions, reason: "a neighbour" });
      expect(blurred.status).toBe(201);
      blurs.push(blurred.body.parts);
    }
    const issued = await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" });
    const { link } = (await company.office.post(`/api/records/${issued.body.record}/releases`, { to: "by letter" })).body;
    expect((await ask("asked-whole", { names: [customer], contacts: undefined })).status).toBe(201);
    expect((await found("asked-whole")).goes.files).toBe(0);
    const view = await found("asked-whole", job);
    expect(view).toMatchObject({ jobs: [{ job, isWhole: true }], goes: { files: 1 } });
    const done = await company.office.post("/api/persons/asked-whole/answer", { whole: [job] });
    expect(done).toMatchObject({ status: 201, body: { answered: { files: 1 } } });
    const text = await ledgerText(`/api/jobs/${job}/ledger`);
    expect(verifyLedger(text).faults).toEqual([]);
    expect(text).not.toContain("Lower fall");
    expect((await company.office.get(`/api/photos/${sha256(bytes)}/original`)).status).toBe(404);
    expect(sha256((await company.office.get(`/api/photos/${shared}/original`)).bytes)).toBe(shared);
    expect((await company.office.get(issued.body.pdf)).status).toBe(404);
    expect((await new Client(inject("edge")).get(link)).status).toBe(404);
    const gone = inDatabase("erased", "SELECT ref, gone FROM erased WHERE company = ? AND kind = 'object'");
    // of both blurs, of which only the last is shown
    const own = [
      originalKey(company.company, first),
      ...renditionNames.flatMap((name) => [
        renditionKey(company.company, first, name),
        ...blurs.map((digest) => blurredKey(company.company, first, name, digest)),
      ]),
    ];
    expect(own).toHaveLength(10);
    expect(gone.map(({ ref }) => ref)).toEqual(expect.arrayContaining(own));
    expect(gone.every((row) => typeof row.gone === "number")).toBe(true);
    // the list of jobs and the owner's pages go on
    for (const path of ["/api/jobs", `/api/jobs/${job}`, "/api/warranties", "/api/callbacks", "/api/questions"])
      expect([path, (await company.owner.get(path)).status]).toEqual([path, 200]);
    expect((await company.office.get(`/api/rebuild/${job}`)).body.same).toBe(true);
  });

  it("one of the company's own goes only after leaving, and is nameless then in every list", async () => {
    const { crew } = company.people;
    await ask("asked-crew", { names: ["Sam Birch"], contacts: undefined, person: crew });
    expect(await company.office.post("/api/persons/asked-crew/answer", {})).toMatchObject({
      status: 409,
      body: { code: "person-still-here" },
    });
    const data = (await company.office.get("/api/persons/asked-crew/data")).body;
    expect(data.person).toMatchObject({ name: "Sam Birch", role: "crew" });
    expect(data.jobs.flatMap((one: Loose) => one.entered).length).toBeGreaterThan(5);
    expect((await company.owner.ask("DELETE", `/api/people/${crew}`)).status).toBe(204);
    expect((await company.office.post("/api/persons/asked-crew/answer", {})).status).toBe(201);
    const people = (await company.office.get("/api/people")).body.people;
    expect(people.find((one: Loose) => one.person === crew)).toMatchObject({ name: "N. N.", left: expect.any(Number) });
    expect(await ledgerText("/api/company/ledger")).not.toContain("Sam Birch");
    expect((await company.office.get("/api/persons")).body.requests.map((one: Loose) => [one.request, one.state])).toEqual([
      ["asked-crew", "answered"],
      ["asked-whole", "answered"],
      ["asked-removal", "answered"],
      ["asked-data", "answered"],
    ]);
  });
});
