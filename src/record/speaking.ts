import type { ToleranceSheet } from "../job/index.ts";
import type { Language } from "./when.ts";
import { type FindingSentence, findingsEn } from "./words/findings-en.ts";
import { findingsEs } from "./words/findings-es.ts";

/** What sentences are made with. */
export interface Speaking {
  readonly language: Language;
  readonly units: "inch" | "metric";
  /** IANA zone of the site. */
  readonly zone: string;
  readonly sheet?: ToleranceSheet;
  /** Who stands behind an entry, in the words of the edition, and the reason that it gives. */
  readonly behind?: (entry: string) => { readonly name: string; readonly reason: string };
}

export const sentences: Readonly<Record<Language, Readonly<Record<FindingSentence, string>>>> = { en: findingsEn, es: findingsEs };

/** A sentence with its figures in place; a figure that is not there prints nothing, and leaves no gap. */
export function fill(sentence: string, figures: Readonly<Record<string, string>>): string {
  const present = sentence.replace(/\s*\{(\w+)\}/g, (place, name: string) => ((figures[name] ?? "") === "" ? "" : place));
  return present.replace(/\{(\w+)\}/g, (_, name: string) => figures[name] ?? "").trim();
}
