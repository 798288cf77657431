import * as z from "zod/mini";
import { later } from "./later.ts";
import { count, hex64 } from "./primitives.ts";

const wallClock = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d:[0-5]\d$/;
const offset = /^[+-](0\d|1[0-4]):(00|15|30|45)$/;
const text = (form: RegExp, name: string) => z.string().check(z.regex(form, name));
const degrees = (most: number) => z.int().check(z.gte(-most * 1e7), z.lte(most * 1e7));

/** A wall clock; its zone is known where there is an offset, and then what told it stands beside. */
export const taken = later(() =>
  z.union([
    z.strictObject({
      text: text(wallClock, "wallClock"),
      source: z.enum(["original", "digitized"]),
      offset: text(offset, "offset"),
      offsetFrom: z.enum(["tag", "satellite"]),
    }),
    z.strictObject({ text: text(wallClock, "wallClock"), source: z.enum(["original", "digitized"]) }),
  ]),
);

/** Degrees in 1e-7, accuracy in millimetres: integers, never −0. */
export const position = later(() =>
  z.strictObject({ latitude: degrees(90), longitude: degrees(180), accuracy: z.optional(z.int().check(z.gte(1))) }),
);

const pixel = later(() => z.int().check(z.gte(-100_000), z.lte(100_000)));
const corner = later(() => z.tuple([pixel, pixel]));

/** A code of a card as media read it; a code's corner may lie beyond the picture's edge. */
export const cardCodeSeen = later(() =>
  z.strictObject({ text: z.string().check(z.length(20)), corners: z.tuple([corner, corner, corner, corner]) }),
);

/**
 * What was read of a photo, as the edge takes it from the one who read it: when and where are checked to the last digit,
 * because a number that is none compares as neither near nor far. What else is read of a photo passes as it stands.
 */
export const photoFacts = later(() =>
  z.looseObject({
    sha: hex64,
    bytes: count,
    orientation: z.int().check(z.gte(1), z.lte(8)),
    taken: z.nullable(taken),
    satelliteTime: z.nullable(text(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/, "satelliteTime")),
    position: z.nullable(position),
    notes: z.array(z.string().check(z.maxLength(64))),
    cards: z.optional(z.array(cardCodeSeen).check(z.maxLength(16))),
  }),
);
