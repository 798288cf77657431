import { describe, expect, test } from "vitest";
import { designCheck, designFigures, designQuestions, designStates, expectationIds, expectations } from "#core/job/index.ts";
import { makeDesignSayer } from "#core/record/index.ts";
import { designEn } from "#core/record/words/design-en.ts";
import { designEs } from "#core/record/words/design-es.ts";
import { keptOffEnglish, keptOffSpanish, kinderWords } from "../record/kept-off.ts";
import { inch, parabola, planned, source } from "./planned.ts";

const placeholders = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort();
const entries = Object.entries(designEn);

describe("the design in both languages", () => {
  test("the same keys and the same figures, none empty", () => {
    expect(Object.keys(designEs).sort()).toEqual(Object.keys(designEn).sort());
    const other: Readonly<Record<string, string>> = designEs;
    for (const [key, text] of entries) {
      expect(placeholders(other[key] ?? ""), key).toEqual(placeholders(text));
      expect(text.trim(), key).not.toBe("");
    }
  });

  test("a title for every figure, expectation, question and state", () => {
    const wanted = [
      ...Object.keys(designFigures).map((key) => `figure.${key}`),
      ...expectationIds.map((id) => `expected.${id}`),
      ...designQuestions.map((id) => `question.${id}`),
      ...designStates.map((state) => `state.${state}`),
    ];
    expect(wanted.filter((key) => !Object.hasOwn(designEn, key))).toEqual([]);
    const titles = entries.map(([key]) => key).filter((key) => /^(figure|expected|question|state)\./.test(key));
    expect(titles.filter((key) => !wanted.includes(key))).toEqual([]);
  });

  test("no word kept off the screens, none that blames or calls anything safe", () => {
    expect(entries.filter(([, text]) => [...keptOffEnglish, ...kinderWords].some((word) => word.test(text)))).toEqual([]);
    expect(Object.entries(designEs).filter(([, text]) => [...keptOffSpanish, ...kinderWords].some((word) => word.test(text)))).toEqual([]);
  });

  test("no sentence is left in the other language", () => {
    expect(entries.filter(([, text]) => /\b(el|los|otra|que|una)\b/i.test(text))).toEqual([]);
    expect(Object.entries(designEs).filter(([, text]) => /\b(the|and|again|with|this)\b/i.test(text))).toEqual([]);
  });
});

const { lidLoad: _, ...unknownLid } = inch.card;
const { rainExpected: __, reserveWanted: ___, ...dry } = inch.figures;
/** Designs that between them bring about every sentence. */
const designs = [
  planned(),
  planned({ pipeSize: "3 in", staticHead: "40 in", rainExpected: "0.1 in", stoneDepth: "1 in" }),
  planned({ staticHead: "30 ft", pipeSize: "2 in", cordRoute: "19 ft", stoneDepth: "9 in" }),
  planned({ streamDepth: "8 in", streamWidth: "60 in" }),
  planned({ flowWanted: "45 gpm", rainExpected: "1 in", stoneDepth: "5 in" }, { lidLoad: "5 lb" }),
  planned({ flowWanted: "200 gpm", flowPerInch: "9 gph/in", rainExpected: "200 in" }),
  source(dry, unknownLid, { pumpCurve: "0 gpm 24 ft; 10 gpm 23 ft" }),
  source({ ...dry, flowWanted: "8 gpm", streamDepth: "9 in" }, unknownLid, { pumpCurve: "0 gpm 24 ft; 10 gpm 23 ft" }),
  source({ ...inch.figures, staticHead: "22.5 ft" }, inch.card, {
    pumpCurve: "0 gpm 22 ft; 10 gpm 25 ft; 20 gpm 22 ft; 30 gpm 0 ft",
    pipeKind: "rigid",
  }),
  source(inch.figures, inch.card, { pumpCurve: "40 gpm 7 ft; 50 gpm 3 ft", pipeKind: "ribbed" }),
  source({ ...dry, streamDepth: "5.0 in", flowWanted: "40 gpm", stoneDepth: "5.0 in" }, inch.card, {
    pumpCurve: parabola,
    pipeKind: "rigid",
  }),
  source(
    { ...inch.figures, streamDepth: "9 in" },
    { basinDiameter: "40 in", basinDepth: "20 in", intakeHeight: "3 in" },
    { pumpCurve: parabola },
  ),
  source({}),
];

describe.each(["en", "es"] as const)("said in %s", (language) => {
  test.each(["inch", "metric"] as const)("every line reads whole, in %s units", (units) => {
    const say = makeDesignSayer({ language, units });
    for (const design of designs) {
      for (const switches of [{}, { checkValve: true }]) {
        for (const line of designCheck(design, switches)) {
          expect(say.question(line.id)).not.toBe("");
          expect(say.state(line.state)).not.toBe("");
          for (const text of say.line(line)) {
            expect(text, JSON.stringify(line.says)).not.toMatch(/[{}]|\s{2}|\s[.,;:]|undefined|NaN|^[a-z-]+$/);
            expect(text).toMatch(/^[\p{Lu}¿0-9].*\.$/u);
          }
        }
        for (const one of expectations(design, switches)) {
          const said = say.expectation(one);
          expect(said.title).not.toBe(one.id);
          expect([said.value, said.beside, said.needs.join(), one.refusal?.code ?? ""].join("")).not.toBe("");
          for (const name of said.contributors) expect(name).not.toMatch(/^[a-z-]+[:/]/);
        }
      }
    }
  });
});

test("every message that a design can bring about has its sentence, and every sentence is brought about", () => {
  const said = new Set<string>();
  for (const design of designs)
    for (const switches of [{}, { checkValve: true }, { roundBasin: true }])
      for (const { says, advice } of designCheck(design, switches)) for (const { key } of [says, ...advice]) said.add(key);
  expect([...said].filter((key) => !Object.hasOwn(designEn, key))).toEqual([]);
  const sentences = entries.map(([key]) => key).filter((key) => key.startsWith("design.") && !/\.(needs|assumes)$/.test(key));
  expect(sentences.filter((key) => !said.has(key))).toEqual([]);
});

test("one line in full", () => {
  const say = makeDesignSayer({ language: "en", units: "inch" });
  const [flow] = designCheck(source({ ...inch.figures, pipeSize: "2 in" }, inch.card, { pumpCurve: parabola, pipeKind: "rigid" }), {});
  expect(flow && say.line(flow)).toEqual([
    expect.stringMatching(/^The pump brings \d+ gpm ± [\d.]+ gpm over this pipe and head; the spillway wants 50 gpm\.$/),
  ]);
});
