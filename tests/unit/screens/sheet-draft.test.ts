import { describe, expect, test } from "vitest";
import { sheetDifferences, sheetFaults, type ToleranceSheet } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { cardFigures, cardShown, cardTyped, unitsOf } from "#core/screens/office/kits/card-typed.ts";
import { added, changed, faultPlace, newThing, removed, shifted, thingsOf } from "#core/screens/office/sheets/draft.ts";
import { fieldsOf } from "#core/screens/office/sheets/fields.ts";
import { quantityTyped } from "#core/screens/office/sheets/typed-quantity.ts";
import { kitCards } from "#infra/demo/company.ts";
import { defaultSheet, oldPondSheet } from "#infra/sheets/index.ts";

const sheet = defaultSheet();
const faults = (draft: ToleranceSheet) => sheetFaults(draft as unknown as Json);

describe("a tolerance sheet as it is typed", () => {
  test("one field changed and changed back is the same sheet", () => {
    const other = changed(sheet, "checks", "edge-running", "aim", 88_900);
    expect(sheetDifferences(sheet, other)).toHaveLength(1);
    expect(sheetDifferences(sheet, changed(other, "checks", "edge-running", "aim", 76_200))).toEqual([]);
    expect(sheet.checks.find(({ id }) => id === "edge-running")?.aim).toBe(76_200);
  });

  test("an item goes up and down among those of its step alone, and stays at the end", () => {
    const inStep = (draft: ToleranceSheet) => draft.items.filter(({ step }) => step === "edges-running").map(({ id }) => id);
    const [first = "", second = "", third = ""] = inStep(sheet);
    const down = shifted(sheet, "items", first, 1);
    expect(inStep(down)).toEqual([second, first, third]);
    expect(inStep(shifted(down, "items", first, -1))).toEqual([first, second, third]);
    expect(shifted(sheet, "items", first, -1)).toBe(sheet);
    const others = (draft: ToleranceSheet) => draft.items.filter(({ step }) => step !== "edges-running").map(({ id }) => id);
    expect(others(down)).toEqual(others(sheet));
  });

  test("a step that changes its place takes the printed numbers with it", () => {
    const moved = shifted(sheet, "steps", "arrive-on-site", -1);
    expect(moved.steps.slice(0, 3).map(({ id, number }) => [id, number])).toEqual([
      ["arrive-on-site", 0],
      ["kit-and-design", 1],
      ["hole-and-bed", 2],
    ]);
  });

  test("every new thing has a name of its own, and what is at fault in it is found at its own place", () => {
    for (const kind of [
      "picture",
      "reading",
      "answer",
      "check",
      "steps",
      "cautions",
      "coverings",
      "tagSets",
      "switches",
      "figures",
      "instruments",
      "placings",
    ] as const) {
      const { list, thing } = newThing(sheet, kind, "edges-running");
      const draft = added(sheet, list, thing);
      const found = faults(draft);
      expect([kind, found.length > 0]).toEqual([kind, true]);
      for (const fault of found) expect([kind, faultPlace(draft, fault)]).toMatchObject([kind, { list, id: thing.id }]);
      const again = newThing(draft, kind, "edges-running");
      expect(again.thing.id).not.toBe(thing.id);
      expect(sheetDifferences(sheet, removed(draft, list, String(thing.id)))).toEqual([]);
    }
  });

  test("a picture with its words is a sheet that can be saved", () => {
    const { list, thing } = newThing(sheet, "picture", "edges-running");
    const draft = changed(added(sheet, list, thing), list, String(thing.id), "title", { en: "Edge, dry", es: "Orilla, seca" });
    expect(faults(draft)).toEqual([]);
  });

  test("a refusal names its field: by the thing's name, by its place in the list, or the sheet itself", () => {
    const at = (draft: ToleranceSheet) => faults(draft).map((fault) => faultPlace(draft, fault));
    expect(at(changed(sheet, "items", "liner-lap", "instrument", "none-such"))).toEqual([
      { list: "items", id: "liner-lap", field: "instrument" },
    ]);
    expect(at(changed(sheet, "checks", "edge-running", "aim", 57_150))).toEqual([{ list: "checks", id: "edge-running", field: "" }]);
    expect(at(changed(sheet, "steps", "leak-tests", "number", "x"))).toEqual([{ list: "steps", id: "leak-tests", field: "number" }]);
    expect(at({ ...sheet, title: { en: "" } })).toEqual([{ field: "title" }]);
  });

  test("every field that the two sheets use can be changed on the page, but for those named here", () => {
    const onlyInFile = new Set(["id", "format", "ways", "weather", "wins"]);
    const missing = [sheet, oldPondSheet()].flatMap((one) =>
      (Object.keys(fieldsOf) as (keyof typeof fieldsOf)[]).flatMap((list) =>
        thingsOf(one, list).flatMap((thing) =>
          Object.keys(thing)
            .filter(
              (name) =>
                !onlyInFile.has(name) && !fieldsOf[list].some((of) => of.name === name && (of.when === undefined || of.when(thing))),
            )
            .map((name) => `${list} ${String(thing.id)} ${name}`),
        ),
      ),
    );
    expect(missing).toEqual([]);
  });
});

describe("a figure as it is typed", () => {
  test("in the company's units, exact in the fixed unit; what cannot be read says why and where", () => {
    expect(quantityTyped("3 1/2", "length", "inch", "p")).toEqual({ is: "value", value: 88_900 });
    expect(quantityTyped("90", "length", "metric", "p")).toEqual({ is: "value", value: 90_000 });
    expect(quantityTyped("-1 in", "length", "metric", "p")).toEqual({ is: "value", value: -25_400 });
    expect(quantityTyped("5", "duration", "inch", "p")).toEqual({ is: "value", value: 300_000 });
    expect(quantityTyped("  ", "length", "inch", "p")).toEqual({ is: "empty" });
    expect(quantityTyped("3 1/3", "length", "inch", "p")).toMatchObject({
      is: "refused",
      refusal: { code: "reading-denominator", place: "p" },
    });
  });
});

describe("a kit card as it is typed", () => {
  const figures = cardFigures([sheet]);
  test("every card of the demo comes back as it was", () => {
    for (const card of kitCards) {
      const shown = cardShown(card as never, figures);
      const { card: back, faults: none } = cardTyped(shown, figures);
      expect(none).toEqual({});
      expect({ ...back, facts: Object.entries(back.facts).sort() }).toEqual({
        ...card,
        facts: Object.entries(card.facts as object).sort(),
      });
    }
  });

  test("a figure without a number, a curve without its heads, a unit of another kind are told at their facts", () => {
    const shown = cardShown(kitCards.find(({ id }) => id === "tank-pump") as never, figures);
    const facts = {
      ...shown.facts,
      cordLength: { text: "long", unit: "ft", unknown: false },
      pumpCurve: { text: "0 gpm 16 ft; 20 gpm", unit: "", unknown: false },
      basinDepth: { text: "28", unit: "lb", unknown: false },
    };
    expect(Object.entries(cardTyped({ ...shown, facts }, figures).faults).map(([key, { place }]) => [key, place])).toEqual([
      ["basinDepth", "facts/basinDepth"],
      ["cordLength", "facts/cordLength"],
      ["pumpCurve", "facts/pumpCurve"],
    ]);
    expect(unitsOf({ kind: "length", unit: "in" })).toEqual(["in", "ft-in", "ft", "mm", "cm", "m"]);
  });
});
