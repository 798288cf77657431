import { createHash } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { RecordModel } from "#core/record/index.ts";
import { blanked, imagesOf, type ReadPdf, readPdf, readWords } from "../helpers/pdf.ts";
import { renditionOf, type SamplePrinter, samplePrinter } from "../helpers/printer.ts";
import { hostile, sampleModel, samplePhotoCount, signs, spanishChange } from "../samples/record-model.ts";
import { type SamplePhoto, samplePhotos } from "../samples/record-photos.ts";

const sha = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const ledger = { name: "ledger.json", type: "application/json", text: '{"head":"9f2c ñ ⅜"}\n', relationship: "Data" } as const;
const seal = { name: "seal.jws", type: "application/jose", text: "e30.e30.e30", relationship: "Supplement" } as const;

/** Dates and the file's two ids, as written. */
const infoOf = (bytes: Uint8Array): readonly string[] =>
  [...new TextDecoder("latin1").decode(bytes).matchAll(/\/(?:CreationDate|ModDate) ?\([^)]*\)|\/ID ?\[[^\]]*\]/g)]
    .map(([found]) => found)
    .sort();

let photos: readonly SamplePhoto[];
let printer: SamplePrinter;
let model: RecordModel;
let pdf: Uint8Array;
let read: ReadPdf;
let pages: number;

beforeAll(async () => {
  photos = await samplePhotos(samplePhotoCount);
  printer = await samplePrinter(photos);
  model = sampleModel(photos);
  const printed = await printer.print(model, [ledger, seal]);
  if (!printed.ok) throw new Error(JSON.stringify(printed.refusal));
  ({ pdf, pages } = printed.value);
  expect(printed.value).toMatchObject({ sha256: sha(pdf), bytes: pdf.length, missing: [] });
  read = await readPdf(pdf);
});
afterAll(() => printer.browser.close());

/** Every text of the model that a reader must find on the pages; signs that the fonts lack are another test's. */
function textsOf({
  title,
  standing,
  numbers,
  exceptions,
  coverings,
  steps,
  accepted,
  leftToDo,
  due,
  visits,
  notes,
  others,
  corrections,
  design,
  papers,
  equipment,
  cautions,
  warranty,
  signature,
  proof,
  compared,
  budget,
  glueSessions,
  tried,
  plan,
  section,
  summary,
  upkeep,
}: RecordModel): string[] {
  const drawings = [plan?.drawing, section?.drawing].filter((view) => view !== undefined);
  const labelled = (texts: readonly { label: string; text: string }[]) => texts.flatMap(({ label, text }) => [label, text]);
  return [
    title.job,
    title.issued,
    ...labelled(title.lines),
    standing,
    ...labelled(summary.built),
    ...summary.buried.flatMap(({ sign, name, ties }) => [sign, name, ties]),
    summary.marks,
    ...(upkeep?.parts ?? []).flatMap(({ title: part, lines }) => [part, ...lines]),
    upkeep?.note ?? "",
    ...labelled(numbers),
    ...exceptions.flatMap((view) => [view.title, view.verdictWord, view.says]),
    ...coverings.flatMap((view) => [view.title, view.state, view.when, view.clearance, ...view.lines]),
    ...steps.flatMap((step) => [
      step.title,
      ...step.cautions,
      ...step.findings.flatMap((view) =>
        [view.title, view.verdictWord, view.says, view.value, view.doubt, view.aim, view.limit, view.source, view.tag].filter(
          (text) => text !== undefined,
        ),
      ),
      ...step.readings.flatMap((view) => [
        view.title,
        view.typed,
        view.how,
        view.when,
        String(view.number),
        view.setUp ?? "",
        view.corrected ?? "",
        view.aside ?? "",
      ]),
      ...step.pictures.flatMap((view) => [view.title, view.caption, view.when, view.place, view.lookedAt, view.photo.slice(0, 16)]),
      ...step.explains,
      ...step.notes,
    ]),
    ...accepted.flatMap((view) => [view.title, view.kind, view.says, view.by, view.when]),
    ...leftToDo.flatMap((view) => [view.text, view.by, view.state]),
    ...due.flatMap((view) => [view.title, view.state, ...view.lines]),
    ...visits.flatMap((view) => [view.begun, view.ended, view.people, view.says]),
    ...notes,
    ...others.flatMap((view) => [view.text, view.by, view.when, String(view.number ?? "")]),
    ...corrections.flatMap((view) => [view.title, view.was, view.became, view.when, String(view.number ?? "")]),
    ...drawings.flatMap(({ scale, shapes }) => [scale, ...shapes.flatMap((one) => (one.shape === "words" ? [one.text] : []))]),
    ...(plan?.tied ?? []).flatMap(({ sign, name, ties, place }) => [sign, name, ties, place]),
    ...(plan?.notes ?? []),
    ...(section?.notes ?? []),
    ...glueSessions.flatMap((view) => Object.values(view)),
    ...tried.flatMap((view) => Object.values(view)),
    ...compared.flatMap((view) => Object.values(view)),
    ...(budget?.lines ?? []).flatMap((view) => Object.values(view)),
    ...(budget?.notes ?? []),
    ...labelled(design),
    ...labelled(papers),
    ...equipment.flatMap(({ part, facts }) => [part, ...labelled(facts)]),
    ...cautions,
    ...warranty.terms.flatMap((term) => [term.part, term.lasts, term.starts, term.ends, term.conditions]),
    ...warranty.text,
    warranty.note,
    ...labelled(signature),
    proof.head,
    String(proof.entries),
    proof.sheet,
    ...proof.how,
    proof.withheld,
  ].filter((text) => text !== "" && !/[→✓中]/u.test(text));
}

const headings = (of: RecordModel): string[] => of.steps.map((step) => `${step.number} ${step.title}`);

describe("the record as a PDF", () => {
  it("is one, with text on every page", () => {
    expect(Buffer.from(pdf).toString("latin1", 0, 5)).toBe("%PDF-");
    expect(
      Buffer.from(pdf)
        .toString("latin1", pdf.length - 6)
        .trim(),
    ).toBe("%%EOF");
    expect(read.pages).toHaveLength(pages);
    for (const page of read.pages) expect(page.length).toBeGreaterThan(150);
  });

  it("holds every sentence, title, reading, verdict and figure of the model, word for word", () => {
    const wanted = textsOf(model);
    expect(wanted.length).toBeGreaterThan(300);
    expect(wanted.filter((text) => !read.text.includes(blanked(text)))).toEqual([]);
  });

  it("prints what was meant to do harm as it was typed", () => {
    for (const text of Object.values(hostile)) expect(read.text).toContain(blanked(text));
    expect(read.title).toBe(`As-buried record: ${model.title.job}, Version 2`);
    expect(read.structure.get("H1")).toBe(1);
  });

  it("prints every sign of the trade, all in the record's own fonts", () => {
    expect(read.text).toContain(signs);
    expect(read.fonts).toEqual(["OpenSans-Bold", "OpenSans-Regular", "OpenSans-SemiBold"]);
  });

  it("names a sign that the fonts lack instead of dropping it", () => {
    expect(read.text).toContain("Pump [U+2192] falls [U+2713] [U+4E2D] [U+1F600].");
  });

  it("holds every picture once, as the very JPEG that was handed in", async () => {
    const images = await imagesOf(pdf);
    expect(images.map(({ filter }) => filter)).toEqual(photos.map(() => "/DCTDecode"));
    expect(images.map(({ bytes }) => sha(bytes)).sort()).toEqual(photos.map(({ sha256 }) => sha256).sort());
    expect(read.painted.reduce((sum, count) => sum + count, 0)).toBe(photos.length);
    // two to four to a page where pictures follow each other
    expect(Math.max(...read.painted)).toBeGreaterThan(1);
    expect(Math.max(...read.painted)).toBeLessThanOrEqual(4);
    const drawings = [model.plan?.drawing, model.section?.drawing].flatMap((view) => (view ? [`${view.title} ${view.says}`] : []));
    expect(drawings).toHaveLength(2);
    expect([...read.figures].sort()).toEqual(
      [
        ...drawings,
        ...model.steps
          .flatMap(({ pictures }) => pictures)
          .filter(({ missing }) => missing === undefined)
          .map(({ alt }) => alt),
      ].sort(),
    );
  });

  it("never parts a picture from its caption", () => {
    const captions = read.pages.map((page) =>
      model.steps.flatMap(({ pictures }) => pictures).filter((view) => page.includes(`photo ${view.photo.slice(0, 16)}`)),
    );
    expect(captions.map((views) => views.filter(({ missing }) => missing === undefined).length)).toEqual(read.painted);
  });

  it("says in a box which photo is missing and why", () => {
    expect(read.text).toContain("Photo not here: not at the office yet");
  });

  it("numbers its pages and names the job on each", () => {
    for (const [at, page] of read.pages.entries()) {
      expect(page).toContain(`Page ${at + 1} of ${pages}`);
      expect(page).toContain("Kettle Hollow Water Gardens");
      expect(page).toContain("26-041");
    }
  });

  it("has an outline of its sections and steps, blanks and all", () => {
    expect(read.outline[0]).toEqual({ title: blanked(model.title.job), depth: 1 });
    expect(read.outline.filter(({ title }) => /^\d+ /.test(title))).toEqual(headings(model).map((title) => ({ title, depth: 3 })));
    expect(read.outline.filter(({ depth }) => depth === 2).map(({ title }) => title)).toEqual(
      [
        "standing",
        "contents",
        "exceptions",
        "coverings",
        "figures",
        "plan",
        "section",
        "steps",
        "glue-sessions",
        "tried",
        "accepted",
        "left-to-do",
        "visits",
        "free-notes",
        "others",
        "changed",
        "papers",
        "design",
        "compared",
        "budget",
        "equipment",
        "upkeep",
        "warranty",
        "cautions",
        "signature",
        "how-to-check",
      ].map((key) => model.words[key]),
    );
  });

  it("says in its contents on which page each part begins, and leads there", async () => {
    const at = read.pages.findIndex((page) => page.includes(blanked("Contents Read this first")));
    expect(at).toBe(1);
    const listed = read.outline
      .map(({ title, depth }, i) => ({ title, depth, page: read.begins[i] as number }))
      .filter(
        ({ title, depth }) => (depth === 2 && title !== model.words.standing && title !== model.words.contents) || /^\d+ /.test(title),
      );
    expect(listed.length).toBeGreaterThan(30);
    // where the heading stands is read from the pages themselves, after the contents
    for (const { title, page } of listed) {
      expect(read.pages[at], title).toContain(blanked(`${title} ${page}`));
      expect(read.pages[page - 1], title).toContain(blanked(title));
    }
    expect(read.links.filter(({ from }) => from === at + 1).map(({ to }) => to)).toEqual(listed.map(({ page }) => page));
  });

  it("is tagged, in its language, with tables that have headed rows and columns", () => {
    expect(read.language).toBe("en");
    for (const [kind, least] of [
      ["Table", 20],
      ["TH", 100],
      ["TD", 100],
      ["Figure", photos.length],
      ["Caption", photos.length],
    ] as const) {
      expect(read.structure.get(kind), kind).toBeGreaterThanOrEqual(least);
    }
  });

  it("carries its attachments byte for byte", () => {
    expect([...read.attachments.keys()].sort()).toEqual(["ledger.json", "seal.jws"]);
    for (const { name, text } of [ledger, seal]) expect(new TextDecoder().decode(read.attachments.get(name))).toBe(text);
  });

  it("is dated by the record, not by the printer", () => {
    const text = Buffer.from(pdf).toString("latin1");
    expect(new Date(model.title.issuedAt).toISOString()).toBe("2026-05-21T20:40:00.000Z");
    expect(text).toContain("(D:20260521204000Z)");
    expect(text).not.toContain(`D:${new Date().toISOString().slice(0, 10).replaceAll("-", "")}`);
  });

  /**
   * Not the bytes: twice two prints of one record were seen to differ on a machine under load, and the cause was not found.
   * No seal rests on them; everything that a reader is given must be the same.
   */
  it("prints the same record again, in this browser and in another", async () => {
    const again = await printer.print(model, [ledger, seal]);
    const other = await samplePrinter(photos);
    try {
      const elsewhere = await other.print(model, [ledger, seal]);
      expect(infoOf(pdf).length).toBeGreaterThan(2);
      for (const outcome of [again, elsewhere]) {
        if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
        expect(await readPdf(outcome.value.pdf)).toEqual(read);
        expect((await imagesOf(outcome.value.pdf)).map(({ bytes }) => sha(bytes)).sort()).toEqual(
          (await imagesOf(pdf)).map(({ bytes }) => sha(bytes)).sort(),
        );
        expect(infoOf(outcome.value.pdf)).toEqual(infoOf(pdf));
      }
    } finally {
      await other.browser.close();
    }
  });
});

describe("other records", () => {
  it("prints in Spanish on A4", async () => {
    const printed = await printer.print(sampleModel(photos, spanishChange));
    if (!printed.ok) throw new Error(JSON.stringify(printed.refusal));
    const spanish = await readWords(printed.value.pdf);
    expect(spanish.language).toBe("es");
    // ISO 216 A4, 210 by 297 mm, in points
    for (const [width, height] of spanish.sizes) {
      expect(width).toBeCloseTo(595.3, 0);
      expect(height).toBeCloseTo(841.9, 0);
    }
    expect(spanish.pages[0]).toContain(`Página 1 de ${printed.value.pages}`);
    expect(spanish.text).toContain("Falta la foto: not at the office yet");
    expect(read.sizes[0]).toEqual([612, 792]);
  });

  it("prints a box for a photo that the store lost, that is no JPEG, or that does not decode, and says so", async () => {
    const [lost, changed, broken] = photos as [SamplePhoto, SamplePhoto, SamplePhoto];
    const own = await samplePrinter(photos);
    try {
      own.store.objects.delete(renditionOf(lost.sha256));
      own.store.objects.set(renditionOf(changed.sha256), { bytes: new TextEncoder().encode("<svg/>"), type: "image/jpeg" });
      own.store.objects.set(renditionOf(broken.sha256), { bytes: new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 1, 2]), type: "image/jpeg" });
      const printed = await own.print(model);
      if (!printed.ok) throw new Error(JSON.stringify(printed.refusal));
      expect([...printed.value.missing].sort()).toEqual([lost, changed, broken].map(({ sha256 }) => sha256).sort());
      const text = await readWords(printed.value.pdf);
      expect(text.text.match(/Photo not here: its copy for print was not in the store/g)).toHaveLength(1);
      expect(text.text.match(/Photo not here: its file cannot be read as a picture/g)).toHaveLength(2);
      expect(await imagesOf(printed.value.pdf)).toHaveLength(photos.length - 3);
    } finally {
      await own.browser.close();
    }
  });

  it("prints a job that has nothing yet", async () => {
    const bare = sampleModel(photos, {
      steps: [],
      findings: [],
      exceptions: [],
      coverings: [],
      accepted: [],
      leftToDo: [],
      papers: [],
      equipment: [],
      due: [],
      visits: [],
      notes: [],
      others: [],
      corrections: [],
      design: [],
      cautions: [],
      signature: [],
      numbers: [],
    });
    const printed = await printer.print(bare);
    if (!printed.ok) throw new Error(JSON.stringify(printed.refusal));
    expect((await readWords(printed.value.pdf)).text).toContain(
      "Nothing was accepted as built, agreed beforehand, let through by telephone, reworked or designed anew.",
    );
  });
});
