import { execFile } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { PDFDocument } from "@cantoo/pdf-lib";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { clearances, findings as findingsOf, jobLedgerOf, jobState, photoComparisons } from "#core/job/index.ts";
import type { Ledger } from "#core/ledger/index.ts";
import { checkRecord, readKeyList } from "#core/proof/index.ts";
import type { FindingView, RecordModel } from "#core/record/index.ts";
import { Client } from "#infra/demo/client.ts";
import { courtyardExpected } from "#infra/demo/expected.ts";
import type { DemoResult } from "#infra/demo/index.ts";
import { meansWith } from "#infra/verify/means.ts";
import { readPdf as readRecord } from "#infra/verify/read-pdf.ts";
import { theDemo } from "../helpers/demo.ts";
import { withFigureEdited } from "../helpers/edited-pdf.ts";
import { imagesOf, type ReadPdf, readPdf, readWords } from "../helpers/pdf.ts";
import { verifyLedger } from "../helpers/verifier.ts";
import { keptOffEnglish } from "../unit/record/kept-off.ts";

let demo: DemoResult;
let office: Client;
let pdf: ReadPdf;

/** Line breaks of the page are not part of a sentence. */
const flat = (text: string): string => text.replace(/\s+/g, "");

beforeAll(async () => {
  demo = await theDemo();
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

/** Of a photo that media read, as its entry says it. */
interface ReadOf {
  readonly photo: string;
  readonly facts: { readonly cards?: readonly { readonly says: { readonly of: string; readonly step?: string } }[] };
}

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

  it("says in the water budget and among how to run it for how long its water lasts, and the same", () => {
    const days = model().budget?.lines.find(({ title }) => title === "Time without make-up water")?.value ?? "";
    expect(days).toMatch(/\d+ d .*±/);
    expect(
      model()
        .upkeep?.parts.flatMap(({ lines }) => lines)
        .filter((line) => line.includes(days)),
    ).toHaveLength(1);
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
    // and the company's mark, in the title block of the first page
    expect(pdf.painted[0]).toBe(1);
    expect(pdf.painted.reduce((sum, count) => sum + count, 0)).toBe(wanted.length + 1);
    expect(Math.max(...pdf.painted)).toBeLessThanOrEqual(4);
  });

  it("confirms three readings by photos that media filed by their card, each with its line drawn over it", () => {
    const ledger = JSON.parse(attached()) as Ledger;
    const compared = photoComparisons(jobState(jobLedgerOf(ledger)), "all");
    expect(compared.map(({ item, says }) => [item, says])).toEqual([
      ["mark-to-socket", "agree"],
      ["cover-shallowest", "agree"],
      ["patch-beyond-cut", "agree"],
    ]);
    // what media read of the same photos by itself: one card of this job, for the step that each was taken in
    const read = new Map(
      ledger.entries.flatMap(({ envelope, body: { what } }) => {
        const { photo = "", facts = {} } =
          envelope.kind === "picture-read" && what && "content" in what ? (what.content as Partial<ReadOf>) : {};
        return [[photo, new Set(facts.cards?.map(({ says }) => `${says.of} ${says.step}`))] as const];
      }),
    );
    expect(compared.map(({ photo }) => [...(read.get(photo) ?? [])])).toEqual(
      ["pipe-glued", "trench-open", "liner-laid"].map((step) => [`this job ${step}`]),
    );
    const text = flat(pdf.text);
    const pictures = model().steps.flatMap((step) => step.pictures.filter(({ measured }) => measured !== undefined));
    expect(pictures.map(({ photo, measured }) => [photo, measured?.lines.length])).toEqual(compared.map(({ photo }) => [photo, 1]));
    const besides = model().steps.flatMap((step) =>
      step.readings.flatMap(({ typed, inPhoto }) => (inPhoto ? [[typed, inPhoto] as const] : [])),
    );
    expect(besides.map(([typed]) => typed)).toEqual(["2 1/16 in", "11 1/2 in", "13/16 in"]);
    for (const [typed, says] of besides) expect(says).toMatch(new RegExp(`^Tape: ${typed} ± .* They agree\\.$`));
    const said = pictures.flatMap(({ measured }) => [...(measured?.says ?? []), ...(measured?.lines.map((line) => line.text) ?? [])]);
    expect([...said, ...besides.map(([, says]) => says)].filter((words) => !text.includes(flat(words)))).toEqual([]);
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
    const ledger = JSON.parse(attached()) as Ledger;
    const again = findingsOf(jobState(jobLedgerOf(ledger)));
    expect(courtyardExpected.length).toBeGreaterThan(15);
    // Each phone's clock is corrected by a contact of its own: two phones are as far off as the ways of their contacts differed in
    // this run, in milliseconds, and no further. A way is a request's, never minutes.
    const ways = ledger.entries.map(({ envelope: { sent, received } }) => received - sent);
    const apart = Math.max(...ways) - Math.min(...ways);
    expect(apart).toBeLessThan(60_000);
    for (const expected of courtyardExpected) {
      const finding = again.find((f) => f.check === expected.check && f.tag === expected.tag);
      expect(finding?.verdict, expected.arithmetic).toBe(expected.verdict);
      const near = finding?.kind === "duration" ? 1 + apart : 1;
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

describe("the seal", () => {
  const list = () => {
    const keys = readKeyList(demo.keys);
    if (!keys.ok) throw new Error(keys.refusal.code);
    return keys.value;
  };
  const checked = async (bytes: Uint8Array) => {
    const means = meansWith([list()]);
    const read = await readRecord(Uint8Array.from(bytes), means);
    if (!read.ok) throw new Error(read.refusal.code);
    return checkRecord(read.value, means);
  };

  it("holds: unchanged, by the company, every finding worked out again under the rules that are kept", async () => {
    const check = await checked(demo.pdf);
    expect(check).toMatchObject({ standing: "unchanged", faults: [], company: { name: "Ottermere Gardens (demonstration)" } });
    if (check.judged?.is !== "judged") throw new Error("not judged");
    const { same, oneUnit, withheld } = check.judged.again;
    expect(same + oneUnit.length).toBe(printed().length);
    expect(withheld).toEqual([]);
    expect(check.withheld.length).toBeGreaterThan(20);
    const photos = Object.values(check.seal?.photos ?? {});
    expect(photos.filter((print) => print !== null).length).toBeGreaterThan(20);
    // what stands in the job's own ledger is the same seal's
    const { entries } = await office.get<Ledger>(`/api/jobs/${demo.jobs[0]}/ledger`);
    const told = entries.filter(({ envelope }) => envelope.kind === "record-issued").map(({ body }) => body.what);
    const seal = createHash("sha256").update(pdf.attachments.get("seal.jws") ?? new Uint8Array());
    expect(told).toContainEqual(
      expect.objectContaining({ content: expect.objectContaining({ seal: seal.digest("hex"), key: check.key }) }),
    );
  }, 60_000);

  it("npm run verify says so, in words and by how it ends", async () => {
    const folder = await mkdtemp(join(tmpdir(), "asburied-verify-"));
    const file = (name: string): string => join(folder, name);
    const verify = async (...args: string[]): Promise<readonly [number, string]> => {
      const script = fileURLToPath(new URL("../../infra/verify/main.ts", import.meta.url));
      const ran = await promisify(execFile)(process.execPath, [script, ...args]).catch(
        (thrown: { code: number; stdout: string; stderr: string }) => thrown,
      );
      return ["code" in ran ? ran.code : 0, ran.stdout + ran.stderr];
    };
    try {
      await writeFile(file("record.pdf"), demo.pdf);
      await writeFile(file("keys.json"), JSON.stringify(demo.keys));
      await writeFile(file("design-check.pdf"), demo.designCheck);
      const [[held, words], [unsealed, why], [unread, sentence]] = await Promise.all([
        verify(file("record.pdf"), "--keys", file("keys.json")),
        verify(file("design-check.pdf"), "--language", "es"),
        verify(file("keys.json")),
      ]);
      expect([held, words.split("\n").slice(4, 6)]).toEqual([
        0,
        [
          expect.stringMatching(/^= Unchanged since it was sealed with key [\w-]{43}$/),
          "  By Ottermere Gardens (demonstration): the key is in its list of keys.",
        ],
      ]);
      expect([unsealed, why.split("\n")[0]]).toEqual([1, "≠ Sin sello"]);
      expect([unread, sentence]).toEqual([2, expect.stringContaining("cannot be read as a PDF")]);
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  }, 60_000);

  it("shows which figure of a page was edited", async () => {
    // one that stands once among the readings and is long enough to be found on its page
    const typed = model()
      .steps.flatMap(({ readings }) => readings)
      .find((reading) => /^\d+ \d+\/\d+ in$/.test(reading.typed))?.typed as string;
    const edited = await withFigureEdited(demo.pdf, typed);
    const check = await checked(edited.pdf);
    expect(check.standing).toBe("changed");
    expect(check.faults.map(({ code, figures }) => [code, figures.page])).toEqual([["seal-page-words", edited.page]]);
    const { was, now } = check.faults[0]?.figures ?? {};
    expect(was).toContain(typed);
    expect(now).toContain(typed.replace(/\d/, (digit) => String((Number(digit) + 1) % 10)));
    // every attached byte is as it was sealed, and so every finding is
    expect(check.judged).toMatchObject({ is: "judged", again: { other: [] } });
  }, 60_000);

  it("names the entry whose reading was changed in the attached ledger", async () => {
    const entries = (demo.ledger as Ledger).entries;
    const place = entries.findIndex(({ envelope }) => envelope.kind === "reading-taken");
    const forged = {
      ...demo.ledger,
      entries: entries.map((entry, at) => {
        const { what } = entry.body;
        if (at !== place || what === undefined || "withheld" in what) return entry;
        return { ...entry, body: { ...entry.body, what: { ...what, content: { ...(what.content as object), typed: "9 1/8" } } } };
      }),
    };
    const document = await PDFDocument.load(demo.pdf, { updateMetadata: false });
    document.detach("ledger.json");
    await document.attach(new TextEncoder().encode(JSON.stringify(forged)), "ledger.json", { mimeType: "application/json" });
    const check = await checked(await document.save({ useObjectStreams: false }));
    const faults = check.faults.filter(({ place: at }) => at.startsWith("entries/"));
    expect(faults.map(({ code, place: at }) => [code, at])).toEqual([["ledger-part-digest", `entries/${place}/body/what`]]);
    expect(check.faults.map(({ code }) => code)).toContain("seal-file-changed");
  }, 60_000);
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
    const companyPdf = await readWords(await office.bytes(`/api/records/${issued.record}/pdf`));
    expect(companyPdf.text).toContain("Santangelo");
    expect(verifyLedger(new TextDecoder().decode(companyPdf.attachments.get("ledger.json"))).withheld).toEqual([]);
  }, 60_000);
});

describe("the record released to its receiver", () => {
  it("is a page without sign-in from the same view model, with every sentence and every picture of the record", async () => {
    const { link } = await office.send<{ link: string }>("POST", `/api/records/${demo.recordId}/releases`, { to: "the customer" });
    const ask = (path: string): Promise<Response> => fetch(new URL(path, inject("edge")));
    const page = await (await ask(link)).text();
    const words = flat(page.replace(/<style>[\s\S]*?<\/style>/g, "").replace(/<[^>]+>/g, ""));
    const shown = (text: string): string => flat(text).replaceAll("&", "&amp;").replaceAll("'", "&#39;").replaceAll('"', "&quot;");
    for (const { says } of [...printed(), ...model().exceptions]) expect(words).toContain(shown(says));
    const pictures = model().steps.flatMap((step) => step.pictures.filter(({ rendition }) => rendition !== undefined));
    expect(pictures.filter(({ photo }) => !page.includes(`src="${link}/pictures/${photo}"`))).toEqual([]);
    const [first] = pictures;
    const got = new Uint8Array(await (await ask(`${link}/pictures/${first?.photo}`)).arrayBuffer());
    expect(Buffer.compare(got, await office.bytes(`/api/photos/${first?.photo}/print`))).toBe(0);
  }, 60_000);
});

describe("a job with missing evidence", () => {
  it("prints too, and says plainly what is missing", async () => {
    const [, second] = demo.jobs;
    const issued = await office.send<{ record: string }>("POST", `/api/jobs/${second}/records`, { edition: "customer" });
    const half = await office.get<RecordModel>(`/api/records/${issued.record}/model`);
    const text = flat((await readWords(await office.bytes(`/api/records/${issued.record}/pdf`))).text);
    const missing = half.findings.filter((f) => f.verdict === "not taken");
    expect(missing.length).toBeGreaterThan(20);
    for (const finding of missing) expect(text).toContain(flat(finding.says));
    expect(half.coverings.filter((c) => c.tone === "within")).toHaveLength(1);
    expect(half.coverings.filter((c) => c.tone === "missing").length).toBeGreaterThan(0);
    expect(text).toContain(flat(half.standing));
  }, 60_000);
});
