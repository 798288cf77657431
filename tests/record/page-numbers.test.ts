import { afterAll, beforeAll, expect, it } from "vitest";
import { ok } from "#core/outcome/index.ts";
import type { RecordModel } from "#core/record/index.ts";
import { draw, drawAgain } from "#functions/print/draw.ts";
import { type Fonts, readFonts } from "#functions/print/fonts.ts";
import { pagesOfParts } from "#functions/print/outline.ts";
import { opened, openedAnew, saved } from "#functions/print/own-pdf.ts";
import { writePageNumbers } from "#functions/print/page-numbers.ts";
import { recordPage } from "#templates/record/index.ts";
import { placedWords, readWords } from "../helpers/pdf.ts";
import { type SamplePrinter, samplePrinter } from "../helpers/printer.ts";
import { sampleModel, samplePhotoCount } from "../samples/record-model.ts";
import { type SamplePhoto, samplePhotos } from "../samples/record-photos.ts";

let printer: SamplePrinter;
let fonts: Fonts;
let photos: readonly SamplePhoto[];

beforeAll(async () => {
  photos = await samplePhotos(samplePhotoCount);
  [printer, fonts] = await Promise.all([samplePrinter([]), readFonts()]);
});
afterAll(() => printer.browser.close());

type Title = RecordModel["title"];

const pageOf = (model: RecordModel, pages?: Readonly<Record<string, number>>): string =>
  recordPage(model, { fonts: fonts.css, photo: () => ({ missing: "no picture" }), ...(pages && { pages }) });

/** A page as it is printed once and the numbers written into it; and as it is printed again with them. */
async function bothWays(change = (title: Title): Title => title) {
  const sample = sampleModel(photos);
  const model = { ...sample, title: change(sample.title) };
  const drawn = await printer.browser.withPage(async (one) => {
    const first = await draw(one, pageOf(model), fonts.files);
    if (!first.ok) return first;
    const { pdf, parts, listed } = first.value;
    const document = await openedAnew(pdf);
    const pages = pagesOfParts(document, parts);
    const second = await drawAgain(one, pageOf(model, pages), fonts.files);
    return second.ok ? ok({ document, numbers: listed.flatMap((part) => pages[part] ?? []), again: second.value.pdf }) : second;
  });
  if (!drawn.ok) throw new Error(JSON.stringify(drawn.refusal));
  return drawn.value;
}

it("says the same words, each at the same place, as a second print with the numbers", async () => {
  const { document, numbers, again } = await bothWays();
  expect(numbers.length).toBeGreaterThan(30);
  expect(numbers.some((number) => number < 10) && numbers.some((number) => number >= 10)).toBe(true);
  expect(writePageNumbers(document, numbers)).toBe(true);
  const written = await saved(document);
  expect((await readWords(written)).pages).toEqual((await readWords(again)).pages);
  expect(await placedWords(written, 2)).toEqual(await placedWords(again, 2));
}, 60_000);

it("writes nothing where a text on a page before could be a room as well", async () => {
  const { document, numbers } = await bothWays((title) => ({ ...title, ownNumber: "000" }));
  const before = await saved(document);
  expect(writePageNumbers(document, numbers)).toBe(false);
  expect(await saved(document)).toEqual(before);
}, 60_000);

it("writes nothing where the contents go on to a page with a single room and a text before them could be one as well", async () => {
  const { document, numbers } = await bothWays((title) => ({ ...title, ownNumber: "000" }));
  // the page of the contents without its last room, and a page behind it with one
  const before = await saved(document);
  expect(writePageNumbers(document, [...numbers, 7])).toBe(true);
  expect(writePageNumbers(await opened(before), numbers)).toBe(false);
  const two = await opened(before);
  const [copied] = await two.copyPages(two, [0]);
  two.insertPage(2, copied);
  expect(writePageNumbers(two, [...numbers, 7])).toBe(false);
}, 60_000);

it("writes nothing where numbers are too few, too many, too long for their rooms, or none at all", async () => {
  const { document, numbers } = await bothWays();
  const before = await saved(document);
  for (const wrong of [
    numbers.slice(1),
    [...numbers, 3],
    numbers.map((number, at) => (at === 4 ? 1000 : number)),
    numbers.map(() => Number.NaN),
    numbers.map(() => -1),
  ])
    expect(writePageNumbers(document, wrong)).toBe(false);
  expect(await saved(document)).toEqual(before);
}, 60_000);
