import type { Json } from "#core/ledger/index.ts";
import { cameraKnown, type PhotoKnown, readSettings } from "#core/record/index.ts";
import { markKeys, type PrintPicture, type PrintRecord } from "#functions/shared/index.ts";
import type { PhotoRow } from "../adapters/photos.ts";
import { shownKey } from "../photos/shown-key.ts";

/** What the record is told of the photos of a job; those that nobody has read yet are left out. */
export function photosKnown(company: string, photos: readonly PhotoRow[]): Readonly<Record<string, PhotoKnown>> {
  return Object.fromEntries(photos.filter(({ facts }) => facts !== undefined).map((photo) => [photo.sha256, known(company, photo)]));
}

/** The company's mark beside them, by the hash of what was sent. */
export function markKnown(company: string, settings: Json | undefined): Readonly<Record<string, PhotoKnown>> {
  const { mark } = readSettings(settings);
  return mark === undefined ? {} : { [mark]: { rendition: markKeys(company, mark).paper } };
}

function known(company: string, photo: PhotoRow): PhotoKnown {
  const { facts, blurred } = photo;
  if (!facts) return {};
  const print = facts.renditions.find(({ name }) => name === "print");
  return {
    ...(print ? { rendition: shownKey(company, photo, "print"), width: print.width, height: print.height } : {}),
    ...(blurred === undefined ? {} : { blurred: true }),
    ...(facts.unreadable ? { unreadable: true } : {}),
    ...cameraKnown(facts),
  };
}

const forPaper = ["print", "column"] as const;

/** What print may choose from, the largest first. Of blurred ones nothing was kept but the keys; they come to about as much. */
function picturesOf(company: string, photo: PhotoRow): readonly PrintPicture[] {
  const { facts, blurred } = photo;
  return forPaper.flatMap((name) => {
    const rendition = facts?.renditions.find((one) => one.name === name);
    if (rendition === undefined) return [];
    const { bytes, sha256 } = rendition;
    return [{ key: shownKey(company, photo, name), bytes, ...(blurred === undefined && { sha256 }) }];
  });
}

/** The pictures of a job and the company's mark for print, by the hash of what was sent. */
export function picturesToPrint(
  company: string,
  photos: readonly PhotoRow[],
  mark: Readonly<Record<string, PhotoKnown>>,
): PrintRecord["photos"] {
  const own = Object.entries(mark).flatMap(([sha256, { rendition }]) =>
    rendition === undefined ? [] : [[sha256, [{ key: rendition }]] as const],
  );
  const all = photos.map((photo) => [photo.sha256, picturesOf(company, photo)] as const);
  return Object.fromEntries([...all.filter(([, pictures]) => pictures.length > 0), ...own]);
}
