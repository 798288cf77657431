import * as z from "zod/mini";
import type { About, BeforehandState, Clearance, Finding, HandingOver, LeftToDo, Line, ToLeave, Verdict, WayOut } from "../job/index.ts";
import type { QuantityKind } from "../units/index.ts";
import { later } from "./later.ts";
import { id, instant } from "./primitives.ts";

// What the core makes of a job, as a stranger reads it. Each has the core's own type: the core makes it and the core reads it, and
// tests hold what it makes against these shapes.

const kind = later(() =>
  z.enum([
    "length",
    "area",
    "volume",
    "flow",
    "flowPerLength",
    "velocity",
    "angle",
    "radiation",
    "duration",
    "instant",
    "temperature",
    "power",
    "voltage",
    "current",
    "mass",
    "count",
    "ratio",
  ] as const satisfies readonly QuantityKind[]),
);
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
const wayOut = later(() =>
  z.enum([
    "take it",
    "take it again",
    "does not apply",
    "could not be taken",
    "name it",
    "rework it",
    "call the office",
    "go-ahead by telephone",
    "ask for the figure",
    "wait",
  ] as const satisfies readonly WayOut[]),
);
const occasion = later(() =>
  z.enum([
    "water seen in the hole",
    "rain before backfill",
    "washing in",
    "winter emptying",
  ] as const satisfies readonly ToLeave["occasion"][]),
);
const integer = later(() => z.int());
const text = later(() => z.string());
const quantity = (...names: readonly ["value"] | readonly ["lower", "upper"]) =>
  z.strictObject({ kind, ...Object.fromEntries(names.map((name) => [name, integer])) });

/** What something is called, by language: the tolerance sheet's own words. */
export const words = later(() => z.strictObject({ en: text, es: z.optional(text) }));

/** An item or a check of the tolerance sheet, the tag where it repeats, or a whole step. */
const about = later(() =>
  z.strictObject({ item: z.optional(text), check: z.optional(text), tag: z.optional(text), step: z.optional(text) }),
) as unknown as z.ZodMiniType<About>;

/** A sentence before its language: its key and the figures that it prints, integers in the fixed unit of their kind. */
const message = later(() => z.strictObject({ key: text, figures: z.record(text, z.union([text, z.number()])) }));

const toLeave = later(() =>
  z.strictObject({
    occasion,
    answer: z.enum(["none needed", "leave water", "full is not enough"]),
    depth: integer,
    volume: z.optional(integer),
  }),
);

const flowExplained = later(() =>
  z.strictObject({
    cause: z.enum(["static head", "blockage", "air", "wrong curve", "C"]),
    kind,
    wouldBe: z.optional(integer),
    off: z.optional(integer),
    boreShare: z.optional(integer),
    times: integer,
    cannot: z.optional(z.enum(["wrong direction", "not possible"])),
  }),
);

const passage = later(() =>
  z.strictObject({
    way: z.enum(["concession", "departure", "go-ahead", "does not apply", "rework"]),
    entry: id,
    confirmed: z.optional(z.boolean()),
  }),
);

/** The outcome of one check, or of one item that no check reads. `doubt`: U of k = 2. Integers in the fixed unit of its kind. */
export const finding = later(() =>
  z.strictObject({
    step: text,
    check: text,
    of: z.enum(["check", "picture", "reading", "answer", "tag set"]),
    tag: z.optional(text),
    verdict,
    weight: z.enum(["holds", "asked", "if you have it", "open"]),
    holds: z.optional(text),
    kind: z.optional(kind),
    value: z.optional(integer),
    doubt: z.optional(integer),
    aim: z.optional(integer),
    lower: z.optional(integer),
    upper: z.optional(integer),
    contributors: z.optional(z.array(z.strictObject({ name: text, u: integer }))),
    soFar: z.optional(z.boolean()),
    from: z.optional(instant),
    entries: z.array(id),
    missing: z.optional(z.array(about)),
    unknown: z.optional(z.array(text)),
    costs: z.optional(quantity("value")),
    leaves: z.optional(toLeave),
    wins: z.optional(quantity("lower", "upper")),
    asks: z.optional(z.literal("electrician")),
    place: z.optional(about),
    aside: z.optional(z.array(id)),
    explains: z.optional(z.array(flowExplained)),
    by: z.optional(passage),
    beforeRework: z.optional(z.array(z.strictObject({ value: integer, verdict }))),
    says: message,
  }),
) as unknown as z.ZodMiniType<Finding>;

const line = later(() =>
  z.strictObject({
    about,
    step: text,
    verdict,
    reason: message,
    waysOut: z.array(wayOut),
    from: z.optional(instant),
  }),
) as unknown as z.ZodMiniType<Line>;

const standing = later(() => z.enum(["clear", "on word", "not yet"]));

/** What a covering has: clear, on somebody's word, or not yet and why, with every way out. */
export const clearance = later(() =>
  z.strictObject({
    covering: text,
    state: standing,
    onWord: z.optional(z.array(id)),
    lines: z.array(line),
    announced: z.optional(z.strictObject({ entry: id, about: instant })),
    covered: z.optional(
      z.strictObject({
        entry: z.optional(id),
        at: integer,
        noLaterThan: z.boolean(),
        beforeRecord: z.optional(z.literal(true)),
        shown: z.optional(standing),
        shownLines: z.optional(z.array(text)),
        laterDoubted: z.boolean(),
      }),
    ),
  }),
) as unknown as z.ZodMiniType<Clearance>;

const entered = later(() => z.enum(["everything entered", "missing"]));

/** What is due before something that is no covering, such as digging. */
export const beforehand = later(() =>
  z.strictObject({ id: text, state: entered, missing: z.array(line) }),
) as unknown as z.ZodMiniType<BeforehandState>;

export const leftToDo = later(() =>
  z.strictObject({ entry: id, text, by: text, about: z.optional(about), done: z.boolean() }),
) as unknown as z.ZodMiniType<LeftToDo>;

export const handingOver = later(() =>
  z.strictObject({ state: entered, missing: z.array(line), leftToDo: z.array(leftToDo) }),
) as unknown as z.ZodMiniType<HandingOver>;

/** Lists of the core that are written here once more, since this room takes no code of others; a test compares them. */
export const listsOfCore = { kind, verdict, wayOut, occasion } as const;
