import type { Json } from "#core/ledger/index.ts";
import { cameraKnown, type PhotoKnown, readSettings } from "#core/record/index.ts";
import { blurredKey, markKeys, renditionKey } from "#functions/shared/index.ts";
import type { PhotoRow } from "../adapters/photos.ts";

/** What the record is told of the photos of a job; those that nobody has read yet are left out. */
export function photosKnown(company: string, photos: readonly PhotoRow[]): Readonly<Record<string, PhotoKnown>> {
  return Object.fromEntries(photos.filter(({ facts }) => facts !== undefined).map((photo) => [photo.sha256, known(company, photo)]));
}

/** The company's mark beside them, by the hash of what was sent. */
export function markKnown(company: string, settings: Json | undefined): Readonly<Record<string, PhotoKnown>> {
  const { mark } = readSettings(settings);
  return mark === undefined ? {} : { [mark]: { rendition: markKeys(company, mark).paper } };
}

function known(company: string, { sha256, facts, blurred }: PhotoRow): PhotoKnown {
  if (!facts) return {};
  const print = facts.renditions.find(({ name }) => name === "print");
  return {
    ...(print
      ? {
          rendition: blurred === undefined ? renditionKey(company, sha256, "print") : blurredKey(company, sha256, "print", blurred),
          width: print.width,
          height: print.height,
        }
      : {}),
    ...(blurred === undefined ? {} : { blurred: true }),
    ...(facts.unreadable ? { unreadable: true } : {}),
    ...cameraKnown(facts),
  };
}
