import { fill } from "../../record/index.ts";
import { answersEn } from "../words/answers-en.ts";
import { answersEs } from "../words/answers-es.ts";
import { answerHeadingsEn } from "../words/headings-en.ts";
import { answerHeadingsEs } from "../words/headings-es.ts";
import { figureText, lengthText } from "./cells.ts";
import { type NamesKnown, namer } from "./names.ts";
import { numbered } from "./numbered.ts";
import type { QualitySpeaking } from "./speaking.ts";
import { viewEn } from "./words-en.ts";
import { viewEs } from "./words-es.ts";

interface Reader {
  readonly language: "en" | "es";
  readonly units: "inch" | "metric";
}

/** How answers are said to one reader. A key that has no words is shown as it is: a test finds it. */
export function qualitySpeaking({ language, units }: Reader, known: NamesKnown): QualitySpeaking {
  const texts: Readonly<Record<string, string>> =
    language === "es" ? { ...viewEs, ...answersEs, ...answerHeadingsEs } : { ...viewEn, ...answersEn, ...answerHeadingsEn };
  const word = (key: string): string => texts[key] ?? key;
  const name = namer(known, language, word);
  const figure = (value: string | number): string => (typeof value === "number" ? figureText(value, language) : value);
  return {
    language,
    units,
    name,
    word,
    say: ({ key, figures }) => {
      // '{offset:length}': micrometres, said in the reader's units
      const sentence = numbered(word(key), figures, language).replace(/\{(\w+):length\}/g, (_, of: string) =>
        lengthText(Number(figures[of]), units, language),
      );
      return fill(sentence, Object.fromEntries(Object.entries(figures).map(([of, value]) => [of, figure(value)])));
    },
  };
}
