import { describe, expect, test } from "vitest";
import { cardDifferences, limitStanding, sheetDifferences, type ToleranceSheet } from "#core/job/index.ts";
import { makeSayer, makeSheetSayer } from "#core/record/index.ts";
import { defaultSheet } from "#infra/sheets/index.ts";

type Loose = { -readonly [K in keyof ToleranceSheet]: ToleranceSheet[K] };
const sheet = defaultSheet();
const changed = (change: (draft: Loose) => void): ToleranceSheet => {
  const draft = structuredClone(sheet) as Loose;
  change(draft);
  return draft;
};
const withCheck = (id: string, more: object): ToleranceSheet =>
  changed((draft) => {
    draft.checks = draft.checks.map((check) => (check.id === id ? { ...check, ...more } : check));
  });
const english = (before: ToleranceSheet, after: ToleranceSheet): readonly string[] => {
  const sayer = makeSheetSayer({ language: "en", units: "inch" }, [after, before]);
  return sheetDifferences(before, after).map(sayer.difference);
};
const spanish = (before: ToleranceSheet, after: ToleranceSheet): readonly string[] => {
  const sayer = makeSheetSayer({ language: "es", units: "metric" }, [after, before]);
  return sheetDifferences(before, after).map(sayer.difference);
};

describe("what changed from one version of a tolerance sheet to another", () => {
  test("the number alone is no change", () => {
    expect(sheetDifferences(sheet, { ...sheet, version: 9 })).toEqual([]);
  });

  test("a limit, in the units and marks of who reads it", () => {
    const after = withCheck("edge-running", { aim: 88_900 });
    expect(sheetDifferences(sheet, after)).toEqual([
      {
        list: "checks",
        id: "edge-running",
        title: { en: "Liner edge above the running water", es: expect.any(String) },
        change: "changed",
        path: "aim",
        before: 76_200,
        after: 88_900,
        kind: "length",
      },
    ]);
    expect(english(sheet, after)).toEqual(["Check “Liner edge above the running water”, aim: was 3 in, now 3 1/2 in"]);
    expect(spanish(sheet, after)[0]).toMatch(/^Comprobación «.+», meta: antes 76 mm, ahora 89 mm$/);
  });

  test("a limit that follows the design, as it came and as it went", () => {
    const after = withCheck("edge-running", { lower: { function: "design figure", figure: "freeboard", offset: 12_700 } });
    expect(english(sheet, after)).toEqual([
      "Check “Liner edge above the running water”, lower limit: was 2 in, now design figure: Water at rest to the place where it would leave and 1/2 in more",
    ]);
    expect(english(after, sheet)).toEqual([
      "Check “Liner edge above the running water”, lower limit: was design figure: Water at rest to the place where it would leave and 1/2 in more, now 2 in",
    ]);
  });

  test("items that came and went, and a list in another order", () => {
    const after = changed((draft) => {
      const [first, second, ...rest] = draft.items;
      draft.items = [second, first, ...rest.filter(({ id }) => id !== "site-cleaned")] as typeof draft.items;
      draft.items = [
        ...draft.items,
        { ...(first as (typeof draft.items)[number]), id: "one-more", title: { en: "One more", es: "Uno más" } },
      ];
    });
    expect(english(sheet, after)).toEqual(["Item “One more”: new", "Item “Site cleaned up”: gone", "Item: in another order"]);
    expect(spanish(sheet, after).at(0)).toBe("Punto «Uno más»: nuevo en la hoja");
  });

  test("words are compared in each language, names print as what they name, the sheet's own fields without a list", () => {
    const after = changed((draft) => {
      draft.cureTable = "B";
      draft.title = { ...draft.title, es: "Otra" };
      draft.items = draft.items.map((item) => (item.id === "liner-lap" ? { ...item, placing: "hard-edge" } : item));
    });
    expect(english(sheet, after)).toEqual([
      "wording (Spanish): was “Depósito enterrado con cascada y conector en la pared”, now “Otra”",
      "cure table: was “A”, now “B”",
      "Item “Lap past the rim, lowest place”, read on: was Liner edge, now Hard edge",
    ]);
  });

  test("a kit card", () => {
    const before = { id: "p", part: "Pump", facts: { cordLength: { typed: "20", unit: "ft" }, pipeKind: "flexible" } };
    const after = { id: "p", part: "Pump", facts: { cordLength: { typed: "30", unit: "ft" }, lidLoad: "unknown" } };
    const sayer = makeSheetSayer({ language: "en", units: "inch" });
    const lines = cardDifferences(before, after).map((one) => sayer.cardDifference(one, (key) => `<${key}>`));
    expect(lines).toEqual(["<cordLength>: was 20 ft, now 30 ft", "<lidLoad>: now unknown", "<pipeKind>: no longer “flexible”"]);
  });
});

describe("can it be decided?, as somebody types", () => {
  const says = (draft: ToleranceSheet, id: string, language: "en" | "es" = "en"): string => {
    const sayer = makeSheetSayer({ language, units: "inch" });
    const { refusal } = makeSayer({ language, units: "inch", zone: "UTC" });
    return sayer.standing(limitStanding(draft, id), "length", refusal);
  };

  // a tape to 1/16 in on a liner's edge (1/4 in) and running water (1/4 in): u² = (1.588/(2√3))² + 2 (6.35/√3)² plus the tape's own
  // permitted error; 5.2 mm, so that one limit needs 3.65 × 5.2 = 19 mm of room; from 3 in to 2 in there are 25.4
  test("the room and the room that is needed", () => {
    const standing = limitStanding(sheet, "edge-running");
    expect(standing).toMatchObject({ is: "decided", room: 25_400 });
    expect(standing.is === "decided" && standing.needed / 1000).toBeCloseTo(
      3.65 * Math.hypot(1.588 / Math.sqrt(12), 6.35 / Math.sqrt(3), 6.35 / Math.sqrt(3)),
      0,
    );
    expect(says(sheet, "edge-running")).toMatch(/^Can be decided: 1 in from the aim/);
    expect(says(sheet, "edge-running", "es")).toMatch(/^Se puede decidir: 1 in/);
  });

  test("an aim too near its limit is told with its sentence, and so is one beyond it", () => {
    const near = limitStanding(withCheck("edge-running", { aim: 57_150 }), "edge-running");
    expect(near).toMatchObject({ is: "at fault", faults: [{ code: "sheet-limit-undecidable", place: "sheet/checks/edge-running" }] });
    // by the title that somebody gave it, never by its place in the file
    const draft = withCheck("edge-running", { aim: 57_150 });
    const title = sheet.checks.find(({ id }) => id === "edge-running")?.title;
    const named = (language: "en" | "es") =>
      makeSheetSayer({ language, units: "inch" }, [draft]).standing(
        near,
        "length",
        makeSayer({ language, units: "inch", zone: "UTC" }).refusal,
      );
    expect(named("en")).toContain(`“${title?.en}”`);
    expect(named("es")).toContain(`«${title?.es}»`);
    expect(named("en")).not.toContain("sheet/");
    expect(limitStanding(withCheck("edge-running", { aim: 25_400 }), "edge-running")).toMatchObject({ is: "at fault" });
    expect(limitStanding(withCheck("edge-running", { aim: undefined }), "edge-running")).toMatchObject({
      is: "at fault",
      faults: [{ code: "sheet-limit-without-aim" }],
    });
  });

  test("what is at fault elsewhere in the draft takes nothing from the answer", () => {
    const draft = changed((one) => {
      one.steps = one.steps.map((step, i) => (i === 3 ? { ...step, title: { en: "" } } : step));
      one.items = one.items.filter(({ id }) => id !== "site-cleaned");
    });
    expect(limitStanding(draft, "edge-running")).toMatchObject({ is: "decided" });
  });

  test("a clock, a count and a check that is not there", () => {
    expect(limitStanding(sheet, "water-steady")).toEqual({ is: "not asked" });
    expect(limitStanding(sheet, "nothing-such")).toEqual({ is: "not asked" });
  });

  test("every limit of the default sheet", () => {
    const at = sheet.checks.filter(({ id }) => limitStanding(sheet, id).is === "at fault");
    expect(at).toEqual([]);
  });
});
