import {
  certain,
  type LevelLine,
  readingUncertainty,
  rectangular,
  repeated,
  resolutionUncertainty,
  setUpCloses,
  type Uncertain,
  withSource,
} from "../doubt/index.ts";
import { type QuantityAsked, readQuantity } from "../reading/index.ts";
import { fixedPerSi } from "../units/index.ts";
import type { Entry, Whats } from "./fact.ts";
import { type Live, whatOf } from "./live.ts";
import { oncePer } from "./once-per.ts";
import { type Instance, seriesOf } from "./series.ts";
import type { Instrument, Item, ToleranceSheet } from "./sheet.ts";
import type { JobState, SetUp } from "./state.ts";

/** Length of a spirit level where nothing else is known, metres: a 4 ft level (own). */
const SPIRIT_LEVEL_LENGTH = 1.2192;
/** The phone's typed instants are to the minute. */
const MINUTE_MS = 60_000;

export interface Reading {
  readonly fact: Live;
  readonly value: Uncertain;
  readonly setUp?: string;
}

/** How the readings of one check hang together beyond their set-up: the two gaps of a level turned end for end. */
export interface Arrangement {
  readonly setUp: string;
  readonly lay: "first" | "turned";
}

interface Typed {
  readonly typed: string;
  readonly unit: string;
}

/** Metres. One distance stands for all readings of a set-up. */
const lengthIn = oncePer(({ typed, unit }: Typed, _: "length"): number | undefined => {
  const read = readQuantity(typed, { kind: "length", unit });
  return read.ok ? read.value.value / fixedPerSi("length") : undefined;
});

/** How a typed reading of an item is read: a temperature may stand below zero without saying so in the sheet. */
export function askedOf(item: Item, unit: string): QuantityAsked {
  const kind = item.quantity ?? "length";
  return { kind, unit, signed: item.signed ?? kind === "temperature" };
}

const thingNamed = oncePer((things: readonly { readonly id: string }[], id: string) => things.find((thing) => thing.id === id));

/** A name that the sheet does not know never takes doubt away: the next one that it knows stands. */
function firstKnown<T extends { readonly id: string }>(
  things: readonly T[] | undefined,
  ...ids: readonly (string | undefined)[]
): T | undefined {
  if (things === undefined) return undefined;
  for (const id of ids) {
    const thing = id === undefined ? undefined : thingNamed(things, id);
    if (thing !== undefined) return thing as T;
  }
  return undefined;
}

const heightMarks = oncePer((sheet: ToleranceSheet, _: "all"): readonly Item[] => sheet.items.filter((item) => item.heightMark === true));

interface Circumstances {
  readonly what: Whats["reading-taken"];
  readonly setUp: SetUp | undefined;
  readonly instrument: Instrument | undefined;
}

function circumstancesOf(state: JobState, item: Item, fact: Live): Circumstances {
  const what = whatOf(fact, "reading-taken");
  const setUp = what.setUp === undefined ? undefined : state.setUps.get(what.setUp);
  return { what, setUp, instrument: firstKnown(state.sheet?.instruments, what.instrument, setUp?.instrument, item.instrument) };
}

function lineOf({ what, setUp, instrument }: Circumstances, arranged: Arrangement | undefined): LevelLine | undefined {
  const typed = what.distance ?? setUp?.distance;
  const distance = typed && lengthIn(typed, "length");
  const far = distance === undefined ? {} : { distance };
  if (instrument?.line === "laser") return { kind: "laser", receiver: what.receiver ?? setUp?.receiver ?? "coarse", ...far };
  if (instrument?.line === "string with line level") return { kind: "string with line level", ...far };
  if (instrument?.line !== "spirit level") return undefined;
  const lay = arranged?.lay ?? (instrument.turnedEndForEnd ? "both ways" : "first");
  return { kind: "spirit level", distance: distance ?? SPIRIT_LEVEL_LENGTH, lay };
}

function permittedErrorOf(instrument: Instrument | undefined): { readonly permittedErrorHalfWidth: number } | undefined {
  if (instrument?.exact) return { permittedErrorHalfWidth: 0 };
  if (instrument?.permittedError === undefined) return undefined;
  return { permittedErrorHalfWidth: instrument.permittedError / fixedPerSi("length") };
}

/** A length read with an instrument from a place, metres. */
function measuredLength(
  state: JobState,
  item: Item,
  fact: Live,
  read: { readonly value: number; readonly resolution: number },
  arranged: Arrangement | undefined,
): Uncertain | undefined {
  const found = circumstancesOf(state, item, fact);
  const halfWidth = (...ids: readonly (string | undefined)[]): number =>
    (firstKnown(state.sheet?.placings, ...ids)?.halfWidth ?? 0) / fixedPerSi("length");
  const line = lineOf(found, arranged);
  const permitted = permittedErrorOf(found.instrument);
  const shared = arranged?.setUp ?? found.what.setUp;
  const doubtful = readingUncertainty({
    reading: fact.id,
    ...(shared === undefined ? {} : { setUp: shared }),
    ...read,
    placingHalfWidth: halfWidth(found.what.placing, item.placing),
    ...(permitted === undefined ? {} : { instrument: permitted }),
    ...(line ? { line } : {}),
  });
  if (!doubtful.ok) return undefined;
  const also = halfWidth(item.placingAlso);
  return also > 0 ? withSource(doubtful.value, `reading:${fact.id}-also/placing`, rectangular(also)) : doubtful.value;
}

const readTyped = ({ typed, unit }: Whats["reading-taken"], item: Item): ReturnType<typeof readQuantity> =>
  readQuantity(typed, askedOf(item, unit));

/** What an entry said when it was made, before any correction. */
const firstRead = oncePer((entry: Entry, item: Item) => readTyped(entry.what as unknown as Whats["reading-taken"], item));

/** A reading as it was typed, its last correction applied. */
export const typedReading = (item: Item, fact: Live): ReturnType<typeof readQuantity> =>
  fact.correctedBy === undefined ? firstRead(fact.entry, item) : readTyped(whatOf(fact, "reading-taken"), item);

interface Measured {
  value?: Uncertain | undefined;
}

/** A fact is one state's and that of how the state stood earlier: its sheet and its set-ups are the same. */
const measuredOf = oncePer((_: Live, __: Item): Measured => ({}));

/** One reading with its doubt, SI; undefined where the text no longer reads (a sheet that changed the item's kind). */
export function measured(state: JobState, item: Item, fact: Live, arranged?: Arrangement): Uncertain | undefined {
  if (arranged) return measuredAnew(state, item, fact, arranged);
  const own = measuredOf(fact, item);
  if (!("value" in own)) own.value = measuredAnew(state, item, fact);
  return own.value;
}

function measuredAnew(state: JobState, item: Item, fact: Live, arranged?: Arrangement): Uncertain | undefined {
  const { kind } = askedOf(item, "");
  const read = typedReading(item, fact);
  if (!read.ok) return undefined;
  const value = read.value.value / fixedPerSi(kind);
  const resolution = (kind === "instant" ? MINUTE_MS : read.value.resolution) / fixedPerSi(kind);
  if (kind === "length") return measuredLength(state, item, fact, { value, resolution }, arranged);
  return withSource(certain(value), `reading:${fact.id}/resolution`, resolutionUncertainty(resolution));
}

const readingsOfTags = oncePer((_: JobState, __: Item) => new Map<string | undefined, readonly Reading[]>());

/** Every reading of an instance that counts. */
export function readingsOf(state: JobState, instance: Instance, arranged?: Arrangement): readonly Reading[] {
  if (arranged) return readAnew(state, instance, arranged);
  const known = readingsOfTags(state, instance.item);
  const readings = known.get(instance.tag) ?? readAnew(state, instance);
  known.set(instance.tag, readings);
  return readings;
}

function readAnew(state: JobState, instance: Instance, arranged?: Arrangement): readonly Reading[] {
  return seriesOf(state, instance).counting.flatMap((fact) => {
    const value = measured(state, instance.item, fact, arranged);
    const setUp = whatOf(fact, "reading-taken").setUp;
    return value === undefined ? [] : [{ fact, value, ...(setUp === undefined ? {} : { setUp }) }];
  });
}

export interface Closing {
  readonly state: "closed" | "so far" | "does not close";
  /** Micrometres. */
  readonly difference?: number;
  readonly allowed?: number;
  /** Mean of the mark's readings in this set-up. */
  readonly mark?: Uncertain;
  /** The mark's readings. */
  readonly reads: readonly Live[];
}

/** The height mark of a set-up, read first and last: whether the line stood still in between. */
export const closingOf = oncePer((state: JobState, setUp: string): Closing => {
  const marks = state.sheet ? heightMarks(state.sheet, "all") : [];
  if (marks.length === 0) return { state: "closed", reads: [] };
  const read = marks
    .flatMap((item) => readingsOf(state, { item }))
    .filter((reading) => reading.setUp === setUp)
    .sort((a, b) => a.fact.position - b.fact.position);
  const reads = read.map((r) => r.fact);
  const [first, ...later] = read;
  const last = later.at(-1);
  if (first === undefined) return { state: "so far", reads };
  if (last === undefined) return { state: "so far", mark: first.value, reads };
  const made = state.setUps.get(setUp);
  const instrument = firstKnown(state.sheet?.instruments, made?.instrument, marks[0]?.instrument);
  const receiver = instrument?.line === "laser" ? (made?.receiver ?? "coarse") : undefined;
  const { agrees, difference, allowed } = setUpCloses(first.value, last.value, receiver);
  const mark = repeated([first.value, ...later.map((r) => r.value)]).mean;
  return { state: agrees ? "closed" : "does not close", difference, allowed, mark, reads };
});
