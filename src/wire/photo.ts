import * as z from "zod/mini";
import { later } from "./later.ts";
import { count, hex64, id, json, text } from "./primitives.ts";

/** Bytes of the largest photo. */
export const LARGEST_PHOTO = 25 * 1024 * 1024;

export const photoStored = later(() => z.object({ sha256: hex64, bytes: count, type: z.string() }));
export type PhotoStored = z.infer<typeof photoStored>;

/** stored: the original is safe, nobody has read it yet; read: facts and renditions are there; unreadable: it could not be decoded. */
export const photoState = later(() =>
  z.object({
    sha256: hex64,
    bytes: count,
    type: z.string(),
    state: z.enum(["stored", "read", "unreadable"]),
    facts: z.optional(json),
    /** The machine gave up for now: how often it tried. The original is safe all the same. */
    givenUp: z.optional(count),
    /** Names the renditions in which parts are blurred: `?parts=` of their addresses. */
    blurred: z.optional(hex64),
  }),
);
export type PhotoState = z.infer<typeof photoState>;

const share = later(() => z.int().check(z.gte(0), z.lte(1_000_000)));

/** A part of the upright picture, in millionths of its width and height from the upper left corner. */
export const region = later(() => z.strictObject({ x: share, y: share, width: share, height: share }));

/** The parts that are blurred from now on, all of them: they take the place of those named before. */
export const blur = later(() => z.strictObject({ regions: z.array(region).check(z.minLength(1), z.maxLength(20)), reason: text() }));
export const blurMade = later(() => z.object({ sha256: hex64, parts: hex64, jobs: z.array(id) }));
export type BlurMade = z.infer<typeof blurMade>;

/** A person's look at a picture; `picture` is its entry. */
export const look = later(() =>
  z.strictObject({ picture: id, says: z.enum(["shows it", "does not show it", "cannot tell"]), id: z.optional(id) }),
);
/** A picture that came by another way than the app; its photo has been stored. `from`: who sent it. */
export const received = later(() =>
  z.strictObject({
    item: text(80),
    tag: z.optional(text(80)),
    photo: hex64,
    from: text(120),
    how: text(),
    when: text(80),
    id: z.optional(id),
  }),
);
/** Where a site is: integers of 1e-7 degree, accuracy in millimetres, `reaches` in micrometres. */
export const sitePlace = later(() =>
  z.strictObject({
    latitude: z.int().check(z.gte(-900_000_000), z.lte(900_000_000)),
    longitude: z.int().check(z.gte(-1_800_000_000), z.lte(1_800_000_000)),
    accuracy: z.optional(count),
    reaches: z.optional(z.int().check(z.gte(1), z.lte(10_000_000_000))),
    how: text(),
  }),
);
export const entryMade = later(() => z.object({ entry: id, number: count }));
export type EntryMade = z.infer<typeof entryMade>;

/** What speaks for and against each picture of a job, by the picture's entry; sentences in the language of the one who asks. */
export const pictureLines = later(() =>
  z.object({
    pictures: z.array(
      z.object({
        entry: z.string(),
        photo: hex64,
        lines: z.array(z.object({ speaks: z.enum(["for", "against", "neither"]), key: z.string(), figures: json, sentence: z.string() })),
      }),
    ),
  }),
);
export type PictureLines = z.infer<typeof pictureLines>;
