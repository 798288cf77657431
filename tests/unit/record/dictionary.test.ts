import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, expectTypeOf, it } from "vitest";
import { sheetFaults } from "#core/job/index.ts";
import { type RefusalCode, refusalCodes } from "#core/outcome/index.ts";
import { type LengthUnit, readLength, readQuantity } from "#core/reading/index.ts";
import { fill } from "#core/record/say.ts";
import { aheadEn } from "#core/record/words/ahead-en.ts";
import { aheadEs } from "#core/record/words/ahead-es.ts";
import { arithmeticEn } from "#core/record/words/arithmetic-en.ts";
import { arithmeticEs } from "#core/record/words/arithmetic-es.ts";
import { callbacksEn } from "#core/record/words/callbacks-en.ts";
import { callbacksEs } from "#core/record/words/callbacks-es.ts";
import { cardsEn } from "#core/record/words/cards-en.ts";
import { cardsEs } from "#core/record/words/cards-es.ts";
import { checkingRefusalsEn } from "#core/record/words/checking-refusals-en.ts";
import { checkingRefusalsEs } from "#core/record/words/checking-refusals-es.ts";
import { designEn } from "#core/record/words/design-en.ts";
import { designEs } from "#core/record/words/design-es.ts";
import { designPageEn } from "#core/record/words/design-page-en.ts";
import { designPageEs } from "#core/record/words/design-page-es.ts";
import { findingsEn } from "#core/record/words/findings-en.ts";
import { findingsEs } from "#core/record/words/findings-es.ts";
import { type HeadingKey, headingKeys } from "#core/record/words/heading-keys.ts";
import { headingsEn } from "#core/record/words/headings-en.ts";
import { headingsEs } from "#core/record/words/headings-es.ts";
import { pagesEn } from "#core/record/words/pages-en.ts";
import { pagesEs } from "#core/record/words/pages-es.ts";
import { photoLengthsEn } from "#core/record/words/photo-lengths-en.ts";
import { photoLengthsEs } from "#core/record/words/photo-lengths-es.ts";
import { pictureFactsEn } from "#core/record/words/picture-facts-en.ts";
import { pictureFactsEs } from "#core/record/words/picture-facts-es.ts";
import { recordEn } from "#core/record/words/record-en.ts";
import { recordEs } from "#core/record/words/record-es.ts";
import { refusalsEn } from "#core/record/words/refusals-en.ts";
import { refusalsEs, wantedEs } from "#core/record/words/refusals-es.ts";
import { warrantyEn } from "#core/record/words/warranty-en.ts";
import { warrantyEs } from "#core/record/words/warranty-es.ts";
import { waterEn } from "#core/record/words/water-en.ts";
import { waterEs } from "#core/record/words/water-es.ts";
import tenItems from "../../samples/sheets/ten-items.json" with { type: "json" };
import { keptOffEnglish, keptOffSpanish, kinderWords } from "./kept-off.ts";

type Dictionary = Readonly<Record<string, string>>;
interface Pair {
  readonly name: string;
  readonly en: Dictionary;
  readonly es: Dictionary;
}

/** Those of every page, and those that come with the page that checks records. */
const everyRefusalEn: Readonly<Record<RefusalCode, string>> = { ...refusalsEn, ...checkingRefusalsEn };
const everyRefusalEs: Readonly<Record<RefusalCode, string>> = { ...refusalsEs, ...checkingRefusalsEs };

const pairs: readonly Pair[] = [
  { name: "refusals", en: everyRefusalEn, es: everyRefusalEs },
  { name: "headings", en: headingsEn, es: headingsEs },
  { name: "pages", en: pagesEn, es: pagesEs },
  { name: "findings", en: findingsEn, es: findingsEs },
  { name: "water", en: waterEn, es: waterEs },
  { name: "ahead", en: aheadEn, es: aheadEs },
  { name: "record", en: recordEn, es: recordEs },
  { name: "arithmetic", en: arithmeticEn, es: arithmeticEs },
  { name: "design", en: designEn, es: designEs },
  { name: "picture facts", en: pictureFactsEn, es: pictureFactsEs },
  { name: "photo lengths", en: photoLengthsEn, es: photoLengthsEs },
  { name: "design page", en: designPageEn, es: designPageEs },
  { name: "cards", en: cardsEn, es: cardsEs },
  { name: "warranty", en: warrantyEn, es: warrantyEs },
  { name: "callbacks", en: callbacksEn, es: callbacksEs },
];
const own = pairs.slice(0, 2);

/** The canonical form of RFC 8785, and what an authority says of its own inspection. */
const othersWords: ReadonlySet<string> = new Set(["how-1", "state-passed", "state-failed"]);

const placeholders = (sentence: string): readonly string[] => [...sentence.matchAll(/\{(\w+)\}/g)].map(([, name]) => name ?? "").sort();
const keysWhere = (dictionary: Dictionary, found: (text: string, key: string) => boolean): readonly string[] =>
  Object.entries(dictionary).flatMap(([key, text]) => (found(text, key) ? [`${key}: ${text}`] : []));

describe.each(pairs)("$name in both languages", ({ en, es }) => {
  it("have the same keys, each with its words", () => {
    expect(Object.keys(es).sort()).toEqual(Object.keys(en).sort());
    expect([...keysWhere(en, (text) => text.trim() === ""), ...keysWhere(es, (text) => text.trim() === "")]).toEqual([]);
  });

  it("print the same figures", () => {
    expect(keysWhere(en, (text, key) => placeholders(text).join() !== placeholders(es[key] ?? "").join())).toEqual([]);
  });

  it("use no word that is kept off the screens", () => {
    const kept = (off: readonly RegExp[]) => (text: string, key: string) => !othersWords.has(key) && off.some((word) => word.test(text));
    expect(keysWhere(en, kept(keptOffEnglish))).toEqual([]);
    expect(keysWhere(es, kept(keptOffSpanish))).toEqual([]);
  });

  it("have no blank too many and no lone brace", () => {
    const odd = (text: string) => text !== text.trim() || /\s{2}/.test(text) || /[{}]/.test(text.replace(/\{\w+\}/g, ""));
    expect([...keysWhere(en, odd), ...keysWhere(es, odd)]).toEqual([]);
  });
});

it("the search for words that are kept off the screens bites", () => {
  const english = [
    "Open the checklist",
    "Inspections due",
    "An issue was found",
    "Your score",
    "Fill in the form",
    "a PIN",
    "no errors",
    "failed",
  ];
  const spanish = ["la lista de verificación", "Inspección", "el formulario", "Un error", "dos fotos reprobadas", "la plantilla"];
  for (const text of english)
    expect(
      keptOffEnglish.some((word) => word.test(text)),
      text,
    ).toBe(true);
  for (const text of spanish)
    expect(
      keptOffSpanish.some((word) => word.test(text)),
      text,
    ).toBe(true);
  for (const text of ["Issued", "Issue it first", "information", "the transaction", "in a format", "passage", "spinning", "asked"])
    expect(
      keptOffEnglish.some((word) => word.test(text)),
      text,
    ).toBe(false);
  for (const text of ["informe", "la forma", "activada", "Emitido"])
    expect(
      keptOffSpanish.some((word) => word.test(text)),
      text,
    ).toBe(false);
});

describe.each([
  { language: "English", refusals: everyRefusalEn },
  { language: "Spanish", refusals: everyRefusalEs },
])("refusals in $language", ({ refusals }) => {
  it("there is one for every code and none besides", () => {
    expectTypeOf(refusals).toEqualTypeOf<Readonly<Record<RefusalCode, string>>>();
    expect(Object.keys(refusals).sort()).toEqual([...refusalCodes].sort());
  });

  it("none is longer than 240 characters, and each says two things: what is wrong and how to fix it", () => {
    expect(keysWhere(refusals, (text) => text.length > 240)).toEqual([]);
    expect(keysWhere(refusals, (text) => !/[.:;] \p{L}.*\.$/u.test(text))).toEqual([]);
    expect(keysWhere(refusals, (text) => (text.match(/\.(\s|$)/g) ?? []).length > 2)).toEqual([]);
  });

  it("none blames, and none calls anything safe or to code", () => {
    expect(keysWhere(refusals, (text) => kinderWords.some((word) => word.test(text)))).toEqual([]);
  });

  it("each reads without its figures", () => {
    const bare = Object.entries(refusals).map(([code, text]) => [code, fill(text, { place: "sheet/checks/rim" })] as const);
    const gap = /\s{2}|\s[.,;:]|[,:;]\s*\.|\(\)|''|""|:\s*$|,\s*,|:\s*,|^[^\p{Lu}']/u;
    expect(bare.filter(([, text]) => gap.test(text) || text.includes("{"))).toEqual([]);
  });

  it("a figure prints where it belongs", () => {
    const says = (code: RefusalCode, figures: Dictionary) => fill(refusals[code], figures);
    expect(says("reading-denominator", { found: "1/7" })).toContain(" 1/7. ");
    expect(says("reading-denominator", {})).not.toContain(" .");
    expect(says("sheet-limit-undecidable", { place: "p", room: "1/4 in", needed: "3/8 in" })).toMatch(/ 1\/4 in .* 3\/8 in /);
  });
});

/** Figures that come with a code wherever it is refused, beside the place: a misspelt placeholder would print nothing for ever. */
const figuresOf: Readonly<Partial<Record<RefusalCode, readonly string[]>>> = {
  "limits-crossed": ["lower", "upper"],
  "points-too-few": ["taken", "least"],
  "points-too-many": ["taken", "most"],
  "ties-too-few": ["taken", "least"],
  "ties-mark-unknown": ["mark"],
  "ties-mark-twice": ["mark"],
  "ties-cannot-meet": ["first", "second", "miss"],
  "ties-side-missing": ["mark", "first", "second"],
  "sheet-shape": ["wanted"],
  "sheet-unknown-name": ["name"],
  "sheet-duplicate-name": ["name"],
  "sheet-limit-undecidable": ["room", "needed"],
  "sheet-limit-on-nominal": ["size"],
  "entry-id-used": ["number"],
  "entry-unknown-item": ["item"],
  "entry-unknown-tag": ["tag"],
  "entry-unknown-covering": ["covering"],
  "ledger-format": ["found"],
  "ledger-number": ["found", "expected"],
  "ledger-link": ["number", "before"],
  "ledger-hash": ["number"],
  "ledger-duplicate-id": ["number", "earlier"],
  "ledger-head": ["found", "expected"],
  "ledger-job": ["number"],
  "ledger-version-digest": ["version"],
  "ledger-too-deep": ["deepest"],
  "seal-company": ["key", "name"],
  "seal-key-retired": ["key"],
  "seal-file-missing": ["file"],
  "seal-file-changed": ["file"],
  "seal-file-not-json": ["file"],
  "seal-file-unexpected": ["file"],
  "seal-differs": ["what"],
  "seal-text-not-shown": ["text"],
  "seal-pages": ["was", "now"],
  "seal-page-words": ["page", "was", "now"],
  "seal-picture-missing": ["photo"],
  "seal-finding": ["title"],
  "rules-unknown": ["version"],
  "rules-differ": ["version"],
  "own-number-used": ["number"],
  "person-request-held": ["until"],
  "person-covered": ["until"],
  "table-unreadable": ["line"],
  "table-column-missing": ["column"],
  "table-column-twice": ["column"],
  "table-too-long": ["most"],
  "table-cell-long": ["characters", "most"],
  "table-number-twice": ["line"],
  "table-name-unknown": ["found"],
  "table-lines-bad": ["count", "line"],
  "photo-not-whole": ["percent", "rows", "height"],
  "too-many-tries": ["seconds", "minutes"],
  "move-differs": ["what"],
};

it("every placeholder of a refusal is a figure that the code carries", () => {
  const known = (code: string) => ["place", ...(code.startsWith("reading-") ? ["found"] : []), ...(figuresOf[code as RefusalCode] ?? [])];
  expect(keysWhere(everyRefusalEn, (text, code) => placeholders(text).some((name) => !known(code).includes(name)))).toEqual([]);
});

describe("what a sentence advises is taken", () => {
  it.each<readonly [string, LengthUnit, number]>([
    ["3 1/2 in", "in", 88_900],
    ["3 1/2 pulg", "in", 88_900],
    ["12 mm", "in", 12_000],
    ["3.5 cm", "in", 35_000],
    ["1 1/2", "in", 38_100],
    ["1250", "mm", 1_250_000],
    ["1.25", "in", 31_750],
    ["4 3/8", "in", 111_125],
    ["5 ft 3 in", "in", 1_600_200],
    ["5 pies 3 pulg", "in", 1_600_200],
    ["6 ft 1 in", "in", 1_854_200],
    ["6 pies 1 pulg", "in", 1_854_200],
    ["1.23 m", "mm", 1_230_000],
  ])("%s, where %s are expected", (typed, unit, micrometres) => {
    expect(readLength(typed, unit)).toMatchObject({ ok: true, value: { micrometres } });
  });

  it("1 h 30 min, where a duration is asked", () => {
    expect(readQuantity("1 h 30 min", { kind: "duration", unit: "min" })).toMatchObject({ ok: true, value: { value: 5_400_000 } });
  });

  it.each<readonly [string, RefusalCode]>([
    ["5 ft 13 in", "reading-inches-over-foot"],
    ["5 pies 13 pulg", "reading-inches-over-foot"],
    ["1 m 23 cm", "reading-two-readings"],
  ])("and %s is what it says it is", (typed, code) => {
    expect(readLength(typed, "in")).toMatchObject({ ok: false, refusal: { code } });
  });
});

it("what a tolerance sheet's shape asks for has its Spanish", () => {
  const faulty = {
    ...tenItems,
    title: "no words by language",
    version: -1,
    steps: {},
    more: 1,
    switches: [{ id: 1, title: { en: "A" }, standard: "yes" }],
    checks: tenItems.checks.map((check) => ({ ...check, aim: "none" })),
    coverings: undefined,
  };
  const wanted = sheetFaults(faulty as never).map(({ figures }) => String(figures.wanted));
  expect(new Set(wanted).size).toBeGreaterThanOrEqual(8);
  expect(wanted.filter((text) => !Object.hasOwn(wantedEs, text))).toEqual([]);
});

describe("headings", () => {
  it("there is one for every key, and a key without its word is no dictionary", () => {
    expect(new Set(headingKeys).size).toBe(headingKeys.length);
    expect(Object.keys(headingsEn).sort()).toEqual([...headingKeys].sort());
    expect(Object.keys(headingsEs).sort()).toEqual([...headingKeys].sort());
    expectTypeOf(headingsEn).toEqualTypeOf<Readonly<Record<HeadingKey, string>>>();
    expectTypeOf(headingsEs).toEqualTypeOf<Readonly<Record<HeadingKey, string>>>();
    expectTypeOf<Omit<typeof headingsEn, "aim">>().not.toExtend<Readonly<Record<HeadingKey, string>>>();
  });

  it("the templates say no key that is not there", () => {
    const templates = join(import.meta.dirname, "../../../templates");
    const said = globSync("**/*.ts", { cwd: templates }).flatMap((file) =>
      [...readFileSync(join(templates, file), "utf8").matchAll(/\bsay\("([^"]+)"\)/g)].map(([, key]) => key ?? ""),
    );
    expect(said.length).toBeGreaterThan(30);
    expect(said.filter((key) => !(headingKeys as readonly string[]).includes(key))).toEqual([]);
  });

  it("none carries a figure", () => {
    expect([...keysWhere(headingsEn, (text) => text.includes("{")), ...keysWhere(headingsEs, (text) => text.includes("{"))]).toEqual([]);
  });
});

it("a sheet is a tolerance sheet and an owner a company owner, in English", () => {
  const alone = (text: string) => /(?<!tolerance )\bsheets?\b/i.test(text) || /(?<!company )\bowners?\b/i.test(text);
  expect(own.flatMap(({ en }) => keysWhere(en, alone))).toEqual([]);
});

it("no sentence is left in the other language", () => {
  const english = /\b(the|and|again|with|this|send)\b/i;
  const spanish = /\b(el|los|otra|que|una|mande)\b/i;
  expect(pairs.flatMap(({ en }) => keysWhere(en, (text) => spanish.test(text)))).toEqual([]);
  expect(pairs.flatMap(({ es }) => keysWhere(es, (text) => english.test(text)))).toEqual([]);
});
