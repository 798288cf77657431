import encodeQR from "qr";
import { type Outcome, ok } from "#core/outcome/index.ts";
import type { PrintCards } from "#functions/shared/index.ts";
import { cardsPages } from "#templates/cards/index.ts";
import { type Document, drawn, type Printer } from "./document.ts";
import { openedAnew } from "./own-pdf.ts";
import { printable } from "./printable.ts";

/** A code's dark modules as one path, row by row. A text that is too long for the smallest code gets a larger one. */
function codeDrawn(text: string): { readonly path: string; readonly modules: number } {
  // the encoder wants a light border; the card's own paper is one
  const rows = encodeQR(text, "raw", { ecc: "medium", encoding: "alphanumeric", border: 1 })
    .slice(1, -1)
    .map((row) => row.slice(1, -1));
  const path = rows.flatMap((row, y) =>
    row.flatMap((dark, x) => {
      if (!dark || row[x - 1]) return [];
      const end = row.indexOf(false, x);
      return [`M${x} ${y}H${end === -1 ? row.length : end}V${y + 1}H${x}Z`];
    }),
  );
  return { path: path.join(""), modules: rows.length };
}

/** Draws the cards of a job that lie in pictures, a page each. */
export async function drawCards({ model }: PrintCards, printer: Printer): Promise<Outcome<Document>> {
  const shown = printable(model, printer.fonts.has);
  const { title, language } = shown;
  const page = await drawn(printer, cardsPages(shown, { fonts: printer.fonts.css, code: codeDrawn }));
  if (!page.ok) return page;
  const { pdf, headings } = page.value;
  return ok({ pdf: await openedAnew(pdf), headings, title: title.document, language, issuedAt: title.at, attachments: [], missing: [] });
}
