import { type Outcome, ok, type Refusal, refuse } from "../outcome/index.ts";
import { isWellFormed } from "./bytes.ts";
import type { Json } from "./envelope.ts";

/** Levels of arrays and objects within one canonical value (own value): deeper input would end in a stack overflow. */
export const deepest = 64;

const under = (place: string, key: string | number): string => (place === "" ? String(key) : `${place}/${key}`);

const isPlain = (value: object): boolean => {
  const prototype: unknown = Object.getPrototypeOf(value);
  // The root prototype is known by having none itself: another realm's objects are plain too, dates and maps are not.
  return prototype === null || Object.getPrototypeOf(prototype) === null;
};

function memberFault(value: object, place: string, depth: number): Refusal | undefined {
  for (const key of Object.keys(value)) {
    if (!isWellFormed(key)) return refuse("ledger-text-surrogate", place).refusal;
    const fault = canonicalFault((value as Record<string, unknown>)[key], under(place, key), depth + 1);
    if (fault) return fault;
  }
  return undefined;
}

function itemFault(value: readonly unknown[], place: string, depth: number): Refusal | undefined {
  for (let i = 0; i < value.length; i += 1) {
    const fault = canonicalFault(value[i], under(place, i), depth + 1);
    if (fault) return fault;
  }
  return undefined;
}

/** The first thing, in reading order, that has no canonical form; nothing when there is one. Takes any value, never throws. */
export function canonicalFault(value: unknown, place: string, depth = 0): Refusal | undefined {
  if (value === null || typeof value === "boolean") return undefined;
  if (typeof value === "number") return Number.isFinite(value) ? undefined : refuse("number-not-finite", place).refusal;
  if (typeof value === "string") return isWellFormed(value) ? undefined : refuse("ledger-text-surrogate", place).refusal;
  if (typeof value !== "object") return refuse("ledger-not-json", place).refusal;
  if (depth >= deepest) return refuse("ledger-too-deep", place, { deepest }).refusal;
  if (Array.isArray(value)) return itemFault(value, place, depth);
  return isPlain(value) ? memberFault(value, place, depth) : refuse("ledger-not-json", place).refusal;
}

/** Canonical text of a value in which `canonicalFault` found nothing. */
export function canonicalText(value: Json): string {
  // JSON.stringify writes numbers and texts as RFC 8785 3.2.2 asks: it is defined by ECMAScript's own rules.
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(",")}]`;
  const members = value as { readonly [key: string]: Json };
  // sort() without a comparison orders by UTF-16 code units, as RFC 8785 3.2.3 asks.
  const written = Object.keys(members)
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonicalText(members[key] as Json)}`);
  return `{${written.join(",")}}`;
}

/**
 * The canonical text of a JSON value by RFC 8785.
 * Refuses `number-not-finite`, `ledger-text-surrogate` (half of a pair), `ledger-not-json` (undefined, function, date ...)
 * and `ledger-too-deep` (over 64 levels), with the place inside the value.
 */
export function canonical(value: Json): Outcome<string> {
  const fault = canonicalFault(value, "");
  return fault ? { ok: false, refusal: fault } : ok(canonicalText(value));
}
