import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { parentPort } from "node:worker_threads";
import { prepareZXingModule, type ReadResult, readBarcodes } from "zxing-wasm/reader";
import { cardSigns } from "#core/photo/index.ts";
import type { Base } from "./decode.ts";

/** A code of a card, corners in the pixels of what was looked at: code upright, from its upper left corner clockwise. */
export interface CodeFound {
  readonly text: string;
  readonly corners: readonly [Corner, Corner, Corner, Corner];
}
type Corner = readonly [x: number, y: number];

export interface CardsFound {
  readonly codes: readonly CodeFound[];
  /** Something that looks like a code could not be read: it may be too small here. */
  readonly unread: boolean;
}

/** Two cards of four, and as many again of other codes. */
const MOST_CODES = 16;

// else it is fetched from a server
const wasm = readFileSync(createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm"));
prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });

/** The decoder wants four samples a pixel. */
function fourSamples({ data, width, height, channels }: Base): Uint8ClampedArray<ArrayBuffer> {
  const pixels = new Uint8ClampedArray(4 * width * height);
  const words = new Uint32Array(pixels.buffer);
  const [green, blue] = channels < 3 ? [0, 0] : [1, 2];
  for (let at = 0, from = 0; at < words.length; at += 1, from += channels)
    words[at] = 0xff000000 | ((data[from + blue] as number) << 16) | ((data[from + green] as number) << 8) | (data[from] as number);
  return pixels;
}

const cornersOf = ({ position: { topLeft, topRight, bottomRight, bottomLeft } }: ReadResult): CodeFound["corners"] => [
  [topLeft.x, topLeft.y],
  [topRight.x, topRight.y],
  [bottomRight.x, bottomRight.y],
  [bottomLeft.x, bottomLeft.y],
];

async function find(base: Base): Promise<CardsFound> {
  const picture = { data: fourSamples(base), width: base.width, height: base.height, colorSpace: "srgb" };
  const results = await readBarcodes(picture as Parameters<typeof readBarcodes>[0], {
    formats: ["QRCode"],
    tryHarder: true,
    // these codes are found in any turn as it is, and no card is printed light on dark: each would be another search
    tryRotate: false,
    tryInvert: false,
    returnErrors: true,
    maxNumberOfSymbols: MOST_CODES,
  });
  // what stands in other codes is nobody's business here
  const codes = results.filter(({ isValid, text }) => isValid && cardSigns(text) !== "not a card");
  return {
    codes: codes.map((result) => ({ text: result.text, corners: cornersOf(result) })),
    unread: results.some(({ isValid }) => !isValid),
  };
}

parentPort?.on("message", (base: Base) => {
  void find(base)
    .catch((): CardsFound => ({ codes: [], unread: false }))
    .then((found) => parentPort?.postMessage(found));
});
