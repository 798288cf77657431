import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { picturesOf, type RecordModel } from "#core/record/index.ts";
import type { PrintRecord } from "#functions/shared/index.ts";
import { type PrintedPhoto, recordPage, recordTitle } from "#templates/record/index.ts";
import { type Document, drawn, type Printer } from "./document.ts";
import type { Drawn } from "./draw.ts";
import { fitted } from "./fitted.ts";
import { photoAddress, type Served } from "./origin.ts";
import { pagesOfParts } from "./outline.ts";
import { type Absent, fetchPhotos } from "./photos.ts";
import { printable } from "./printable.ts";
import { sha256Of } from "./shown.ts";

const ROUNDS = 3;

/** Draws a record, and once more where a photo did not decode: a box that says so, never a blank. */
export async function drawRecord({ model, photos: keys, attachments }: PrintRecord, printer: Printer): Promise<Outcome<Document>> {
  const photos = await fetchPhotos(model, keys, printer.store);
  if (!photos.ok) return photos;
  let { absent } = photos.value;
  const files = await fitted(photos.value.files);
  for (let round = 0; round < ROUNDS; round += 1) {
    const page = await withContents(printable(model, printer.fonts.has), photoIn(model, absent), files, printer);
    if (!page.ok) return page;
    const { pdf, undecoded, headings } = page.value;
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
    });
  }
  return refuse("print-failed", "print", { why: "browser" });
}

/** Laid out twice: only then is it known on which page each part begins, and the numbers have their room already. */
async function withContents(
  model: RecordModel,
  photo: PrintedPhoto,
  files: ReadonlyMap<string, Served>,
  printer: Printer,
): Promise<Outcome<Drawn>> {
  const surroundings = { fonts: printer.fonts.css, photo };
  const first = await drawn(printer, recordPage(model, surroundings), files);
  if (!first.ok || first.value.undecoded.length > 0) return first;
  const pages = await pagesOfParts(first.value.pdf, first.value.parts);
  return drawn(printer, recordPage(model, { ...surroundings, pages }), files);
}

/** SHA-256 of the pictures that are in the record, as they are in it. */
const printedIn = (
  model: RecordModel,
  files: ReadonlyMap<string, { readonly bytes: Uint8Array }>,
  absent: ReadonlyMap<string, Absent>,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    picturesOf(model).flatMap(({ photo }) => {
      const file = absent.has(photo) ? undefined : files.get(photoAddress(photo));
      return file === undefined ? [] : [[photo, sha256Of(file.bytes)]];
    }),
  );

const withUndecoded = (
  absent: ReadonlyMap<string, Absent>,
  addresses: readonly string[],
  model: RecordModel,
): ReadonlyMap<string, Absent> => {
  const unreadable = picturesOf(model)
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
