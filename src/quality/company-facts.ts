import { ownFigures } from "../doubt/index.ts";
import type { ToleranceSheet } from "../job/index.ts";
import { readQuantity } from "../reading/index.ts";
import { fixedPerSi, inches } from "../units/index.ts";
import { dayText } from "./days.ts";
import type { CompanyObserved, InstrumentCheck, InstrumentCheckWay, StudyReading, TapeStudy, Taught } from "./observation.ts";

/** An entry of the company's own ledger, as far as it is read here. `what` has been judged by its shape when it was entered. */
export interface CompanyEntry {
  readonly id: string;
  readonly kind: string;
  readonly what: unknown;
  /** Milliseconds: when it was received. */
  readonly at: number;
}

interface Typed {
  readonly typed: string;
  readonly unit: string;
}

const perMetre = fixedPerSi("length");

/** Micrometres, or nothing where it is no length. */
export function lengthOf({ typed, unit }: Typed): { readonly value: number; readonly resolution: number } | undefined {
  const read = readQuantity(typed, { kind: "length", unit, signed: true });
  return read.ok ? { value: read.value.value, resolution: read.value.resolution } : undefined;
}

/** Half-widths of what is allowed: metres of height in a metre, and of a hook as it is (own, the program's own figures of doubt). */
const allowedSlope: Readonly<Record<InstrumentCheckWay, number>> = {
  "level turned": ownFigures.spiritLevelSlope,
  "laser two ways": ownFigures.laserSlope,
  "tape hook": 0,
};
const HOOK_ALLOWED = inches(1 / 32);

interface Checked {
  readonly way: InstrumentCheckWay;
  readonly first: Typed;
  readonly second: Typed;
  readonly over?: Typed;
}

/**
 * What a check against itself shows: half of what the two readings differ by, since turning doubles the error; of a hook the whole.
 * Allowed is the program's own figure over that length and the doubt of two readings of that fineness, so that a difference which the
 * tape could not show is no fault of the instrument. Micrometres; undefined where something is no length.
 */
export function instrumentOff({ way, first, second, over }: Checked): Pick<InstrumentCheck, "off" | "distance" | "allowed"> | undefined {
  const [one, two, length] = [lengthOf(first), lengthOf(second), over && lengthOf(over)];
  if (one === undefined || two === undefined) return undefined;
  const distance = length?.value ?? 0;
  if (way !== "tape hook" && distance <= 0) return undefined;
  const share = way === "tape hook" ? 1 : 0.5;
  // U = 2u of a difference of two readings, each a rectangle of half its smallest mark
  const readings = share * 2 * Math.hypot(one.resolution, two.resolution) * (1 / Math.sqrt(12));
  const allowed = (way === "tape hook" ? HOOK_ALLOWED * perMetre : allowedSlope[way] * distance) + readings;
  return { off: Math.round(share * (one.value - two.value)), distance, allowed: Math.ceil(allowed) };
}

interface Studied {
  readonly instrument: string;
  readonly placing: string;
  readonly began: number;
  readonly readings: readonly (Typed & { readonly person: string; readonly mark: number; readonly round: number })[];
}

function studyOf({ id, what }: CompanyEntry, zone: string): TapeStudy {
  const { instrument, placing, began, readings } = what as Studied;
  const read = readings.flatMap(({ person, mark, round, typed, unit }): readonly StudyReading[] => {
    const length = lengthOf({ typed, unit });
    return length === undefined ? [] : [{ person, mark: String(mark), trial: round, value: length.value }];
  });
  return { entry: id, day: dayText(began, zone), instrument, placing, readings: read };
}

function checkOf({ id, what }: CompanyEntry): readonly InstrumentCheck[] {
  const checked = what as Checked & { readonly instrument: string; readonly by: string; readonly at: number };
  const off = instrumentOff(checked);
  const { instrument, by, at, way } = checked;
  return off === undefined ? [] : [{ entry: id, instrument, person: by, at, way, ...off }];
}

function taughtOf({ id, what }: CompanyEntry): Taught {
  const { day, people = [], step, note } = what as { day: string; people?: readonly string[]; step: string; note?: string };
  return { entry: id, day, persons: people, step, ...(note === undefined ? {} : { note }) };
}

/** Those that nobody has taken back. */
export function standingEntries<E extends CompanyEntry>(entries: readonly E[]): readonly E[] {
  const gone = new Set(entries.flatMap(({ kind, what }) => (kind === "taken-back" ? [(what as { readonly entry: string }).entry] : [])));
  return entries.filter(({ id }) => !gone.has(id));
}

/** What the company itself keeps, from the entries of its own ledger. `zone`: of the company, for days; `sheets`: its tolerance sheets of now. */
export function companyObserved(entries: readonly CompanyEntry[], zone: string, sheets: readonly ToleranceSheet[] = []): CompanyObserved {
  const standing = standingEntries(entries);
  const of = (kind: string): readonly CompanyEntry[] => standing.filter((entry) => entry.kind === kind);
  return {
    taught: of("taught").map(taughtOf),
    studies: of("tape-studied").map((entry) => studyOf(entry, zone)),
    instrumentChecks: of("instrument-checked").flatMap(checkOf),
    sheets,
  };
}
