import { deflateSync } from "node:zlib";
import type { Page } from "puppeteer";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { filesOf, type RecordModel } from "#core/record/index.ts";
import type { PrintRecord } from "#functions/shared/index.ts";
import { type BoundPaper, boundArea, type PrintedPhoto, recordPage, recordTitle } from "#templates/record/index.ts";
import { type Document, onPage, type Printer } from "./document.ts";
import { draw, drawAgain } from "./draw.ts";
import { bytesOf, Fitting } from "./fitted.ts";
import { photoAddress, type Served } from "./origin.ts";
import { pagesOfParts } from "./outline.ts";
import { openedAnew } from "./own-pdf.ts";
import { writePageNumbers } from "./page-numbers.ts";
import { fetchPapers, fittingPapers, type NotBound, type Paper } from "./papers.ts";
import { type Absent, fetchPhotos } from "./photos.ts";
import { printable } from "./printable.ts";
import { sha256Of } from "./shown.ts";
import { type StandIns, standInsFor } from "./stand-ins.ts";

const ROUNDS = 3;

/** Bytes that a record comes to at most with the papers that are bound in; its seal comes afterwards. Own. */
const MOST_BYTES = 9_750_000;

/** Draws a record. */
export async function drawRecord(request: PrintRecord, printer: Printer): Promise<Outcome<Document>> {
  const { model, key, attachments } = request;
  const papers = await fetchPapers(model, key.slice(0, key.indexOf("/")), printer.store);
  if (!papers.ok) return papers;
  const making = made(request, printer.store);
  const room = MOST_BYTES - attachments.reduce((sum, { text }) => sum + deflateSync(text).length, 0);
  // pictures come from the store while the page is laid out, and the store may be slow
  return onPage(printer, (page) => drawOn(page, request, printer, { making, papers: papers.value, room }), making);
}

interface Inside {
  readonly making: Promise<Outcome<Made>>;
  readonly papers: ReadonlyMap<string, Paper | NotBound>;
  /** Bytes for everything but what is attached. */
  readonly room: number;
}

/** Where each part begins, and each paper: known when pages are laid out. */
interface Places {
  readonly pages: Readonly<Record<string, number>>;
  readonly papers: Inside["papers"];
  readonly bound: BoundPaper;
}

/**
 * Printed once, with its page numbers written into it. Once more where there are papers, of which some may not fit; and where a
 * photo is not there or did not decode, which is a box that says so and never a blank.
 */
async function drawOn(
  page: Page,
  { model, attachments }: PrintRecord,
  { fonts }: Printer,
  { making, papers, room }: Inside,
): Promise<Outcome<Document>> {
  const sheet = printable(model, fonts.has);
  const given = making.then((made) => (made.ok ? made.value.standIns.files : new Map<string, Served>()));
  // whoever waits for it is told; where nobody does, the page has failed before
  given.catch(() => undefined);
  let places: Places | undefined;
  let absent: ReadonlyMap<string, Absent> = new Map();
  for (let round = 0; round < ROUNDS; round += 1) {
    const known = places ?? { bound: roomForNumbers };
    const html = recordPage(sheet, { fonts: fonts.css, photo: photoIn(model, absent), ...known });
    const drawing = round === 0 ? draw(page, html, fonts.files, given) : drawAgain(page, html, new Map([...fonts.files, ...(await given)]));
    const [printed, made] = [await drawing, await making];
    if (!made.ok) return made;
    if (!printed.ok) return printed;
    const { files, standIns } = made.value;
    const { undecoded, headings, parts, listed } = printed.value;
    if (undecoded.length > 0) {
      absent = withUndecoded(absent, undecoded, model, made.value.absent);
      continue;
    }
    const pdf = await openedAnew(printed.value.pdf);
    if (places === undefined) {
      const pages = pagesOfParts(pdf, parts);
      const numbers = listed.flatMap((part) => pages[part] ?? []);
      if (papers.size > 0 || !writePageNumbers(pdf, numbers)) {
        const left = room - printed.value.pdf.length + bytesOf(standIns.files) - bytesOf(files);
        const fitting = fittingPapers(papers, left);
        places = { pages, papers: fitting, bound: placed(fitting, pdf.getPageCount()) };
        continue;
      }
    }
    const { language, title } = model;
    const about = { title: recordTitle(model), language, issuedAt: title.issuedAt };
    const inside = [...(places?.papers.values() ?? [])].filter((paper) => typeof paper !== "string");
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

interface Made {
  /** As they will lie in the record. */
  readonly files: ReadonlyMap<string, Served>;
  readonly standIns: StandIns;
  readonly absent: ReadonlyMap<string, Absent>;
}

/** The pictures, each made to fit as it comes where they are too many as they are. */
async function made({ model, photos }: PrintRecord, store: Printer["store"]): Promise<Outcome<Made>> {
  const fitting = new Fitting();
  const absent = await fetchPhotos(model, photos, store, fitting.take);
  if (!absent.ok) return absent;
  const files = await fitting.all();
  return ok({ files, standIns: await standInsFor(files), absent: absent.value });
}

/** Behind so many pages the papers follow each other; those that are only listed say why. */
function placed(papers: Inside["papers"], before: number): BoundPaper {
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
  why: ReadonlyMap<string, Absent>,
): ReadonlyMap<string, Absent> => {
  const unreadable = filesOf(model)
    .map(({ photo }) => photo)
    .filter((photo) => addresses.includes(photoAddress(photo)));
  return new Map([...absent, ...unreadable.map((photo) => [photo, why.get(photo) ?? "photo-unreadable"] as const)]);
};

const photoIn =
  (model: RecordModel, absent: ReadonlyMap<string, Absent>): PrintedPhoto =>
  ({ photo, rendition, missing }) => {
    const why = absent.get(photo);
    if (rendition !== undefined && why === undefined) return { address: photoAddress(photo) };
    return { missing: missing ?? model.words[why ?? "photo-not-in-store"] ?? "" };
  };
