import exifr from "exifr/dist/lite.esm.mjs";
import type { PhotoFacts, PhotoNote, PhotoType } from "#core/photo/index.ts";
import { readPosition } from "./position.ts";
import { readTaken } from "./taken.ts";

export type Metadata = Pick<PhotoFacts, "taken" | "satelliteTime" | "position" | "notes" | "orientation">;

/** Nothing translated, nothing revived: the reader would make instants with the machine's own zone. Thumbnail's tags off. */
const OPTIONS = {
  tiff: true,
  ifd0: {},
  ifd1: false,
  exif: true,
  gps: true,
  interop: false,
  makerNote: false,
  userComment: false,
  xmp: false,
  icc: false,
  iptc: false,
  jfif: false,
  mergeOutput: false,
  reviveValues: false,
  translateValues: false,
} as const;

type Block = Readonly<Record<string, unknown>>;
type Blocks = { readonly ifd0?: Block; readonly exif?: Block; readonly gps?: Block };

/**
 * What the camera noted in the file. A block that cannot be read is a note, never an error. `block` is the bare TIFF
 * block that the image library lifted out of containers that the reader does not know (PNG, WebP, AVIF).
 */
export async function readMetadata(bytes: Uint8Array, type: PhotoType, block: Uint8Array | undefined): Promise<Metadata> {
  const lifted = block === undefined || type === "image/jpeg" ? undefined : wrapped(block);
  // The reader knows HEIC containers, yet not every writer's: the lifted block first, the whole file where there is none.
  const readable = lifted ?? (type === "image/jpeg" || type === "image/heic" ? bytes : undefined);
  if (readable === undefined) return collect({}, ["metadata-missing"]);
  try {
    const found = (await exifr.parse(readable, OPTIONS)) as Blocks | undefined;
    return found && Object.keys(found).length > 0 ? collect(found, []) : collect({}, ["metadata-missing"]);
  } catch {
    return collect({}, ["metadata-broken"]);
  }
}

function collect(found: Blocks, before: readonly PhotoNote[]): Metadata {
  const { ifd0 = {}, exif = {}, gps = {} } = found;
  const time = readTaken({
    original: exif.DateTimeOriginal,
    digitized: exif.CreateDate,
    offsetOriginal: exif.OffsetTimeOriginal,
    offsetDigitized: exif.OffsetTimeDigitized,
    gpsTime: gps.GPSTimeStamp,
    gpsDate: gps.GPSDateStamp,
  });
  const place = readPosition({
    latitude: gps.GPSLatitude,
    latitudeRef: gps.GPSLatitudeRef,
    longitude: gps.GPSLongitude,
    longitudeRef: gps.GPSLongitudeRef,
    error: gps.GPSHPositioningError,
  });
  const tag = ifd0.Orientation;
  const known = typeof tag === "number" && Number.isInteger(tag) && tag >= 1 && tag <= 8;
  const turned: readonly PhotoNote[] = tag === undefined || known ? [] : ["orientation-out-of-range"];
  // One word for a file without any notes of its camera says all that the single missing ones would.
  const details = before.length > 0 ? [] : [...time.notes, ...place.notes, ...turned];
  return {
    taken: time.taken,
    satelliteTime: time.satelliteTime,
    position: place.position,
    orientation: known ? tag : 1,
    notes: [...before, ...details],
  };
}

/** A TIFF block as the APP1 segment of an otherwise empty JPEG; undefined above the 64 kB that a segment can hold. */
function wrapped(block: Uint8Array): Uint8Array | undefined {
  const headed = String.fromCharCode(...block.subarray(0, 6)) === "Exif\0\0";
  const tiff = headed ? block.subarray(6) : block;
  const length = tiff.length + 8;
  if (length > 0xffff) return undefined;
  const head = [0xff, 0xd8, 0xff, 0xe1, length >> 8, length & 0xff, 0x45, 0x78, 0x69, 0x66, 0, 0];
  return Uint8Array.from([...head, ...tiff, 0xff, 0xd9]);
}
