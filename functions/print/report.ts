import { type Outcome, ok } from "#core/outcome/index.ts";
import type { PrintReport } from "#functions/shared/index.ts";
import { reportPage } from "#templates/report/index.ts";
import { type Document, drawn, type Printer } from "./document.ts";
import { openedAnew } from "./own-pdf.ts";
import { printable } from "./printable.ts";

/** Draws the company owner's report. Its pictures' library is loaded when the first one is printed. */
export async function drawReport({ model }: PrintReport, printer: Printer): Promise<Outcome<Document>> {
  const { plotSvg } = await import("./plot-svg.ts");
  const shown = printable(model, printer.fonts.has);
  const { title, language } = shown;
  const page = await drawn(printer, reportPage(shown, { fonts: printer.fonts.css, picture: (view) => plotSvg(view, language) }));
  if (!page.ok) return page;
  const { pdf, headings } = page.value;
  return ok({ pdf: await openedAnew(pdf), headings, title: title.document, language, issuedAt: title.at, attachments: [], missing: [] });
}
