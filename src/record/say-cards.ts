import { fill } from "./fill.ts";
import type { Language } from "./when.ts";
import { type CardsWord, cardsEn } from "./words/cards-en.ts";
import { cardsEs } from "./words/cards-es.ts";

const dictionaries: Readonly<Record<Language, Readonly<Record<CardsWord, string>>>> = { en: cardsEn, es: cardsEs };

/** Says the words of the printed cards, with their figures in place. */
export const sayCards =
  (language: Language) =>
  (key: CardsWord, figures: Readonly<Record<string, string>> = {}): string =>
    fill(dictionaries[language][key], figures);
