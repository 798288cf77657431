import { describe, expect, test } from "vitest";
import { type Check, sheetFaults, type ToleranceSheet } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { makeSayer } from "#core/record/say.ts";
import { answerItem, bench, book, inch, lengthItem } from "../../helpers/job.ts";

const words = (en: string) => ({ en });
const figure = (typed: string, unit: string) => ({ typed, unit });
const check = (id: string, upper: Check["upper"]): Check => ({
  id,
  step: "step-one",
  title: words(id),
  function: "single value",
  items: ["water-down"],
  kind: "length",
  weight: "asked",
  ...(upper === undefined ? {} : { upper }),
  costs: "water to leave inside",
});
const sheet: ToleranceSheet = bench({
  items: [
    lengthItem("water-down"),
    answerItem("in-hole", {
      choices: [
        { id: "is-none", title: words("none"), accepts: true },
        { id: "is-standing", title: words("standing"), accepts: true, means: ["water outside"] },
      ],
    }),
  ],
  checks: [
    check("by-answer", { function: "water left inside", items: ["in-hole"] }),
    check("washing", { function: "water left inside", occasion: "washing in" }),
    check("winter", { function: "water left inside", occasion: "winter emptying" }),
  ],
});
const basin = {
  basinLength: figure("45", "in"),
  basinWidth: figure("45", "in"),
  basinDepth: figure("30", "in"),
  basinWeight: figure("75", "lb"),
};
const found = (id: string, figures: object, choice?: string, typed?: string) => {
  const b = book(sheet);
  b.enter("design-set", { figures: { ...basin, ...figures } as Json });
  if (choice !== undefined) b.answer("in-hole", choice);
  if (typed !== undefined) b.read("water-down", typed);
  return b.finding(id);
};

/*
 * 75 lb over 45 in square: 75 / (62.3 x 14.06) ft = 1.03 in lift it, ± 5 % (1.03 x 0.05 / √3 = 0.030 in).
 * U of what stands outside: half-widths 1/2 in (water seen, ground water 6 in, rim and basin's depth 1/2 in), 1 in (layer), 25 % (rain).
 */
describe("how much water to leave inside on each of the four occasions", () => {
  test("has no fault; without answers and without an occasion it has one", () => {
    expect(sheetFaults(sheet as unknown as Json)).toEqual([]);
    const bare = { ...sheet, checks: [check("by-answer", { function: "water left inside" })] };
    expect(sheetFaults(bare as unknown as Json).map(({ place }) => place)).toEqual(["sheet/checks/by-answer/items"]);
  });

  test("water seen in the hole, 8 in: 6.97 in and their U of 0.58 in, said before anything was read", () => {
    const finding = found("by-answer", { waterInHole: figure("8", "in") }, "is-standing");
    expect(finding).toMatchObject({ verdict: "not taken", leaves: { occasion: "water seen in the hole", answer: "leave water" } });
    expect((finding.leaves?.depth ?? 0) / inch).toBeCloseTo(7.55, 1);
  });

  test("rain before backfill, 2 in in a hole of 69 in square: 2 x 4761 / (4761 - 2025) = 3.48 in, less 1.03", () => {
    const { leaves } = found("by-answer", { rainExpected: figure("2", "in"), holeArea: figure("33.0625", "ft²") }, "is-none");
    expect(leaves).toMatchObject({ occasion: "rain before backfill", answer: "leave water" });
    // 2.45 in, and at least the 25 % of the rain: 3.48 x 0.25 / √3 x 2 = 1.00 in, with that of the hole somewhat more
    const depth = (leaves?.depth ?? 0) / inch;
    expect(depth).toBeGreaterThan(3.45);
    expect(depth).toBeLessThan(4.1);
  });

  test("washing in, a layer that ends 14 in above the underside: 12.97 in and U of 2 x 1 / √3 = 1.16 in", () => {
    const finding = found("washing", { layerTop: figure("14", "in") }, undefined, "20 0/16");
    expect(finding.leaves).toMatchObject({ occasion: "washing in", answer: "leave water" });
    expect((finding.leaves?.depth ?? 0) / inch).toBeCloseTo(14.12, 1);
    // 30 - 14.12 = 15.88 in at most; 20 in down is outside
    expect((finding.upper ?? 0) / inch).toBeCloseTo(15.88, 1);
    expect(finding.verdict).toBe("outside");
    expect(found("washing", { layerTop: figure("14", "in") }, undefined, "12 0/16").verdict).toBe("within");
  });

  test("washing in without the layer's height: the figure is named", () => {
    expect(found("washing", {}, undefined, "12 0/16")).toMatchObject({ verdict: "not taken", unknown: ["layerTop"] });
  });

  test("winter, ground water 2 ft down, rim 6 in down: 30 + 6 - 24 = 12 in outside, 10.97 in, and U of 7 in", () => {
    const finding = found("winter", { groundwaterDepth: figure("2", "ft"), rimBelowGrade: figure("6", "in") });
    expect(finding.leaves).toMatchObject({ occasion: "winter emptying", answer: "leave water" });
    // 2 x sqrt(6² + 0.5² + 0.5²) / √3 = 6.98 in
    expect((finding.leaves?.depth ?? 0) / inch).toBeCloseTo(17.95, 1);
  });

  test("winter, ground water not known: up to the rim, 28.97 in and its doubt", () => {
    // typed to the whole inch, the basin's depth is known to half an inch: 2 x sqrt(0.5² + 0.05²) / √3 = 0.58 in: 29.55 of 30 in
    const { leaves } = found("winter", {});
    expect(leaves).toMatchObject({ answer: "leave water" });
    expect((leaves?.depth ?? 0) / inch).toBeCloseTo(29.55, 1);
  });

  test("ground water far below: none needed; it comes in metric the same", () => {
    expect(found("winter", { groundwaterDepth: figure("8", "ft"), rimBelowGrade: figure("6", "in") }).leaves).toMatchObject({
      answer: "none needed",
      depth: 0,
      volume: 0,
    });
    const metric = found("washing", { layerTop: figure("355.6", "mm") }).leaves?.depth ?? 0;
    expect(Math.abs(metric - (found("washing", { layerTop: figure("14", "in") }).leaves?.depth ?? 0))).toBeLessThan(2);
  });

  test("the sentence says how much and what for, in both languages and in gallons", () => {
    const finding = found("washing", { layerTop: figure("14", "in") });
    const say = (language: "en" | "es") => makeSayer({ language, units: "inch", zone: "UTC", sheet }).finding(finding);
    // 14.12 in over 2025 in²: 28 600 in³ / 231 = 123.8 gal
    expect(say("en")).toMatch(/Leave at least 14 1\/8 in of water inside \(while the fill is washed in\)\. That is 12[34](\.\d)? gal\.$/);
    expect(say("es")).toMatch(/Deje dentro por lo menos 14 1\/8 pulg|Deje dentro por lo menos 14 1\/8 in/);
  });
});
