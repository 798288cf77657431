import { fill } from "./speaking.ts";
import type { Language } from "./when.ts";
import { type ArithmeticWord, arithmeticEn } from "./words/arithmetic-en.ts";
import { arithmeticEs } from "./words/arithmetic-es.ts";

const dictionaries: Readonly<Record<Language, Readonly<Record<ArithmeticWord, string>>>> = { en: arithmeticEn, es: arithmeticEs };

export type SayArithmetic = (key: ArithmeticWord, figures?: Readonly<Record<string, string>>) => string;

/** Says the words of drawings and of what is worked out, with their figures in place. */
export const sayArithmetic =
  (language: Language): SayArithmetic =>
  (key, figures = {}) =>
    fill(dictionaries[language][key], figures);
