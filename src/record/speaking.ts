import type { Finding, ToleranceSheet } from "../job/index.ts";
import type { RefusalCode } from "../outcome/index.ts";
import type { Language } from "./when.ts";
import { type AheadSentence, aheadEn } from "./words/ahead-en.ts";
import { aheadEs } from "./words/ahead-es.ts";
import { type FindingSentence, findingsEn } from "./words/findings-en.ts";
import { findingsEs } from "./words/findings-es.ts";
import { type WaterSentence, waterEn } from "./words/water-en.ts";
import { waterEs } from "./words/water-es.ts";

export { fill } from "./fill.ts";

/** What sentences are made with. */
export interface Speaking {
  readonly language: Language;
  readonly units: "inch" | "metric";
  /** IANA zone of the site. */
  readonly zone: string;
  readonly sheet?: ToleranceSheet;
  /** Who stands behind an entry, in the words of the edition, and the reason that it gives. */
  readonly behind?: (entry: string) => { readonly name: string; readonly reason: string };
  /** Sentences of refusals that not every page carries. */
  readonly refusals?: Readonly<Partial<Record<RefusalCode, string>>>;
  /** The entry of the look at a picture that a finding speaks of, and when that was, ms. */
  readonly look?: (finding: Finding) => { readonly entry: string; readonly at: number } | undefined;
}

export type Sentence = AheadSentence | FindingSentence | WaterSentence;

export const sentences: Readonly<Record<Language, Readonly<Record<Sentence, string>>>> = {
  en: { ...aheadEn, ...findingsEn, ...waterEn },
  es: { ...aheadEs, ...findingsEs, ...waterEs },
};
