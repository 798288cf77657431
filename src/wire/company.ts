import * as z from "zod/mini";
import { warrantySettings } from "./after-work.ts";
import { head } from "./entry.ts";
import { later } from "./later.ts";
import { count, hex64, id, instant, json, language, role, text, units, zone } from "./primitives.ts";

const colour = later(() => z.string().check(z.regex(/^#[0-9a-f]{6}$/, "colour")));

const period = later(() => z.optional(z.int().check(z.gte(1), z.lte(1200))));

export const newCompany = later(() =>
  z.strictObject({
    id: z.optional(id),
    name: text(120),
    zone,
    units,
    language,
    owner: z.strictObject({ name: text(120) }),
  }),
);
export type NewCompany = z.infer<typeof newCompany>;
export const companyMade = later(() => z.object({ company: id, ownerLink: z.string() }));
export type CompanyMade = z.infer<typeof companyMade>;

export const demoLinks = later(() => z.object({ crew: z.string(), office: z.string(), owner: z.string() }));
export type DemoLinks = z.infer<typeof demoLinks>;

export const session = later(() =>
  z.object({
    company: z.string(),
    person: z.string(),
    name: z.string(),
    role,
    phone: z.optional(z.string()),
    units,
    language,
    companyName: z.string(),
    /** The company's mark and the colour of its lines, where it has them. */
    mark: z.optional(hex64),
    line: z.optional(colour),
    /** Words of the screens that the company says in its own way, in this session's language. */
    words: z.optional(z.record(z.string(), z.string())),
  }),
);
export type SessionView = z.infer<typeof session>;

export const newPerson = later(() => z.strictObject({ name: text(120), role }));
export type NewPerson = z.infer<typeof newPerson>;
export const personMade = later(() => z.object({ person: id }));
export const people = later(() =>
  z.object({
    people: z.array(z.object({ person: z.string(), name: z.string(), role, left: z.optional(instant) })),
  }),
);
export type People = z.infer<typeof people>;
export const link = later(() => z.object({ link: z.string() }));

/** Bytes of the largest mark that is taken. */
export const LARGEST_MARK = 2_000_000;
/** Named by the SHA-256 of the file as it was sent. */
export const markMade = later(() => z.object({ mark: hex64, width: count, height: count }));
export type MarkMade = z.infer<typeof markMade>;

/**
 * The company's settings. Telephone, paper and the rest belong to who reads them (`src/record`); here only their form is
 * known.
 */
export const settings = later(() =>
  z.catchall(
    z.object({
      name: text(120),
      zone,
      units,
      language,
      /** By the screens' own name of a word; a sentence keeps the figures in braces that it has. */
      words: z.optional(z.record(text(64), z.strictObject({ en: z.optional(text(400)), es: z.optional(text(400)) }))),
      warranty: z.optional(warrantySettings),
      /** Months for which a kind of thing is kept after the last entry or cover of its site; absent inside: for good. */
      periods: z.optional(z.strictObject({ names: period, places: period, pictures: period, records: period, entries: period })),
      /** From which the company writes. */
      officeMail: z.optional(z.email().check(z.maxLength(200))),
      /** The company's mark, sent before. */
      mark: z.optional(hex64),
      /** For lines, and for words where they can be read on white; `#rrggbb`. */
      colours: z.optional(z.strictObject({ lines: colour, words: colour })),
    }),
    json,
  ),
);
export type Settings = z.infer<typeof settings>;

/** Typed with its unit, a fact in words (which way a nut tightens), or the word `unknown`. */
const figure = later(() => z.union([z.strictObject({ typed: text(80), unit: text(16) }), text(200)]));

/** The facts of one bought part from its own paper; unknown is allowed and named. */
export const kitCard = later(() =>
  z.strictObject({
    id,
    part: text(200),
    facts: z.record(z.string().check(z.regex(/^[A-Za-z][A-Za-z0-9-]{0,63}$/, "figure")), figure),
    notes: z.optional(text()),
    source: z.optional(text(400)),
  }),
);
export type KitCard = z.infer<typeof kitCard>;

/** An instrument of the company's own: what it is, its smallest mark and where its certificate stands. */
export const instrument = later(() => z.catchall(z.object({ id, title: text(200) }), json));

/** A tolerance sheet is judged by its own reader, which finds all its faults; here it is any object. */
export const sheet = later(() => z.record(z.string(), json));

/** What a job takes over by an entry: `number` is the entry in the company's ledger, `digest` that of the content. */
export const versionMade = later(() => z.object({ name: z.string(), number: count, digest: hex64 }));
export type VersionMade = z.infer<typeof versionMade>;
export const settingsSet = later(() => z.object({ number: count, digest: hex64 }));
export type SettingsSet = z.infer<typeof settingsSet>;
export const version = later(() => z.object({ kind: z.string(), name: z.string(), number: count, digest: hex64, content: json }));
export type VersionView = z.infer<typeof version>;

/** Every version of one of the company's things, newest first: when it was saved and by whom. */
export const versionList = later(() =>
  z.object({
    name: z.string(),
    versions: z.array(z.object({ number: count, digest: hex64, at: instant, person: z.string() })),
  }),
);
export type VersionList = z.infer<typeof versionList>;

/** A job takes over another version of its tolerance sheet or of a kit card. `id`: of the one who asks, so that sent twice it is one entry. */
export const versionMove = later(() => z.strictObject({ id: z.optional(id), digest: hex64 }));
export type VersionMoveAsked = z.infer<typeof versionMove>;

export const company = later(() =>
  z.object({
    settings: z.object({ number: count, digest: hex64, content: settings }),
    sheets: z.array(z.object({ name: z.string(), number: count, digest: hex64, version: z.int(), title: json })),
    kitCards: z.array(z.object({ name: z.string(), number: count, digest: hex64, part: z.string() })),
    instruments: z.array(z.object({ name: z.string(), number: count, digest: hex64, title: json })),
    head,
  }),
);
export type CompanyView = z.infer<typeof company>;
