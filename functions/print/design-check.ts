import { type Outcome, ok } from "#core/outcome/index.ts";
import type { PrintDesignCheck } from "#functions/shared/index.ts";
import { designCheckPage } from "#templates/design-check/index.ts";
import { type Document, drawn, type Printer } from "./document.ts";
import { opened } from "./own-pdf.ts";
import { printable } from "./printable.ts";

/** From as it is meant down to what can still be read (own); a design with very much to say is smaller, never cut. */
const sizes = [1, 0.96, 0.92, 0.88, 0.84, 0.8, 0.76, 0.72] as const;

const pagesOf = async (pdf: Uint8Array): Promise<number> => (await opened(pdf)).getPageCount();

/** Draws the design check in the largest size in which it is one page; in the smallest on as many as it takes. */
export async function drawDesignCheck({ model }: PrintDesignCheck, printer: Printer): Promise<Outcome<Document>> {
  const shown = printable(model, printer.fonts.has);
  const document = (pdf: Uint8Array, headings: readonly string[]): Document => {
    const { title, language } = shown;
    return { pdf, headings, title: title.document, language, issuedAt: title.at, attachments: [], missing: [] };
  };
  let last: Document = document(new Uint8Array(), []);
  for (const size of sizes) {
    const page = await drawn(printer, designCheckPage(shown, { fonts: printer.fonts.css, size }));
    if (!page.ok) return page;
    last = document(page.value.pdf, page.value.headings);
    if ((await pagesOf(last.pdf)) === 1) break;
  }
  return ok(last);
}
