import { PDFDict, type PDFDocument, PDFHexString, PDFName } from "@cantoo/pdf-lib";

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
