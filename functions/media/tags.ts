import { Exifr } from "exifr/src/core.mjs";
import "exifr/src/file-parsers/tiff.mjs";
import { segmentParsers } from "exifr/src/plugins.mjs";
import { TiffExif } from "exifr/src/segment-parsers/tiff-exif.mjs";

// The library's parts one by one: its ready bundles look for Node's file system and print when they miss it, and none
// of the small ones reads a bare TIFF block.

type Block = Readonly<Record<number, unknown>>;

export interface Tags {
  readonly ifd0: Block;
  readonly exif: Block;
  readonly gps: Block;
  /** Something in the block could not be read; what could stands in the others. */
  readonly broken: boolean;
}

/** The wanted tags are at most a date of 20 characters; far more is a damaged count. */
const MOST_VALUES = 256;

/**
 * A tag that cannot be read costs itself and no other, and a damaged count no memory: the library sets aside as many
 * values as are declared, gigabytes, before it finds that they are not there.
 */
class OneByOne extends TiffExif {
  broken = false;

  override parseTag(offset: number, tag: number, block: string): unknown {
    try {
      if (this.chunk.getUint32(offset + 4) <= MOST_VALUES) return super.parseTag(offset, tag, block);
    } catch {
      // Told below, like the other.
    }
    this.broken = true;
    return undefined;
  }
}
segmentParsers.set("tiff", OneByOne);

/**
 * The wanted tags, numbers of Exif 2.32, and nothing translated or revived: the library would make instants with the
 * machine's own zone. One object for all calls, because the library keeps every one that it has seen.
 */
const OPTIONS = {
  tiff: true,
  /** Orientation, and where the other blocks begin. */
  ifd0: { pick: [0x0112, 0x8769, 0x8825] },
  /** DateTimeOriginal, DateTimeDigitized, OffsetTimeOriginal, OffsetTimeDigitized. */
  exif: { pick: [0x9003, 0x9004, 0x9011, 0x9012] },
  /** GPS latitude and longitude with their references, time, date, horizontal error. */
  gps: { pick: [1, 2, 3, 4, 7, 29, 31] },
  ifd1: false,
  interop: false,
  makerNote: false,
  userComment: false,
  xmp: false,
  icc: false,
  iptc: false,
  translateKeys: false,
  translateValues: false,
  reviveValues: false,
  mergeOutput: false,
} as const;

/** The wanted tags of a bare TIFF block, in either byte order. */
export async function readTags(block: Uint8Array): Promise<Tags> {
  const reader = new Exifr(OPTIONS);
  try {
    await reader.read(block);
    const found = (await reader.parse()) ?? {};
    const parser = reader.parsers.tiff;
    const broken = found.errors !== undefined || (parser instanceof OneByOne && parser.broken);
    return { ifd0: found.ifd0 ?? {}, exif: found.exif ?? {}, gps: found.gps ?? {}, broken };
  } catch {
    return { ifd0: {}, exif: {}, gps: {}, broken: true };
  }
}
