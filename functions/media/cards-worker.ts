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

/** The middle sample of each pixel, which is green, as the plainest grey file (PGM): half the time of four samples a pixel. */
function greyFile({ data, width, height, channels }: Base): Uint8Array {
  const head = new TextEncoder().encode(`P5\n${width} ${height}\n255\n`);
  const file = new Uint8Array(head.length + width * height);
  file.set(head);
  for (let at = head.length, from = channels < 3 ? 0 : 1; at < file.length; at += 1, from += channels) file[at] = data[from] as number;
  return file;
}

const cornersOf = ({ position: { topLeft, topRight, bottomRight, bottomLeft } }: ReadResult): CodeFound["corners"] => [
  [topLeft.x, topLeft.y],
  [topRight.x, topRight.y],
  [bottomRight.x, bottomRight.y],
  [bottomLeft.x, bottomLeft.y],
];

async function find(base: Base): Promise<CardsFound> {
  const results = await readBarcodes(greyFile(base), {
    formats: ["QRCode"],
    tryHarder: true,
    // these codes are found in any turn and size as it is, and no card is printed light on dark: each would be another search
    tryRotate: false,
    tryInvert: false,
    tryDownscale: false,
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
