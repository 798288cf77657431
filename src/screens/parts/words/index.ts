import { fill, type Language } from "../../../record/index.ts";
import { en, type ScreenWord } from "./en.ts";
import { es } from "./es.ts";

export type { ScreenWord } from "./en.ts";

/** Every screen word by language. */
export const dictionaries: Readonly<Record<Language, Readonly<Record<ScreenWord, string>>>> = { en, es };

export type Say = (word: ScreenWord, figures?: Readonly<Record<string, string | number>>) => string;

/** The words of the screens in one language, figures filled in. */
export const screenWords =
  (language: Language): Say =>
  (word, figures = {}) =>
    fill(dictionaries[language][word], Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, String(value)])));

type Counted =
  | "held-by"
  | "missing"
  | "not-entered"
  | "phone-not-sent"
  | "phone-troubled"
  | "unsent-entries"
  | "unsent-photos"
  | "unsent-gone"
  | "office-not-seen";

/** A count in words: one thing, or so many. */
export const counted = (say: Say, word: Counted, count: number): string => say(count === 1 ? `${word}-one` : `${word}-other`, { count });
