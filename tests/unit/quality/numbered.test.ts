import { describe, expect, test } from "vitest";
import { qualitySpeaking } from "#core/quality/index.ts";
import { numbered } from "#core/quality/view/numbered.ts";
import { viewEn } from "#core/quality/view/words-en.ts";
import { viewEs } from "#core/quality/view/words-es.ts";
import { answersEn } from "#core/quality/words/answers-en.ts";
import { answersEs } from "#core/quality/words/answers-es.ts";
import { ownerEn } from "#core/screens/parts/words/owner-en.ts";
import { ownerEs } from "#core/screens/parts/words/owner-es.ts";

describe("one thing, or so many", () => {
  test("the form follows the figure by the rules of the language; a form may hold figures", () => {
    const sentence = "{n} {n|job|jobs}, {m|one left|{m} left}";
    expect(numbered(sentence, { n: 1, m: 2 }, "en")).toBe("{n} job, {m} left");
    expect(numbered(sentence, { n: 0, m: 1 }, "en")).toBe("{n} jobs, one left");
    // one and a half are several in both languages, nothing is several in English
    expect(numbered("{n|trabajo|trabajos}", { n: 1.5 }, "es")).toBe("trabajos");
    expect(numbered("{n|job|jobs}", { n: 1.5 }, "en")).toBe("jobs");
    // a million is a form of its own in Spanish, and no other word
    expect(numbered("{n|trabajo|trabajos}", { n: 1_000_000 }, "es")).toBe("trabajos");
  });

  test("a figure that is no number, or is not there, takes the second form", () => {
    expect(numbered("{n|job|jobs}", { n: "1" }, "en")).toBe("jobs");
    expect(numbered("{n|job|jobs}", {}, "en")).toBe("jobs");
  });
});

/** Words that end like many and are one, and what is said of a run, which is never of one. */
const alone = { en: /^(is|was|has|lies|stands)$/, es: /^(es|más|menos|después|seguidos)$/ } as const;
const dictionaries = { en: { ...answersEn, ...viewEn }, es: { ...answersEs, ...viewEs } } as const;

describe.each(["en", "es"] as const)("the owner's sentences in %s", (language) => {
  const { say } = qualitySpeaking({ language, units: "inch" }, { people: {}, jobs: {}, sheets: {}, instruments: {} });
  const sentences: readonly (readonly [string, string])[] = Object.entries(dictionaries[language]);
  const figuresOf = (sentence: string): readonly string[] => [...sentence.matchAll(/\{(\w+)/g)].flatMap(([, name]) => name ?? []);

  test.each(sentences.filter(([, sentence]) => sentence.includes("{")))("%s says one of nothing as many", (key, sentence) => {
    const said = say({ key, figures: { ...Object.fromEntries(figuresOf(sentence).map((name) => [name, 1])), about: "x" } });
    // a 1 and the word after it, or the one after an adjective
    const many = [...said.matchAll(/(?<![\d.,])1 (?:(?:confirmed|held|second|first|more) )?([\p{L}]+s)(?!\p{L})/gu)].map(
      ([, word = ""]) => word,
    );
    expect(many.filter((word) => !alone[language].test(word))).toEqual([]);
    expect(said).not.toMatch(/[{}|]/);
  });

  test("a count on the screens has a sentence for one and a sentence for several", () => {
    const screens: Readonly<Record<string, string>> = language === "en" ? ownerEn : ownerEs;
    const counting = Object.entries(screens).filter(([, sentence]) => sentence.includes("{count}"));
    expect(counting.length).toBeGreaterThan(3);
    expect(counting.filter(([key]) => !/-(one|other)$/.test(key))).toEqual([]);
  });
});
