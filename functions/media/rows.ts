import { type Header, open, type Strictness } from "./decode.ts";

/** Rows are counted to a hundredth of the height: the figure says how much is lost, not where to cut. */
const PARTS = 100;

/**
 * How many rows of a damaged picture can be decoded in full, counted as stored, from the top: the decoder is asked for
 * less and less of them. None where the coding needs the whole file (progressive, interlaced).
 */
export async function readableRows(bytes: Uint8Array, { width, height }: Header, strictness: Strictness): Promise<number> {
  const decodes = async (rows: number): Promise<boolean> => {
    const part = open(bytes, strictness).extract({ left: 0, top: 0, width, height: rows });
    // Small at once, so that its pixels are not all held; every coded row is read all the same.
    const small = part.resize({ width: Math.min(width, 16), height: Math.min(rows, 16), fit: "fill", fastShrinkOnLoad: false });
    return small
      .raw()
      .toBuffer()
      .then(
        () => true,
        () => false,
      );
  };
  const step = Math.max(1, Math.floor(height / PARTS));
  if (!(await decodes(1))) return 0;
  let good = 1;
  let bad = height;
  while (bad - good > step) {
    const middle = (good + bad) >> 1;
    if (await decodes(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
