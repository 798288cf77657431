import { describe, expect, test } from "vitest";
import { figuresUsed } from "#core/job/index.ts";
import { inch, parabola, planned, source } from "./planned.ts";

const keys = (from: ReturnType<typeof planned>, switches = {}) => figuresUsed(from, switches).map(({ key }) => key);

describe("the figures that the design check rests on", () => {
  test("each as typed, from the design or from its card", () => {
    const found = new Map(figuresUsed(planned(), {}).map((one) => [one.key, one]));
    expect(found.get("pipeRun")).toEqual({ key: "pipeRun", fact: { typed: "40", unit: "ft" } });
    expect(found.get("basinWidth")).toMatchObject({ fact: { typed: "24.0", unit: "in" }, card: { part: "a part" } });
    expect(found.get("pumpCurve")).toMatchObject({ fact: parabola, card: { part: "a part" } });
  });

  test("what no question asks is not among them, nor what nobody said or what is named as unknown", () => {
    // lined area, freeboard and rain a day belong to the overflow, which is no question before the dig
    expect(keys(planned())).not.toContain("linedArea");
    expect(keys(source({ pipeRun: "40 ft" }))).toEqual(["pipeRun"]);
    const unknown = { design: { figures: { pipeRun: "unknown" as const }, switches: {} }, kitCards: [] };
    expect(figuresUsed(unknown, {})).toEqual([]);
  });

  test("the design's own figure stands before the card's", () => {
    const both = source({ ...inch.figures, basinDepth: "22 in" }, inch.card);
    expect(figuresUsed(both, {}).find(({ key }) => key === "basinDepth")).toEqual({
      key: "basinDepth",
      fact: { typed: "22", unit: "in" },
    });
  });

  test("every question's figures are there, and the place of a check valve only where there is one", () => {
    expect(keys(planned())).toEqual(
      expect.arrayContaining([
        "staticHead",
        "pipeSize",
        "streamDepth",
        "intakeHeight",
        "cordLength",
        "rainExpected",
        "stoneDepth",
        "lidLoad",
      ]),
    );
    expect(keys(planned({ checkValveDistance: "2 ft" }))).not.toContain("checkValveDistance");
    expect(keys(planned({ checkValveDistance: "2 ft" }), { checkValve: true })).toContain("checkValveDistance");
  });
});
