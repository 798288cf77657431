import { PDFArray, PDFDict, type PDFDocument, PDFHexString, PDFName, PDFRef } from "@cantoo/pdf-lib";
import { opened } from "./own-pdf.ts";

/**
 * Writes the outline's titles anew from the page's headings, in their order: the browser drops the blank where a heading
 * breaks or changes its style, '11Fill andstart-up'. Left alone when their number differs.
 */
export function nameOutline(document: PDFDocument, headings: readonly string[]): void {
  const items = inOrder(document.catalog.lookupMaybe(PDFName.of("Outlines"), PDFDict));
  if (items.length !== headings.length) return;
  for (const [at, item] of items.entries()) item.set(PDFName.of("Title"), PDFHexString.fromText(headings[at] as string));
}

function inOrder(parent: PDFDict | undefined): PDFDict[] {
  const items: PDFDict[] = [];
  for (let item = parent?.lookupMaybe(PDFName.of("First"), PDFDict); item; item = item.lookupMaybe(PDFName.of("Next"), PDFDict)) {
    items.push(item, ...inOrder(item));
  }
  return items;
}

/**
 * Page on which each part begins, from the outline that the browser wrote: the first heading in a part tells; and how many pages
 * there are. No pages of parts when the outline does not fit the headings.
 */
export async function pagesOfParts(
  printed: Uint8Array,
  parts: readonly string[],
): Promise<{ readonly pages: Readonly<Record<string, number>>; readonly count: number }> {
  const document = await opened(printed);
  const count = document.getPageCount();
  const items = inOrder(document.catalog.lookupMaybe(PDFName.of("Outlines"), PDFDict));
  if (items.length !== parts.length) return { pages: {}, count };
  const pages = new Map(document.getPages().map(({ ref }, at) => [ref, at + 1]));
  const begins: Record<string, number> = {};
  for (const [at, item] of items.entries()) {
    const part = parts[at] as string;
    const place = item.lookupMaybe(PDFName.of("Dest"), PDFArray)?.get(0);
    const page = place instanceof PDFRef ? pages.get(place) : undefined;
    if (part !== "" && page !== undefined) begins[part] ??= page;
  }
  return { pages: begins, count };
}
