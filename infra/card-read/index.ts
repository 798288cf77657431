import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import sharp from "sharp";
import { prepareZXingModule, type ReadResult, readBarcodes } from "zxing-wasm/reader";
import type { SeenCode } from "#core/geometry/index.ts";
import { codeCorners, type FourCorners, type Grey, greyFromRgba, type PicturePoint, stretched, stretches } from "#core/photo/index.ts";
import type { PrintedCode, Window } from "../scenes/index.ts";

const wasm = readFileSync(createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm"));
// else it is fetched from a server
prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });

export interface Read {
  readonly codes: readonly SeenCode[];
  /** Codes that were decoded, with or without corners that could be refined; and in how many passes. */
  readonly decoded: number;
  readonly passes: number;
}

/** A look at 50° squeezes by this much. */
const DRAWN_OUT = 1.6;

function decode({ width, height, pixels }: Grey): Promise<ReadResult[]> {
  const data = new Uint8ClampedArray(4 * pixels.length);
  const words = new Uint32Array(data.buffer);
  for (let at = 0; at < pixels.length; at += 1) words[at] = 0xff000000 | ((pixels[at] as number) * 0x010101);
  return readBarcodes({ data, width, height, colorSpace: "srgb" } as Parameters<typeof readBarcodes>[0], {
    formats: ["QRCode"],
    tryHarder: true,
    maxNumberOfSymbols: 8,
  });
}

interface Decoded {
  readonly rough: FourCorners;
  readonly modules: number;
}

/** Every code by its name: in the picture as it is, and drawn out in four directions while one is missing. */
async function decodeAll(
  grey: Grey,
  printed: readonly PrintedCode[],
): Promise<{ readonly found: ReadonlyMap<string, Decoded>; readonly passes: number }> {
  const found = new Map<string, Decoded>();
  const note = (results: readonly ReadResult[], back: (spot: PicturePoint) => PicturePoint): void => {
    for (const { text, position, symbol } of results) {
      const name = printed.find((code) => code.text === text)?.name;
      if (name === undefined || found.has(name)) continue;
      const { topLeft, topRight, bottomRight, bottomLeft } = position;
      found.set(name, { rough: [back(topLeft), back(topRight), back(bottomRight), back(bottomLeft)], modules: symbol.width });
    }
  };
  note(await decode(grey), (spot) => spot);
  let passes = 1;
  for (const direction of stretches) {
    if (found.size === printed.length) break;
    const { picture, back } = stretched(grey, direction, DRAWN_OUT);
    note(await decode(picture), back);
    passes += 1;
  }
  return { found, passes };
}

/** The codes of a card in a JPEG as media would read them: decoded, corners refined, in pixels of the whole picture. */
export async function readCodes(jpeg: Uint8Array, printed: readonly PrintedCode[], { x, y }: Window): Promise<Read> {
  const { data, info } = await sharp(jpeg).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  const grey = greyFromRgba(new Uint8Array(data.buffer, data.byteOffset, data.length), info.width, info.height);
  const { found, passes } = await decodeAll(grey, printed);
  const codes = [...found].flatMap(([name, { rough, modules }]): SeenCode[] => {
    const corners = codeCorners(grey, rough, modules);
    if (corners === undefined) return [];
    const [a, b, c, d] = corners.map((corner) => ({ ...corner, x: corner.x + x, y: corner.y + y }));
    return a && b && c && d ? [{ name, corners: [a, b, c, d] }] : [];
  });
  return { codes, decoded: found.size, passes };
}
