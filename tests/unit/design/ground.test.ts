import { describe, expect, test } from "vitest";
import { certain, rectangular, withSource } from "#core/doubt/index.ts";
import { designSwitches, rodTargets, sitePlan } from "#core/job/index.ts";
import { fromMicrometres, inches } from "#core/units/index.ts";
import { defaultSheet } from "#infra/sheets/index.ts";
import { planned } from "./planned.ts";

const tape = (name: string, metres: number) => withSource(certain(metres), name, rectangular(0.003));

describe("set-out", () => {
  const design = planned({ rimBelowGrade: "5 in", bedThickness: "3 in" });
  const aims = (mark: number) => {
    const found = rodTargets(design, certain(inches(mark)), certain(inches(10)));
    if (!found.ok) throw new Error(found.refusal.code);
    return Object.fromEntries(found.value.targets.map(({ place, aim }) => [place, aim.value / inches(1)]));
  };

  test("a mark 10 in over grade that reads 40: the rim reads 55, the dug bottom 78", () => {
    expect(aims(40).rim).toBeCloseTo(55, 9);
    expect(aims(40)["dug bottom"]).toBeCloseTo(78, 9);
    expect(aims(40)["spillway lip"]).toBeUndefined();
  });

  test("a mark read wrong by 1 in moves every target by 1 in", () => {
    const [right, off] = [aims(40), aims(41)];
    expect(Object.keys(right)).toEqual(["dug bottom", "top of bed", "rim"]);
    for (const place of Object.keys(right)) expect((off[place] ?? 0) - (right[place] ?? 0)).toBeCloseTo(1, 9);
  });
});

describe("the plan of a site", () => {
  const marks = { first: "A", second: { name: "B", distance: tape("AB", 5) } };

  test("3-4-5: one side said, one to be asked, one that cannot be", () => {
    const ties = (a: number, b: number) => [
      { mark: "A", distance: tape("a", a) },
      { mark: "B", distance: tape("b", b) },
    ];
    const plan = sitePlan(marks, [
      { name: "valve", ties: ties(3, 4), side: { from: "A", to: "B", side: "left" } },
      { name: "bend", ties: ties(3, 4) },
      { name: "stub", ties: ties(1, 1) },
    ]);
    if (!plan.ok) throw new Error(plan.refusal.code);
    const [valve, bend, stub] = plan.value.points;
    expect(valve).toMatchObject({ name: "valve", state: "placed", x: 1_800_000, y: 2_400_000 });
    expect(bend).toMatchObject({ state: "mirrored", ask: { from: "A", to: "B" }, left: { y: 2_400_000 }, right: { y: -2_400_000 } });
    expect(stub).toMatchObject({ state: "refused", refusal: { code: "ties-cannot-meet" } });
    if (valve?.state !== "placed") throw new Error("not placed");
    expect(fromMicrometres(valve.ellipse.major)).toBeGreaterThan(0.003);
    expect(valve.ellipse.major).toBeGreaterThanOrEqual(valve.ellipse.minor);
  });

  test("marks that cannot be placed are refused", () => {
    expect(sitePlan({ first: "A", second: { name: "A", distance: tape("AB", 5) } }, [])).toMatchObject({
      ok: false,
      refusal: { code: "ties-mark-twice" },
    });
  });
});

test("the default tolerance sheet's switches are those that the arithmetic asks", () => {
  const on = designSwitches(defaultSheet(), { figures: {}, switches: { "check-valve": true } });
  expect(on).toMatchObject({ checkValve: true, roundBasin: false, makeUpValve: false });
});
