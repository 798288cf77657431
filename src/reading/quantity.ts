import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { type LengthUnit, nearest, type QuantityKind, type TapeMarks, tradeUnits, type UnitSymbol } from "../units/index.ts";
import { durationAt, type WrittenDuration } from "./duration.ts";
import { readInstant } from "./instant.ts";
import { readLength } from "./length.ts";
import { numberAt } from "./number.ts";
import { type ReadingOptions, refuseAt, refuseFrom, type Scan, scanned, signAt } from "./scan.ts";
import { type Token, touch } from "./tokens.ts";
import { namedUnit, unitKind } from "./unit-words.ts";

export interface QuantityAsked extends ReadingOptions {
  readonly kind: QuantityKind;
  /** The unit of a bare number. For a length a `LengthUnit`; for a count any name of what is counted; for an instant of no meaning. */
  readonly unit: string;
}

/** A typed quantity: `value` and `resolution` are integers in the fixed unit of its kind. */
export interface QuantityReading {
  readonly kind: QuantityKind;
  readonly value: number;
  /** The step in which it was written, at least 1. */
  readonly resolution: number;
  readonly typed: string;
  /** The unit it was written in. */
  readonly unit: string;
  /** Lengths in inches only: the graduations to the inch that it was written in. */
  readonly marks?: 1 | TapeMarks;
}

/** Largest magnitude that is taken, in the fixed unit: 1000 m, 100,000 m², 10,000 m³, 100 m³ a minute, 1000 L a minute per mm, 100 m/s, 360°, 100 MJ/m², 1000 days, 200 °C, 1 MW, 1000 V and A, 100 t, a million, 1000 %. Own. */
const largest: Readonly<Record<QuantityKind, number>> = {
  length: 1_000_000_000,
  area: 1_000_000_000,
  volume: 10_000_000_000,
  flow: 100_000_000,
  flowPerLength: 1_000_000_000,
  velocity: 100_000,
  angle: 360_000_000,
  radiation: 10_000,
  duration: 86_400_000_000,
  instant: Number.MAX_SAFE_INTEGER,
  temperature: 200_000,
  power: 1_000_000_000,
  voltage: 1_000_000,
  current: 1_000_000,
  mass: 100_000_000,
  count: 1_000_000,
  ratio: 10_000_000,
};

const lengthUnits: readonly string[] = ["in", "ft", "ft-in", "mm", "cm", "m"] satisfies readonly LengthUnit[];

const beginsNumber = (token: Token | undefined): boolean =>
  token?.kind === "number" || token?.kind === "fraction" || token?.kind === "one-over";

/** All that stands after a number, written together without the points of abbreviations; nothing if a number stands apart in it. */
function unitText(rest: readonly Token[]): string | undefined {
  let text = "";
  for (const [index, token] of rest.entries()) {
    const before = rest[index - 1];
    const afterWord = before?.kind === "word" && touch(before, token);
    if (beginsNumber(token) && !afterWord) return undefined;
    if (!(token.kind === "point" && afterWord)) text += token.text;
  }
  return text;
}

/** The unit named after the number (`ft²`, `sq. ft`, `° F`), or the expected one if nothing is, or only a degree sign. */
function unitAfter(scan: Scan, index: number, asked: QuantityAsked, expected: UnitSymbol): Outcome<UnitSymbol> {
  if (index >= scan.tokens.length) return ok(expected);
  if (beginsNumber(scan.tokens[index])) return refuseFrom(scan, "reading-two-readings", index);
  const text = unitText(scan.tokens.slice(index));
  if (text === undefined) return refuseUnit(scan, index);
  if (asked.kind === "count" && text.toLowerCase() === asked.unit.toLowerCase()) return ok(expected);
  if (asked.kind === "temperature" && (text === "°" || text === "º")) return ok(expected);
  const symbol = namedUnit(text);
  if (symbol === undefined) return refuseUnit(scan, index);
  return unitKind(symbol) === asked.kind ? ok(symbol) : refuseFrom(scan, "reading-unit-kind", index);
}

function refuseUnit(scan: Scan, index: number): ReturnType<typeof refuse> {
  const first = scan.tokens[index];
  const second = scan.tokens.slice(index).findIndex(beginsNumber);
  if (second > 0 && first !== undefined && namedUnit(first.text) !== undefined)
    return refuseFrom(scan, "reading-two-readings", index + second);
  switch (first?.kind) {
    case "word":
      return refuseFrom(scan, "reading-unit-unknown", index);
    case "foot":
    case "inch":
      return refuseAt(scan, "reading-unit-kind", index);
    case "hyphen":
    case "dash":
      return refuseFrom(scan, "reading-hyphen-ambiguous", index);
    case "comma":
      return refuseFrom(scan, "reading-comma-ambiguous", index);
    case "slash":
      return refuseFrom(scan, "reading-fraction", index);
    default:
      return refuseFrom(scan, "reading-not-understood", index);
  }
}

/** numerator / per in the fixed unit (before the shift of a temperature), and its step. */
type Exact = Omit<WrittenDuration, "unit"> & { readonly unit: UnitSymbol };

function exactAt(scan: Scan, start: number, negative: boolean, asked: QuantityAsked, expected: UnitSymbol): Outcome<Exact> {
  if (asked.kind === "duration") {
    const duration = durationAt(scan, start, expected as "d" | "h" | "min" | "s");
    return duration.ok && negative ? ok({ ...duration.value, numerator: -duration.value.numerator }) : duration;
  }
  const number = numberAt(scan, start);
  if (!number.ok) return number;
  if (asked.kind === "count" && number.value.style !== "whole") return refuseAt(scan, "reading-fraction", start, number.value.next - 1);
  const unit = unitAfter(scan, number.value.next, asked, expected);
  if (!unit.ok) return unit;
  const { numerator: times, denominator, shift } = tradeUnits[unit.value];
  const signed = negative ? -number.value.numerator : number.value.numerator;
  const { per } = number.value;
  return ok({ numerator: (signed + shift * per) * times, per: per * denominator, step: times, unit: unit.value });
}

function readLengthQuantity(typed: string, asked: QuantityAsked, place: string): Outcome<QuantityReading> {
  if (!lengthUnits.includes(asked.unit)) return refuse("reading-unit-unknown", place, { found: asked.unit });
  const reading = readLength(typed, asked.unit as LengthUnit, asked);
  if (!reading.ok) return reading;
  const { micrometres, resolution, unit, marks } = reading.value;
  return ok({ kind: "length", value: micrometres, resolution, typed, unit, ...(marks === undefined ? {} : { marks }) });
}

/**
 * Reads a typed quantity of the kind that an item asks for. The unit asked serves only where none is typed. A sign is taken where
 * `signed` says so; in temperatures it is unless `signed` is false. Exact until rounded once. Refusals as for `readLength`; a `unit`
 * that the kind does not have is refused without a column, since it was not typed.
 */
export function readQuantity(typed: string, asked: QuantityAsked): Outcome<QuantityReading> {
  const place = asked.place ?? "typed";
  if (asked.kind === "length") return readLengthQuantity(typed, asked, place);
  const scan = scanned(typed, asked);
  if (!scan.ok) return scan;
  if (asked.kind === "instant") {
    const instant = readInstant(typed, place);
    return instant.ok
      ? ok({ kind: "instant", value: instant.value.milliseconds, resolution: instant.value.resolution, typed, unit: "ms" })
      : instant;
  }
  const expected = asked.kind === "count" ? "1" : namedUnit(asked.unit);
  if (expected === undefined || unitKind(expected) !== asked.kind) return refuse("reading-unit-unknown", place, { found: asked.unit });
  const sign = signAt(scan.value, asked.signed ?? asked.kind === "temperature");
  if (!sign.ok) return sign;
  const exact = exactAt(scan.value, sign.value.next, sign.value.negative, asked, expected);
  if (!exact.ok) return exact;
  const { numerator, per, step, unit } = exact.value;
  const value = Number(nearest(numerator, per));
  if (Math.abs(value) > largest[asked.kind]) {
    return refuseFrom(scan.value, "reading-out-of-range", 0, { largest: largest[asked.kind], kind: asked.kind });
  }
  return ok({ kind: asked.kind, value, resolution: Math.max(1, Number(nearest(step, per))), typed, unit });
}
