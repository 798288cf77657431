import { fill, type Language } from "../../../record/index.ts";
import type { accessEn } from "./access-en.ts";
import type { AfterWord } from "./after-en.ts";
import type { checkingEn } from "./checking-en.ts";
import type { companyEn } from "./company-en.ts";
import type { decidingEn } from "./deciding-en.ts";
import { type CrewWord, en } from "./en.ts";
import { es } from "./es.ts";
import type { laidAsideEn } from "./laid-aside-en.ts";
import type { lookingEn } from "./looking-en.ts";
import type { measureEn } from "./measure-en.ts";
import type { openingEn } from "./opening-en.ts";
import type { ownerEn } from "./owner-en.ts";
import type { personsEn } from "./persons-en.ts";
import type { releasingEn } from "./releasing-en.ts";
import type { sheetsEn } from "./sheets-en.ts";
import type { studyEn } from "./study-en.ts";

/** Everybody's words, and those of the office's pages. */
export type ScreenWord =
  | CrewWord
  | AfterWord
  | keyof typeof accessEn
  | keyof typeof checkingEn
  | keyof typeof companyEn
  | keyof typeof decidingEn
  | keyof typeof laidAsideEn
  | keyof typeof lookingEn
  | keyof typeof measureEn
  | keyof typeof openingEn
  | keyof typeof ownerEn
  | keyof typeof studyEn
  | keyof typeof personsEn
  | keyof typeof releasingEn
  | keyof typeof sheetsEn;

const known: Readonly<Record<Language, Partial<Record<ScreenWord, string>>>> = { en: { ...en }, es: { ...es } };

/** Adds the words of pages that not everybody opens: called when such a page is loaded, before it is drawn. */
export function learn(more: Readonly<Record<Language, Partial<Record<ScreenWord, string>>>>): void {
  Object.assign(known.en, more.en);
  Object.assign(known.es, more.es);
}

export type Say = (word: ScreenWord, figures?: Readonly<Record<string, string | number>>) => string;

const figuresIn = (sentence: string): string =>
  [...sentence.matchAll(/\{(\w+)\}/g)]
    .map(([, name]) => name)
    .sort()
    .join(" ");

/** A company's own word, where it has one that says the same figures; a sentence that would lose one is not taken. */
function wordOf(language: Language, word: ScreenWord, own: Readonly<Record<string, string>>): string {
  const usual = known[language][word] ?? "";
  const said = Object.hasOwn(own, word) ? own[word] : undefined;
  return said !== undefined && said.trim() !== "" && figuresIn(said) === figuresIn(usual) ? said : usual;
}

/** The words of the screens in one language, figures filled in. `own`: what the company says in its own way. */
export const screenWords =
  (language: Language, own: Readonly<Record<string, string>> = {}): Say =>
  (word, figures = {}) =>
    fill(wordOf(language, word, own), Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, String(value)])));

type Counted =
  | "held-by"
  | "missing"
  | "not-entered"
  | "phone-not-sent"
  | "phone-troubled"
  | "unsent-entries"
  | "unsent-photos"
  | "unsent-gone"
  | "office-not-seen"
  | "again-open"
  | "again-left"
  | "owner-behind"
  | "owner-cut";

/** A count in words: one thing, or so many. */
export const counted = (say: Say, word: Counted, count: number): string => say(count === 1 ? `${word}-one` : `${word}-other`, { count });
