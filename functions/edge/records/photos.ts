import { cameraKnown, type PhotoKnown } from "#core/record/index.ts";
import { blurredKey, renditionKey } from "#functions/shared/index.ts";
import type { PhotoRow } from "../adapters/photos.ts";

/** What the record is told of the photos of a job; those that nobody has read yet are left out. */
export function photosKnown(company: string, photos: readonly PhotoRow[]): Readonly<Record<string, PhotoKnown>> {
  return Object.fromEntries(photos.filter(({ facts }) => facts !== undefined).map((photo) => [photo.sha256, known(company, photo)]));
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
