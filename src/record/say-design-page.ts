import { fill } from "./speaking.ts";
import type { Language } from "./when.ts";
import { type DesignPageWord, designPageEn } from "./words/design-page-en.ts";
import { designPageEs } from "./words/design-page-es.ts";

const dictionaries: Readonly<Record<Language, Readonly<Record<DesignPageWord, string>>>> = { en: designPageEn, es: designPageEs };

export interface SayDesignPage {
  (key: DesignPageWord, figures?: Readonly<Record<string, string>>): string;
  /** The words of a key that may not be there. */
  readonly ifThere: (key: string) => string | undefined;
}

/** Says the words of the printed design check, with their figures in place. */
export function sayDesignPage(language: Language): SayDesignPage {
  const words = dictionaries[language];
  const say = (key: DesignPageWord, figures: Readonly<Record<string, string>> = {}): string => fill(words[key], figures);
  return Object.assign(say, { ifThere: (key: string) => (Object.hasOwn(words, key) ? words[key as DesignPageWord] : undefined) });
}
