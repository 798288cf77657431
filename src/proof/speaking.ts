import type { Refusal } from "../outcome/index.ts";
import { checkingRefusalsEn, checkingRefusalsEs, fill, type Language, makeSayer } from "../record/index.ts";
import { type ProofWord, proofEn } from "./words/proof-en.ts";
import { proofEs } from "./words/proof-es.ts";

export type ProofSay = (word: ProofWord, figures?: Readonly<Record<string, string | number>>) => string;

/** The words of a check in one language, figures filled in. */
export const proofWords =
  (language: Language): ProofSay =>
  (word, figures = {}) =>
    fill(
      (language === "es" ? proofEs : proofEn)[word],
      Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, String(value)])),
    );

/** What checking refuses or finds, as a sentence. */
export const checkingSentence = (language: Language): ((refusal: Refusal) => string) =>
  makeSayer({ language, units: "inch", zone: "UTC", refusals: language === "es" ? checkingRefusalsEs : checkingRefusalsEn }).refusal;
