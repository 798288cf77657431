import { blurredKey, type RenditionName, renditionKey } from "#functions/shared/index.ts";
import type { PhotoRow } from "../adapters/photos.ts";

/** Where the rendition lies that everybody is shown, on screen and on paper: of a photo in which parts are blurred, the one with them blurred. */
export const shownKey = (company: string, { sha256, blurred }: PhotoRow, name: RenditionName): string =>
  blurred === undefined ? renditionKey(company, sha256, name) : blurredKey(company, sha256, name, blurred);
