import { type Outcome, ok, type refuse } from "../outcome/index.ts";
import { type LengthUnit, nearest, type TapeMarks, tradeUnits } from "../units/index.ts";
import { numberAt, type WrittenNumber } from "./number.ts";
import { type ReadingOptions, refuseAt, refuseFrom, type Scan, scanned, signAt } from "./scan.ts";
import { touch } from "./tokens.ts";
import { namedUnit, unitKind } from "./unit-words.ts";

/** A tape reading. `micrometres` and `resolution` are integers, rounded once from the exact value; the typed text stays as it was. */
export interface LengthReading {
  readonly typed: string;
  readonly micrometres: number;
  /** The step in which it was written, micrometres, at least 1: sixteenths 1588, whole inches 25400, 0.1 in 2540, millimetres 1000. */
  readonly resolution: number;
  /** The unit it was written in; the expected one where none was typed. */
  readonly unit: LengthUnit;
  /** Graduations to the inch that it was written in; undefined for decimals, whole feet and metric. */
  readonly marks: 1 | TapeMarks | undefined;
}

/** Longest length that is taken: 1000 m. Own choice. */
const LONGEST = 1_000_000_000n;

type PlainUnit = Exclude<LengthUnit, "ft-in">;
const isMetric = (unit: PlainUnit): boolean => unit === "mm" || unit === "cm" || unit === "m";

interface TypedUnit {
  readonly unit: PlainUnit | undefined;
  readonly next: number;
}

/** The unit at the token: a mark, a word of the closed list with or without its point, or none. */
function unitAt(scan: Scan, index: number): Outcome<TypedUnit> {
  const token = scan.tokens[index];
  if (token?.kind === "foot") return ok({ unit: "ft", next: index + 1 });
  if (token?.kind === "inch") return ok({ unit: "in", next: index + 1 });
  if (token?.kind === "other" && namedUnit(token.text) !== undefined) return refuseAt(scan, "reading-unit-kind", index);
  if (token?.kind !== "word") return ok({ unit: undefined, next: index });
  const symbol = namedUnit(token.text);
  if (symbol === undefined) return refuseAt(scan, "reading-unit-unknown", index);
  if (unitKind(symbol) !== "length") return refuseAt(scan, "reading-unit-kind", index);
  const point = scan.tokens[index + 1];
  // `ft.3` may be feet and .3, or 3 after an abbreviation: then the point is left over and refused.
  const ends = point?.kind === "point" && touch(token, point) && !touch(point, scan.tokens[index + 2]);
  return ok({ unit: symbol as PlainUnit, next: index + (ends ? 2 : 1) });
}

/** Why what stands after a whole reading can't belong to it. */
function refuseRest(scan: Scan, index: number): ReturnType<typeof refuse> {
  const token = scan.tokens[index];
  if (token?.kind === "number" || token?.kind === "fraction" || token?.kind === "one-over")
    return refuseFrom(scan, "reading-two-readings", index);
  if (token?.kind === "hyphen" || token?.kind === "dash") return refuseFrom(scan, "reading-hyphen-ambiguous", index);
  if (token?.kind === "slash") return refuseFrom(scan, "reading-fraction", index);
  if (token?.kind === "comma") return refuseFrom(scan, "reading-comma-ambiguous", index);
  if (token?.kind === "word" && namedUnit(token.text) === undefined) return refuseAt(scan, "reading-unit-unknown", index);
  return refuseFrom(scan, "reading-not-understood", index);
}

/** `„5“`, a mark that the keyboard opened as a quotation: the same whether it means inches or nothing, if a bare number is in inches. */
function withoutOpeningMark(scan: Scan, expected: LengthUnit): Scan {
  const opened = scan.tokens[0]?.kind === "inch" && scan.tokens.length > 2 && scan.tokens.at(-1)?.kind === "inch";
  return opened && (expected === "in" || expected === "ft-in") ? { ...scan, tokens: scan.tokens.slice(1) } : scan;
}

/** After the feet: where the inches begin. A hyphen there joins, spaced on both sides or none; ` -3` may be a sign. */
function inchesBegin(scan: Scan, index: number): Outcome<number> {
  const token = scan.tokens[index];
  if (token?.kind === "dash") return refuseFrom(scan, "reading-hyphen-ambiguous", index);
  if (token?.kind !== "hyphen") return ok(index);
  const touchesFeet = touch(scan.tokens[index - 1], token);
  if (!touchesFeet && touch(token, scan.tokens[index + 1])) return refuseFrom(scan, "reading-hyphen-ambiguous", index);
  return ok(index + 1);
}

interface Written {
  readonly number: WrittenNumber;
  readonly feet: bigint;
  readonly unit: PlainUnit;
  readonly called: LengthUnit;
}

/** Inches beside feet: 0 up to, not including, 12, written with two whole digits at most (`1'000` is somebody's thousand). */
function inchesBesideFeet(scan: Scan, start: number, feet: WrittenNumber): Outcome<Written> {
  const begin = inchesBegin(scan, start);
  if (!begin.ok) return begin;
  const inches = numberAt(scan, begin.value);
  if (!inches.ok) return inches;
  const unit = unitAt(scan, inches.value.next);
  if (!unit.ok) return unit;
  if (unit.value.unit !== undefined && unit.value.unit !== "in") return refuseFrom(scan, "reading-two-readings", begin.value);
  if (unit.value.next < scan.tokens.length) return refuseRest(scan, unit.value.next);
  if (inches.value.wholeDigits > 2 || inches.value.numerator >= 12n * inches.value.per) {
    return refuseFrom(scan, "reading-inches-over-foot", begin.value);
  }
  return ok({ number: inches.value, feet: feet.numerator, unit: "in", called: "ft-in" });
}

function written(scan: Scan, start: number, expected: LengthUnit): Outcome<Written> {
  const number = numberAt(scan, start);
  if (!number.ok) return number;
  const typedUnit = unitAt(scan, number.value.next);
  if (!typedUnit.ok) return typedUnit;
  const { unit: typed, next } = typedUnit.value;
  const unit = typed ?? (expected === "ft-in" ? "in" : expected);
  if (isMetric(unit) && number.value.style === "fraction") return refuseAt(scan, "reading-denominator", start, next - 1, { unit });
  if (next === scan.tokens.length) return ok({ number: number.value, feet: 0n, unit, called: unit });
  const more = scan.tokens[next]?.kind;
  if (typed !== "ft" || more === "word" || more === "inch" || more === "foot") return refuseRest(scan, next);
  if (number.value.style !== "whole") return refuseAt(scan, "reading-fraction", start, number.value.next - 1);
  return inchesBesideFeet(scan, next, number.value);
}

/**
 * Reads a tape: feet, inches, fractions, decimals, mm, cm, m, in any spelling that a phone makes of them. `expected` serves only
 * where no unit was typed. Exact until rounded once, half away from zero, to the micrometre. Refuses with code, place, column and
 * what it found whatever can be read in two ways; never reads only a part.
 */
export function readLength(typed: string, expected: LengthUnit, options: ReadingOptions = {}): Outcome<LengthReading> {
  const scan = scanned(typed, options);
  if (!scan.ok) return scan;
  const text = withoutOpeningMark(scan.value, expected);
  const sign = signAt(text, options.signed === true);
  if (!sign.ok) return sign;
  const found = written(text, sign.value.next, expected);
  if (!found.ok) return found;
  const { number, feet, unit, called } = found.value;
  const factor = tradeUnits[unit].numerator;
  const magnitude = nearest(number.numerator * factor + feet * tradeUnits.ft.numerator * number.per, number.per);
  if (magnitude > LONGEST) {
    return refuseFrom(text, "reading-out-of-range", 0, { largest: Number(LONGEST), kind: "length" });
  }
  const step = nearest(factor, number.per);
  return ok({
    typed,
    micrometres: Number(sign.value.negative ? -magnitude : magnitude),
    resolution: step > 0n ? Number(step) : 1,
    unit: called,
    marks: unit === "in" ? (number.style === "whole" ? 1 : number.marks) : undefined,
  });
}
