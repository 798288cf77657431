import { deflateSync } from "node:zlib";
import type { Page } from "puppeteer";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { filesOf, type RecordModel } from "#core/record/index.ts";
import type { PrintRecord } from "#functions/shared/index.ts";
import { type BoundPaper, boundArea, type PrintedPhoto, recordPage, recordTitle } from "#templates/record/index.ts";
import { type Document, onPage, type Printer } from "./document.ts";
import { draw, drawAgain } from "./draw.ts";
import { bytesOf, Fitting } from "./fitted.ts";
import { BLANK_ADDRESS, photoAddress, type Served } from "./origin.ts";
import { pagesOfParts } from "./outline.ts";
import { fetchPapers, fittingPapers, type NotBound, type Paper } from "./papers.ts";
import { type Absent, fetchPhotos } from "./photos.ts";
import { printable } from "./printable.ts";
import { sha256Of } from "./shown.ts";
import { type StandIns, standInsFor } from "./stand-ins.ts";

const ROUNDS = 3;

/** Bytes that a record comes to at most with the papers that are bound in; its seal comes afterwards. Own. */
const MOST_BYTES = 9_750_000;

/** More pictures than these are made to fit before a page is open, which may be so for a minute: they take a tenth of it. Own. */
const MOST_BESIDE = 120;

/** Draws a record. */
export async function drawRecord(request: PrintRecord, printer: Printer): Promise<Outcome<Document>> {
  // before a page is open, which may be so only for a time: a store may be slow
  const fitting = new Fitting();
  const come = await filesFor(request, printer, fitting.take);
  if (!come.ok) return come;
  const making = fitting.all().then(async (files) => ({ files, standIns: await standInsFor(files) }));
  if (fitting.count > MOST_BESIDE) await making;
  const [document] = await Promise.all([onPage(printer, (page) => drawOn(page, request, printer, come.value, making)), making]);
  return document;
}

/**
 * Its pages are counted while its pictures are made to fit, then it is printed with their numbers; and once more where a photo did
 * not decode: a box that says so, never a blank.
 */
async function drawOn(
  page: Page,
  { model, attachments }: PrintRecord,
  { fonts }: Printer,
  { papers, ...come }: Come,
  making: Promise<Made>,
): Promise<Outcome<Document>> {
  const sheet = printable(model, fonts.has);
  const [counted, { files, standIns }] = await Promise.all([pagesOf(page, sheet, fonts), making]);
  if (!counted.ok) return counted;
  const attached = attachments.reduce((sum, { text }) => sum + deflateSync(text).length, 0);
  const { pages, count, bytes } = counted.value;
  const bound = fittingPapers(papers, MOST_BYTES - attached - bytes - bytesOf(files));
  // what was not drawn while pages were counted, such as the title of a paper, may need a face of its own
  const shown = new Map([...fonts.files, ...standIns.files]);
  let { absent } = come;
  for (let round = 0; round < ROUNDS; round += 1) {
    const surroundings = { fonts: fonts.css, photo: photoIn(model, absent), pages, bound: placed(bound, count) };
    const printed = await drawAgain(page, recordPage(sheet, surroundings), shown);
    if (!printed.ok) return printed;
    const { pdf, undecoded, headings } = printed.value;
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

interface Made {
  /** As they will lie in the record. */
  readonly files: ReadonlyMap<string, Served>;
  readonly standIns: StandIns;
}

interface Come {
  readonly absent: ReadonlyMap<string, Absent>;
  readonly papers: ReadonlyMap<string, Paper | NotBound>;
}

/** Pictures, each handed over as it comes, and papers. */
async function filesFor({ model, photos, key }: PrintRecord, { store }: Printer, picture: Fitting["take"]): Promise<Outcome<Come>> {
  const absent = await fetchPhotos(model, photos, store, picture);
  if (!absent.ok) return absent;
  const papers = await fetchPapers(model, key.slice(0, key.indexOf("/")), store);
  return papers.ok ? ok({ absent: absent.value, papers: papers.value }) : papers;
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
async function pagesOf(page: Page, model: RecordModel, { css, files }: Printer["fonts"]): Promise<Outcome<Counted>> {
  const photo = photoIn(model, new Map(), () => BLANK_ADDRESS);
  const html = recordPage(model, { fonts: css, photo, bound: roomForNumbers });
  const drawn = await draw(page, html, new Map([...files, [BLANK_ADDRESS, BLANK]]));
  return drawn.ok ? ok({ ...(await pagesOfParts(drawn.value.pdf, drawn.value.parts)), bytes: drawn.value.pdf.length }) : drawn;
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
  (model: RecordModel, absent: ReadonlyMap<string, Absent>, addressOf = photoAddress): PrintedPhoto =>
  ({ photo, rendition, missing }) => {
    const why = absent.get(photo);
    if (rendition !== undefined && why === undefined) return { address: addressOf(photo) };
    return { missing: missing ?? model.words[why ?? "photo-not-in-store"] ?? "" };
  };
