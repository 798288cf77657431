import { strToU8, Zip, ZipPassThrough } from "fflate";
import type { Keep, KeepState, OwnPhoto } from "./keep/index.ts";

/** Bytes of photos in one file: more than this an old phone cannot put together. */
const PART = 48_000_000;

/** The photos that are not sent, in files that a phone can put together. */
export function partsOf(photos: readonly OwnPhoto[]): readonly (readonly OwnPhoto[])[] {
  const parts: OwnPhoto[][] = [[]];
  let bytes = 0;
  for (const photo of photos) {
    const last = parts.at(-1);
    if (last !== undefined && (last.length === 0 || bytes + photo.bytes <= PART)) {
      last.push(photo);
      bytes += photo.bytes;
    } else {
      parts.push([photo]);
      bytes = photo.bytes;
    }
  }
  return parts;
}

/** An archive without compression: photos are compressed already. */
export async function archiveOf(files: readonly { readonly name: string; readonly bytes: Uint8Array }[]): Promise<Blob> {
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  await new Promise<void>((resolve, reject) => {
    const zip = new Zip((error, piece, final) => {
      if (error) return reject(error);
      pieces.push(piece as Uint8Array<ArrayBuffer>);
      if (final) resolve();
    });
    for (const { name, bytes } of files) {
      const file = new ZipPassThrough(name);
      zip.add(file);
      file.push(bytes, true);
    }
    zip.end();
  });
  return new Blob(pieces, { type: "application/zip" });
}

const endings: Readonly<Record<string, string>> = {
  "image/jpeg": "jpg",
  "image/png": "png",
  "image/webp": "webp",
  "image/avif": "avif",
  "image/heic": "heic",
};

/**
 * Saves one part of what is not sent as a file of this phone: the sealed entries as they would go to the office, and photos named by
 * their hash. What was saved stays on the phone and is sent all the same.
 */
export async function savePart(keep: Keep, state: KeepState, part: number): Promise<{ readonly done: number; readonly all: number }> {
  const waiting = state.photos.filter(({ standing }) => standing === "not sent");
  const parts = partsOf(waiting);
  const entries = state.entries.filter(({ standing }) => standing !== "acknowledged").map(({ job, entry }) => ({ job, entry }));
  const files: { name: string; bytes: Uint8Array }[] = [
    { name: "entries.json", bytes: strToU8(JSON.stringify({ phone: state.phone, entries, photos: waiting }, null, 1)) },
  ];
  for (const { sha256, type } of parts[part] ?? []) {
    const bytes = await keep.bytesOf(sha256);
    if (bytes !== undefined) files.push({ name: `${sha256}.${endings[type] ?? "bin"}`, bytes: new Uint8Array(bytes) });
  }
  const address = URL.createObjectURL(await archiveOf(files));
  const link = document.createElement("a");
  link.href = address;
  link.download = `asburied-not-sent-${part + 1}-of-${parts.length}.zip`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return { done: part + 1, all: parts.length };
}
