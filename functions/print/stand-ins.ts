import { type PDFDocument, PDFName, PDFRawStream } from "@cantoo/pdf-lib";
import sharp from "sharp";
import type { Served } from "./origin.ts";
import { type Pixels, plainJpeg } from "./plain-jpeg.ts";
import { sha256Of } from "./shown.ts";

/**
 * What the browser is given in place of pictures. It puts a JPEG into its PDF byte for byte, and most of its time goes into taking
 * the bytes and decoding them: so it lays out plain grey ones of the same size, and the pictures take their places afterwards.
 */
export interface StandIns {
  /** Stand-ins, and as they are those pictures of which the browser has to say whether and how they show. */
  readonly files: ReadonlyMap<string, Served>;
  /** Bytes of pictures, by the SHA-256 of what stands in for each. */
  readonly pictures: ReadonlyMap<string, Uint8Array>;
}

/** Longest edge of what gets a stand-in, pixels: media makes none longer than 1600. Own. */
const LONGEST = 4096;
/** As small as the library decodes while it reads: every block is still read. */
const SHRINK = 8;

/** Whether the picture is whole, to its last block. */
async function decodes(bytes: Uint8Array, { width }: Pixels): Promise<boolean> {
  try {
    await sharp(bytes)
      .resize({ width: Math.ceil(width / SHRINK) })
      .raw()
      .toBuffer();
    return true;
  } catch {
    return false;
  }
}

const grey = ({ width, height }: Pixels): Promise<Buffer> =>
  sharp({ create: { width, height, channels: 3, background: "#888888" } })
    .jpeg({ quality: 50 })
    .toBuffer();

/** With a comment behind its first two bytes (ITU T.81, COM), so that no two are alike. */
const commented = (jpeg: Buffer, comment: string): Uint8Array => {
  const text = Buffer.from(comment, "latin1");
  return new Uint8Array(Buffer.concat([jpeg.subarray(0, 2), Buffer.from([0xff, 0xfe, 0, 2 + text.length]), text, jpeg.subarray(2)]));
};

/** A stand-in for every picture that is plain and whole; one after another, since print holds a browser beside them. */
export async function standInsFor(files: ReadonlyMap<string, Served>): Promise<StandIns> {
  const greys = new Map<string, Buffer>();
  const given = new Map<string, Served>();
  const pictures = new Map<string, Uint8Array>();
  for (const [address, served] of files) {
    const pixels = plainJpeg(served.bytes);
    const fits = pixels !== undefined && Math.min(pixels.width, pixels.height) > 0 && Math.max(pixels.width, pixels.height) <= LONGEST;
    if (!fits || !(served.whole || (await decodes(served.bytes, pixels)))) {
      given.set(address, served);
      continue;
    }
    const size = `${pixels.width} ${pixels.height}`;
    const made = greys.get(size) ?? (await grey(pixels));
    greys.set(size, made);
    const bytes = commented(made, address);
    given.set(address, { type: "image/jpeg", bytes, whole: true });
    pictures.set(sha256Of(bytes), served.bytes);
  }
  return { files: given, pictures };
}

/** Puts the pictures where their stand-ins are. Throws where one is not in the document as it was given to the browser. */
export function putPictures(document: PDFDocument, pictures: StandIns["pictures"]): void {
  const left = new Set(pictures.keys());
  for (const [reference, object] of document.context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFRawStream) || object.dict.get(PDFName.of("Subtype")) !== PDFName.of("Image")) continue;
    const standIn = sha256Of(object.contents);
    const picture = pictures.get(standIn);
    if (picture === undefined) continue;
    // as many pixels of the same colours: only the bytes are others
    document.context.assign(reference, PDFRawStream.of(object.dict, picture));
    left.delete(standIn);
  }
  if (left.size > 0) throw new Error(`${left.size} of ${pictures.size} pictures have no place in the document`);
}
