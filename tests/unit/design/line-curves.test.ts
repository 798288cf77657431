import { describe, expect, test } from "vitest";
import { type HeadOverFlow, lineCurves } from "#core/job/index.ts";
import { GPM, inch, line, planned, source } from "./planned.ts";

const FOOT = 0.3048;
const gpm = (flow: number): number => (flow * 6e7) / GPM;
const at = (curve: HeadOverFlow, i: number) => curve.at(i) ?? { flow: Number.NaN, head: Number.NaN };

describe("the curves of pump and pipe", () => {
  test("the pump's curve is the parabola that its card was made from: H = 24 − 0.004 q² ft", () => {
    const { pump } = lineCurves(planned(), {});
    expect(pump?.card.length).toBe(9);
    for (const { flow, head } of pump?.stretches.flat() ?? []) expect(head / FOOT).toBeCloseTo(24 - 0.004 * gpm(flow) ** 2, 1);
  });

  test("the system begins at the static head, rises, and is drawn a tenth beyond the card", () => {
    const { system } = lineCurves(planned(), {});
    const curve = system?.curve ?? [];
    expect(at(curve, 0).head / FOOT).toBeCloseTo(6, 6);
    expect(gpm(at(curve, -1).flow)).toBeCloseTo(77 * 1.1, 3);
    for (const [i, { head }] of curve.entries()) if (i > 0) expect(head).toBeGreaterThan(at(curve, i - 1).head);
  });

  test("they meet where the check says that the pump works", () => {
    const design = planned();
    const { works, outcome } = lineCurves(design, {});
    expect(outcome).toBe("one point");
    expect(Math.round((works[0]?.flow.value ?? 0) * 6e7)).toBe(line("flow", design).says.figures.expected);
    const head = works[0]?.head.value ?? 0;
    expect(head / FOOT).toBeCloseTo(24 - 0.004 * gpm(works[0]?.flow.value ?? 0) ** 2, 1);
  });

  test("the advised size is the check's own, and its curve lies below", () => {
    const { advised, system } = lineCurves(planned(), {});
    const says = line("flow", planned()).advice.find(({ key }) => key === "design.advice.size-enough");
    expect(`${advised?.size} in`).toBe(says?.figures.size);
    expect(at(advised?.curve ?? [], -1).head).toBeLessThan(at(system?.curve ?? [], -1).head);
    expect(lineCurves(planned({ pipeSize: "3 in" }), {}).advised).toBeUndefined();
  });

  test("what is missing is named, and the rest is drawn", () => {
    const { pipeRun: _, ...figures } = inch.figures;
    const noRun = lineCurves(source(figures, inch.card, { pumpCurve: "0 gpm 24 ft; 77 gpm 0 ft" }), {});
    expect(noRun.needs).toEqual(["pipeRun"]);
    expect([noRun.pump !== undefined, noRun.system, noRun.works]).toEqual([true, undefined, []]);
    const noPump = lineCurves(source(inch.figures, inch.card), {});
    expect(noPump.needs).toEqual(["pumpCurve"]);
    expect([noPump.pump, noPump.system !== undefined]).toEqual([undefined, true]);
    expect(lineCurves(source({}), {})).toMatchObject({ works: [] });
    expect(lineCurves(source(inch.figures, inch.card, { pumpCurve: "a curve" }), {}).refusal?.code).toBe("pump-curve-text");
  });

  test("a straight drop joins its two stretches", () => {
    const drops = source(inch.figures, inch.card, { pumpCurve: "0 gpm 24 ft; 20 gpm 20 ft; 20 gpm 4 ft; 40 gpm 0 ft" });
    const { pump, works, outcome } = lineCurves(drops, {});
    expect(pump?.stretches.length).toBe(2);
    expect(outcome).toBe("on a vertical piece");
    expect(gpm(works[0]?.flow.value ?? 0)).toBeCloseTo(20, 3);
  });
});
