import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { blanked, imagesOf, readPdf } from "../helpers/pdf.ts";
import { type SamplePrinter, samplePrinter } from "../helpers/printer.ts";
import { sampleReport } from "../helpers/report.ts";

let printer: SamplePrinter;
beforeAll(async () => {
  printer = await samplePrinter([]);
});
afterAll(() => printer.browser.close());

const points = { letter: [612, 792], a4: [595, 842] } as const;

describe("the company owner's printed report", () => {
  it.each([
    ["en", "letter"],
    ["es", "a4"],
  ] as const)("in %s on %s: every text of its model, tagged, our own fonts, pictures as lines", async (language, paper) => {
    const model = sampleReport(language, paper);
    const made = await printer.printReport(model);
    if (!made.ok) throw new Error(JSON.stringify(made.refusal));
    if (process.env.ASBURIED_KEEP)
      await (await import("node:fs/promises")).writeFile(`${process.env.ASBURIED_KEEP}/report-${language}.pdf`, made.value.pdf);
    const read = await readPdf(made.value.pdf);
    expect(read.sizes.map((size) => size.map(Math.round))).toEqual(read.pages.map(() => points[paper]));
    const texts = model.answers.flatMap(({ title, decides, tooFew, says, signals, tables }) => [
      title,
      decides,
      tooFew,
      ...says,
      ...signals,
      ...tables.flatMap((table) => [table.title, ...table.rows.flatMap(({ cells, note }) => [...cells, note])]),
    ]);
    for (const text of [model.title.page, model.title.month, ...model.notes, ...texts]) expect(read.text).toContain(blanked(text));
    expect(read.fonts.length).toBeGreaterThan(1);
    for (const font of read.fonts) expect(font).toMatch(/^OpenSans/);
    expect([read.title, read.language]).toEqual([model.title.document, language]);
    expect(read.structure.get("H1")).toBe(1);
    expect(read.structure.get("H2")).toBe(1 + model.answers.length);
    expect(read.structure.get("Table")).toBe(1);
    // a picture is told to whoever cannot see it by its name
    for (const { pictures } of model.answers) for (const { title } of pictures) expect(read.figures.join(" | ")).toContain(title);
    expect(await imagesOf(made.value.pdf)).toEqual([]);
  });
});
