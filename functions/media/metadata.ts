import type { PhotoFacts, PhotoNote, PhotoType } from "#core/photo/index.ts";
import { lift } from "./lift.ts";
import { readPosition } from "./position.ts";
import { readTags, type Tags } from "./tags.ts";
import { readTaken } from "./taken.ts";
import { type Lifted, tiffIn } from "./tiff-block.ts";

export type Metadata = Pick<PhotoFacts, "taken" | "satelliteTime" | "position" | "notes" | "orientation">;

/**
 * What the camera noted in the file, of any container. What cannot be read is a note, never an error, and costs nothing
 * that can. `block` is the Exif block that another reader of the container lifted out, for what this one does not find.
 */
export async function readMetadata(bytes: Uint8Array, type: PhotoType, block: Uint8Array | undefined): Promise<Metadata> {
  const { block: own, note } = withOther(lift(bytes, type), block);
  if (own === undefined) return { taken: null, satelliteTime: null, position: null, orientation: 1, notes: note ? [note] : [] };
  const tags = await readTags(own);
  const whole = note ?? (tags.broken ? "metadata-broken" : undefined);
  return collect(tags, whole ? [whole] : []);
}

function withOther(lifted: Lifted, block: Uint8Array | undefined): Lifted {
  const other = lifted.block === undefined && block ? tiffIn(block) : undefined;
  return other ? { block: other } : lifted;
}

function collect({ ifd0, exif, gps }: Tags, before: readonly PhotoNote[]): Metadata {
  const place = readPosition({ latitude: gps[2], latitudeRef: gps[1], longitude: gps[4], longitudeRef: gps[3], error: gps[31] });
  const tags = {
    original: exif[0x9003],
    digitized: exif[0x9004],
    offsetOriginal: exif[0x9011],
    offsetDigitized: exif[0x9012],
    gpsTime: gps[7],
    gpsDate: gps[29],
  };
  const time = readTaken(tags, place.position === null ? undefined : place.position.longitude / 1e7);
  // Of the first block alone; the thumbnail's, which says something about the thumbnail, is never read.
  const tag = ifd0[0x0112];
  const known = typeof tag === "number" && Number.isInteger(tag) && tag >= 1 && tag <= 8;
  const turned: readonly PhotoNote[] = tag === undefined || known ? [] : ["orientation-out-of-range"];
  return {
    taken: time.taken,
    satelliteTime: time.satelliteTime,
    position: place.position,
    orientation: known ? tag : 1,
    notes: [...before, ...time.notes, ...place.notes, ...turned],
  };
}
