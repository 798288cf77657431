import * as z from "zod/mini";
import { later } from "./later.ts";
import { count, hex64, id, instant, language, text } from "./primitives.ts";

/** Bytes of the largest paper (PDF) that is taken. */
export const LARGEST_PAPER = 20_000_000;

/** A paper that can be bound into a record. */
export const paperStored = later(() => z.object({ sha256: hex64, bytes: count, pages: count }));
export type PaperStored = z.infer<typeof paperStored>;

/** A link to be made: for one step, with what is asked for in words; good for so many days. */
export const othersLinkAsked = later(() =>
  z.strictObject({
    step: text(80),
    what: text(200),
    days: z.optional(z.int().check(z.gte(1), z.lte(90))),
  }),
);
export type OthersLinkAsked = z.infer<typeof othersLinkAsked>;

/** The link is told once: nobody can read it again. */
export const othersLinkMade = later(() => z.object({ link: z.string(), ends: instant }));
export type OthersLinkMade = z.infer<typeof othersLinkMade>;

export const othersLinks = later(() =>
  z.object({
    links: z.array(
      z.object({
        /** SHA-256 of its token. */
        link: hex64,
        step: z.string(),
        what: z.string(),
        made: instant,
        ends: instant,
        is: z.enum(["open", "used", "withdrawn", "over"]),
        used: z.optional(instant),
      }),
    ),
  }),
);
export type OthersLinks = z.infer<typeof othersLinks>;

/** What the holder of a link is told: whose, which job and step, what is asked for. */
export const othersAsked = later(() =>
  z.object({
    company: z.string(),
    title: z.string(),
    step: z.object({ en: z.string(), es: z.optional(z.string()) }),
    what: z.string(),
    ends: instant,
    language,
  }),
);
export type OthersAsked = z.infer<typeof othersAsked>;

export const othersFile = later(() => z.object({ sha256: hex64, is: z.enum(["photo", "paper"]) }));
export type OthersFile = z.infer<typeof othersFile>;

/** What the holder says: who he is, what he did, and his paper as a picture or a PDF. `id`: made by the sender. */
export const othersSaid = later(() =>
  z.strictObject({
    name: text(80),
    did: text(1000),
    photo: z.optional(hex64),
    paper: z.optional(hex64),
    id: z.optional(id),
  }),
);
export type OthersSaid = z.infer<typeof othersSaid>;
