import { isWithheld, type Json, type LedgerEntry, type PartName, partNames } from "../ledger/index.ts";

/** Whose data is asked for. */
export interface Sought {
  /** Every way in which the name is written: 'Ines Marlow', 'Marlow, Ines'. */
  readonly names: readonly string[];
  /** Telephone numbers and mail addresses. */
  readonly contacts: readonly string[];
  /** The id of one who works or worked for the company. */
  readonly person?: string;
}

/** A part of an entry that names the person. */
export interface Mention {
  readonly number: number;
  readonly id: string;
  readonly kind: string;
  readonly part: PartName;
}

/** Letters and digits in words, without accents and case, so that José is found as JOSE: ' jose luis '. */
export const plain = (text: string): string =>
  ` ${text
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, " ")
    .trim()} `;

export const digits = (text: string): string => text.replaceAll(/\D/g, "");
/** Digits that a telephone number has at least, without its area. */
export const FEWEST_DIGITS = 7;
const NUMBER = /\+?\d[\d\s().\-/]{5,}\d/g;

/** With and without the country's and the area's number in front they are the same telephone. */
const sameNumber = (a: string, b: string): boolean =>
  a.length >= FEWEST_DIGITS && b.length >= FEWEST_DIGITS && (a.endsWith(b) || b.endsWith(a));

/** Mail addresses in a text, without the stop or comma of the sentence around them. */
const addressesIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[\s<>()[\],;:"]+/)
    .map((word) => word.replace(/[.!?']+$/, ""))
    .filter((word) => word.includes("@"));

function hasContact(text: string, contact: string): boolean {
  if (contact.includes("@")) return addressesIn(text).includes(contact.trim().toLowerCase());
  const wanted = digits(contact);
  return [...text.matchAll(NUMBER)].some(([found]) => sameNumber(digits(found), wanted));
}

/** Whether a text names the person, by a name in whole words or by a contact. */
export function isNamedIn(text: string, { names, contacts }: Sought): boolean {
  const words = plain(text);
  const byName = names.some((name) => plain(name).trim() !== "" && words.includes(plain(name)));
  return byName || contacts.some((contact) => hasContact(text, contact));
}

/** Whether any text of a value, however deep, names the person, or is the person's id. */
export function isNamedBy(value: Json, sought: Sought): boolean {
  if (typeof value === "string") return value === sought.person || isNamedIn(value, sought);
  if (typeof value !== "object" || value === null) return false;
  return Object.values(value as { readonly [key: string]: Json }).some((one) => isNamedBy(one, sought));
}

/** The parts of a ledger's entries that name the person; what has been withheld names nobody. */
export const mentionsIn = (entries: readonly LedgerEntry[], sought: Sought): readonly Mention[] =>
  entries.flatMap(({ envelope: { number, id, kind }, body }) =>
    partNames.flatMap((part) => {
      const there = body[part];
      return there !== undefined && !isWithheld(there) && isNamedBy(there.content, sought) ? [{ number, id, kind, part }] : [];
    }),
  );
