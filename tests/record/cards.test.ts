import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import type { CardsPageModel } from "#core/record/index.ts";
import { type CardsAsked, cardsPage, threeSteps } from "../helpers/cards-page.ts";
import { blanked, type ReadPdf, readPdf } from "../helpers/pdf.ts";
import { type FilledBox, filledBoxes, wordsPlaced } from "../helpers/pdf-paths.ts";
import { type SamplePrinter, samplePrinter } from "../helpers/printer.ts";

const wasm = readFileSync(createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm"));
prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });

let printer: SamplePrinter;
beforeAll(async () => {
  printer = await samplePrinter([]);
});
afterAll(() => printer.browser.close());

interface Printed {
  readonly model: CardsPageModel;
  readonly read: ReadPdf;
  readonly boxes: readonly (readonly FilledBox[])[];
  readonly words: Awaited<ReturnType<typeof wordsPlaced>>;
}
async function printed(asked: CardsAsked): Promise<Printed> {
  const model = await cardsPage(asked);
  const made = await printer.printCards(model);
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  const { pdf } = made.value;
  return { model, read: await readPdf(pdf), boxes: await filledBoxes(pdf), words: await wordsPlaced(pdf) };
}

const PER_MM = 5;
/** A page drawn from the boxes of its own file, as a reader of codes is given it. */
function drawn(boxes: readonly FilledBox[], width: number, height: number): Parameters<typeof readBarcodes>[0] {
  const [across, down] = [Math.round(width * PER_MM), Math.round(height * PER_MM)];
  const data = new Uint8ClampedArray(4 * across * down).fill(255);
  const pixels = new Uint32Array(data.buffer);
  for (const { left, right, top, bottom } of boxes)
    for (let y = Math.round(top * PER_MM); y < Math.round(bottom * PER_MM); y += 1)
      pixels.fill(0xff000000, y * across + Math.round(left * PER_MM), y * across + Math.round(right * PER_MM));
  return { data, width: across, height: down, colorSpace: "srgb" } as Parameters<typeof readBarcodes>[0];
}

describe("the printed cards", () => {
  it.each([
    { paper: "letter", language: "en" },
    { paper: "a4", language: "es" },
  ] as const)("on $paper, in $language: exact places, codes that say what the model says, every word", async (asked) => {
    const { model, read, boxes } = await printed(asked);
    expect(read.pages).toHaveLength(3);
    expect(read.sizes.map((size) => size.map(Math.round))).toEqual(Array(3).fill({ letter: [612, 792], a4: [595, 842] }[asked.paper]));
    const { width, height, cards, how, title, words } = model;
    for (const [n, card] of cards.entries()) {
      // the page's own white is a box as well
      const dark = (boxes[n] ?? []).filter(({ left, right }) => right - left < 60);
      const found = await readBarcodes(drawn(dark, width, height), { formats: ["QRCode"], tryHarder: true, maxNumberOfSymbols: 8 });
      expect(found.map(({ text }) => text).sort()).toEqual(card.codes.map(({ text }) => text).sort());
      for (const { x, y, side } of card.codes) {
        const own = dark.filter((box) => box.left > x - 5 && box.right < x + side + 5 && box.top > y - 5 && box.bottom < y + side + 5);
        const about = [
          Math.min(...own.map(({ left }) => left)) - x,
          Math.min(...own.map(({ top }) => top)) - y,
          Math.max(...own.map(({ right }) => right)) - x - side,
          Math.max(...own.map(({ bottom }) => bottom)) - y - side,
        ];
        for (const off of about) expect(Math.abs(off)).toBeLessThan(0.1);
      }
      const text = read.pages[n] ?? "";
      for (const said of [words.kind, model.company, title.job, title.ownNumber ?? "", card.step, card.title, ...how])
        expect(text).toContain(blanked(said));
    }
    for (const font of read.fonts) expect(font).toMatch(/^OpenSans/);
    expect([read.title, read.language]).toEqual([title.document, asked.language]);
    expect(read.figures).toEqual(Array(3).fill(words.codes));
  });

  it("stay a page each, and no word comes nearer to a code than its four modules, however long names are", async () => {
    const long = "a name that somebody wrote out in full ".repeat(40).trim();
    const steps = threeSteps.steps.map((step) => ({ ...step, title: { en: long } }));
    const { read, words, model } = await printed({ title: long, sheet: { ...threeSteps, steps } });
    expect(read.pages).toHaveLength(3);
    expect(words.flat().length).toBeGreaterThan(100);
    const quiet = (4 * 50) / 21;
    for (const { text, left, right, top, bottom } of words.flat()) {
      expect(right, text).toBeLessThan(model.width - 5);
      for (const { x, y, side } of model.cards[0]?.codes ?? []) {
        const clear = right < x - quiet || left > x + side + quiet || bottom < y - quiet || top > y + side + quiet;
        expect(clear, text).toBe(true);
      }
    }
  });
});
