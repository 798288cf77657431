import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { picturesOf, type RecordModel } from "#core/record/index.ts";
import type { PrintRecord } from "#functions/shared/index.ts";
import { type PrintedPhoto, recordPage, recordTitle } from "#templates/record/index.ts";
import { type Document, drawn, type Printer } from "./document.ts";
import { photoAddress } from "./origin.ts";
import { type Absent, fetchPhotos } from "./photos.ts";
import { printable } from "./printable.ts";

const ROUNDS = 3;

/** Draws a record, and once more where a photo did not decode: a box that says so, never a blank. */
export async function drawRecord({ model, photos: keys, attachments }: PrintRecord, printer: Printer): Promise<Outcome<Document>> {
  const photos = await fetchPhotos(model, keys, printer.store);
  if (!photos.ok) return photos;
  let { absent } = photos.value;
  for (let round = 0; round < ROUNDS; round += 1) {
    const html = recordPage(printable(model, printer.fonts.has), { fonts: printer.fonts.css, photo: photoIn(model, absent) });
    const page = await drawn(printer, html, photos.value.files);
    if (!page.ok) return page;
    const { pdf, undecoded, headings } = page.value;
    if (undecoded.length > 0) {
      absent = withUndecoded(absent, undecoded, model);
      continue;
    }
    const { language, title } = model;
    return ok({ pdf, headings, title: recordTitle(model), language, issuedAt: title.issuedAt, attachments, missing: [...absent.keys()] });
  }
  return refuse("print-failed", "print", { why: "browser" });
}

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
