import { deflateSync } from "node:zlib";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { filesOf, type RecordModel } from "#core/record/index.ts";
import type { PrintRecord } from "#functions/shared/index.ts";
import { type BoundPaper, boundArea, type PrintedPhoto, recordPage, recordTitle } from "#templates/record/index.ts";
import { type Document, drawn, type Printer } from "./document.ts";
import type { Drawn } from "./draw.ts";
import { fitted } from "./fitted.ts";
import { photoAddress, type Served } from "./origin.ts";
import { pagesOfParts } from "./outline.ts";
import { fetchPapers, fittingPapers, type NotBound, type Paper } from "./papers.ts";
import { type Absent, fetchPhotos } from "./photos.ts";
import { printable } from "./printable.ts";
import { sha256Of } from "./shown.ts";

const ROUNDS = 3;

/** Bytes that a record comes to at most with the papers that are bound in; its seal comes afterwards. Own. */
const MOST_BYTES = 9_750_000;

/** Draws a record, and once more where a photo did not decode: a box that says so, never a blank. */
export async function drawRecord(request: PrintRecord, printer: Printer): Promise<Outcome<Document>> {
  const { model, photos: keys, attachments, key } = request;
  const photos = await fetchPhotos(model, keys, printer.store);
  if (!photos.ok) return photos;
  const papers = await fetchPapers(model, key.slice(0, key.indexOf("/")), printer.store);
  if (!papers.ok) return papers;
  let { absent } = photos.value;
  const files = await fitted(photos.value.files);
  const attached = attachments.reduce((sum, { text }) => sum + deflateSync(text).length, 0);
  for (let round = 0; round < ROUNDS; round += 1) {
    const surroundings = { fonts: printer.fonts.css, photo: photoIn(model, absent) };
    const sheet = { model: printable(model, printer.fonts.has), surroundings, files, papers: papers.value, most: MOST_BYTES - attached };
    const page = await withContents(sheet, printer);
    if (!page.ok) return page;
    const { pdf, undecoded, headings, bound } = page.value;
    if (undecoded.length > 0) {
      absent = withUndecoded(absent, undecoded, model);
      continue;
    }
    const { language, title } = model;
    const about = { title: recordTitle(model), language, issuedAt: title.issuedAt };
    return ok({
      pdf,
      headings,
      ...about,
      attachments,
      missing: [...absent.keys()],
      pictures: printedIn(model, files, absent),
      papers: Object.fromEntries(bound.map(({ sha256, pictures }) => [sha256, pictures])),
      ...(bound.length > 0 && { bound: { papers: bound.map(({ document }) => document), area: boundArea(model.paper) } }),
    });
  }
  return refuse("print-failed", "print", { why: "browser" });
}

interface Sheet {
  readonly model: RecordModel;
  readonly surroundings: { readonly fonts: string; readonly photo: PrintedPhoto };
  readonly files: ReadonlyMap<string, Served>;
  readonly papers: ReadonlyMap<string, Paper | NotBound>;
  /** Bytes that pages and papers may come to. */
  readonly most: number;
}

/** Behind so many pages the papers follow each other; those that are only listed say why. */
function placed(papers: Sheet["papers"], before: number): BoundPaper {
  let from = before + 1;
  const places = new Map<string, ReturnType<BoundPaper>>();
  for (const [sha256, paper] of papers) {
    places.set(sha256, typeof paper === "string" ? { why: paper } : { from, pages: paper.pages });
    if (typeof paper !== "string") from += paper.pages;
  }
  return (paper) => places.get(paper) ?? { why: "enclosure-not-there" };
}

/** Three digits stand where the page will be said. */
const roomForNumbers: BoundPaper = () => ({ from: 100, pages: 0 });

/**
 * Laid out twice: only then is it known on which page each part begins, and the numbers have their room already. What the papers may
 * weigh is known then too.
 */
async function withContents(
  { model, surroundings, files, papers, most }: Sheet,
  printer: Printer,
): Promise<Outcome<Drawn & { readonly bound: readonly Paper[] }>> {
  const first = await drawn(printer, recordPage(model, { ...surroundings, bound: roomForNumbers }), files);
  if (!first.ok) return first;
  if (first.value.undecoded.length > 0) return ok({ ...first.value, bound: [] });
  const { pages, count } = await pagesOfParts(first.value.pdf, first.value.parts);
  const fitting = fittingPapers(papers, most - first.value.pdf.length);
  const second = await drawn(printer, recordPage(model, { ...surroundings, pages, bound: placed(fitting, count) }), files);
  const bound = [...fitting.values()].filter((paper) => typeof paper !== "string");
  return second.ok ? ok({ ...second.value, bound }) : second;
}

/** SHA-256 of the pictures that are in the record, as they are in it. */
const printedIn = (
  model: RecordModel,
  files: ReadonlyMap<string, { readonly bytes: Uint8Array }>,
  absent: ReadonlyMap<string, Absent>,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    filesOf(model).flatMap(({ photo }) => {
      const file = absent.has(photo) ? undefined : files.get(photoAddress(photo));
      return file === undefined ? [] : [[photo, sha256Of(file.bytes)]];
    }),
  );

const withUndecoded = (
  absent: ReadonlyMap<string, Absent>,
  addresses: readonly string[],
  model: RecordModel,
): ReadonlyMap<string, Absent> => {
  const unreadable = filesOf(model)
    .map(({ photo }) => photo)
    .filter((photo) => addresses.includes(photoAddress(photo)));
  return new Map([...absent, ...unreadable.map((photo) => [photo, "photo-unreadable"] as const)]);
};

const photoIn =
  (model: RecordModel, absent: ReadonlyMap<string, Absent>): PrintedPhoto =>
  ({ photo, rendition, missing }) => {
    const why = absent.get(photo);
    if (rendition !== undefined && why === undefined) return { address: photoAddress(photo) };
    return { missing: missing ?? model.words[why ?? "photo-not-in-store"] ?? "" };
  };
