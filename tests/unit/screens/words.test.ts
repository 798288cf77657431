import { describe, expect, test } from "vitest";
import { en as crewEn } from "#core/screens/parts/words/en.ts";
import { es as crewEs } from "#core/screens/parts/words/es.ts";
import { counted, learn, type ScreenWord, screenWords } from "#core/screens/parts/words/index.ts";
import { measureEn } from "#core/screens/parts/words/measure-en.ts";
import { measureEs } from "#core/screens/parts/words/measure-es.ts";
import { officeWords } from "#core/screens/parts/words/office.ts";
import { studyEn } from "#core/screens/parts/words/study-en.ts";
import { studyEs } from "#core/screens/parts/words/study-es.ts";

learn(officeWords);
learn({ en: studyEn, es: studyEs });
learn({ en: measureEn, es: measureEs });
const en: Readonly<Record<ScreenWord, string>> = { ...crewEn, ...officeWords.en, ...studyEn, ...measureEn };
const es: Readonly<Record<ScreenWord, string>> = { ...crewEs, ...officeWords.es, ...studyEs, ...measureEs };
const keys = Object.keys(en) as ScreenWord[];
const figures = (sentence: string): string[] => [...sentence.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name).sort();

/** Words that together are somebody's menu (the project's list of what is kept off the screens), and their Spanish. */
const keptOff =
  /\b(check ?list|inspections?|audits?|observations?|actions?|issues?(?! the)|scores?|templates?|forms?|assets?|daily log|time ?lines?|feeds?|galler(y|ies)|dashboards?|boards?|workflows?|flags?|punch|snags?|pass(ed)?|fail(ed)?|n\.?\/?a\.?|sync)\b/i;
const keptOffSpanish =
  /\b(lista de (verificación|chequeo|control)|inspección|inspecciones|auditorías?|observación|observaciones|acción|acciones|incidencias?|puntaje|puntuación|plantillas?|formularios?|activos?|cronología|galerías?|tableros?|paneles?|flujos? de trabajo|banderas?|aprobad[oa]s?|reprobad[oa]s?)\b/i;

describe("a company's own words", () => {
  test("stand in place of the usual ones, figures included", () => {
    const say = screenWords("en", { "cover-now": "Bury it", "and-more": "{count} others" });
    expect(say("cover-now")).toBe("Bury it");
    expect(say("and-more", { count: 4 })).toBe("4 others");
    expect(say("way-enter")).toBe(en["way-enter"]);
  });

  test("a sentence that loses or invents a figure, an empty one, and a word that no screen has change nothing", () => {
    const say = screenWords("es", {
      "and-more": "otros",
      "cover-now": "Enterrarlo {count}",
      "way-enter": "  ",
      toString: "x",
      unknown: "x",
    });
    expect(say("and-more", { count: 4 })).toBe(screenWords("es")("and-more", { count: 4 }));
    expect(say("cover-now")).toBe(es["cover-now"]);
    expect(say("way-enter")).toBe(es["way-enter"]);
  });
});

describe("screen words", () => {
  test("no word is missing in a language, and none is empty", () => {
    expect(keys.length).toBeGreaterThan(50);
    expect(Object.keys(es).sort()).toEqual([...keys].sort());
    for (const words of [en, es]) for (const key of keys) expect(words[key].trim(), key).not.toBe("");
  });

  test.each(keys)("%s asks for the same figures in both languages", (key) => {
    expect(figures(es[key])).toEqual(figures(en[key]));
  });

  test("Spanish is not English left standing", () => {
    expect(keys.filter((key) => es[key] === en[key])).toEqual([]);
  });

  test("nothing that is kept off the screens is on them", () => {
    expect(keys.filter((key) => keptOff.test(en[key]) || keptOffSpanish.test(es[key]))).toEqual([]);
    for (const word of ["Checklist", "the inspection", "score", "an issue", "failed"]) expect(word).toMatch(keptOff);
    for (const word of ["Lista de verificación", "la inspección", "plantilla"]) expect(word).toMatch(keptOffSpanish);
  });

  test("nothing is called safe or to code", () => {
    expect(keys.filter((key) => /\bsafe\b|to code|segur[oa]\b|según código/i.test(`${en[key]} ${es[key]}`))).toEqual([]);
  });

  test("figures are filled in, and one thing is counted as one", () => {
    const say = screenWords("en");
    expect(say("and-more", { count: 4 })).toBe("and 4 more");
    expect(counted(say, "held-by", 1)).toBe("1 thing holds it");
    expect(counted(say, "held-by", 2)).toBe("2 things hold it");
    expect(counted(screenWords("es"), "missing", 3)).toBe("faltan: 3 cosas");
  });
});
