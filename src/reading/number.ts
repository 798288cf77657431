import { type Outcome, ok } from "../outcome/index.ts";
import { type TapeMarks, tapeMarks } from "../units/index.ts";
import { refuseAt, refuseFrom, type Scan } from "./scan.ts";
import { type Token, touch } from "./tokens.ts";

/** A number exactly as written: numerator / per, where 1 / per is the step in which it was written. */
export interface WrittenNumber {
  readonly numerator: bigint;
  readonly per: bigint;
  /** The denominator as written, not reduced; absent for whole and decimal numbers. */
  readonly marks?: TapeMarks;
  readonly style: "whole" | "fraction" | "decimal";
  /** How many digits its whole part was written with. */
  readonly wholeDigits: number;
  /** Index of the token after it. */
  readonly next: number;
}

const fractionSigns = new Map([
  ["½", [1n, 2]],
  ["¼", [1n, 4]],
  ["¾", [3n, 4]],
  ["⅛", [1n, 8]],
  ["⅜", [3n, 8]],
  ["⅝", [5n, 8]],
  ["⅞", [7n, 8]],
] as const) as ReadonlyMap<string, readonly [bigint, TapeMarks]>;

const isWhole = (token: Token | undefined): token is Token => token?.kind === "number" && !/[.,]/.test(token.text);

/** Whether a fraction begins at the token: `½`, `⅟8`, `3/8`. */
export function fractionBegins(scan: Scan, index: number): boolean {
  const token = scan.tokens[index];
  if (token === undefined) return false;
  return token.kind === "fraction" || token.kind === "one-over" || (token.kind === "number" && scan.tokens[index + 1]?.kind === "slash");
}

interface WrittenFraction {
  readonly numerator: bigint;
  readonly marks: TapeMarks;
  readonly next: number;
}

function closed(scan: Scan, from: number, fraction: WrittenFraction): Outcome<WrittenFraction> {
  const after = scan.tokens[fraction.next];
  if (after?.kind === "slash") return refuseAt(scan, "reading-fraction", from, fraction.next + 1);
  const more =
    after?.kind === "number" ||
    after?.kind === "fraction" ||
    after?.kind === "one-over" ||
    after?.kind === "point" ||
    after?.kind === "comma";
  if (more && touch(scan.tokens[fraction.next - 1], after)) return refuseAt(scan, "reading-fraction", fraction.next);
  return ok(fraction);
}

/** Improper fractions are refused: 11/2 is what is left of 1 1/2 when its blank gets lost. */
function fractionAt(scan: Scan, index: number): Outcome<WrittenFraction> {
  const token = scan.tokens[index];
  if (token?.kind === "fraction") {
    const known = fractionSigns.get(token.text);
    if (known === undefined) return refuseAt(scan, "reading-denominator", index);
    return closed(scan, index, { numerator: known[0], marks: known[1], next: index + 1 });
  }
  const bottomIndex = token?.kind === "one-over" ? index + 1 : index + 2;
  const bottom = scan.tokens[bottomIndex];
  const topIsWhole = token?.kind === "one-over" || isWhole(token);
  if (token === undefined || !topIsWhole || !isWhole(bottom) || /^0+$/.test(bottom.text)) {
    return refuseAt(scan, "reading-fraction", index, Math.min(bottomIndex, scan.tokens.length - 1));
  }
  if (scan.tokens[bottomIndex + 1]?.kind === "slash") return refuseAt(scan, "reading-fraction", index, bottomIndex + 2);
  const marks = tapeMarks.find((known) => known.toString() === bottom.text);
  if (marks === undefined) return refuseAt(scan, "reading-denominator", index, bottomIndex);
  const numerator = token.kind === "one-over" ? 1n : BigInt(token.text);
  if (numerator >= BigInt(marks)) return refuseAt(scan, "reading-fraction", index, bottomIndex);
  return closed(scan, index, { numerator, marks, next: bottomIndex + 1 });
}

/** `1,000` may be a thousand or one; a point together with a comma, and a second comma, leave it as open. */
function commaIsAmbiguous(text: string): boolean {
  const commas = text.split(",").length - 1;
  if (commas === 0) return false;
  return commas > 1 || text.includes(".") || /^[1-9][0-9]{0,2},[0-9]{3}$/.test(text);
}

function decimalAt(scan: Scan, index: number): Outcome<WrittenNumber> {
  const token = scan.tokens[index];
  const text = token?.text ?? "";
  if (token !== undefined && commaIsAmbiguous(text)) {
    const column = token.column + text.indexOf(",");
    const refusal = refuseAt(scan, "reading-comma-ambiguous", index);
    return { ok: false, refusal: { ...refusal.refusal, column } };
  }
  const [whole = "", part = "", ...more] = text.split(/[.,]/);
  if (more.length > 0) return refuseAt(scan, "reading-not-understood", index);
  const per = 10n ** BigInt(part.length);
  const style = part === "" ? "whole" : "decimal";
  return ok({ numerator: BigInt(whole) * per + BigInt(part || "0"), per, style, wholeDigits: whole.length, next: index + 1 });
}

/** A decimal without its leading zero, only where nothing but a sign stands before it: `5 .3` may be a slip for 5.3. */
function bareDecimal(scan: Scan, index: number): Outcome<WrittenNumber> {
  const part = scan.tokens[index + 1];
  const signBefore = index === 0 || (index === 1 && scan.tokens[0]?.kind !== "number");
  if (!signBefore || !isWhole(part) || !touch(scan.tokens[index], part)) return refuseFrom(scan, "reading-not-understood", index);
  return ok({ numerator: BigInt(part.text), per: 10n ** BigInt(part.text.length), style: "decimal", wholeDigits: 0, next: index + 2 });
}

/** After a number: the index where its fraction begins, or nothing, or why the hyphen leaves it open. */
function fractionAfter(scan: Scan, index: number): Outcome<number | undefined> {
  const token = scan.tokens[index];
  if (token?.kind === "hyphen" || token?.kind === "dash") {
    const after = scan.tokens[index + 1];
    const numberFollows = after?.kind === "number" || fractionBegins(scan, index + 1);
    if (!numberFollows) return ok(undefined);
    const tight = token.kind === "hyphen" && touch(scan.tokens[index - 1], token) && touch(token, after);
    if (tight && fractionBegins(scan, index + 1)) return ok(index + 1);
    return refuseFrom(scan, "reading-hyphen-ambiguous", index);
  }
  return ok(fractionBegins(scan, index) ? index : undefined);
}

/**
 * Reads one number at the token: whole, decimal, fraction, or whole and fraction (`3 1/2`, `3-1/2`, `3½`). Refuses fractions that no
 * tape has, commas that can be read in two ways, spaced hyphens. What stands after the number is the caller's.
 */
export function numberAt(scan: Scan, index: number): Outcome<WrittenNumber> {
  const token = scan.tokens[index];
  if (fractionBegins(scan, index)) {
    const fraction = fractionAt(scan, index);
    if (!fraction.ok) return fraction;
    const { numerator, marks, next } = fraction.value;
    return ok({ numerator, per: BigInt(marks), marks, style: "fraction", wholeDigits: 0, next });
  }
  if (token?.kind === "point" || token?.kind === "comma") return bareDecimal(scan, index);
  if (token?.kind === "slash") return refuseFrom(scan, "reading-fraction", index);
  if (token?.kind !== "number") return refuseFrom(scan, "reading-not-understood", index);
  const number = decimalAt(scan, index);
  if (!number.ok) return number;
  const fractionIndex = fractionAfter(scan, index + 1);
  if (!fractionIndex.ok) return fractionIndex;
  if (fractionIndex.value === undefined) return number;
  if (number.value.style === "decimal") return refuseFrom(scan, "reading-fraction", index);
  const fraction = fractionAt(scan, fractionIndex.value);
  if (!fraction.ok) return fraction;
  const { numerator, marks, next } = fraction.value;
  const per = BigInt(marks);
  return ok({
    numerator: number.value.numerator * per + numerator,
    per,
    marks,
    style: "fraction",
    wholeDigits: number.value.wholeDigits,
    next,
  });
}
