/** Of a picture, in pixels. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
}

const [BASELINE, PROGRESSIVE, SCAN] = [0xc0, 0xc2, 0xda];
/** Beside the frame: Huffman codes, restart interval, quantisation, comment, JFIF. */
const KNOWN = [0xc4, 0xdd, 0xdb, 0xfe, 0xe0];
/** Bytes of a frame of three components, from its marker on. */
const FRAME = 19;

/**
 * Pixels of a JPEG that every reader of PDF shows alike (ITU T.81): eight bits, Huffman codes, components 1, 2, 3 as JFIF numbers
 * them, and nothing in its header that turns it or says other colours. Undefined for every other one. Whether it is whole is not
 * looked at.
 */
export function plainJpeg(bytes: Uint8Array): Pixels | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let pixels: Pixels | undefined;
  if (bytes.length < 2 || view.getUint16(0) !== 0xffd8) return undefined;
  for (let at = 2; at + FRAME <= bytes.length && bytes[at] === 0xff; at += 2 + view.getUint16(at + 2)) {
    const marker = bytes[at + 1] as number;
    if (marker === SCAN) return pixels;
    if (marker === BASELINE || marker === PROGRESSIVE) {
      const [bits, count, ...numbers] = [4, 9, 10, 13, 16].map((place) => bytes[at + place]);
      if (bits !== 8 || count !== 3 || numbers.join() !== "1,2,3") return undefined;
      pixels = { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    } else if (!KNOWN.includes(marker)) return undefined;
  }
  return undefined;
}
