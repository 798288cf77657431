import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  type PDFDocument,
  PDFName,
  PDFNumber,
  type PDFPage,
  PDFRawStream,
  PDFRef,
} from "@cantoo/pdf-lib";
import { ROOM_FOR_PAGE } from "#templates/record/index.ts";

/** A face of a page, as far as numbers are written in it (ISO 32000-2, 9.7): a code is four hex digits. */
interface Face {
  readonly codes: ReadonlyMap<string, string>;
  /** Width of every digit, as that of 0, in thousandths of the letters' size. */
  readonly digit: number | undefined;
}

/** Text in one piece (ISO 32000-2, 9.4): the name of its face, and its codes. */
const PIECE = /(BT\n\/(\w+) \S+ Tf\n[^\n]* Tm\n)<([0-9A-F]+)> Tj\nET/g;

/**
 * Writes page numbers where the browser was given room for them, in their order, so that nothing has to be printed twice only to say
 * where it lies. Those with fewer digits end where their room ends. False, with nothing changed, where there are not as many rooms as
 * numbers up to the first page without any behind them, or where a face lacks a digit.
 */
export function writePageNumbers(document: PDFDocument, numbers: readonly number[]): boolean {
  if (!numbers.every((number) => Number.isInteger(number) && number > 0)) return false;
  const left = numbers.map(String);
  const changes: (readonly [PDFRef, string])[] = [];
  let lacking = false;
  for (const page of document.getPages()) {
    const reference = page.node.get(PDFName.of("Contents"));
    const stream = page.node.Contents();
    if (!(reference instanceof PDFRef && stream instanceof PDFRawStream)) return false;
    const faces = facesOf(page);
    const content = latin(stream);
    const written = content.replace(PIECE, (piece, head: string, name: string, codes: string) => {
      const face = faces(name);
      if (codes !== shown(ROOM_FOR_PAGE, face)) return piece;
      const number = left.shift() ?? "";
      const blanks = ROOM_FOR_PAGE.length - number.length;
      const digits = shown(number, face);
      if (digits === undefined || face.digit === undefined || number === "" || blanks < 0) {
        lacking = true;
        return piece;
      }
      return `${head}[${-blanks * face.digit} <${digits}>] TJ\nET`;
    });
    if (written !== content) changes.push([reference, written]);
    // contents may go on to a page with a single room
    else if (left.length === 0) break;
  }
  if (lacking || left.length > 0) return false;
  for (const [reference, content] of changes)
    document.context.assign(reference, document.context.flateStream(Buffer.from(content, "latin1")));
  return true;
}

const latin = (stream: PDFRawStream): string => Buffer.from(decodePDFRawStream(stream).decode()).toString("latin1");

/** The codes of a text; undefined where the face lacks a sign of it. */
function shown(text: string, { codes }: Face): string | undefined {
  const found = [...text].map((sign) => codes.get(sign));
  return found.includes(undefined) ? undefined : found.join("");
}

function facesOf(page: PDFPage): (name: string) => Face {
  const fonts = page.node.Resources()?.lookupMaybe(PDFName.of("Font"), PDFDict);
  const known = new Map<string, Face>();
  return (name) => {
    const face = known.get(name) ?? faceOf(fonts?.lookupMaybe(PDFName.of(name), PDFDict));
    known.set(name, face);
    return face;
  };
}

function faceOf(font: PDFDict | undefined): Face {
  const table = font?.lookup(PDFName.of("ToUnicode"));
  const codes = table instanceof PDFRawStream ? codesIn(latin(table)) : new Map<string, string>();
  const inside = font?.lookupMaybe(PDFName.of("DescendantFonts"), PDFArray)?.lookupMaybe(0, PDFDict);
  const widths = inside?.lookupMaybe(PDFName.of("W"), PDFArray);
  return { codes, digit: widths && widthIn(widths, hex(codes.get("0") ?? "")) };
}

const hex = (text: string): number => Number.parseInt(text, 16);

/** By the table that tells readers the sign of a code (ISO 32000-2, 9.10.3): signs of one unit of UTF-16 alone. */
function codesIn(table: string): ReadonlyMap<string, string> {
  const codes = new Map<string, string>();
  for (const [, from = "", to = from, sign = ""] of table.matchAll(/^<([0-9A-F]{4})>(?: <([0-9A-F]{4})>)? <([0-9A-F]{4})>$/gm))
    for (let at = 0; at <= hex(to) - hex(from); at += 1)
      codes.set(String.fromCharCode(hex(sign) + at), (hex(from) + at).toString(16).toUpperCase().padStart(4, "0"));
  return codes;
}

/** The width of a code (ISO 32000-2, 9.7.4.3): `first [widths]`, or `first last width`. */
function widthIn(widths: PDFArray, code: number): number | undefined {
  const number = (at: number): number => widths.lookupMaybe(at, PDFNumber)?.asNumber() ?? Number.NaN;
  for (let at = 0; at < widths.size(); ) {
    const first = number(at);
    const next = widths.lookup(at + 1);
    if (next instanceof PDFArray) {
      const found = next.lookupMaybe(code - first, PDFNumber);
      if (code >= first && found !== undefined) return found.asNumber();
      at += 2;
    } else {
      if (code >= first && code <= number(at + 1)) return number(at + 2);
      at += 3;
    }
  }
  return undefined;
}
