import { type Outcome, ok } from "#core/outcome/index.ts";
import { filesOf, type RecordModel } from "#core/record/index.ts";
import { type PrintPicture, type PrintRecord, type Store, sniff } from "#functions/shared/index.ts";
import { MOST_PICTURE_BYTES } from "./fitted.ts";
import { photoAddress, type Served } from "./origin.ts";
import { sha256Of } from "./shown.ts";

/** Why a picture is printed as missing although the model names its rendition: a key of the record's words. */
export type Absent = "photo-not-in-store" | "photo-unreadable";

const AT_ONCE = 4;

/** The hashes of all pictures that the model expects to print, each once. */
export const photosOf = (model: RecordModel): readonly string[] => [
  ...new Set(
    filesOf(model)
      .filter(({ rendition }) => rendition !== undefined)
      .map(({ photo }) => photo),
  ),
];

/**
 * All pictures in the same of their sizes: the largest in which they come to no more than `most` bytes, as far as that is known, or
 * the smallest. Behind it the larger ones, for where it is not in the store.
 */
export function sizesToAsk(
  photos: readonly string[],
  pictures: PrintRecord["photos"],
  most: number,
): ReadonlyMap<string, readonly PrintPicture[]> {
  const known = photos.flatMap((photo) => (pictures[photo] === undefined ? [] : [[photo, pictures[photo]] as const]));
  const last = Math.max(0, ...known.map(([, sizes]) => sizes.length - 1));
  const bytesIn = (size: number): number =>
    known.reduce((sum, [, sizes]) => sum + (sizes[Math.min(size, sizes.length - 1)]?.bytes ?? 0), 0);
  let size = 0;
  while (size < last && bytesIn(size) > most) size += 1;
  return new Map(known.map(([photo, sizes]) => [photo, sizes.slice(0, size + 1).reverse()]));
}

/**
 * Fetches pictures and hands each over as it comes, by its address on print's own origin. Answers those that are not there, by the
 * SHA-256 of the original; a store that is down is `store-unavailable`.
 */
export async function fetchPhotos(
  model: RecordModel,
  pictures: PrintRecord["photos"],
  store: Pick<Store, "get">,
  picture: (address: string, served: Served) => void,
): Promise<Outcome<ReadonlyMap<string, Absent>>> {
  const absent = new Map<string, Absent>();
  const photos = photosOf(model);
  const asked = sizesToAsk(photos, pictures, MOST_PICTURE_BYTES);
  const fetchOne = async (photo: string): Promise<Outcome<null>> => {
    for (const { key, sha256 } of asked.get(photo) ?? []) {
      const got = await store.get(key);
      if (!got.ok && got.refusal.code === "photo-unknown") continue;
      if (!got.ok) return got;
      const read = await got.value.bytes();
      if (!read.ok) return read;
      const bytes = read.value;
      // Only a JPEG goes into the PDF as it is; anything else would be decoded and grow many times over.
      if (sniff(bytes) !== "image/jpeg") absent.set(photo, "photo-unreadable");
      else picture(photoAddress(photo), { type: "image/jpeg", bytes, ...(sha256 === sha256Of(bytes) && { whole: true }) });
      return ok(null);
    }
    absent.set(photo, "photo-not-in-store");
    return ok(null);
  };
  const waiting = [...photos];
  let outcome: Outcome<null> = ok(null);
  const lane = async (): Promise<void> => {
    for (let photo = waiting.shift(); photo !== undefined && outcome.ok; photo = waiting.shift()) {
      const fetched = await fetchOne(photo);
      if (!fetched.ok) outcome = fetched;
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
  return outcome.ok ? ok(absent) : outcome;
}
