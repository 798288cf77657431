import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { batchOf, type Company, type Loose, newCompany, newId, newJob, Phone, sha256, tenItems, until } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

/** What the tests of the edge, of media and of the core leave open of section 'Bad input'. */

const YEARS_3 = 3 * 365 * 86_400_000;
const sample = new Uint8Array(readFileSync(new URL("../samples/photos/camera-640.jpg", import.meta.url)));

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});

describe("a tolerance sheet whose limits cannot stand", () => {
  /** The sheet of ten items with its three checks changed: limits crossed, too near the aim, and without an aim. */
  const bent = (): Loose => {
    const sheet = structuredClone(tenItems) as Loose;
    const of = (id: string): Loose => sheet.checks.find((check: Loose) => check.id === id);
    Object.assign(of("hole-depth"), { lower: 950_000, upper: 900_000, aim: 925_000 });
    Object.assign(of("footing-below"), { lower: 101_590 });
    const { aim: _, ...without } = of("footing-below");
    sheet.checks.push({ ...without, id: "footing-again", lower: 50_800 });
    return sheet;
  };
  const expected = [
    ["limits-crossed", "sheet/checks/hole-depth"],
    ["sheet-limit-undecidable", "sheet/checks/footing-below"],
    ["sheet-limit-without-aim", "sheet/checks/footing-again"],
  ];

  it.each([
    ["en", ["The limits of", "lies above", "could not be told from the limit", "has no aim"]],
    ["es", ["Los límites de", "no se podría distinguir del límite", "no tiene meta"]],
  ])("is refused with all its faults, each with its sentence (%s), and nothing is saved", async (language, phrases) => {
    const own = await newCompany(inject("edge"), inject("operatorKey"));
    const settings = { name: "Stillwater Yard Works", zone: "America/New_York", units: "inch", language };
    expect((await own.owner.ask("PUT", "/api/company/settings", { json: settings })).status).toBe(200);
    const before = (await own.office.get("/api/company/ledger")).body.head;
    const { status, headers, body } = await own.office.post("/api/company/sheets", bent());
    expect([status, headers.get("content-type")]).toEqual([422, "application/problem+json"]);
    const faults = body.faults as readonly { code: string; place: string; says: string }[];
    expect(faults.map(({ code, place }) => [code, place]).sort()).toEqual([...expected].sort());
    for (const { says } of faults) expect(says).toMatch(/^\S.{30,}\.$/);
    expect(new Set(faults.map(({ says }) => says)).size).toBe(faults.length);
    for (const phrase of phrases) expect(faults.map(({ says }) => says).join("\n")).toContain(phrase);
    expect(faults.map(({ says }) => says)).toContain(body.detail);
    expect((await own.office.get("/api/company/ledger")).body.head).toEqual(before);
    expect((await own.crew.get("/api/company")).body.sheets).toEqual([]);
    expect((await own.office.post("/api/company/sheets", tenItems)).status).toBe(201);
  });
});

describe("the same batch by several connections at once", () => {
  it("is written once, and answered to each with the same numbers", async () => {
    const { job, phone } = await newJob(company);
    const texts = ["one", "two", "three", "four", "five"];
    const entries = await Promise.all(texts.map((text) => phone.entry(job, company.people.crew, "note-for-record", { text })));
    const path = `/api/jobs/${job}/entries`;
    const answers = await Promise.all(Array.from({ length: 6 }, () => company.crew.post(path, batchOf(...entries))));
    for (const { status, body } of answers) {
      expect([status, body.answers.map((one: Loose) => one.number)]).toEqual([200, [3, 4, 5, 6, 7]]);
    }
    const outcomes = answers.flatMap(({ body }) => body.answers.map((one: Loose) => one.outcome as string));
    expect(outcomes.filter((outcome) => outcome === "taken")).toHaveLength(5);
    const ledger = await company.office.get(`/api/jobs/${job}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
    expect(ledger.body.head.number).toBe(7);
  });

  it("opens one job", async () => {
    const [id, phone] = [newId(), new Phone()];
    const about = { title: "Elm Street 5", zone: "America/New_York", language: "en", units: "inch" };
    const opened = await phone.entry(id, company.people.office, "job-opened", about);
    const answers = await Promise.all([1, 2, 3].map(() => company.office.post("/api/jobs", batchOf(opened))));
    expect(answers.map(({ status, body }) => [status, body.answers[0].number])).toEqual(Array(3).fill([201, 1]));
    expect((await company.office.get(`/api/jobs/${id}/ledger`)).body.head.number).toBe(1);
  });
});

describe("ids", () => {
  it("an entry of one job, sent again as another job's, is refused there and stays where it is", async () => {
    const [one, other] = [await newJob(company), await newJob(company)];
    const entry = await one.phone.entry(one.job, company.people.crew, "note-for-record", { text: "here" });
    expect((await company.crew.post(`/api/jobs/${one.job}/entries`, batchOf(entry))).body.answers[0].outcome).toBe("taken");
    const { body } = await company.crew.post(`/api/jobs/${other.job}/entries`, batchOf(entry));
    expect(body.answers[0].refusal).toMatchObject({ code: "ledger-job" });
    expect([body.head.number, (await company.crew.get(`/api/jobs/${one.job}`)).body.head.number]).toEqual([2, 3]);
  });

  it("a job opened under the id of another company's job is a job of its own, and theirs is as it was", async () => {
    const theirs = await newCompany(inject("edge"), inject("operatorKey"));
    const { job } = await newJob(theirs);
    const before = (await theirs.office.get(`/api/jobs/${job}/ledger`)).body;
    const ours = await newJob(company, job);
    const entry = await ours.phone.entry(job, company.people.crew, "note-for-record", { text: "ours" });
    expect((await company.crew.post(`/api/jobs/${job}/entries`, batchOf(entry))).body.answers[0].number).toBe(3);
    expect((await theirs.office.get(`/api/jobs/${job}/ledger`)).body).toEqual(before);
    const authors = (await company.office.get(`/api/jobs/${job}/ledger`)).body.entries.map((one: Loose) => one.envelope.author.person);
    expect(new Set(authors)).toEqual(new Set([company.people.office, company.people.crew]));
  });
});

describe("a clock three years off", () => {
  it.each([
    ["ahead", YEARS_3],
    ["behind", -YEARS_3],
  ])("%s: entries keep it, what was covered is dated by the edge's, and the record prints", async (_, off) => {
    const { job, phone, sheet } = await newJob(company);
    const { crew } = company.people;
    const now = Date.now();
    const made = (minutesAgo: number): { made: number } => ({ made: now + off - minutesAgo * 60_000 });
    const tag = await phone.entry(job, crew, "tag-named", { set: "gate-post", tag: "A", hiddenBy: "pour-concrete" }, made(50));
    const plumb = await phone.entry(job, crew, "answered", { item: "post-plumb", tag: "A", choice: "it-is" }, made(40));
    const what = { covering: "pour-concrete", shown: "not yet", lines: [], sheet, rules: 1, restedOn: [] };
    const covered = await phone.entry(job, crew, "covered", what, made(30));
    const sent = { sent: now + off, entries: [tag, plumb, covered] };
    const { status, body } = await company.crew.post(`/api/jobs/${job}/entries`, sent);
    expect([status, body.answers.map((one: Loose) => one.outcome ?? one.refusal)]).toEqual([200, ["taken", "taken", "taken"]]);
    const { envelope } = (await company.crew.get(`/api/jobs/${job}/ledger`)).body.entries.at(-1);
    expect([envelope.made, envelope.sent]).toEqual([covered.sealed.made, now + off]);
    const view = (await company.crew.get(`/api/jobs/${job}`)).body;
    const state = view.clearances.find((one: Loose) => one.covering === "pour-concrete");
    expect(Math.abs(state.covered.at - (now - 1_800_000))).toBeLessThan(5_000);
    expect(view.findings.find((one: Loose) => one.check === "post-plumb").verdict).toBe("within");
    const issued = await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" });
    expect(issued.status).toBe(201);
    const model = JSON.stringify((await company.office.get(`/api/records/${issued.body.record}/model`)).body);
    const yearOf = (at: number): RegExp => new RegExp(`\\b${new Date(at).getUTCFullYear()}\\b`);
    expect(model).toMatch(yearOf(now));
    expect(model).not.toMatch(yearOf(now + off));
  });
});

describe("photos that are not what they are said to be", () => {
  it("cut off, mislabelled, rubbish behind a photo's first bytes: each is kept, told to its job, and the record says so", async () => {
    const { job, phone } = await newJob(company);
    const { crew } = company.people;
    const rubbish = new Uint8Array(5_000).map((_, i) => (i * 7919) % 251);
    rubbish.set(sample.subarray(0, 4));
    const mark = new TextEncoder().encode(`asburied ${newId()}`);
    const photos: Readonly<Record<string, Uint8Array>> = {
      cut: sample.subarray(0, 50_000),
      rubbish,
      mislabelled: new Uint8Array([...sample, ...mark]),
    };
    for (const bytes of Object.values(photos)) {
      const told = { item: "footing-seen", photo: sha256(bytes), bytes: 12, type: "image/heic" };
      const entry = await phone.entry(job, crew, "picture-taken", told);
      expect((await company.crew.post(`/api/jobs/${job}/entries`, batchOf(entry))).body.answers[0].outcome).toBe("taken");
      const put = await company.crew.ask("PUT", `/api/photos/${sha256(bytes)}`, { bytes, headers: { "content-type": "image/heic" } });
      expect([put.status, put.body.bytes, put.body.type]).toEqual([201, bytes.length, "image/jpeg"]);
    }
    const states = async () => (await company.crew.get(`/api/jobs/${job}`)).body.photos;
    const settled = await until(states, (all) => Object.values<Loose>(all).every(({ state }) => state !== "stored"));
    const found = Object.entries(photos).map(([name, bytes]) => [name, settled[sha256(bytes)].state]);
    expect(Object.fromEntries(found)).toEqual({ cut: "unreadable", rubbish: "unreadable", mislabelled: "read" });
    const ledger = async () => (await company.office.get(`/api/jobs/${job}/ledger`)).body.entries;
    const read = await until(
      async () => (await ledger()).filter((one: Loose) => one.envelope.kind === "picture-read"),
      (all) => all.length === 3,
    );
    for (const one of read) expect(one.body.what.content.facts.type).toBe("image/jpeg");
    const issued = await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" });
    expect(issued.status).toBe(201);
    const { steps } = (await company.office.get(`/api/records/${issued.body.record}/model`)).body;
    const pictures = steps.flatMap((step: Loose) => step.pictures).filter((one: Loose) => one.photo !== undefined);
    const printed = pictures.map((one: Loose) => [one.photo, typeof one.rendition, typeof one.missing]);
    for (const [name, bytes] of Object.entries(photos)) {
      const expected = name === "mislabelled" ? ["string", "undefined"] : ["undefined", "string"];
      expect(printed).toContainEqual([sha256(bytes), ...expected]);
    }
  });
});
