import type { Whats } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import type { PhotoReason } from "../../../photo/index.ts";

/** What this phone itself makes of a photo's pixels; it may not be able to open them at all. */
export type Judged =
  | { readonly verdict: "readable" }
  | { readonly verdict: "unreadable"; readonly reason: PhotoReason }
  | { readonly verdict: "not judged" };

/** What the worker answers; `small`: a JPEG for the phone's own pages, absent where the photo cannot be opened. */
export interface Looked {
  readonly number: number;
  readonly judged: Judged;
  readonly small?: ArrayBuffer;
}

/** A photo whose bytes this phone keeps. `taken`: the phone's clock, ms. */
export interface KeptPhoto {
  readonly sha256: string;
  readonly type: string;
  readonly bytes: number;
  readonly taken: number;
}

/** What a picture is entered for. */
export interface Pictured {
  readonly item: string;
  readonly tag?: string;
}

/** A photo that was chosen for a picture and is not entered yet, with what goes along with it. */
export interface Chosen {
  readonly photo: KeptPhoto;
  readonly judged?: Judged;
  readonly where?: Json;
}

/** The words of a picture's entry. */
export function pictureWhat(pictured: Pictured, { photo, judged }: Chosen, caption: string): Whats["picture-taken"] {
  const { sha256, bytes, type, taken } = photo;
  const said = caption.trim();
  const { item, tag } = pictured;
  return {
    item,
    ...(tag === undefined ? {} : { tag }),
    photo: sha256,
    bytes,
    // a phone does not always know what its own camera made
    type: type === "" ? "application/octet-stream" : type,
    taken,
    ...(judged === undefined || judged.verdict === "not judged" ? {} : { judged: judged.verdict }),
    ...(said === "" ? {} : { caption: said }),
  };
}

const DAY_MS = 86_400_000;
/** A file's time further back is that of a copy or of a lost clock (own). */
const OLDEST_DAYS = 30;

/**
 * When a chosen file was taken, as well as the phone knows: the file's own time, where it is plausible; else the moment it was
 * chosen. Milliseconds, the phone's clock.
 */
export function takenAt(lastModified: number, now: number): number {
  const plausible = Number.isSafeInteger(lastModified) && lastModified <= now && lastModified > now - OLDEST_DAYS * DAY_MS;
  return plausible ? lastModified : now;
}
