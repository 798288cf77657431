import { createHash } from "node:crypto";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { clearances, findings as findingsOf, jobLedgerOf, jobState } from "#core/job/index.ts";
import type { Ledger } from "#core/ledger/index.ts";
import type { FindingView, RecordModel } from "#core/record/index.ts";
import { Client } from "#infra/demo/client.ts";
import { courtyardExpected } from "#infra/demo/expected.ts";
import { type DemoResult, runDemo } from "#infra/demo/index.ts";
import { imagesOf, type ReadPdf, readPdf } from "../helpers/pdf.ts";
import { verifyLedger } from "../helpers/verifier.ts";
import { keptOffEnglish } from "../unit/record/kept-off.ts";

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

const INCH = 25_400;

/** '13 ft 9 7/8 in' and '3/16 in', read without any code of the program; micrometres. */
const micrometresIn = (text: string): readonly number[] =>
  [...text.matchAll(/(?:(\d+) ft )?(?:(\d+)(?: (\d+)\/(\d+))?|(\d+)\/(\d+)) in/g)].map(
    ([, feet = 0, whole = 0, top = 0, bottom = 1, lone = 0, under = 1]) =>
      INCH * (12 * Number(feet) + Number(whole) + Number(top) / Number(bottom) + Number(lone) / Number(under)),
  );
const signedMicrometres = (text = ""): number => (micrometresIn(text)[0] ?? Number.NaN) * (/lower|^-/.test(text.trim()) ? -1 : 1);

const model = (): RecordModel => demo.record as RecordModel;
const printed = (): readonly FindingView[] => demo.findings as readonly FindingView[];
const attached = (): string => new TextDecoder().decode(pdf.attachments.get("ledger.json") ?? new Uint8Array());

describe("the record of the demo's first job, from the PDF alone", () => {
  it("prints every step, every reading beside its title and every verdict's word beside its sentence", () => {
    const text = flat(pdf.text);
    expect(printed().length).toBeGreaterThan(100);
    for (const step of model().steps) {
      expect(text).toContain(flat(`${step.number}${step.title}`));
      for (const reading of step.readings) expect(text, reading.title).toContain(flat(reading.title + reading.typed));
    }
    // one row, list entry or caption each: the word that goes with a sentence stands right before it
    for (const finding of printed()) expect(text, finding.check).toContain(flat(finding.verdictWord + finding.says));
  });

  it("prints section, ties, water budget, glue sessions, start-up and the design beside the as-measured, word for word", () => {
    const text = flat(pdf.text);
    const { section, plan, budget, glueSessions, tried, compared } = model();
    const lettering = [section?.drawing, plan?.drawing].flatMap((view) =>
      (view?.shapes ?? []).flatMap((one) => (one.shape === "words" ? [one.text] : [])),
    );
    // marks, north, every kind of point, and the heights of the section: nothing of the demo is left undrawn
    expect(lettering).toEqual(expect.arrayContaining(["A", "B", "C", "N", "1", "6", "15 ft 10 1/2 in", "least depth of cover"]));
    expect([plan?.notes, section?.notes]).toEqual([[], []]);
    const rows = [...(plan?.tied ?? []), ...(budget?.lines ?? []), ...glueSessions, ...tried, ...compared];
    expect([plan?.tied, budget?.lines, glueSessions, tried, compared].filter((list) => (list ?? []).length === 0)).toEqual([]);
    const wanted = [
      ...lettering,
      ...rows.flatMap((row) => Object.values(row)),
      ...(section?.notes ?? []),
      ...(plan?.notes ?? []),
      ...(budget?.notes ?? []),
    ];
    expect(wanted.filter((said) => !text.includes(flat(said)))).toEqual([]);
  });

  it("holds every picture, byte for byte the rendition that media made", async () => {
    const wanted = model().steps.flatMap((step) =>
      step.pictures.filter((picture) => picture.rendition !== undefined).map((picture) => picture.photo),
    );
    const taken = (demo.ledger as Ledger).entries.filter(({ envelope }) => envelope.kind === "picture-taken");
    expect(wanted.length).toBe(taken.length);
    expect(wanted.length).toBeGreaterThan(20);
    const renditions = await Promise.all([...new Set(wanted)].map((photo) => office.bytes(`/api/photos/${photo}/print`)));
    const digest = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
    const inside = new Set((await imagesOf(demo.pdf)).map(({ bytes }) => digest(bytes)));
    expect(renditions.map(digest).filter((sha) => !inside.has(sha))).toEqual([]);
    expect(pdf.painted.reduce((sum, count) => sum + count, 0)).toBe(wanted.length);
    expect(Math.max(...pdf.painted)).toBeLessThanOrEqual(4);
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

  it("prints the values, doubts and limits that its attachment gives when computed again", () => {
    const again = findingsOf(jobState(jobLedgerOf(JSON.parse(attached()) as Ledger)));
    const text = flat(pdf.text);
    const measured = again.filter((f) => f.kind === "length" && f.value !== undefined);
    expect(measured.length).toBeGreaterThan(12);
    for (const found of measured) {
      const view = printed().find((f) => f.step === found.step && f.check === found.check && f.tag === found.tag);
      const figures = [view?.value, view?.doubt, view?.aim, view?.limit].filter((figure) => figure !== undefined);
      expect(text, found.check).toContain(flat(figures.join("")));
      // how near a place is found again is a doubt itself, and has none beside it
      const isDoubt = found.check.endsWith("-found");
      if (!isDoubt) expect(Math.abs(signedMicrometres(view?.value) - (found.value ?? 0)), found.check).toBeLessThanOrEqual(INCH / 32);
      expect(view?.doubt === undefined, found.check).toBe(isDoubt);
      // rounded up to a mark, never down
      const [shown, computed] = isDoubt ? [view?.value, found.value] : [view?.doubt?.replace("±", ""), found.doubt];
      const rounding = signedMicrometres(shown) - (computed ?? 0);
      expect(rounding, found.check).toBeGreaterThanOrEqual(-1);
      expect(rounding, found.check).toBeLessThanOrEqual(INCH / 16);
      const bounds = [found.lower, found.upper].filter((bound) => bound !== undefined);
      if (bounds.length > 0 && !view?.limit?.startsWith("±"))
        expect(micrometresIn(view?.limit ?? ""), found.check).toEqual(bounds.map((bound) => expect.closeTo(bound, -4)));
    }
  });

  it("prints the clearances that its attachment gives when computed again", () => {
    const state = jobState(jobLedgerOf(JSON.parse(attached()) as Ledger));
    const again = clearances(state, findingsOf(state), model().title.issuedAt);
    const text = flat(pdf.text);
    const words = {
      clear: "the phone showed clear",
      "on word": "the phone showed clear, on the word of ",
      "not yet": "covered on a not yet",
    };
    expect(again.map(({ covered }) => covered?.shown)).toEqual(expect.arrayContaining(["clear", "on word", "not yet"]));
    for (const { covering, covered, state: now } of again) {
      const known = state.sheet?.coverings.find(({ id }) => id === covering);
      const { title = "", state: said = "", clearance = "", when = "" } = model().coverings.find((c) => c.title === known?.done.en) ?? {};
      expect(text, covering).toContain(flat(title + said + when + clearance));
      expect(said.startsWith(words[covered?.shown ?? "not yet"]), covering).toBe(true);
      const act = `clear to ${known?.title.en}`;
      const reads = { clear: act, "on word": `${act}, on office, R. S.'s word`, "not yet": "not yet" };
      expect(clearance, covering).toBe(`by all that is known now: ${reads[now]}`);
    }
  });

  it("uses no word that is kept off the record", () => {
    // what an authority does keeps its name, and RFC 8785 its own
    const own = pdf.text.replace("Inspection of wiring or trench due", "").replace("canonical form of RFC 8785", "");
    expect(keptOffEnglish.flatMap((word) => own.match(word)?.[0] ?? [])).toEqual([]);
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
    const styled = (text: string): string => text.replace("Ravi Santangelo", "office, R. S.");
    expect(customer.coverings.map((c) => [c.title, c.state, c.clearance])).toEqual(
      company.coverings.map((c) => [c.title, styled(c.state), styled(c.clearance)]),
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
