import { createHash } from "node:crypto";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { picturesOf, type RecordModel } from "#core/record/index.ts";
import type { PrintAnswer, PrintRequest, Store } from "#functions/shared/index.ts";
import { type PrintedPhoto, recordPage, recordTitle } from "#templates/record/index.ts";
import type { WarmBrowser } from "./browser.ts";
import { type Drawn, draw } from "./draw.ts";
import { finish } from "./finish.ts";
import type { Fonts } from "./fonts.ts";
import { photoAddress } from "./origin.ts";
import { type Absent, type FetchedPhotos, fetchPhotos } from "./photos.ts";
import { printable } from "./printable.ts";

export interface Printer {
  readonly store: Pick<Store, "get" | "put">;
  readonly browser: Pick<WarmBrowser, "withPage">;
  readonly fonts: Fonts;
}

/** Prints a record and puts it into the store. Refusals: `store-unavailable`, `print-failed` (with why). */
export async function print(request: PrintRequest, { store, browser, fonts }: Printer): Promise<Outcome<PrintAnswer>> {
  const { model, key, attachments } = request;
  const photos = await fetchPhotos(model, request.photos, store);
  if (!photos.ok) return photos;
  const drawn = await drawRecord(model, photos.value, fonts, browser);
  if (!drawn.ok) return drawn;
  const { pdf, pages } = await finish(drawn.value.pdf, {
    title: recordTitle(model),
    language: model.language,
    issuedAt: model.title.issuedAt,
    id: sha256(JSON.stringify(model)).slice(0, 32),
    headings: drawn.value.headings,
    attachments,
  });
  const hash = sha256(pdf);
  const stored = await store.put(key, pdf, { length: pdf.length, type: "application/pdf", sha256: hash });
  if (!stored.ok) return stored;
  return ok({ sha256: hash, bytes: pdf.length, pages, missing: [...drawn.value.absent.keys()] });
}

const sha256 = (content: string | Uint8Array): string => createHash("sha256").update(content).digest("hex");

type DrawnRecord = Drawn & { readonly absent: ReadonlyMap<string, Absent> };

/** Draws, and once more where a photo did not decode or the browser died: a box that says so, never a blank. */
async function drawRecord(
  model: RecordModel,
  photos: FetchedPhotos,
  fonts: Fonts,
  browser: Printer["browser"],
): Promise<Outcome<DrawnRecord>> {
  let absent = photos.absent;
  let last: Outcome<DrawnRecord> = refuse("print-failed", "print", { why: "browser" });
  for (let round = 0; round < 3; round += 1) {
    const html = recordPage(printable(model, fonts.has), { fonts: fonts.css, photo: photoIn(model, absent) });
    const files = new Map([...fonts.files, ...photos.files]);
    const drawn = await browser.withPage((page) => draw(page, html, files));
    if (drawn.ok && drawn.value.undecoded.length === 0) return ok({ ...drawn.value, absent });
    if (drawn.ok) absent = withUndecoded(absent, drawn.value.undecoded, model);
    else if (drawn.refusal.figures.why !== "browser-ended") return drawn;
    else last = drawn;
  }
  return last;
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
