import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contributors, expanded } from "#core/doubt/index.ts";
import { feet } from "#core/units/index.ts";
import {
  broadCrestedCoefficient,
  figure,
  flowForLip,
  flowOfLips,
  flowPerLip,
  gallonsPerHourPerInch,
  headsByFormula,
  lipFlowRatio,
  outOfLevelForRatio,
  outsideRange,
  sheetOverLip,
  toGallonsPerHourPerInch,
  weirFlow,
  weirFormulas,
  weirHead,
} from "#core/water/index.ts";
import { certain, gallonsPerMinute, inchesOf, taken } from "./given.ts";

const lip = { length: 0.6, crestHeight: 0.2 } as const;

describe("what stands on the lip", () => {
  test("40 gpm over 24 in is 100 gph per inch, and the other way round", () => {
    const perLip = taken(flowPerLip(gallonsPerMinute(40), inchesOf(24)));
    expect(toGallonsPerHourPerInch(perLip.value)).toBeCloseTo(100, 9);
    const flow = taken(flowForLip(certain(gallonsPerHourPerInch(100)), inchesOf(24)));
    expect(flow.value).toBeCloseTo(gallonsPerMinute(40).value, 12);
  });

  test("its head carries the estimate's 20 % and says that heads are out of range", () => {
    const sheet = taken(sheetOverLip(gallonsPerMinute(40), inchesOf(24)));
    expect(sheet.warning).toBe("heads out of range");
    expect(expanded(sheet.head) / sheet.head.value).toBeCloseTo((2 * 0.2) / Math.sqrt(3), 10);
    expect(contributors(sheet.head)[0]?.source).toBe("factor:lip-head-estimate");
    expect(taken(sheetOverLip(gallonsPerMinute(400), inchesOf(24))).warning).toBeUndefined();
  });

  test("a tenth more flow stands two thirds of a tenth higher; the flow's doubt goes the same way", () => {
    const flow = figure("flow", 0.0025, 0.00025);
    const sheet = taken(sheetOverLip(flow, certain(0.6)));
    const fromFlow = sheet.head.parts.get("figure:flow") ?? 0;
    expect(fromFlow / sheet.head.value).toBeCloseTo((2 / 3) * (0.1 / Math.sqrt(3)), 9);
  });

  test("lips side by side need their flows added", () => {
    const one = { wantedPerLip: certain(gallonsPerHourPerInch(100)), length: inchesOf(24) };
    expect(taken(flowOfLips([one, one])).value).toBeCloseTo(gallonsPerMinute(80).value, 12);
    expect(flowOfLips([])).toMatchObject({ refusal: { code: "number-not-positive", place: "spillway/lips" } });
  });

  test("every formula: more head gives more flow, and its head for a flow gives that flow", () => {
    const head = fc.double({ min: 0.004, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...weirFormulas), head, (formula, h) => {
        const flow = taken(weirFlow(formula, lip, h));
        expect(taken(weirFlow(formula, lip, h * 1.1))).toBeGreaterThan(flow);
        expect(taken(weirHead(formula, lip, flow))).toBeCloseTo(h, 9);
      }),
    );
  });

  test("heads of one flow side by side: at a landscape flow they lie apart, each named out of range", () => {
    const list = taken(headsByFormula({ length: 0.6096, crestHeight: 0.1 }, gallonsPerMinute(40).value));
    expect(list.map(({ formula }) => formula)).toEqual([...weirFormulas]);
    for (const { head, outside } of list) {
      expect(head).toBeGreaterThan(0.015);
      expect(head).toBeLessThan(0.02);
      expect(outside).toContain("head");
    }
    expect(outsideRange("Rehbock", { length: 2, crestHeight: 0.4 }, 0.3)).toEqual([]);
    expect(outsideRange("Francis", lip, feet(0.2))).toEqual([]);
  });

  test("broad crest between the table's values, refused outside", () => {
    const rootFoot = Math.sqrt(feet(1));
    expect(taken(broadCrestedCoefficient(feet(0.3), feet(0.5))) / rootFoot).toBeCloseTo(2.86, 10);
    expect(taken(broadCrestedCoefficient(feet(0.2), feet(0.625))) / rootFoot).toBeCloseTo(2.775, 10);
    expect(broadCrestedCoefficient(feet(0.05), feet(1))).toMatchObject({ refusal: { code: "reading-out-of-range", place: "lip/head" } });
    expect(broadCrestedCoefficient(feet(0.3), feet(5))).toMatchObject({ refusal: { place: "lip/breadth" } });
  });

  test.each([
    [weirFlow("Francis", { ...lip, length: 0 }, 0.01), "number-not-positive", "lip/length"],
    [weirFlow("Rehbock", { ...lip, crestHeight: Number.NaN }, 0.01), "number-not-finite", "lip/crestHeight"],
    [weirFlow("Francis", lip, 0), "number-not-positive", "lip/head"],
    [weirFlow("Kindsvater-Carter", { ...lip, channelWidth: 10 }, 0.01), "reading-out-of-range", "lip/lengthOverChannelWidth"],
    [weirFlow("Kindsvater-Carter", { ...lip, channelWidth: 0.5 }, 0.01), "reading-out-of-range", "lip/lengthOverChannelWidth"],
    [weirHead("Francis", lip, Number.POSITIVE_INFINITY), "number-not-finite", "lip/flow"],
    [weirHead("Francis", lip, 100), "reading-out-of-range", "lip/flow"],
    [sheetOverLip(certain(0), certain(1)), "number-not-positive", "spillway/flow"],
    [flowPerLip(certain(1), certain(-1)), "number-not-positive", "spillway/lipLength"],
    [flowForLip(certain(Number.NaN), certain(1)), "number-not-finite", "spillway/wantedPerLip"],
    [headsByFormula(lip, 0), "number-not-positive", "lip/flow"],
  ] as const)("refuses by name %#", (answer, code, place) => {
    expect(answer).toMatchObject({ ok: false, refusal: { code, place } });
  });
});

describe("a lip out of level", () => {
  const head = inchesOf(0.68);
  const ratioOf = (h: number, d: number): number => {
    const flow = taken(lipFlowRatio(certain(h), certain(d)));
    return flow.answer === "runs all along" ? flow.ratio.value : Number.NaN;
  };

  test("1/8 in at 0.68 in head is about 32 %", () => {
    const flow = taken(lipFlowRatio(head, inchesOf(1 / 8)));
    expect(flow.answer === "runs all along" && flow.ratio.value).toBeCloseTo(1.3185, 4);
  });

  test("level: the same all along; from twice the head on the high end is dry", () => {
    expect(ratioOf(0.02, 0)).toBe(1);
    expect(taken(lipFlowRatio(head, inchesOf(1.36)))).toEqual({ answer: "high end dry", dryShare: 0 });
    expect(taken(lipFlowRatio(certain(0.01), certain(0.04)))).toEqual({ answer: "high end dry", dryShare: 0.25 });
  });

  test("either end may be the low one; more out of level is more, more head less; the way back is exact", () => {
    const h = fc.double({ min: 0.005, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(h, fc.double({ min: 0.01, max: 0.9, noNaN: true }), (depth, share) => {
        const d = 2 * depth * share;
        expect(ratioOf(depth, -d)).toBe(ratioOf(depth, d));
        expect(ratioOf(depth, d * 1.05)).toBeGreaterThan(ratioOf(depth, d));
        expect(ratioOf(depth * 1.1, d)).toBeLessThan(ratioOf(depth, d));
        expect(taken(outOfLevelForRatio(certain(depth), ratioOf(depth, d))).value).toBeCloseTo(d, 9);
      }),
    );
  });

  test("the sign of the lip's doubt follows which end is low", () => {
    const d = figure("lip", 0.003, 0.001);
    const down = taken(lipFlowRatio(head, d));
    const up = taken(lipFlowRatio(head, { value: -0.003, parts: d.parts }));
    if (down.answer !== "runs all along" || up.answer !== "runs all along") throw new Error("dry");
    expect(up.ratio.parts.get("figure:lip")).toBeCloseTo(-(down.ratio.parts.get("figure:lip") ?? 0), 12);
  });

  test("refuses by name", () => {
    expect(lipFlowRatio(certain(0), certain(0))).toMatchObject({ refusal: { code: "number-not-positive", place: "lip/head" } });
    expect(lipFlowRatio(head, certain(Number.NaN))).toMatchObject({ refusal: { code: "number-not-finite", place: "lip/outOfLevel" } });
    expect(outOfLevelForRatio(head, 1)).toMatchObject({ refusal: { code: "number-not-positive", place: "lip/ratioAboveOne" } });
    expect(outOfLevelForRatio(head, Number.NaN)).toMatchObject({ refusal: { code: "number-not-finite", place: "lip/ratio" } });
  });
});
