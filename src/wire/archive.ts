import * as z from "zod/mini";
import type { PhotoType } from "../photo/index.ts";
import { head } from "./entry.ts";
import { later } from "./later.ts";
import { LARGEST_PHOTO } from "./photo.ts";
import { count, hex64, id, instant, role, text } from "./primitives.ts";
import { edition } from "./record.ts";

/** What the list of an archive calls itself. */
export const ARCHIVE_KIND = "Asburied job archive";

/** A ZIP without its 64-bit parts holds no larger one. */
const LARGEST_FILE = 4_294_967_295;

/** What a photo can be; anything else would be handed out later under the type that the archive says. */
const photoTypes = [
  "image/jpeg",
  "image/png",
  "image/webp",
  "image/heic",
  "image/avif",
  "image/gif",
] as const satisfies readonly PhotoType[];

const file = later(() =>
  z.strictObject({
    name: z.string().check(z.regex(/^[a-z][a-z.]*(\/[A-Za-z0-9._-]{1,80}){0,3}$/, "name")),
    bytes: count.check(z.lte(LARGEST_FILE)),
    sha256: hex64,
  }),
);
export type ArchiveFile = z.infer<typeof file>;

/** Renditions in which parts are blurred: they stand for the photo wherever it is shown. */
const blurred = later(() =>
  z.strictObject({
    digest: hex64,
    regions: z.string().check(z.maxLength(20_000)),
    made: instant,
    screen: z.optional(file),
    print: z.optional(file),
  }),
);

/** A photo that the ledger names. Without `file` its bytes are not in the archive: what is known of it stands in the ledger alone. */
const photo = later(() =>
  z.strictObject({
    sha256: hex64,
    type: z.enum(photoTypes),
    bytes: count.check(z.lte(LARGEST_PHOTO)),
    file: z.optional(file),
    blurred: z.optional(blurred),
  }),
);

const record = later(() =>
  z.strictObject({
    id,
    version: z.int().check(z.gte(1)),
    edition,
    head,
    pages: count,
    bytes: count,
    sha256: hex64,
    issued: instant,
    files: z.array(file).check(z.maxLength(20)),
  }),
);

/**
 * The first file of an archive: everything that follows in it, in this order, with its SHA-256: the ledger, the photos' bytes and
 * blurred renditions, the papers that came as PDF, the records' files.
 */
export const archiveList = later(() =>
  z.strictObject({
    kind: z.literal(ARCHIVE_KIND),
    format: z.literal(1),
    job: id,
    company: text(120),
    taken: instant,
    head,
    ledger: file,
    /** Names of the versions that the job took over, by their digests. */
    versions: z.record(hex64, text(80)),
    people: z.array(z.strictObject({ id, name: text(120), role })).check(z.maxLength(10_000)),
    photos: z.array(photo).check(z.maxLength(60_000)),
    /** None in an archive that was taken before papers came as PDF. */
    papers: z.optional(z.array(file).check(z.maxLength(2000))),
    records: z.array(record).check(z.maxLength(2000)),
  }),
);
export type ArchiveList = z.infer<typeof archiveList>;

export const archiveRead = later(() =>
  z.object({
    job: id,
    outcome: z.enum(["read", "already there"]),
    entries: count,
    photos: count,
    /** Photos that the ledger names whose bytes did not come. */
    without: count,
    records: count,
  }),
);
export type ArchiveRead = z.infer<typeof archiveRead>;
