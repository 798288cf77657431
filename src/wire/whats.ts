import * as z from "zod/mini";
import type { FactKind } from "../job/index.ts";
import type { Json } from "../ledger/index.ts";
import type { Outcome } from "../outcome/index.ts";
import { kind } from "./entry.ts";
import { later } from "./later.ts";
import { region } from "./photo.ts";
import { count, day, hex64, id, instant, json, language, role, text, units, zone } from "./primitives.ts";
import { read } from "./read.ts";

const name = later(() => text(80));
const typed = later(() => z.strictObject({ typed: text(80), unit: text(16) }));
const about = later(() => z.strictObject({ item: z.optional(name), check: z.optional(name), tag: z.optional(name) }));
const aboutOrStep = later(() =>
  z.strictObject({ item: z.optional(name), check: z.optional(name), tag: z.optional(name), step: z.optional(name) }),
);
const reference = later(() => z.strictObject({ id, digest: hex64 }));
const receiver = later(() => z.enum(["fine", "coarse"]));
const clearance = later(() => z.enum(["clear", "on word", "not yet"]));
const integer = later(() => z.int());

const pixels = later(() => integer.check(z.gte(1), z.lte(100_000)));
/** A spot may lie beyond the picture's edge, and its doubt is above nought. */
const thousandths = later(() => integer.check(z.gte(-100_000_000), z.lte(100_000_000)));
const spot = later(() => z.tuple([thousandths, thousandths, integer.check(z.gte(1), z.lte(100_000))]));
const millionths = later(() => integer.check(z.gte(-1_000_000), z.lte(1_000_000)));

const movedEntry = later(() =>
  z.strictObject({
    id,
    kind,
    author: z.strictObject({ person: id, phone: id }),
    run: count,
    made: instant,
    what: json,
  }),
);

/** The shape of what each kind of fact says. Extra members are refused: a misspelt one would be lost without a word. */
export const whats: Readonly<Record<FactKind, z.core.$ZodType>> = later(() => ({
  "job-opened": z.strictObject({
    title: text(200),
    ownNumber: z.optional(text(80)),
    order: z.optional(text(80)),
    invoice: z.optional(text(80)),
    site: z.optional(id),
    crew: z.optional(z.array(id).check(z.maxLength(40))),
    zone,
    language,
    units,
    late: z.optional(z.boolean()),
  }),
  "version-taken-over": z.strictObject({ thing: z.enum(["sheet", "kit card", "settings"]), name, number: count, digest: hex64 }),
  "design-set": z.strictObject({
    figures: z.optional(z.record(name, z.union([typed, z.literal("unknown")]))),
    switches: z.optional(z.record(name, z.boolean())),
    reason: z.optional(text()),
  }),
  "tag-named": z.strictObject({ set: name, tag: name, hiddenBy: name, description: z.optional(text(200)) }),
  "set-up-made": z.strictObject({ instrument: name, receiver: z.optional(receiver), distance: z.optional(typed) }),
  "reading-taken": z.strictObject({
    item: name,
    tag: z.optional(name),
    typed: z.string().check(z.maxLength(80)),
    unit: text(16),
    setUp: z.optional(id),
    instrument: z.optional(name),
    placing: z.optional(name),
    receiver: z.optional(receiver),
    distance: z.optional(typed),
    mark: z.optional(text(200)),
    side: z.optional(z.enum(["left", "right"])),
    at: z.optional(instant),
  }),
  "read-again": z.strictObject({
    reading: id,
    item: name,
    tag: z.optional(name),
    typed: z.string().check(z.maxLength(80)),
    unit: text(16),
    instrument: z.optional(name),
    setUp: z.optional(id),
  }),
  "picture-taken": z.strictObject({
    item: name,
    tag: z.optional(name),
    photo: hex64,
    bytes: count,
    type: text(80),
    taken: z.optional(instant),
    judged: z.optional(z.enum(["readable", "unreadable"])),
    caption: z.optional(text()),
  }),
  "picture-read": z.strictObject({ photo: hex64, facts: json }),
  "photo-measured": z.strictObject({
    item: name,
    tag: z.optional(name),
    photo: hex64,
    width: pixels,
    height: pixels,
    paper: z.enum(["letter", "a4"]),
    ruler: z.optional(typed),
    codes: z.array(z.strictObject({ place: z.literal([0, 1, 2, 3]), corners: z.tuple([spot, spot, spot, spot]) })).check(
      z.minLength(1),
      z.maxLength(4),
      z.refine((codes) => new Set(codes.map(({ place }) => place)).size === codes.length, "places"),
    ),
    lens: z.optional(z.strictObject({ distortion: millionths, within: millionths.check(z.gte(1)) })),
    from: spot,
    to: spot,
  }),
  "picture-looked-at": z.strictObject({ picture: id, says: z.enum(["shows it", "does not show it", "cannot tell"]) }),
  answered: z.strictObject({ item: name, tag: z.optional(name), choice: name }),
  "does-not-apply": z.strictObject({ about, reason: text(), role }),
  "could-not-be-taken": z.strictObject({ about, reason: text() }),
  "note-for-record": z.strictObject({ text: text(20_000), step: z.optional(name), tag: z.optional(name) }),
  "note-for-office": z.strictObject({ text: text(20_000) }),
  "paper-added": z.strictObject({ title: text(200), paper: text(200), photo: z.optional(hex64), pdf: z.optional(hex64) }),
  "visit-begun": z.strictObject({ note: z.optional(text()) }),
  "visit-ended": z.strictObject({ staysOpen: z.optional(text()), note: z.optional(text()) }),
  "done-by-others": z.strictObject({
    what: text(),
    step: z.optional(name),
    photo: z.optional(hex64),
    paper: z.optional(hex64),
    link: z.optional(hex64),
  }),
  "inspected-by-authority": z.strictObject({
    what: text(),
    state: z.enum(["not required here", "applied", "due", "passed", "failed"]),
    number: z.optional(text(80)),
    day: z.optional(day),
    photo: z.optional(hex64),
  }),
  "received-otherwise": z.strictObject({
    item: name,
    tag: z.optional(name),
    photo: hex64,
    bytes: count,
    type: text(80),
    how: text(),
    when: z.optional(text(80)),
  }),
  "site-located": z.strictObject({ how: text(), reaches: z.optional(integer.check(z.gte(1), z.lte(10_000_000_000))) }),
  corrected: z.strictObject({
    entry: reference,
    reason: text(),
    withdrawn: z.optional(z.boolean()),
    replace: z.optional(z.record(name, json)),
  }),
  "moved-out": z.strictObject({ entries: z.array(reference).check(z.minLength(1)), to: id, reason: text() }),
  "moved-in": z.strictObject({ from: id, reason: text(), entries: z.array(movedEntry).check(z.minLength(1)) }),
  "covering-announced": z.strictObject({ covering: name, about: instant }),
  covered: z.strictObject({
    covering: name,
    shown: clearance,
    lines: z.array(text()),
    sheet: name,
    rules: integer,
    restedOn: z.array(reference),
    at: z.optional(instant),
  }),
  "opened-up-again": z.strictObject({ covering: name, exposed: z.union([z.array(about), z.literal("all")]), reason: text() }),
  "rework-asked": z.strictObject({ about, reason: text() }),
  reworked: z.strictObject({ about, done: text(), minutes: z.number().check(z.gte(0)) }),
  "go-ahead": z.strictObject({ covering: name, reason: text(), role, about: z.optional(z.array(about)), confirms: z.optional(id) }),
  "go-ahead-denied": z.strictObject({ goAhead: id, reason: text() }),
  "departure-agreed": z.strictObject({ about, lower: z.optional(integer), upper: z.optional(integer), reason: text() }),
  concession: z.strictObject({ about, extent: text(), reason: text(), customerSaid: z.optional(text()) }),
  "left-to-do": z.strictObject({ text: text(), by: text(80), about: z.optional(aboutOrStep) }),
  "left-to-do-done": z.strictObject({ entry: reference, note: z.optional(text()) }),
  "looked-again": z.strictObject({ about, note: z.optional(text()) }),
  "region-blurred": z.strictObject({
    photo: hex64,
    rendition: text(200),
    regions: z.optional(z.array(region).check(z.minLength(1), z.maxLength(20))),
    reason: text(),
  }),
  "body-withheld": z.strictObject({
    entry: reference,
    parts: z.array(z.enum(["what", "who", "where"])).check(z.minLength(1)),
    reason: text(),
  }),
  signed: z.strictObject({ relation: text(200), language: text(16), textDigest: z.optional(hex64), text: z.optional(text(20_000)) }),
  declined: z.strictObject({ objection: text(20_000) }),
  "not-reached": z.strictObject({ how: text() }),
  "record-issued": z.strictObject({
    version: count,
    head: z.strictObject({ number: count, hash: hex64 }),
    modelDigest: hex64,
    edition: text(40),
    seal: z.optional(hex64),
    key: z.optional(text(64)),
  }),
  "record-released": z.strictObject({ version: count, to: text(400) }),
  "callback-opened": z.strictObject({ symptom: text(), said: z.optional(text()), day: z.optional(day) }),
  "callback-closed": z.strictObject({
    cause: text(),
    callback: z.optional(id),
    confirmed: z.optional(z.boolean()),
    supposed: z.optional(text()),
    part: z.optional(text(200)),
    borneBy: z.optional(z.enum(["company", "maker", "customer", "others"])),
    minutes: z.optional(count),
    travelMinutes: z.optional(count),
    partsCost: z.optional(count),
    recovered: z.optional(count),
  }),
  "service-done": z.strictObject({ service: text(200), date: text(40), note: z.optional(text()) }),
  "delivered-unsigned": z.strictObject({
    how: text(),
    day,
    to: text(400),
    because: z.enum(["not reached", "declined", "vacant"]),
    objection: z.optional(text(20_000)),
    language: z.optional(text(16)),
    text: z.optional(text(20_000)),
    textDigest: z.optional(hex64),
  }),
  "in-use": z.strictObject({ since: day, how: text() }),
  "cover-started": z.strictObject({
    rule: z.enum(["invoice paid", "date of sale"]),
    day,
    part: z.optional(text(200)),
    paper: z.optional(text(200)),
  }),
  "part-kept": z.strictObject({ part: text(200), why: text() }),
  "part-replaced": z.strictObject({
    part: text(200),
    day,
    why: z.enum(["under warranty", "sold"]),
    serial: z.optional(text(200)),
    callback: z.optional(id),
  }),
  "part-registered": z.strictObject({ part: text(200), day, number: z.optional(text(200)) }),
  "new-owner": z.strictObject({ day }),
  "opened-late": z.strictObject({
    reason: text(),
    steps: z.optional(z.array(name).check(z.maxLength(100))),
    coverings: z.optional(z.array(name).check(z.maxLength(100))),
  }),
  "particulars-set": z.strictObject({
    title: z.optional(text(200)),
    order: z.optional(text(80)),
    invoice: z.optional(text(80)),
    crew: z.optional(z.array(id).check(z.maxLength(40))),
    reason: z.optional(text()),
  }),
  "site-taken-over": z.strictObject({
    site: id,
    number: count,
    heightMark: z.optional(text(200)),
    tieMarks: z.optional(z.array(text(200)).check(z.maxLength(20))),
  }),
  "rules-moved": z.strictObject({ from: integer, to: integer, changed: z.array(text()) }),
}));

/** Judges what a fact says by its kind. A kind that is not known says what it likes. Refuses `entry-shape`. */
export function readWhat(factKind: string, what: Json | undefined, place: string): Outcome<unknown> {
  if (!Object.hasOwn(whats, factKind)) return { ok: true, value: what };
  return read(whats[factKind as FactKind], what, "entry-shape", place);
}
