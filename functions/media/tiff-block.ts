import type { PhotoNote } from "#core/photo/index.ts";

/** The camera's notes as the bare TIFF block that they are in every container, or why there is none. */
export interface Lifted {
  /** Undefined where there is none, or none that begins as such. Cut short where the file is. */
  readonly block?: Uint8Array | undefined;
  readonly note?: Extract<PhotoNote, "metadata-missing" | "metadata-broken" | "metadata-cut-off">;
}

export const view = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** So many bytes as text; fewer where the file ends. */
export const ascii = (bytes: Uint8Array, at: number, length: number): string => String.fromCharCode(...bytes.subarray(at, at + length));

/** Some writers put their own few bytes before the block; own. */
const MOST_BEFORE = 32;

/** The TIFF block in what a container declares as Exif: behind an optional `Exif\0\0` and the like; undefined where none begins. */
export function tiffIn(payload: Uint8Array): Uint8Array | undefined {
  for (let at = 0; at <= MOST_BEFORE && at + 8 <= payload.length; at += 1) {
    const begins = ascii(payload, at, 4);
    if (begins === "II*\0" || begins === "MM\0*") return payload.subarray(at);
  }
  return undefined;
}
