import { decodePDFRawStream, PDFArray, PDFDocument, PDFName, PDFRawStream, PDFRef } from "@cantoo/pdf-lib";

/** A piece of text in a font of two-byte codes, as the browser writes it: a line, a word, or a single sign. */
const PIECE = /<((?:[0-9A-F]{4})+)>/g;
/** Codes of Open Sans' Latin glyphs lie this far below those of the signs that they draw (its own ToUnicode map). */
const BELOW = 0x1d;

/** The PDF with the first digit of `figure` one higher where a page first shows it, in the file's own font, as somebody does who edits it. */
export async function withFigureEdited(bytes: Uint8Array, figure: string): Promise<{ readonly pdf: Uint8Array; readonly page: number }> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const { context } = document;
  for (const [index, page] of document.getPages().entries()) {
    const contents = page.node.get(PDFName.of("Contents"));
    const refs = contents instanceof PDFArray ? contents.asArray() : [contents];
    for (const ref of refs) {
      const stream = ref === undefined ? undefined : context.lookup(ref);
      if (!(ref instanceof PDFRef) || !(stream instanceof PDFRawStream)) continue;
      const text = Buffer.from(decodePDFRawStream(stream).decode()).toString("latin1");
      const glyphs = [...text.matchAll(PIECE)].flatMap(({ index, 1: codes = "" }) =>
        [...codes.matchAll(/.{4}/g)].map(([code], nth) => ({ code, place: index + 1 + 4 * nth })),
      );
      const signs = glyphs.map(({ code }) => String.fromCharCode(Number.parseInt(code, 16) + BELOW)).join("");
      const at = signs.indexOf(figure);
      if (at < 0) continue;
      const digit = at + figure.search(/\d/);
      const higher = (Number(signs[digit]) + 1) % 10;
      const code = (String(higher).charCodeAt(0) - BELOW).toString(16).toUpperCase().padStart(4, "0");
      const { place } = glyphs[digit] as (typeof glyphs)[number];
      const edited = `${text.slice(0, place)}${code}${text.slice(place + 4)}`;
      context.assign(ref, context.flateStream(Buffer.from(edited, "latin1")));
      return { pdf: await document.save({ useObjectStreams: false, updateFieldAppearances: false }), page: index + 1 };
    }
  }
  throw new Error(`no page shows ${figure} in Latin glyphs`);
}
