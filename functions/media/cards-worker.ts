import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { parentPort } from "node:worker_threads";
import { prepareZXingModule, type ReadResult, readBarcodes } from "zxing-wasm/reader";
import { cardDecoding, cardSigns, type Grey, greyFile } from "#core/photo/index.ts";
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

// else it is fetched from a server
const wasm = readFileSync(createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm"));
prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });

/** The middle sample of each pixel, which is green. */
function greyOf({ data, width, height, channels }: Base): Grey {
  const pixels = new Uint8Array(width * height);
  for (let at = 0, from = channels < 3 ? 0 : 1; at < pixels.length; at += 1, from += channels) pixels[at] = data[from] as number;
  return { width, height, pixels };
}

const cornersOf = ({ position: { topLeft, topRight, bottomRight, bottomLeft } }: ReadResult): CodeFound["corners"] => [
  [topLeft.x, topLeft.y],
  [topRight.x, topRight.y],
  [bottomRight.x, bottomRight.y],
  [bottomLeft.x, bottomLeft.y],
];

async function find(base: Base): Promise<CardsFound> {
  const results = await readBarcodes(greyFile(greyOf(base)), { ...cardDecoding, returnErrors: true });
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
