import { beforeAll, describe, expect, inject, it } from "vitest";
import { jobLedgerOf, jobState, jobWho, siteMarks } from "#core/job/index.ts";
import { defaultSheetJson } from "#infra/sheets/default-sheet.ts";
import { type Company, type Loose, newCompany, newId } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let company: Company;
let sheet: Loose;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  sheet = (await company.office.post("/api/company/sheets", defaultSheetJson)).body;
  const card = { id: "a-pump", part: "A pump", facts: { cordLength: { typed: "20", unit: "ft" } } };
  expect((await company.office.post("/api/company/kit-cards", card)).status).toBe(201);
});

const site = {
  address: "9 Example Row, Nowhere County",
  heightMark: "nail in the door sill",
  tieMarks: ["A, corner of the garage", "B, gate post"],
  place: { latitude: 410_021_000, longitude: -891_204_000, reaches: 30_000_000, how: "the county's map" },
};
const opening = {
  title: "Terrace fall",
  order: "PO 7",
  customer: { name: "Ines Marlow", phone: "555-0160" },
  onSite: { name: "Jo Marlow" },
  receiver: { name: "Ines Marlow", contact: "ines@example.invalid" },
  language: "es",
  figures: { staticHead: { typed: "4", unit: "ft" }, pipeRun: "unknown" },
  switches: { "check-valve": true },
  readings: [{ item: "ticket-dig-from", typed: "2026-05-11T17:00-05:00", unit: "instant" }],
};
const opened = (json: object) => company.office.post("/api/openings", json);
const ledgerOf = async (job: string) => {
  const answer = await company.office.get(`/api/jobs/${job}/ledger`);
  expect(verifyLedger(new TextDecoder().decode(answer.bytes)).faults).toEqual([]);
  return answer.body;
};
const stateOf = async (job: string) => jobState(jobLedgerOf(await ledgerOf(job)));

describe("a job as the office opens it", () => {
  it("holds names and address in who, position in where, and what it took over", async () => {
    const made = await opened({
      ...opening,
      ownNumber: "T-1",
      site,
      sheet: sheet.name,
      kitCards: ["a-pump"],
      crew: [company.people.crew],
    });
    expect(made).toMatchObject({ status: 201 });
    const ledger = await ledgerOf(made.body.job);
    expect(ledger.entries.map((e: Loose) => e.envelope.kind)).toEqual([
      "job-opened",
      "site-taken-over",
      "site-located",
      "version-taken-over",
      "version-taken-over",
      "version-taken-over",
      "design-set",
      "reading-taken",
    ]);
    const whats = JSON.stringify(ledger.entries.map((e: Loose) => e.body.what.content));
    for (const personal of ["Marlow", "555-0160", "Example Row", "410021000"]) expect(whats).not.toContain(personal);
    expect(ledger.entries[2].body.where.content).toEqual({ latitude: 410_021_000, longitude: -891_204_000 });
    const state = jobState(jobLedgerOf(ledger));
    expect(state.opened).toMatchObject({
      title: "Terrace fall",
      ownNumber: "T-1",
      order: "PO 7",
      language: "es",
      crew: [company.people.crew],
    });
    expect(jobWho(state)).toEqual({
      address: site.address,
      customer: opening.customer,
      onSite: opening.onSite,
      receiver: opening.receiver,
    });
    expect(siteMarks(state)).toEqual({ heightMark: site.heightMark, tieMarks: site.tieMarks });
    expect(state.sheetDigest).toBe(sheet.digest);
    expect(state.kitCards.map(({ part }) => part)).toEqual(["A pump"]);
  });

  it("is one job however often it is sent, and another may not have its number", async () => {
    const id = newId();
    const asked = { ...opening, id, ownNumber: " T-2 ", sheet: sheet.name };
    const answers = await Promise.all([opened(asked), opened(asked), opened(asked)]);
    expect(answers.map(({ status }) => status)).toEqual([201, 201, 201]);
    expect(new Set(answers.map(({ body }) => body.head.hash)).size).toBe(1);
    const other = await opened({ ...opening, ownNumber: "T-2", sheet: sheet.name });
    expect(other).toMatchObject({ status: 409, body: { code: "own-number-used", place: "ownNumber", figures: { number: "T-2" } } });
    // two at once with one number: one of them
    const race = await Promise.all([1, 2, 3].map(() => opened({ ...opening, ownNumber: "T-3", sheet: sheet.name })));
    expect(race.map(({ status }) => status).sort()).toEqual([201, 409, 409]);
  });

  it("is refused whole where anything in it is not taken, and leaves nothing", async () => {
    const before = (await company.office.get("/api/jobs")).body.jobs.length;
    const bad = await opened({
      ...opening,
      sheet: sheet.name,
      site,
      readings: [{ item: "ticket-dig-from", typed: "Monday", unit: "instant" }],
    });
    expect(bad).toMatchObject({ status: 422, body: { code: "reading-not-understood", place: "readings/0/what/typed" } });
    expect(await opened({ ...opening, sheet: sheet.name, kitCards: ["none"] })).toMatchObject({
      status: 409,
      body: { code: "entry-unknown-version", place: "kitCards/0" },
    });
    expect(await opened({ ...opening, site: { known: newId() } })).toMatchObject({ status: 404, body: { code: "site-unknown" } });
    expect((await company.office.get("/api/jobs")).body.jobs.length).toBe(before);
    expect((await company.office.get("/api/sites")).body.sites).toHaveLength(1);
  });
});

describe("a site", () => {
  it("is shared by its jobs: what changes there reaches each of them once", async () => {
    const first = (await opened({ ...opening, readings: [], site: { ...site, address: "1 Shared Way" } })).body;
    const second = (await opened({ ...opening, readings: [], site: { known: first.site } })).body;
    expect(second.site).toBe(first.site);
    const changed = { id: first.site, address: "1 Shared Way", heightMark: "bolt in the step", tieMarks: ["C, hydrant"] };
    for (const _ of [1, 2]) {
      const set = await company.office.post("/api/sites", changed);
      expect(set.status).toBe(201);
      expect([...set.body.jobs].sort()).toEqual([first.job, second.job].sort());
    }
    for (const { job } of [first, second]) {
      const state = await stateOf(job);
      expect(siteMarks(state)).toEqual({ heightMark: "bolt in the step", tieMarks: ["C, hydrant"] });
      expect(state.facts.filter(({ kind }) => kind === "site-taken-over")).toHaveLength(2);
    }
  });
});

describe("particulars", () => {
  it("change later, what was said before stays, and what is not named stays as it was", async () => {
    const { job } = (await opened({ ...opening, readings: [] })).body;
    const set = await company.office.post(`/api/jobs/${job}/particulars`, {
      invoice: "I-88",
      title: "Terrace fall, north",
      onSite: { name: "Pat Lowe" },
    });
    expect(set.status).toBe(201);
    const state = await stateOf(job);
    expect(state.opened).toMatchObject({ title: "Terrace fall, north", invoice: "I-88", order: "PO 7" });
    expect(jobWho(state)).toMatchObject({ onSite: { name: "Pat Lowe" }, customer: opening.customer });
    expect((await company.office.get(`/api/jobs/${job}`)).body.title).toBe("Terrace fall, north");
  });
});

describe("a job opened late", () => {
  it("is not missing what came before, and shows a covering of then as such", async () => {
    const late = {
      reason: "Taken over from another crew",
      steps: ["arrive-on-site", "hole-and-bed", "basin-set", "side-wall-fitting", "wet-check", "basin-backfill"],
      coverings: ["backfill-basin"],
    };
    const { job } = (await opened({ ...opening, sheet: sheet.name, late })).body;
    const view = (await company.office.get(`/api/jobs/${job}`)).body;
    const before = view.findings.filter((f: Loose) => late.steps.includes(f.step));
    expect(before.length).toBeGreaterThan(10);
    expect(new Set(before.map((f: Loose) => `${f.verdict}; ${f.says.key}`))).toEqual(new Set(["does not apply; before-record"]));
    const covering = view.clearances.find((c: Loose) => c.covering === "backfill-basin");
    expect(covering).toMatchObject({ covered: { beforeRecord: true, laterDoubted: false }, lines: [] });
    expect(view.findings.some((f: Loose) => f.verdict === "not taken")).toBe(true);
  });
});
