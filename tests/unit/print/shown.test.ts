import { PDFDocument } from "@cantoo/pdf-lib";
import { expect, it } from "vitest";
import { shownIn } from "#functions/print/shown.ts";

/** Before anything was read. */
const own = Object.getOwnPropertyNames(Uint8Array).sort();

const files = { pictures: { a: "b" }, papers: {} };

async function pdfOf(texts: readonly string[]): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  for (const text of texts) document.addPage().drawText(text);
  return document.save();
}

it("reads the words of every page and hands on what is in the file, and the bytes stay with whoever asked", async () => {
  const [one, two] = [await pdfOf(["of the trench", "of the basin"]), await pdfOf(["of the pipe"])];
  const before = one.slice();
  expect(await Promise.all([shownIn(one, files), shownIn(two, files)])).toEqual([
    { pages: ["of the trench", "of the basin"], ...files },
    { pages: ["of the pipe"], ...files },
  ]);
  expect(one).toEqual(before);
});

it("throws where the file cannot be read, and reads the next one", async () => {
  await expect(shownIn(new TextEncoder().encode("no PDF"), files)).rejects.toThrow("cannot be read");
  expect((await shownIn(await pdfOf(["again"]), files)).pages).toEqual(["again"]);
});

it("leaves this process its own functions, through which the browser's files come", async () => {
  await shownIn(await pdfOf(["of the pump"]), files);
  expect(Object.getOwnPropertyNames(Uint8Array).sort()).toEqual(own);
});
