import type { RefusalCode } from "./codes.ts";

/** A figure of a message: text as it prints, or an integer in a fixed unit that the dictionary formats. */
export type Figure = string | number;
export type Figures = Readonly<Record<string, Figure>>;

/**
 * Why something was not taken, as a value. The sentence is made from the code and the figures by the dictionary of the
 * reader's language (`src/record`), so that every language says the same.
 */
export interface Refusal {
  readonly code: RefusalCode;
  /** Where: a path into what was sent, such as `entries/3/what/typed`, `photo/ab12…`, `sheet/checks/rim-level`. */
  readonly place: string;
  /** 1-based column in the typed text, where there is one. */
  readonly column?: number;
  readonly figures: Figures;
}

export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly refusal: Refusal };

export const ok = <T>(value: T): Outcome<T> => ({ ok: true, value });

export function refuse(
  code: RefusalCode,
  place: string,
  figures: Figures = {},
  column?: number,
): { readonly ok: false; readonly refusal: Refusal } {
  return { ok: false, refusal: column === undefined ? { code, place, figures } : { code, place, figures, column } };
}
