import { describe, expect, test } from "vitest";
import { answerView, instrumentOff, qualitySpeaking, tableLines } from "#core/quality/index.ts";
import { turnsOf } from "#core/screens/field/study/order.ts";
import { sampleAnswers } from "../../samples/answers.ts";

const inch = (typed: string) => ({ typed, unit: "in" });

describe("an instrument checked against itself", () => {
  test("a laser a quarter inch apart after turning is an eighth off: 3175 um; at 100 ft 1587.5 and two sixteenths' doubt are allowed", () => {
    const off = instrumentOff({
      way: "laser two ways",
      first: inch("40 1/16"),
      second: inch("40 5/16"),
      over: { typed: "100", unit: "ft" },
    });
    // U of the halved difference: 0.5 * 2 * sqrt(2) * 1587.5 / sqrt(12) = 648.1 um
    expect(off).toEqual({ off: -3175, distance: 30_480_000, allowed: Math.ceil(1587.5 + 648.1) });
  });

  test("a hook takes the whole difference, over no length; what is no length tells nothing", () => {
    expect(instrumentOff({ way: "tape hook", first: inch("5 1/16"), second: inch("5") })).toMatchObject({ distance: 0 });
    expect(instrumentOff({ way: "tape hook", first: inch("5 1/16"), second: inch("5 0/16") })?.off).toBe(1588);
    expect(instrumentOff({ way: "level turned", first: inch("1/16"), second: inch("0") })).toBeUndefined();
    expect(instrumentOff({ way: "tape hook", first: inch("long"), second: inch("5") })).toBeUndefined();
  });
});

describe("the order of a tape study", () => {
  const turns = turnsOf(7, ["a", "b"], 5, 2);
  test("everybody reads every mark once in each round, and the same seed gives the same order", () => {
    const keys = turns.map(({ person, mark, round }) => `${person}${mark}${round}`);
    expect([turns.length, new Set(keys).size]).toEqual([20, 20]);
    expect(turns.slice(0, 10).every(({ round }) => round === 1)).toBe(true);
    expect(turnsOf(7, ["a", "b"], 5, 2)).toEqual(turns);
    expect(turnsOf(8, ["a", "b"], 5, 2)).not.toEqual(turns);
  });
});

test("a table for a spreadsheet has an interval's ends beside the value, as they are kept", () => {
  const speaking = qualitySpeaking({ language: "en", units: "inch" }, { people: {}, jobs: {}, sheets: {}, instruments: {} });
  const table = sampleAnswers[0]?.tables[0];
  if (table === undefined) throw new Error("the sample has no table");
  const [heads, first] = tableLines(table, speaking);
  expect([heads?.length, first]).toEqual([6, ["Set the basin", 40, 0.9, 0.8, 0.96, ""]]);
  expect(answerView(sampleAnswers[0] as never, speaking, 1).tables[0]).toMatchObject({
    cut: 3,
    rows: [{ cells: ["Set the basin", "40", "90 % (80 to 96)"] }],
  });
});
