import { parentPort } from "node:worker_threads";
import libheif, { type HeicImage } from "libheif-js/wasm-bundle.js";

export interface HeicAsked {
  readonly bytes: Uint8Array;
  readonly mostPixels: number;
}

export type HeicAnswer =
  | { readonly ok: true; readonly width: number; readonly height: number; readonly pixels: Uint8Array }
  | {
      readonly ok: false;
      readonly why: "undecodable" | "too-many-pixels";
      readonly says: string;
      readonly width?: number;
      readonly height?: number;
    };

parentPort?.on("message", async (asked: HeicAsked) => {
  const answer = await decode(asked);
  parentPort?.postMessage(answer, answer.ok ? [answer.pixels.buffer as ArrayBuffer] : []);
});

/** Upright by the container's own turn, RGBA. Everything is freed, else the decoder's memory grows photo by photo. */
async function decode({ bytes, mostPixels }: HeicAsked): Promise<HeicAnswer> {
  const decoder = new libheif.HeifDecoder();
  let images: HeicImage[] = [];
  try {
    images = decoder.decode(bytes);
    const image = images.find((one) => one.is_primary()) ?? images[0];
    if (!image) return { ok: false, why: "undecodable", says: "no picture in the container" };
    const width = image.get_width();
    const height = image.get_height();
    if (width * height > mostPixels) return { ok: false, why: "too-many-pixels", says: "", width, height };
    const pixels = new Uint8Array(width * height * 4);
    const shown = await new Promise<object | null>((resolve) =>
      image.display({ data: new Uint8ClampedArray(pixels.buffer), width, height }, resolve),
    );
    if (shown === null) return { ok: false, why: "undecodable", says: "the picture's data cannot be decoded", width, height };
    return { ok: true, width, height, pixels };
  } catch (thrown) {
    return { ok: false, why: "undecodable", says: thrown instanceof Error ? thrown.message : String(thrown) };
  } finally {
    for (const image of images) image.free();
    if (decoder.decoder) libheif.heif_context_free(decoder.decoder);
  }
}
