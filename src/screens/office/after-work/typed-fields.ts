import type { Json } from "../../../ledger/index.ts";
import type { ScreenWord } from "../../parts/words/index.ts";

/** One thing that is typed, as data: its name in the fact, its label, and how it is read. */
export interface TypedField {
  readonly name: string;
  readonly word: ScreenWord;
  /** `money` is typed with two decimals at most and kept in hundredths; `hours` is typed as h:mm and kept in minutes. */
  readonly reads?: "text" | "long" | "day" | "money" | "hours" | "yes";
  readonly choices?: readonly { readonly value: string; readonly title: string }[];
  readonly required?: boolean;
  /** What stands there to begin with. */
  readonly value?: string;
  /** A name or a contact: it stands apart, so that it can be withheld. */
  readonly who?: boolean;
}

export const patterns = {
  money: "\\d{1,9}([.,]\\d{1,2})?",
  hours: "\\d{1,3}(:[0-5]\\d)?",
} as const;

/** '12.5' and '12,50' as hundredths: 1250. Whole-matched by `patterns.money` before. */
export function hundredths(typed: string): number {
  const [whole = "0", part = ""] = typed.split(/[.,]/);
  return Number(whole) * 100 + Number(part.padEnd(2, "0"));
}

/** '1:30' and '2' as minutes: 90 and 120. Whole-matched by `patterns.hours` before. */
export function minutesOf(typed: string): number {
  const [hours = "0", minutes = "0"] = typed.split(":");
  return Number(hours) * 60 + Number(minutes);
}

function valueTyped({ reads }: TypedField, typed: string): Json {
  if (reads === "money") return hundredths(typed);
  if (reads === "hours") return minutesOf(typed);
  return reads === "yes" ? typed === "yes" : typed;
}

export interface TypedFact {
  readonly what: { readonly [key: string]: Json };
  readonly who?: { readonly [key: string]: string };
}

/** What was typed as the fact says it; what stayed empty is not said. */
export function typedFact(fields: readonly TypedField[], typed: (name: string) => string): TypedFact {
  const said = fields.map((field) => [field, typed(field.name).trim()] as const).filter(([, text]) => text !== "");
  const who = said.filter(([field]) => field.who).map(([{ name }, text]) => [name, text] as const);
  const what = said.filter(([field]) => !field.who).map(([field, text]) => [field.name, valueTyped(field, text)] as const);
  return { what: Object.fromEntries(what), ...(who.length === 0 ? {} : { who: Object.fromEntries(who) }) };
}
