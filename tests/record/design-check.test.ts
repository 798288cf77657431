import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { DesignPageModel } from "#core/record/index.ts";
import { companySettings, demoJob, designPage, type PlannedJob, wholeJob } from "../helpers/design-page.ts";
import { blanked, imagesOf, type ReadPdf, readPdf } from "../helpers/pdf.ts";
import { type SamplePrinter, samplePrinter } from "../helpers/printer.ts";

let printer: SamplePrinter;
beforeAll(async () => {
  printer = await samplePrinter([]);
});
afterAll(() => printer.browser.close());

async function printed(model: DesignPageModel): Promise<{ readonly read: ReadPdf; readonly pdf: Uint8Array; readonly pages: number }> {
  const made = await printer.printDesign(model);
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  const { pdf, pages } = made.value;
  return { read: await readPdf(pdf), pdf, pages };
}

/** Every text that a reader must find on the page. */
const textsOf = ({ title, company, standing, questions, drawing, notes, numbers, cautions, words }: DesignPageModel): readonly string[] => [
  title.page,
  title.job,
  ...title.lines.flatMap(({ label, text }) => [label, text]),
  company.name,
  ...company.lines,
  standing,
  ...questions.flatMap((one) => [
    one.question,
    one.state,
    one.says,
    ...one.changes,
    one.missing,
    ...one.beside,
    ...one.figures.flatMap(({ title: name, value, most }) => [name, value, most]),
  ]),
  ...(drawing?.shapes ?? []).flatMap((one) => (one.shape === "words" ? [one.text] : [])),
  drawing?.scale ?? "",
  ...notes,
  ...numbers.flatMap(({ from, source, numbers: all }) => [from, source, ...all.flatMap(({ label, text }) => [label, text])]),
  ...cautions,
  words.numbers,
];

const points = { letter: [612, 792], a4: [595, 842] } as const;
/** Every pair of paper, language, units and job, in the six prints that this takes: what only three of them together could break is not looked for. */
const sheets = [
  { paper: "letter", language: "en", units: "inch", name: "whole", job: wholeJob },
  { paper: "a4", language: "es", units: "metric", name: "whole", job: wholeJob },
  { paper: "letter", language: "es", units: "inch", name: "demo", job: demoJob },
  { paper: "a4", language: "en", units: "metric", name: "demo", job: demoJob },
  { paper: "letter", language: "en", units: "metric", name: "bare", job: {} },
  { paper: "a4", language: "es", units: "inch", name: "bare", job: {} },
] as const;

describe("the printed design check", () => {
  it.each(sheets)("$name on $paper, in $language and $units: one page, every answer, tagged, our own fonts", async (sheet) => {
    const { paper, job, language, units } = sheet;
    const model = designPage({ ...(job as PlannedJob), language, units }, { ...companySettings, paper });
    const { read, pages } = await printed(model);
    expect(pages).toBe(1);
    expect(read.pages).toHaveLength(1);
    expect(read.sizes[0]?.map(Math.round)).toEqual(points[paper]);
    for (const text of textsOf(model)) expect(read.text).toContain(blanked(text));
    expect(read.fonts.length).toBeGreaterThan(1);
    for (const font of read.fonts) expect(font).toMatch(/^OpenSans/);
    expect([read.title, read.language]).toEqual([model.title.document, language]);
    expect(read.structure.get("H1")).toBe(1);
    expect(read.structure.get("H2")).toBeGreaterThanOrEqual(7);
    expect(read.figures.length).toBe(model.drawing === undefined ? 0 : 1);
    expect(read.attachments.size).toBe(0);
    expect(read.outline.map(({ title }) => title)).toEqual(expect.arrayContaining([model.words.cautions]));
  });

  it("says its figure in words for whoever cannot see it, and draws it without an image", async () => {
    const model = designPage(wholeJob);
    const { read, pdf } = await printed(model);
    expect(read.figures[0]).toContain("Pump and pipe");
    expect(await imagesOf(pdf)).toEqual([]);
  });

  it("a design with much to say is drawn smaller and stays one page; nothing is cut", async () => {
    const long = "a part whose name somebody wrote out in full, with maker's colour, year and where it lies in the yard";
    const cards = (wholeJob.kitCards ?? []).map((card) => ({ ...card, part: `${card.part}, ${long}`, source: long }));
    const model = designPage(
      { ...wholeJob, language: "es", title: long, address: long, kitCards: cards },
      { ...companySettings, lines: [long, long] },
    );
    const { read, pages } = await printed(model);
    expect(pages).toBe(1);
    for (const text of textsOf(model)) expect(read.text).toContain(blanked(text));
  });

  it("takes more than one page before it is too small to read", async () => {
    const cards = Array.from({ length: 40 }, (_, i) => ({
      id: `card-${i}`,
      part: `Part ${i}`,
      facts: {},
      source: "x ".repeat(200).trim(),
    }));
    const spread = (wholeJob.kitCards ?? []).map((card) => ({ ...card, source: "from a long paper ".repeat(120).trim() }));
    const model = designPage({ ...wholeJob, kitCards: [...spread, ...cards] });
    const { read, pages } = await printed(model);
    expect(pages).toBeGreaterThan(1);
    expect(read.pages).toHaveLength(pages);
    for (const { from } of model.numbers) expect(read.text).toContain(blanked(from));
  });

  it("dates the document by the design, not by the moment of printing", async () => {
    const { pdf } = await printed(designPage(wholeJob));
    const info = new TextDecoder("latin1").decode(pdf).match(/\/CreationDate ?\(D:(\d{14})/)?.[1];
    expect(info).toBe("20260601120600");
  });
});
