import { describe, expect, test } from "vitest";
import { counted, dictionaries, type ScreenWord, screenWords } from "#core/screens/parts/words/index.ts";

const { en, es } = dictionaries;
const keys = Object.keys(en) as ScreenWord[];
const figures = (sentence: string): string[] => [...sentence.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name).sort();

/** Words that together are somebody's menu (the project's list of what is kept off the screens), and their Spanish. */
const keptOff =
  /\b(check ?list|inspections?|audits?|observations?|actions?|issues?(?! the)|scores?|templates?|forms?|assets?|daily log|time ?lines?|feeds?|galler(y|ies)|dashboards?|boards?|workflows?|flags?|punch|snags?|pass(ed)?|fail(ed)?|n\.?\/?a\.?|sync)\b/i;
const keptOffSpanish =
  /\b(lista de (verificación|chequeo|control)|inspección|inspecciones|auditorías?|observación|observaciones|acción|acciones|incidencias?|puntaje|puntuación|plantillas?|formularios?|activos?|cronología|galerías?|tableros?|paneles?|flujos? de trabajo|banderas?|aprobad[oa]s?|reprobad[oa]s?)\b/i;

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
