import { type Outcome, ok } from "#core/outcome/index.ts";
import type { PrintDesignCheck } from "#functions/shared/index.ts";
import { designCheckPage } from "#templates/design-check/index.ts";
import { type Document, drawn, type Printer } from "./document.ts";
import { openedAnew } from "./own-pdf.ts";
import { printable } from "./printable.ts";

/** What can still be read. Own. */
const SMALLEST = 0.72;
/** From as it is meant down to the smallest; a design with very much to say is smaller, never cut. */
const sizes = [1, 0.96, 0.92, 0.88, 0.84, 0.8, 0.76, SMALLEST] as const;

/** Draws the design check in the largest size in which it is one page; in the smallest on as many as it takes. */
export async function drawDesignCheck({ model }: PrintDesignCheck, printer: Printer): Promise<Outcome<Document>> {
  const shown = printable(model, printer.fonts.has);
  const { title, language } = shown;
  const about = { title: title.document, language, issuedAt: title.at, attachments: [], missing: [] };
  for (const size of sizes) {
    const page = await drawn(printer, designCheckPage(shown, { fonts: printer.fonts.css, size }));
    if (!page.ok) return page;
    const pdf = await openedAnew(page.value.pdf);
    if (pdf.getPageCount() === 1 || size === SMALLEST) return ok({ pdf, headings: page.value.headings, ...about });
  }
  throw new Error("a design check was drawn in no size");
}
