import { type Outcome, ok } from "../outcome/index.ts";
import { tradeUnits, type UnitSymbol } from "../units/index.ts";
import { numberAt, type WrittenNumber } from "./number.ts";
import { refuseAt, refuseFrom, type Scan } from "./scan.ts";
import { touch } from "./tokens.ts";
import { namedUnit, unitKind } from "./unit-words.ts";

type DurationUnit = "d" | "h" | "min" | "s";
const order: readonly DurationUnit[] = ["d", "h", "min", "s"];
/** How many of a unit make one of the next larger. */
const fullAt: Readonly<Record<DurationUnit, bigint>> = { d: 0n, h: 24n, min: 60n, s: 60n };

/** An exact duration: numerator / per milliseconds, written in steps of `step` / per. */
export interface WrittenDuration {
  readonly numerator: bigint;
  readonly per: bigint;
  readonly step: bigint;
  readonly unit: UnitSymbol;
}

const milliseconds = (unit: DurationUnit): bigint => tradeUnits[unit].numerator;

/**
 * `1:30` is an hour and a half where hours or days are expected, `1:30:00` everywhere. Where minutes or seconds are expected `1:30`
 * may be a minute and a half as well, so it is refused.
 */
function clockWritten(scan: Scan, start: number, expected: DurationUnit): Outcome<WrittenDuration> {
  const parts = scan.tokens.slice(start);
  const numbers = parts.filter((_, index) => index % 2 === 0);
  const tight = parts.every((token, index) => index === 0 || touch(parts[index - 1], token));
  const regular = parts.every((token, index) =>
    index % 2 === 0 ? token.kind === "number" && /^[0-9]+$/.test(token.text) : token.kind === "colon",
  );
  const [hours, minutes, seconds] = numbers.map((token) => token.text);
  const sixty = numbers.slice(1).every((token) => /^[0-5][0-9]$/.test(token.text));
  const readable = tight && regular && sixty && parts.length % 2 === 1 && numbers.length <= 3;
  if (!readable || hours === undefined || minutes === undefined) return refuseFrom(scan, "reading-not-understood", start);
  if (seconds === undefined && (expected === "min" || expected === "s")) {
    const two = { hours: `${hours} h ${minutes} min`, minutes: `${hours} min ${minutes} s` };
    return refuseFrom(scan, "reading-not-understood", start, two);
  }
  const total = (BigInt(hours) * 60n + BigInt(minutes)) * 60n + BigInt(seconds ?? "0");
  const unit = seconds === undefined ? "min" : "s";
  return ok({ numerator: total * 1_000n, per: 1n, step: milliseconds(unit), unit });
}

function unitAt(scan: Scan, index: number, whenNone: DurationUnit | undefined): Outcome<{ unit: DurationUnit; next: number }> {
  const token = scan.tokens[index];
  if (token === undefined && whenNone !== undefined) return ok({ unit: whenNone, next: index });
  if (token === undefined) return refuseFrom(scan, "reading-two-readings", index - 1);
  if (token.kind === "number" || token.kind === "fraction" || token.kind === "one-over")
    return refuseFrom(scan, "reading-two-readings", index);
  if (token.kind === "foot" || token.kind === "inch") return refuseAt(scan, "reading-unit-kind", index);
  if (token.kind === "hyphen" || token.kind === "dash") return refuseFrom(scan, "reading-hyphen-ambiguous", index);
  const symbol = namedUnit(token.text);
  if (symbol === undefined) return refuseFrom(scan, token.kind === "word" ? "reading-unit-unknown" : "reading-not-understood", index);
  if (unitKind(symbol) !== "duration") return refuseAt(scan, "reading-unit-kind", index);
  const point = scan.tokens[index + 1];
  const ends = point?.kind === "point" && touch(token, point) && !touch(point, scan.tokens[index + 2]);
  return ok({ unit: symbol as DurationUnit, next: index + (ends ? 2 : 1) });
}

/** Why a part can't follow a larger one: out of order, or so many that it holds the larger unit itself. */
function partFits(scan: Scan, index: number, unit: DurationUnit, larger: DurationUnit | undefined, number: WrittenNumber): Outcome<true> {
  if (larger === undefined) return ok(true);
  if (order.indexOf(unit) <= order.indexOf(larger)) return refuseFrom(scan, "reading-two-readings", index);
  if (number.numerator >= fullAt[unit] * number.per) return refuseFrom(scan, "reading-out-of-range", index);
  return ok(true);
}

/** Days, hours, minutes and seconds, largest first, only the last with a fraction; `2 h 15` is 2 h 15 min. */
export function durationAt(scan: Scan, start: number, expected: DurationUnit): Outcome<WrittenDuration> {
  if (scan.tokens.some((token) => token.kind === "colon")) return clockWritten(scan, start, expected);
  let whole = 0n;
  let larger: DurationUnit | undefined;
  for (let index = start; ; ) {
    const number = numberAt(scan, index);
    if (!number.ok) return number;
    const bare = larger === undefined ? expected : larger === "h" ? "min" : undefined;
    const unit = unitAt(scan, number.value.next, bare);
    if (!unit.ok) return unit;
    const fits = partFits(scan, index, unit.value.unit, larger, number.value);
    if (!fits.ok) return fits;
    const size = milliseconds(unit.value.unit);
    const { numerator, per } = number.value;
    if (unit.value.next >= scan.tokens.length)
      return ok({ numerator: whole * per + numerator * size, per, step: size, unit: unit.value.unit });
    if (number.value.style !== "whole") return refuseFrom(scan, "reading-two-readings", unit.value.next);
    whole += numerator * size;
    larger = unit.value.unit;
    index = unit.value.next;
  }
}
