import * as z from "zod/mini";
import type { Verdict } from "../job/index.ts";
import type { RecordModel, Stroke, Tone } from "../record/index.ts";
import { later } from "./later.ts";

// A record's view model as it is read back from the store: it may have come with an archive, and whoever made that wrote what they liked.

const text = later(() => z.string());
const texts = later(() => z.array(text));
const may = later(() => z.optional(text));
/** Where a picture of a record lies in the store: among a company's renditions, and nowhere by a way round. */
const rendition = later(() =>
  text.check(z.regex(/^[A-Za-z0-9_-]{1,64}\/renditions\/[0-9a-f]{64}\/[a-z]+(-[0-9a-f]{64})?\.jpg$/, "rendition")),
);
const whole = later(() => z.int());
const number = later(() => z.number());
const entry = later(() => z.optional(whole));

const tone = later(() => z.enum(["within", "outside", "undecided", "missing", "apart"] as const satisfies readonly Tone[]));
const verdict = later(() =>
  z.enum([
    "within",
    "outside",
    "too close to call",
    "not taken",
    "could not be taken",
    "does not apply",
  ] as const satisfies readonly Verdict[]),
);
const labelled = later(() => z.object({ label: text, text }));
const parted = later(() => z.array(labelled));

const finding = later(() =>
  z.object({
    step: text,
    stepTitle: text,
    check: text,
    title: text,
    tag: may,
    verdict,
    verdictWord: text,
    tone,
    shown: z.enum(["table", "list", "picture"]),
    says: text,
    value: may,
    doubt: may,
    aim: may,
    limit: may,
    source: may,
    entries: z.array(whole),
  }),
);

const reading = later(() =>
  z.object({ title: text, typed: text, how: text, when: text, number: entry, setUp: may, corrected: may, aside: may, inPhoto: may }),
);

const spot = later(() => z.object({ x: number, y: number }));
const measured = later(() =>
  z.object({
    width: number,
    height: number,
    lines: z.array(
      z.object({
        strokes: z.array(z.array(spot)),
        thick: number,
        plate: z.object({ x: number, y: number, width: number, height: number }),
        at: spot,
        size: number,
        text,
      }),
    ),
    says: texts,
  }),
);

const picture = later(() =>
  z.object({
    title: text,
    caption: text,
    photo: text,
    rendition: z.optional(rendition),
    missing: may,
    width: z.optional(number),
    height: z.optional(number),
    when: text,
    place: text,
    lookedAt: text,
    alt: text,
    finding: z.optional(finding),
    number: entry,
    measured: z.optional(measured),
  }),
);

const step = later(() =>
  z.object({
    id: text,
    number: whole,
    title: text,
    cautions: texts,
    explains: texts,
    findings: z.array(finding),
    readings: z.array(reading),
    pictures: z.array(picture),
    notes: texts,
  }),
);

const stroke = later(() =>
  z.enum([
    "outline",
    "buried",
    "hair",
    "dimension",
    "ground",
    "water",
    "ellipse",
    "grid",
    "advised",
    "wish",
    "bare",
  ] as const satisfies readonly Stroke[]),
);
const placed = later(() => z.tuple([number, number, number, number, number, number]));
const shape = later(() =>
  z.discriminatedUnion("shape", [
    z.object({
      shape: z.literal("line"),
      stroke,
      points: z.array(spot),
      filled: z.optional(z.enum(["water", "ink", "paper"])),
    }),
    z.object({ shape: z.literal("ellipse"), stroke, placed, rx: number, ry: number, filled: z.optional(z.enum(["ink", "paper"])) }),
    z.object({
      shape: z.literal("words"),
      placed,
      text,
      anchor: z.enum(["start", "middle", "end"]),
      size: number,
      heavy: z.optional(z.boolean()),
    }),
  ]),
);
const drawing = later(() => z.object({ width: number, height: number, title: text, says: text, scale: text, shapes: z.array(shape) }));
const tied = later(() => z.object({ sign: text, name: text, ties: text, place: text }));

const colour = later(() => text.check(z.regex(/^#[0-9a-f]{6}$/i, "colour")));
const company = later(() =>
  z.object({
    name: text,
    lines: texts,
    mark: z.optional(z.object({ photo: text, rendition })),
    colours: z.optional(z.object({ lines: colour, words: z.optional(colour) })),
  }),
);

const title = later(() =>
  z.object({
    record: text,
    job: text,
    ownNumber: may,
    version: whole,
    issued: text,
    issuedAt: number,
    lines: parted,
  }),
);

const proof = later(() =>
  z.object({
    head: text,
    entries: whole,
    rules: whole,
    key: may,
    sheet: text,
    how: texts,
    withheld: text,
  }),
);

/** Every member of `RecordModel`, none left out: the compiler asks for it. */
const members = later(
  () =>
    ({
      format: z.literal(1),
      edition: z.enum(["customer", "company"]),
      language: z.enum(["en", "es"]),
      paper: z.enum(["letter", "a4"]),
      words: z.record(text, text),
      company,
      title,
      standing: text,
      summary: z.object({ built: parted, buried: z.array(z.pick(tied, { sign: true, name: true, ties: true })), marks: text }),
      numbers: parted,
      changed: z.optional(z.object({ title: text, says: texts, lines: parted, none: may })),
      exceptions: z.array(z.object({ title: text, verdictWord: text, tone, says: text })),
      coverings: z.array(z.object({ title: text, state: text, tone, when: text, clearance: text, lines: texts })),
      due: z.array(z.object({ title: text, state: text, tone, lines: texts })),
      steps: z.array(step),
      accepted: z.array(z.object({ title: text, kind: text, says: text, by: text, when: text })),
      leftToDo: z.array(z.object({ text, by: text, state: text })),
      visits: z.array(z.object({ begun: text, ended: text, people: text, says: text })),
      notes: texts,
      others: z.array(z.object({ text, by: text, when: text, number: entry })),
      corrections: z.array(z.object({ title: text, was: text, became: text, when: text, number: entry })),
      papers: parted,
      paperPictures: z.array(picture),
      enclosures: z.optional(z.array(z.object({ paper: text, title: text, says: text }))),
      design: parted,
      compared: z.array(z.object({ title: text, expected: text, measured: text, difference: text })),
      budget: z.optional(z.object({ lines: z.array(z.object({ title: text, value: text, most: text, beside: text })), notes: texts })),
      glueSessions: z.array(
        z.object({ session: text, pipe: text, coldest: text, lastJoint: text, setUntil: text, cureUntil: text, dryAt: text, by: text }),
      ),
      tried: z.array(z.object({ title: text, readings: text, value: text, limit: text, says: text })),
      plan: z.optional(z.object({ drawing: z.optional(drawing), tied: z.array(tied), notes: texts })),
      section: z.optional(z.object({ drawing, notes: texts })),
      equipment: z.array(z.object({ part: text, facts: parted })),
      upkeep: z.optional(z.object({ parts: z.array(z.object({ title: text, lines: texts })), note: text })),
      cautions: texts,
      warranty: z.object({
        terms: z.array(z.object({ part: text, lasts: text, starts: text, ends: text, conditions: text })),
        text: texts,
        note: text,
      }),
      signature: parted,
      proof,
      findings: z.array(finding),
    }) satisfies Record<keyof RecordModel, z.ZodMiniType>,
);

export const storedRecordModel = later(() => z.object(members));
