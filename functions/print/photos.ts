import { type Outcome, ok } from "#core/outcome/index.ts";
import { filesOf, type RecordModel } from "#core/record/index.ts";
import { type Store, sniff } from "#functions/shared/index.ts";
import { photoAddress, type Served } from "./origin.ts";

/** Why a picture is printed as missing although the model names its rendition: a key of the record's words. */
export type Absent = "photo-not-in-store" | "photo-unreadable";

const AT_ONCE = 6;

/** The hashes of all pictures that the model expects to print, each once. */
export const photosOf = (model: RecordModel): readonly string[] => [
  ...new Set(
    filesOf(model)
      .filter(({ rendition }) => rendition !== undefined)
      .map(({ photo }) => photo),
  ),
];

/**
 * Fetches the print renditions and hands each over as it comes, by its address on print's own origin. Answers those that are not
 * there, by the SHA-256 of the original; a store that is down is `store-unavailable`.
 */
export async function fetchPhotos(
  model: RecordModel,
  keys: Readonly<Record<string, string>>,
  store: Pick<Store, "get">,
  picture: (address: string, served: Served) => void,
): Promise<Outcome<ReadonlyMap<string, Absent>>> {
  const absent = new Map<string, Absent>();
  const fetchOne = async (photo: string): Promise<Outcome<null>> => {
    const key = keys[photo];
    const got = key === undefined ? undefined : await store.get(key);
    if (got === undefined || (!got.ok && got.refusal.code === "photo-unknown")) {
      absent.set(photo, "photo-not-in-store");
      return ok(null);
    }
    if (!got.ok) return got;
    const bytes = await got.value.bytes();
    if (!bytes.ok) return bytes;
    // Only a JPEG goes into the PDF as it is; anything else would be decoded and grow many times over.
    if (sniff(bytes.value) === "image/jpeg") picture(photoAddress(photo), { type: "image/jpeg", bytes: bytes.value });
    else absent.set(photo, "photo-unreadable");
    return ok(null);
  };
  const waiting = [...photosOf(model)];
  while (waiting.length > 0) {
    for (const outcome of await Promise.all(waiting.splice(0, AT_ONCE).map(fetchOne))) if (!outcome.ok) return outcome;
  }
  return ok(absent);
}
