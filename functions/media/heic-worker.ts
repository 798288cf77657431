import { parentPort } from "node:worker_threads";
import libheif from "libheif-js/wasm-bundle.js";
import { HeicMemory, type HeicPlane } from "./heic-memory.ts";
import { readableHeicRows, type StoredRows } from "./heic-rows.ts";
import { tiffFor } from "./tiff.ts";

export interface HeicAsked {
  readonly bytes: Uint8Array;
  readonly mostPixels: number;
  /** ICC profile of the pixels; absent: sRGB. */
  readonly profile: Uint8Array | undefined;
}

export type HeicAnswer =
  | { readonly ok: true; readonly width: number; readonly height: number; readonly tiff: Uint8Array<ArrayBuffer> }
  | {
      readonly ok: false;
      readonly why: "undecodable" | "too-many-pixels";
      readonly says: string;
      readonly width?: number;
      readonly height?: number;
      /** Where tiles could be looked at one by one: how many rows can be decoded in full, of how many. */
      readonly stored?: StoredRows;
    };

parentPort?.on("message", (asked: HeicAsked) => {
  const answer = decode(asked);
  parentPort?.postMessage(answer, answer.ok ? [answer.tiff.buffer] : []);
});

function decode({ bytes, mostPixels, profile }: HeicAsked): HeicAnswer {
  const opened = HeicMemory.open(libheif, bytes);
  if (typeof opened === "string") return { ok: false, why: "undecodable", says: opened };
  try {
    const { width, height } = opened.size;
    if (width * height > mostPixels) return { ok: false, why: "too-many-pixels", says: "", width, height };
    const strict = pixelsOf(opened, profile, true);
    if (typeof strict !== "string") return { ok: true, width, height, tiff: strict };
    const stored = readableHeicRows(opened);
    // Every tile is there: what the strict decoder minds is no loss of pixels.
    const lenient = stored.height > 0 && stored.rows === stored.height ? pixelsOf(opened, profile, false) : strict;
    if (typeof lenient !== "string") return { ok: true, width, height, tiff: lenient };
    return { ok: false, why: "undecodable", says: strict, width, height, stored };
  } finally {
    opened.close();
  }
}

/** The pixels written straight into the file that the image library reads: 36 MB need not be copied twice. Text: why not. */
function pixelsOf(heic: HeicMemory, profile: Uint8Array | undefined, strict: boolean): Uint8Array<ArrayBuffer> | string {
  const { width, height } = heic.size;
  const samples = heic.hasAlpha ? 4 : 3;
  let file: Uint8Array<ArrayBuffer> | undefined;
  const failed = heic.decode(samples, strict, (plane) => {
    // What was decoded must be what the header said, else rows would be read from beside it.
    if (plane.width === width && plane.height === height) file = tiffOf(plane, samples, profile);
  });
  return failed ?? file ?? "the picture is not as large as its header says";
}

function tiffOf({ width, height, stride, data }: HeicPlane, samples: 3 | 4, profile: Uint8Array | undefined): Uint8Array<ArrayBuffer> {
  const { file, pixels } = tiffFor(width, height, samples, profile);
  const row = width * samples;
  for (let y = 0; y < height; y += 1) pixels.set(data.subarray(y * stride, y * stride + row), y * row);
  return file;
}
