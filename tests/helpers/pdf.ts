import { PDFDocument, PDFName, type PDFNumber, PDFRawStream } from "@cantoo/pdf-lib";
import { getDocument, OPS, type PDFDocumentProxy, type PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";

/** What a file says, its structure and what lies in it. */
export interface PdfWords {
  /** Text of each page, white space as single blanks. */
  readonly pages: readonly string[];
  /** All pages, without the running strip between them being cut out. */
  readonly text: string;
  readonly outline: readonly OutlineItem[];
  /** Where each entry of the outline leads, by page number from 1. */
  readonly begins: readonly number[];
  /** Links inside the file, in the order of the pages: where they stand and where they lead. */
  readonly links: readonly { readonly from: number; readonly to: number }[];
  readonly attachments: ReadonlyMap<string, Uint8Array>;
  readonly title: string | undefined;
  readonly language: string | undefined;
  /** Alternative texts of all figures in the structure tree. */
  readonly figures: readonly string[];
  /** How often each kind of structure element occurs. */
  readonly structure: ReadonlyMap<string, number>;
  /** Width and height of each page in points. */
  readonly sizes: readonly (readonly [number, number])[];
}

/** And what is drawn on its pages. */
export interface ReadPdf extends PdfWords {
  /** How many images are painted on each page. */
  readonly painted: readonly number[];
  /** Every font of every page, as the file names it. */
  readonly fonts: readonly string[];
}

export interface OutlineItem {
  readonly title: string;
  readonly depth: number;
}

interface Node {
  readonly role?: string;
  readonly alt?: string;
  readonly children?: readonly Node[];
}

type Opened = readonly [document: PDFDocumentProxy, pages: readonly PDFPageProxy[]];

async function opened<T>(bytes: Uint8Array, use: (...given: Opened) => Promise<T>): Promise<T> {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, fontExtraProperties: true, verbosity: 0 });
  const document = await task.promise;
  try {
    return await use(document, await Promise.all(Array.from({ length: document.numPages }, (_, at) => document.getPage(at + 1))));
  } finally {
    await task.destroy();
  }
}

/** Reads a PDF with pdf.js, a reader that shares nothing with what wrote it. */
export const readPdf = (bytes: Uint8Array): Promise<ReadPdf> =>
  opened(bytes, async (document, pages) => {
    const words = await wordsOf(document, pages);
    const content = await Promise.all(pages.map(contentOf));
    return {
      ...words,
      painted: content.map(({ images }) => images),
      fonts: [...new Set(content.flatMap(({ fonts }) => fonts))].sort(),
    };
  });

/** The same without what is drawn: for that every picture is decoded. */
export const readWords = (bytes: Uint8Array): Promise<PdfWords> => opened(bytes, wordsOf);

async function wordsOf(...[document, pages]: Opened): Promise<PdfWords> {
  const texts = await Promise.all(pages.map(textOf));
  const trees = (await Promise.all(pages.map((page) => page.getStructTree()))) as (Node | null)[];
  const nodes = trees.flatMap((tree) => (tree ? all(tree) : []));
  const metadata = await document.getMetadata();
  const info = metadata.info as { Title?: string; Language?: string };
  return {
    pages: texts,
    text: texts.join(" "),
    outline: flat((await document.getOutline()) ?? []),
    begins: await Promise.all(places((await document.getOutline()) ?? []).map((place) => pageOf(document, place))),
    links: (await Promise.all(pages.map((page) => linksOf(document, page)))).flat(),
    attachments: await attachmentsOf(document),
    title: info.Title,
    language: info.Language,
    figures: nodes.filter(({ role }) => role === "Figure").map(({ alt }) => alt ?? ""),
    structure: count(nodes.flatMap(({ role }) => (role === undefined ? [] : [role]))),
    sizes: pages.map((page) => [page.view[2] as number, page.view[3] as number]),
  };
}

export const blanked = (text: string): string => text.replace(/\s+/g, " ").trim();

async function textOf(page: PDFPageProxy): Promise<string> {
  const { items } = await page.getTextContent();
  return blanked(items.map((item) => ("str" in item ? `${item.str}${item.hasEOL ? "\n" : ""}` : "")).join(""));
}

/** What is said on a page, piece by piece, and where each ends: from the left and from the bottom, in whole points. */
export const placedWords = (bytes: Uint8Array, number: number): Promise<readonly (readonly [string, number, number])[]> =>
  opened(bytes, async (_document, pages) => {
    const { items } = await (pages[number - 1] as PDFPageProxy).getTextContent();
    return items.flatMap((item) => {
      if (!("str" in item) || blanked(item.str) === "") return [];
      const [, , , , x, y] = item.transform as number[];
      return [[blanked(item.str), Math.round((x as number) + item.width), Math.round(y as number)] as const];
    });
  });

async function contentOf(page: PDFPageProxy): Promise<{ images: number; fonts: string[] }> {
  const { fnArray, argsArray } = await page.getOperatorList();
  const fonts = fnArray.flatMap((operation, at) => (operation === OPS.setFont ? [argsArray[at]?.[0] as string] : []));
  return {
    images: fnArray.filter((operation) => operation === OPS.paintImageXObject).length,
    fonts: [...new Set(fonts)].map((name) => (page.commonObjs.get(name) as { name: string }).name.replace(/^[A-Z]{6}\+/, "")),
  };
}

async function attachmentsOf(document: PDFDocumentProxy): Promise<ReadonlyMap<string, Uint8Array>> {
  const names = [...(((await document.getAttachments()) as Map<string, unknown> | null)?.keys() ?? [])];
  const contents = await Promise.all(names.map(async (name) => [name, (await document.getAttachmentContent(name)) as Uint8Array] as const));
  return new Map(contents);
}

type Place = string | readonly unknown[] | null;
type Target = { readonly dest: Place; readonly items: readonly Target[] };
const places = (items: readonly Target[]): Place[] => items.flatMap(({ dest, items: below }) => [dest, ...places(below)]);

/** Page number of a destination, from 1; 0 where it leads nowhere. */
async function pageOf(document: PDFDocumentProxy, place: Place): Promise<number> {
  const explicit = typeof place === "string" ? await document.getDestination(place) : place;
  const page = explicit?.[0] as Parameters<PDFDocumentProxy["getPageIndex"]>[0] | undefined;
  return page === undefined ? 0 : (await document.getPageIndex(page)) + 1;
}

async function linksOf(document: PDFDocumentProxy, page: PDFPageProxy): Promise<ReadPdf["links"]> {
  const annotations = (await page.getAnnotations()) as { readonly subtype?: string; readonly dest?: Place }[];
  const inside = annotations.filter(({ subtype, dest }) => subtype === "Link" && dest !== undefined && dest !== null);
  return Promise.all(inside.map(async ({ dest = null }) => ({ from: page.pageNumber, to: await pageOf(document, dest) })));
}

type Item = { readonly title: string; readonly items: readonly Item[] };
const flat = (items: readonly Item[], depth = 1): OutlineItem[] =>
  items.flatMap(({ title, items: below }) => [{ title: blanked(title), depth }, ...flat(below, depth + 1)]);

const all = (node: Node): Node[] => [node, ...(node.children ?? []).flatMap(all)];

const count = (names: readonly string[]): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return counts;
};

export interface EmbeddedImage {
  readonly width: number;
  readonly height: number;
  readonly filter: string;
  /** As they lie in the file: for `/DCTDecode` a whole JPEG. */
  readonly bytes: Uint8Array;
}

/** Every image of the file, undecoded. */
export async function imagesOf(bytes: Uint8Array): Promise<readonly EmbeddedImage[]> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  return document.context
    .enumerateIndirectObjects()
    .flatMap(([, object]) =>
      object instanceof PDFRawStream && object.dict.get(PDFName.of("Subtype")) === PDFName.of("Image") ? [object] : [],
    )
    .map((stream) => ({
      width: (stream.dict.get(PDFName.of("Width")) as PDFNumber).asNumber(),
      height: (stream.dict.get(PDFName.of("Height")) as PDFNumber).asNumber(),
      filter: String(stream.dict.get(PDFName.of("Filter"))),
      bytes: stream.contents,
    }));
}
