/**
 * The browser counts the ids of its structure elements over its whole life, `(node00000005)`, so two prints of one record
 * would differ. Numbers them anew from 1 in their own order, which the ids' sorted tree needs; each keeps its length, so
 * that every offset in the file still fits.
 */
export function renumberStructureIds(pdf: Uint8Array): Uint8Array {
  const bytes = Buffer.from(pdf);
  const places: { at: number; id: string }[] = [];
  for (let at = bytes.indexOf(MARK); at !== -1; at = bytes.indexOf(MARK, at + 1)) {
    const id = bytes.toString("latin1", at + MARK.length, at + MARK.length + DIGITS);
    if (/^\d{8}$/.test(id) && bytes[at + MARK.length + DIGITS] === CLOSE) places.push({ at: at + MARK.length, id });
  }
  const ids = [...new Set(places.map(({ id }) => id))].sort();
  const renumbered = new Map(ids.map((id, at) => [id, String(at + 1).padStart(DIGITS, "0")]));
  for (const { at, id } of places) bytes.write(renumbered.get(id) as string, at, "latin1");
  return bytes;
}

const MARK = "(node";
const DIGITS = 8;
const CLOSE = ")".charCodeAt(0);
