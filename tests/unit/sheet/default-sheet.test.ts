import { describe, expect, test } from "vitest";
import { type Check, type DesignFigure, designFigures, sheetFaults, type ToleranceSheet, usualUncertainty } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { defaultSheet, defaultSheetJson } from "#infra/sheets/default-sheet.ts";

const sheet = defaultSheet();
const inch = 25_400;

const everyWords = (value: unknown, at: string): { at: string; en: string; es: unknown }[] => {
  if (Array.isArray(value)) return value.flatMap((entry, i) => everyWords(entry, `${at}/${i}`));
  if (typeof value !== "object" || value === null) return [];
  const fields = value as Record<string, unknown>;
  if (typeof fields.en === "string") return [{ at, en: fields.en, es: fields.es }];
  return Object.entries(fields).flatMap(([key, entry]) => everyWords(entry, `${at}/${key}`));
};

const checkNamed = (id: string): Check => {
  const check = sheet.checks.find((c) => c.id === id);
  if (check === undefined) throw new Error(`no check ${id}`);
  return check;
};

const with_ = (id: string, change: Partial<Check>): Json =>
  ({ ...sheet, checks: sheet.checks.map((c) => (c.id === id ? { ...c, ...change } : c)) }) as unknown as Json;

describe("the default tolerance sheet", () => {
  test("has no fault, and every limit that can hold can be decided", () => {
    expect(sheetFaults(defaultSheetJson)).toEqual([]);
  });

  test("that test bites: less room than the doubt needs is named", () => {
    const tight = sheetFaults(with_("level-along-round", { aim: inch / 4 }));
    expect(tight.map(({ code, place }) => [code, place])).toEqual([["sheet-limit-undecidable", "sheet/checks/level-along-round"]]);
    const guarded = sheetFaults(with_("rim-moved", { rule: "guarded" }));
    expect(guarded.map(({ place }) => place)).toEqual(["sheet/checks/rim-moved"]);
  });

  test("doubt by hand: laser on fine, wiped rim, 1/16 in marks, 50 ft", () => {
    // half-widths in 1/32 in: resolution 1, placing 2, receiver 2, slope 1 -> sqrt(1 + 4 + 4 + 1) / 32 in / sqrt(3) = 1.449 mm a reading
    const reading = ((Math.sqrt(10) / 32) * inch) / Math.sqrt(3);
    expect(usualUncertainty(sheet, checkNamed("level-along"))).toBeCloseTo(reading, -1); // mean of two less mean of two
    expect(usualUncertainty(sheet, checkNamed("level-along-round"))).toBeCloseTo(reading * Math.SQRT2, -1); // one less one
    expect(usualUncertainty(sheet, checkNamed("fourth-corner"))).toBeCloseTo(reading * 2, -1);
  });

  test("aims and limits stand as planned, in micrometres", () => {
    const of = (id: string) => {
      const { aim, lower, upper } = checkNamed(id);
      return { aim, lower, upper };
    };
    expect(of("level-along")).toEqual({ aim: inch / 4, lower: undefined, upper: inch / 2 });
    expect(of("fourth-corner")).toEqual({ aim: 0, lower: -inch / 2, upper: inch / 2 });
    expect(of("cover-depth")).toEqual({ aim: 10 * inch, lower: 8 * inch, upper: undefined });
    expect(of("lip-level")).toEqual({ aim: 1_588, lower: undefined, upper: inch / 8 });
    expect(of("lap-past-rim")).toEqual({ aim: 8 * inch, lower: 6 * inch, upper: undefined });
    expect(of("patch-width")).toEqual({ aim: 1.5 * inch, lower: inch, upper: undefined });
    expect(of("edge-above-coming-water")).toEqual({ aim: 4 * inch, lower: 3 * inch, upper: undefined });
    expect(of("edge-running")).toEqual({ aim: 3 * inch, lower: 2 * inch, upper: undefined });
    expect(of("rim-moved")).toEqual({ aim: 0, lower: -0.375 * inch, upper: 0.375 * inch });
    expect(of("return-edge-height")).toEqual({ aim: 2.5 * inch, lower: 1.5 * inch, upper: undefined });
  });

  test("what is done while covering, leak tests and the return visit hold nothing", () => {
    const quiet = new Set(["basin-backfill", "leak-tests", "return-visit", "arrive-on-site", "rock-and-foam", "walk-through"]);
    const holding = [...sheet.items, ...sheet.checks].filter((thing) => quiet.has(thing.step) && thing.weight === "holds");
    expect(holding.map((thing) => thing.id)).toEqual([]);
  });

  test("every number says where it comes from", () => {
    const unsaid = sheet.checks.filter((check) => check.source === undefined);
    expect(unsaid.map((check) => check.id)).toEqual([]);
    // a figure with its unit in the words of an item: '10 ft', '30 min', '2 turns'
    const figure = /\d\s*(in|ft|min|s|h|days|turns|pulg|pies|días|vueltas)\b/;
    const withFigure = sheet.items.filter((item) =>
      everyWords({ ...item }, "").some(({ en, es }) => figure.test(en) || figure.test(String(es))),
    );
    expect(withFigure.length).toBeGreaterThan(10);
    expect(withFigure.filter((item) => item.source === undefined).map(({ id }) => id)).toEqual([]);
  });

  test("a source says whence a figure is and not why: the reason stands beside it", () => {
    const sources = [...sheet.items, ...sheet.checks].flatMap(({ source }) => source ?? []);
    expect(sources.filter((source) => !/^(own|common practice|the can's own figure)/.test(source))).toEqual([]);
    expect(sources.filter((source) => source.length > 100 || /[.] |\bu\b|\bU\b/.test(source))).toEqual([]);
    expect(sheet.checks.filter(({ reason }) => reason).map(({ id }) => id)).toEqual([
      "level-along-round",
      "level-across-round",
      "rim-moved",
      "marks-found",
      "points-found",
      "crossings-found",
      "splices-found",
      "lid-found",
      "basin-found",
      "outlet-found",
    ]);
  });

  test("every caution says who decides", () => {
    const silent = sheet.cautions.filter(
      ({ text }) =>
        !/local code and a licensed person decide/i.test(text.en) ||
        !/deciden el código local y una persona con licencia/i.test(text.es ?? ""),
    );
    expect(silent.map(({ id }) => id)).toEqual([]);
  });

  test("before digging, the moment of first running, ties and facts in words are data", () => {
    expect(sheet.beforehand).toEqual([
      { id: "before-digging", title: { en: "before digging", es: "antes de excavar" }, steps: sheet.steps.slice(0, 2).map(({ id }) => id) },
    ]);
    expect(sheet.items.filter(({ marks }) => marks === "first running").map(({ kind }) => kind)).toEqual(["picture"]);
    expect(sheet.items.filter(({ fromMark }) => fromMark).map(({ quantity }) => quantity)).toEqual(
      Array.from({ length: 21 }, () => "length"),
    );
    expect(sheet.figures.filter(({ kind }) => kind === "text").map(({ id }) => id)).toEqual([
      "nutDirection",
      "tightening",
      "pipeKind",
      "wireSize",
      "pumpCurve",
    ]);
    expect(sheet.steps.filter(({ signed }) => signed)).toHaveLength(1);
    expect(sheet.coverings.map(({ title }) => title.en.split(" ")[0])).toEqual(["backfill", "fill", "set", "trim", "set"]);
  });

  test("every figure that the arithmetic knows is asked as it knows it", () => {
    const known: Readonly<Record<string, DesignFigure>> = designFigures;
    const asked = sheet.figures.filter(({ id }) => Object.hasOwn(known, id));
    expect(asked.length).toBeGreaterThan(45);
    for (const { id, kind, unit } of asked) expect([id, kind, unit]).toEqual([id, known[id]?.kind, known[id]?.unit?.inch]);
  });

  test("limits that come from the design are asked and hold nothing; the cure time holds", () => {
    const derived = sheet.checks.filter(({ lower, upper }) =>
      [lower, upper].some((limit) => typeof limit === "object" && /draw-down|left inside/.test(limit.function)),
    );
    expect(derived.map(({ id, weight }) => [id, weight])).toEqual([
      ["water-left-in", "asked"],
      ["water-left-washing", "asked"],
      ["draw-down", "asked"],
      ["water-left-winter", "if you have it"],
    ]);
    expect(checkNamed("cure-passed")).toMatchObject({ weight: "holds", lower: { function: "cure time" } });
    expect(checkNamed("set-passed")).toMatchObject({ weight: "holds", holds: "by tag", lower: { function: "set time" } });
    expect(sheet.checks.filter(({ function: of }) => of === "loss a day").map(({ weight }) => weight)).toEqual(["open", "open"]);
  });

  test("the cord's slack is the sheet's: 3 ft (own)", () => {
    expect(checkNamed("cord-reaches").upper).toEqual({ function: "cord reach", offset: -36 * inch });
  });

  test("ids are kebab-case with a hyphen, figures camelCase", () => {
    const lists = [
      sheet.switches,
      sheet.instruments,
      sheet.placings,
      sheet.tagSets,
      sheet.coverings,
      sheet.cautions,
      sheet.steps,
      sheet.items,
      sheet.oneOf,
      sheet.checks,
    ];
    const choices = sheet.items.flatMap((item) => item.choices ?? []);
    for (const { id } of [...lists.flat(), ...choices]) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)+$/);
    for (const { id } of sheet.figures) expect(id).toMatch(/^[a-z]+([A-Z][a-z]+)*[0-9]*$/);
  });

  test("every wording is there in English and Spanish", () => {
    const words = everyWords(defaultSheetJson, "sheet");
    expect(words.length).toBeGreaterThan(200);
    expect(words.filter(({ en, es }) => en.trim() === "" || typeof es !== "string" || es.trim() === "").map(({ at }) => at)).toEqual([]);
  });

  test("nothing is called safe or to code, and no word stands that is kept off the screens", () => {
    const kept =
      /\b(checklists?|audits?|observations?|actions?|issues?|scores?|templates?|forms?|assets?|daily log|timelines?|feeds?|galler(y|ies)|dashboards?|boards?|workflows?|flags?|punch list|snag list|pass|fail|washers?|screens?)\b/i;
    const claims = /\b(safe|unsafe|seguro|segura|up to code|to code|code compliant)\b/i;
    const wrong = everyWords(defaultSheetJson, "sheet").filter(({ en, es }) => kept.test(en) || claims.test(en) || claims.test(String(es)));
    expect(wrong.map(({ at, en }) => `${at}: ${en}`)).toEqual([]);
  });

  test("every step where the work can hurt shows a caution, and no caution goes unused", () => {
    const shown = new Set([
      ...sheet.steps.flatMap((step) => step.cautions),
      ...sheet.coverings.flatMap((covering) => covering.cautions),
      ...sheet.items.flatMap((item) => [...(item.cautions ?? []), ...(item.choices ?? []).flatMap((choice) => choice.caution ?? [])]),
    ]);
    expect(sheet.cautions.map(({ id }) => id).filter((id) => !shown.has(id))).toEqual([]);
    expect(sheet.steps.filter((step) => !step.office && step.cautions.length === 0).map((step) => step.id)).toEqual([]);
  });

  test("each covering is held by something, and each holding item by its covering or its tag", () => {
    const held = (s: ToleranceSheet) =>
      new Set([...s.items, ...s.checks].filter((t) => t.weight === "holds").flatMap((t) => (t.holds === "by tag" ? [] : [t.holds])));
    expect([...held(sheet)].sort()).toEqual(sheet.coverings.map(({ id }) => id).sort());
  });
});
