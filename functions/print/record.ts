import { deflateSync } from "node:zlib";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { filesOf, type RecordModel } from "#core/record/index.ts";
import type { PrintRecord } from "#functions/shared/index.ts";
import { type BoundPaper, boundArea, type PrintedPhoto, recordPage, recordTitle } from "#templates/record/index.ts";
import { type Document, drawn, type Printer } from "./document.ts";
import { bytesOf, fitted } from "./fitted.ts";
import { photoAddress, type Served } from "./origin.ts";
import { pagesOfParts } from "./outline.ts";
import { fetchPapers, fittingPapers, type NotBound, type Paper } from "./papers.ts";
import { type Absent, fetchPhotos, photosOf } from "./photos.ts";
import { printable } from "./printable.ts";
import { sha256Of } from "./shown.ts";
import { type StandIns, standInsFor } from "./stand-ins.ts";

const ROUNDS = 3;

/** Bytes that a record comes to at most with the papers that are bound in; its seal comes afterwards. Own. */
const MOST_BYTES = 9_750_000;

/**
 * Draws a record: its pages are counted while its pictures come, then it is printed with their numbers; and once more where a photo
 * did not decode: a box that says so, never a blank.
 */
export async function drawRecord(request: PrintRecord, printer: Printer): Promise<Outcome<Document>> {
  const { model, attachments } = request;
  const sheet = printable(model, printer.fonts.has);
  const [counted, come] = await Promise.all([pagesOf(sheet, printer), filesFor(request, printer)]);
  if (!counted.ok) return counted;
  if (!come.ok) return come;
  const { files, standIns, papers } = come.value;
  const attached = attachments.reduce((sum, { text }) => sum + deflateSync(text).length, 0);
  const { pages, count, bytes } = counted.value;
  const bound = fittingPapers(papers, MOST_BYTES - attached - bytes - bytesOf(files));
  let { absent } = come.value;
  for (let round = 0; round < ROUNDS; round += 1) {
    const surroundings = { fonts: printer.fonts.css, photo: photoIn(model, absent), pages, bound: placed(bound, count) };
    const page = await drawn(printer, recordPage(sheet, surroundings), standIns.files);
    if (!page.ok) return page;
    const { pdf, undecoded, headings } = page.value;
    if (undecoded.length > 0) {
      absent = withUndecoded(absent, undecoded, model);
      continue;
    }
    const { language, title } = model;
    const about = { title: recordTitle(model), language, issuedAt: title.issuedAt };
    const inside = [...bound.values()].filter((paper) => typeof paper !== "string");
    return ok({
      pdf,
      headings,
      ...about,
      attachments,
      missing: [...absent.keys()],
      standIns: standIns.pictures,
      pictures: printedIn(model, files, absent),
      papers: Object.fromEntries(inside.map(({ sha256, pictures }) => [sha256, pictures])),
      ...(inside.length > 0 && { bound: { papers: inside.map(({ document }) => document), area: boundArea(model.paper) } }),
    });
  }
  return refuse("print-failed", "print", { why: "browser" });
}

interface Come {
  /** As they will lie in the record. */
  readonly files: ReadonlyMap<string, Served>;
  readonly standIns: StandIns;
  readonly absent: ReadonlyMap<string, Absent>;
  readonly papers: ReadonlyMap<string, Paper | NotBound>;
}

/** Pictures, made to fit, and papers. */
async function filesFor({ model, photos: keys, key }: PrintRecord, { store }: Printer): Promise<Outcome<Come>> {
  const photos = await fetchPhotos(model, keys, store);
  if (!photos.ok) return photos;
  const papers = await fetchPapers(model, key.slice(0, key.indexOf("/")), store);
  if (!papers.ok) return papers;
  const files = await fitted(photos.value.files);
  return ok({ files, standIns: await standInsFor(files), absent: photos.value.absent, papers: papers.value });
}

/** Behind so many pages the papers follow each other; those that are only listed say why. */
function placed(papers: Come["papers"], before: number): BoundPaper {
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

/** Stands for a picture while only pages are counted: every picture has its mount, whether it is there or not, and a mount its height. */
const BLANK: Served = {
  type: "image/svg+xml",
  bytes: new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg" width="4" height="3"/>'),
  whole: true,
};

interface Counted {
  /** Page on which each part begins, and how many there are. */
  readonly pages: Readonly<Record<string, number>>;
  readonly count: number;
  /** Of everything but its pictures. */
  readonly bytes: number;
}

/** Laid out without its pictures: only then is it known on which page each part begins, and the numbers have their room already. */
async function pagesOf(model: RecordModel, printer: Printer): Promise<Outcome<Counted>> {
  const surroundings = { fonts: printer.fonts.css, photo: photoIn(model, new Map()), bound: roomForNumbers };
  const blank = new Map(photosOf(model).map((photo) => [photoAddress(photo), BLANK]));
  const page = await drawn(printer, recordPage(model, surroundings), blank);
  return page.ok ? ok({ ...(await pagesOfParts(page.value.pdf, page.value.parts)), bytes: page.value.pdf.length }) : page;
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
