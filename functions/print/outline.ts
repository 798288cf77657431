import { PDFArray, PDFDict, type PDFDocument, PDFHexString, PDFName, PDFRef } from "@cantoo/pdf-lib";

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
 * Page on which each part begins, from the outline that the browser wrote: the first heading in a part tells. None when the outline
 * does not fit the headings.
 */
export function pagesOfParts(document: PDFDocument, parts: readonly string[]): Readonly<Record<string, number>> {
  const items = inOrder(document.catalog.lookupMaybe(PDFName.of("Outlines"), PDFDict));
  if (items.length !== parts.length) return {};
  const pages = new Map(document.getPages().map(({ ref }, at) => [ref, at + 1]));
  const begins: Record<string, number> = {};
  for (const [at, item] of items.entries()) {
    const part = parts[at] as string;
    const place = item.lookupMaybe(PDFName.of("Dest"), PDFArray)?.get(0);
    const page = place instanceof PDFRef ? pages.get(place) : undefined;
    if (part !== "" && page !== undefined) begins[part] ??= page;
  }
  return begins;
}
