import type { Grey } from "./grey.ts";

/** Codes of a whole card. */
export const WHOLE_CARD = 4;
/** Modules along a side of its codes: the smallest version. */
export const CARD_MODULES = 21;

/** How codes of cards are looked for, on the phone and in media alike, in the words of the library that decodes. */
export const cardDecoding = {
  formats: ["QRCode" as const],
  tryHarder: true,
  // these codes are found in any turn and size as it is, and no card is printed light on dark: each would be another search
  tryRotate: false,
  tryInvert: false,
  tryDownscale: false,
  // two cards of four, and as many again of other codes
  maxNumberOfSymbols: 16,
};

/** Grey pixels as the plainest file of them (PGM), which a decoder takes in half the time of four samples a pixel. */
export function greyFile({ width, height, pixels }: Grey): Uint8Array<ArrayBuffer> {
  const head = `P5\n${width} ${height}\n255\n`;
  const file = new Uint8Array(head.length + pixels.length);
  for (let at = 0; at < head.length; at += 1) file[at] = head.charCodeAt(at);
  file.set(pixels, head.length);
  return file;
}
