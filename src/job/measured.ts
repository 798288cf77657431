import {
  certain,
  type LevelLine,
  readingUncertainty,
  repeated,
  resolutionUncertainty,
  setUpCloses,
  type Uncertain,
  withSource,
} from "../doubt/index.ts";
import { readQuantity } from "../reading/index.ts";
import { fixedPerSi } from "../units/index.ts";
import { type Live, whatOf } from "./live.ts";
import { type Instance, seriesOf } from "./series.ts";
import type { Item } from "./sheet.ts";
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

function lengthIn(typed: { readonly typed: string; readonly unit: string } | undefined): number | undefined {
  if (typed === undefined) return undefined;
  const read = readQuantity(typed.typed, { kind: "length", unit: typed.unit });
  return read.ok ? read.value.value / fixedPerSi("length") : undefined;
}

function lineOf(
  state: JobState,
  item: Item,
  fact: Live,
  setUp: SetUp | undefined,
  arranged: Arrangement | undefined,
): LevelLine | undefined {
  const what = whatOf(fact, "reading-taken");
  const instrument = state.sheet?.instruments.find((i) => i.id === (what.instrument ?? setUp?.instrument ?? item.instrument));
  const distance = lengthIn(what.distance ?? setUp?.distance);
  const far = distance === undefined ? {} : { distance };
  if (instrument?.line === "laser") return { kind: "laser", receiver: what.receiver ?? setUp?.receiver ?? "coarse", ...far };
  if (instrument?.line === "string with line level") return { kind: "string with line level", ...far };
  if (instrument?.line === "spirit level")
    return { kind: "spirit level", distance: distance ?? SPIRIT_LEVEL_LENGTH, lay: arranged?.lay ?? "first" };
  return undefined;
}

/** One reading with its doubt, SI; undefined where the text no longer reads (a sheet that changed the item's kind). */
export function measured(state: JobState, item: Item, fact: Live, arranged?: Arrangement): Uncertain | undefined {
  const what = whatOf(fact, "reading-taken");
  const kind = item.quantity ?? "length";
  const read = readQuantity(what.typed, { kind, unit: what.unit, signed: item.signed === true });
  if (!read.ok) return undefined;
  const value = read.value.value / fixedPerSi(kind);
  const resolution = read.value.resolution / fixedPerSi(kind);
  if (kind === "instant")
    return withSource(certain(value), `reading:${fact.id}/resolution`, resolutionUncertainty(MINUTE_MS / fixedPerSi(kind)));
  if (kind !== "length")
    return resolution > 0 ? withSource(certain(value), `reading:${fact.id}/resolution`, resolutionUncertainty(resolution)) : certain(value);
  const setUp = what.setUp === undefined ? undefined : state.setUps.get(what.setUp);
  const instrument = state.sheet?.instruments.find((i) => i.id === (what.instrument ?? setUp?.instrument ?? item.instrument));
  const placing = (id: string | undefined): number =>
    (state.sheet?.placings.find((p) => p.id === id)?.halfWidth ?? 0) / fixedPerSi("length");
  const permitted = instrument?.exact
    ? 0
    : instrument?.permittedError === undefined
      ? undefined
      : instrument.permittedError / fixedPerSi("length");
  const line = lineOf(state, item, fact, setUp, arranged);
  const shared = arranged?.setUp ?? what.setUp;
  const doubtful = readingUncertainty({
    reading: fact.id,
    ...(shared === undefined ? {} : { setUp: shared }),
    value,
    resolution,
    placingHalfWidth: placing(what.placing ?? item.placing),
    ...(permitted === undefined ? {} : { instrument: { permittedErrorHalfWidth: permitted } }),
    ...(line ? { line } : {}),
  });
  if (!doubtful.ok) return undefined;
  const also = item.placingAlso === undefined ? 0 : placing(item.placingAlso);
  return also > 0 ? withSource(doubtful.value, `reading:${fact.id}-also/placing`, also / Math.sqrt(3)) : doubtful.value;
}

/** Every reading of an instance that counts. */
export function readingsOf(state: JobState, instance: Instance, arranged?: Arrangement): readonly Reading[] {
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
}

/** The height mark of a set-up, read first and last: whether the line stood still in between. */
export function closingOf(state: JobState, setUp: string): Closing {
  const marks = (state.sheet?.items ?? []).filter((item) => item.heightMark === true);
  if (marks.length === 0) return { state: "closed" };
  const read = marks
    .flatMap((item) => readingsOf(state, { item }))
    .filter((reading) => reading.setUp === setUp)
    .sort((a, b) => a.fact.position - b.fact.position);
  const first = read[0];
  const last = read.at(-1);
  if (first === undefined || last === undefined) return { state: "so far" };
  if (first === last) return { state: "so far", mark: first.value };
  const mark = repeated([first.value, ...read.slice(1).map((r) => r.value)]).mean;
  const made = state.setUps.get(setUp);
  const laser = state.sheet?.instruments.find((i) => i.id === made?.instrument)?.line === "laser";
  const closes = setUpCloses(first.value, last.value, laser ? (made?.receiver ?? "coarse") : undefined);
  return { state: closes.agrees ? "closed" : "does not close", difference: closes.difference, allowed: closes.allowed, mark };
}
