import { createHash } from "node:crypto";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { findings as findingsOf, jobLedgerOf, jobState } from "#core/job/index.ts";
import type { Ledger } from "#core/ledger/index.ts";
import type { FindingView, RecordModel } from "#core/record/index.ts";
import { Client } from "#infra/demo/client.ts";
import { courtyardExpected } from "#infra/demo/expected.ts";
import { type DemoResult, runDemo } from "#infra/demo/index.ts";
import { imagesOf, type ReadPdf, readPdf } from "../helpers/pdf.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let demo: DemoResult;
let office: Client;
let pdf: ReadPdf;

/** Line breaks of the page are not part of a sentence. */
const flat = (text: string): string => text.replace(/\s+/g, "");

beforeAll(async () => {
  demo = await runDemo({ edge: inject("edge"), operatorKey: inject("operatorKey"), log: () => {} });
  office = await new Client(inject("edge")).signIn(demo.links.office);
  pdf = await readPdf(demo.pdf);
}, 240_000);

const model = (): RecordModel => demo.record as RecordModel;
const printed = (): readonly FindingView[] => demo.findings as readonly FindingView[];
const attached = (): string => new TextDecoder().decode(pdf.attachments.get("ledger.json") ?? new Uint8Array());

describe("the record of the demo's first job, from the PDF alone", () => {
  it("prints every step, every reading and every verdict with its sentence", () => {
    const text = flat(pdf.text);
    expect(printed().length).toBeGreaterThan(100);
    for (const step of model().steps) {
      expect(text).toContain(flat(step.title));
      for (const reading of step.readings) expect(text, reading.title).toContain(flat(reading.typed));
    }
    for (const finding of printed()) {
      expect(text, finding.check).toContain(flat(finding.says));
      expect(text, finding.check).toContain(flat(finding.verdictWord));
    }
  });

  it("holds every picture, byte for byte the rendition that media made", async () => {
    const wanted = model().steps.flatMap((step) =>
      step.pictures.filter((picture) => picture.rendition !== undefined).map((picture) => picture.photo),
    );
    expect(wanted.length).toBe(25);
    const renditions = await Promise.all([...new Set(wanted)].map((photo) => office.bytes(`/api/photos/${photo}/print`)));
    const digest = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
    const inside = new Set((await imagesOf(demo.pdf)).map(({ bytes }) => digest(bytes)));
    expect(renditions.map(digest).filter((sha) => !inside.has(sha))).toEqual([]);
    expect(pdf.painted.reduce((sum, count) => sum + count, 0)).toBe(wanted.length);
  });

  it("carries its ledger, which a verifier that knows nothing of this program accepts", () => {
    const verified = verifyLedger(attached());
    expect(verified.faults).toEqual([]);
    expect(JSON.parse(attached())).toEqual(demo.ledger);
  });

  it("has no printed verdict but what its attachment gives when computed again", () => {
    const again = findingsOf(jobState(jobLedgerOf(JSON.parse(attached()) as Ledger)));
    const key = (f: { step: string; check: string; tag?: string }): string => `${f.step} ${f.check} ${f.tag ?? ""}`;
    expect(again.map((f) => [key(f), f.verdict])).toEqual(printed().map((f) => [key(f), f.verdict]));
  });

  it("comes to the verdicts that were worked out by hand", () => {
    const again = findingsOf(jobState(jobLedgerOf(JSON.parse(attached()) as Ledger)));
    expect(courtyardExpected.length).toBeGreaterThan(15);
    for (const expected of courtyardExpected) {
      const finding = again.find((f) => f.check === expected.check && f.tag === expected.tag);
      expect(finding?.verdict, expected.arithmetic).toBe(expected.verdict);
      // the clocks of phone and edge are some milliseconds apart in every run
      const near = finding?.kind === "duration" ? 1_000 : 1;
      if (expected.value !== undefined)
        expect(Math.abs((finding?.value ?? 0) - expected.value), expected.arithmetic).toBeLessThanOrEqual(near);
      if (expected.doubt !== undefined)
        expect(Math.abs((finding?.doubt ?? 0) - expected.doubt), expected.arithmetic).toBeLessThanOrEqual(2 * near);
    }
  });

  it("shows every kind of verdict, one concession, one rework and one covering done on a not yet", () => {
    expect(new Set(printed().map((f) => f.verdict))).toEqual(
      new Set(["within", "outside", "too close to call", "not taken", "could not be taken", "does not apply"]),
    );
    const kinds = (demo.ledger as Ledger).entries.map(({ envelope }) => envelope.kind);
    expect(kinds.filter((kind) => kind === "concession")).toHaveLength(1);
    expect(kinds.filter((kind) => kind === "reworked")).toHaveLength(1);
    expect(model().coverings.filter((covering) => covering.tone === "outside")).toHaveLength(1);
  });

  it("says when each picture was made and received, two days apart and in the site's zone", () => {
    const picture = model().steps.flatMap((step) => step.pictures)[0];
    expect(picture?.when).toMatch(/^made 12 May 2026, .* CDT, received \d+ \w+ 20\d\d, /);
  });
});

describe("the customer's edition", () => {
  it("withholds names, contacts and positions and never drops an exception", async () => {
    const [job] = demo.jobs;
    const issued = await office.send<{ record: string }>("POST", `/api/jobs/${job}/records`, { edition: "company" });
    const company = await office.get<RecordModel>(`/api/records/${issued.record}/model`);
    const customer = model();
    expect(customer.edition).toBe("customer");
    expect(customer.exceptions.length).toBeGreaterThan(4);
    expect(customer.exceptions.map((e) => [e.title, e.verdictWord])).toEqual(company.exceptions.map((e) => [e.title, e.verdictWord]));
    expect(customer.coverings.map((c) => [c.title, c.state, c.clearance])).toEqual(
      company.coverings.map((c) => [c.title, c.state, c.clearance]),
    );
    expect(customer.accepted.map((d) => [d.title, d.kind])).toEqual(company.accepted.map((d) => [d.title, d.kind]));
    const bodies = (demo.ledger as Ledger).entries.map(({ body }) => body);
    for (const part of ["who", "where"] as const) {
      expect(bodies.filter((body) => body[part] !== undefined).length).toBeGreaterThan(0);
      expect(bodies.filter((body) => body[part] !== undefined && !("withheld" in body[part]))).toEqual([]);
    }
    expect(attached()).not.toContain("555-0111");
    expect(pdf.text).not.toContain("Santangelo");
    const companyPdf = await readPdf(await office.bytes(`/api/records/${issued.record}/pdf`));
    expect(companyPdf.text).toContain("Santangelo");
    expect(verifyLedger(new TextDecoder().decode(companyPdf.attachments.get("ledger.json"))).withheld).toEqual([]);
  }, 60_000);
});

describe("a job with missing evidence", () => {
  it("prints too, and says plainly what is missing", async () => {
    const [, second] = demo.jobs;
    const issued = await office.send<{ record: string }>("POST", `/api/jobs/${second}/records`, { edition: "customer" });
    const half = await office.get<RecordModel>(`/api/records/${issued.record}/model`);
    const text = flat((await readPdf(await office.bytes(`/api/records/${issued.record}/pdf`))).text);
    const missing = half.findings.filter((f) => f.verdict === "not taken");
    expect(missing.length).toBeGreaterThan(20);
    for (const finding of missing) expect(text).toContain(flat(finding.says));
    expect(half.coverings.filter((c) => c.tone === "within")).toHaveLength(1);
    expect(half.coverings.filter((c) => c.tone === "missing").length).toBeGreaterThan(0);
    expect(text).toContain(flat(half.standing));
  }, 60_000);
});
