import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { expectationIds, expectationKinds, expectations } from "#core/job/index.ts";
import { inches } from "#core/units/index.ts";
import { expected, FOOT, GALLON, GPM, INCH, inch, metric, metricParabola, POUND, parabola, planned, source, worth } from "./planned.ts";

describe("a design in figures", () => {
  test("every figure is there once, in its kind, and is either a number, an answer, or says what it waits for", () => {
    for (const design of [planned(), source({}), source({ pipeSize: "2 in" })]) {
      const all = expectations(design, {});
      expect(all.map(({ id }) => id)).toEqual(expectationIds);
      for (const one of all) {
        expect(one.kind).toBe(expectationKinds[one.id]);
        expect(one.value !== undefined || one.answer !== undefined || one.needs !== undefined || one.refusal !== undefined, one.id).toBe(
          true,
        );
        for (const whole of [one.value ?? 0, one.doubt ?? 0, ...(one.contributors ?? []).map(({ u }) => u)])
          expect(Number.isSafeInteger(whole), one.id).toBe(true);
        expect((one.contributors ?? []).length, one.id).toBeLessThanOrEqual(3);
      }
    }
  });

  test("nothing known: each names what it waits for, and nothing stands at zero", () => {
    expect(expected("flow", source({})).needs).toEqual(["pumpCurve", "staticHead", "pipeRun", "pipeSize"]);
    expect(expected("basinGross", source({})).needs).toEqual(["basinLength", "basinWidth", "basinDepth"]);
    expect(expected("lidLoadLeft", source({})).needs).toEqual(["stoneDepth", "basinLength", "basinWidth"]);
    expect(expectations(source({}), {}).filter(({ value }) => value !== undefined)).toEqual([]);
  });

  test("one missing figure stops only what needs it", () => {
    const { intakeHeight: _, ...card } = inch.card;
    const all = expectations(source(inch.figures, card, { pumpCurve: parabola }), {});
    const without = all.filter(({ needs }) => needs?.includes("intakeHeight")).map(({ id }) => id);
    expect(without).toEqual([
      "waterBelowIntake",
      "waterLostToTilt",
      "basinUsable",
      "reserveRatio",
      "reserveLeft",
      "timeUntilAir",
      "daysWithoutMakeUp",
    ]);
    expect(all.find(({ id }) => id === "flow")?.value).toBeDefined();
  });

  test("an own default is named, never silent", () => {
    const { displacedShare: _, ...card } = inch.card;
    const design = source(inch.figures, card, { pumpCurve: parabola });
    expect(expected("basinGross", design).assumes).toEqual(["displacedShare"]);
    expect(expected("flow", design).assumes).toEqual(["pipeKind"]);
    expect(expected("equivalentRun", source({ pipeRun: "10 ft", pipeSize: "2 in" })).assumes).toEqual(["elbows90"]);
  });

  test("a figure that cannot be read is refused by its key and no default takes its place", () => {
    const design = planned({}, { basinDepth: "20 gal" });
    expect(expected("basinGross", design).refusal).toMatchObject({ code: "reading-unit-unknown", place: "figures/basinDepth" });
    const kind = source(inch.figures, inch.card, { pumpCurve: parabola, pipeKind: "clay" });
    expect(expected("flow", kind).refusal).toMatchObject({ code: "pipe-kind-unknown", place: "figures/pipeKind" });
    expect(expected("flow", source(inch.figures, inch.card, { pumpCurve: "20 gpm" })).refusal?.code).toBe("pump-curve-text");
    expect(expected("flow", source(inch.figures, inch.card, { pumpCurve: "20 gpm 3 ft" })).refusal?.code).toBe("pump-curve-too-few");
  });

  test("unknown in the design stays unknown although a kit card says a figure", () => {
    const { kitCards } = planned();
    expect(expected("basinGross", { design: { figures: { basinDepth: "unknown" }, switches: {} }, kitCards }).needs).toEqual([
      "basinDepth",
    ]);
  });

  test("a figure takes the design's place where it was measured", () => {
    expect(worth("waterLostToTilt", planned({ outOfLevel: "1 in" }), GALLON)).toBeCloseTo((36 * 24 * 0.95 * 0.5) / 231, 2);
    const { value } = expected("waterLostToTilt", planned({ outOfLevel: "1 in" }), {}, { outOfLevel: certain(inches(0.5)) });
    expect((value ?? 0) / GALLON).toBeCloseTo((36 * 24 * 0.95 * 0.25) / 231, 2);
  });
});

describe("worked out by hand", () => {
  test("basin 36 × 24 × 20 in, 5 % of it blocks, intake 3 in above the floor", () => {
    const perInch = (36 * 24 * 0.95) / 231;
    expect(worth("waterPerInch", planned(), GALLON)).toBeCloseTo(perInch, 3);
    expect(worth("basinGross", planned(), GALLON)).toBeCloseTo(20 * perInch, 2);
    expect(worth("waterBelowIntake", planned(), GALLON)).toBeCloseTo(3 * perInch, 2);
    expect(worth("basinUsable", planned(), GALLON)).toBeCloseTo(17 * perInch, 2);
  });

  test("the maker's rating goes before the sizes", () => {
    expect(worth("basinGross", planned({}, { basinVolume: "66 gal" }), GALLON)).toBeCloseTo(66, 3);
    expect(worth("waterPerInch", planned({}, { basinVolume: "66 gal" }), GALLON)).toBeCloseTo(3.3, 3);
  });

  test("round by its switch: π/4 × 52² × 28 in", () => {
    const tank = source({}, { basinDiameter: "52 in", basinLength: "10 in", basinWidth: "10 in", basinDepth: "28 in" });
    expect(worth("basinGross", tank, GALLON, { roundBasin: true })).toBeCloseTo(((Math.PI / 4) * 52 * 52 * 28) / 231, 2);
    expect(worth("basinGross", tank, GALLON)).toBeCloseTo(2800 / 231, 2);
  });

  test("40 lb on 6 ft² lift at 40/(62.3 × 6) ft; the stone weighs 100 lb/ft³", () => {
    expect(worth("floatsOn", planned(), INCH)).toBeCloseTo((12 * 40) / (62.3 * 6), 2);
    expect(worth("stoneOnLid", planned(), POUND)).toBeCloseTo((100 * 6 * 4) / 12, 1);
    expect(worth("lidLoadLeft", planned(), POUND)).toBeCloseTo(50, 1);
  });

  test("no load on the kit card: ask the maker, and no number", () => {
    const { lidLoad: _, ...card } = inch.card;
    expect(expected("lidLoadLeft", source(inch.figures, card))).toMatchObject({ answer: "ask the maker" });
    expect(expected("lidLoadLeft", source(inch.figures, card)).value).toBeUndefined();
  });

  test("the wanted flow: 24 in × 125 gph = 50 gpm; said for the whole lip it goes before", () => {
    expect(worth("flowWanted", planned(), GPM)).toBeCloseTo(50, 3);
    expect(worth("flowWanted", planned({ flowWanted: "30 gpm" }), GPM)).toBeCloseTo(30, 3);
  });

  test("water in transit adds up, the draw-down is its depth in the basin, and a check valve keeps the pipe's part", () => {
    const free = planned({ checkValveDistance: "2 ft" });
    const stream = (10 * 12 * 24 * 1) / 231;
    expect(worth("waterInStream", free, GALLON)).toBeCloseTo(stream, 2);
    const parts = worth("waterInStream", free, GALLON) + worth("waterInPools", free, GALLON) + worth("drainBack", free, GALLON);
    expect(worth("waterInTransit", free, GALLON)).toBeCloseTo(parts, 2);
    expect(worth("drawDown", free, INCH)).toBeCloseTo(parts / ((36 * 24 * 0.95) / 231), 2);
    // 0.0408 d² gallons a foot at the average bore 1.360 in
    expect(worth("drainBack", free, GALLON)).toBeCloseTo(40 * 0.0408 * 1.36 * 1.36, 2);
    expect(worth("drainBack", free, GALLON, { checkValve: true })).toBeCloseTo(2 * 0.0408 * 1.36 * 1.36, 2);
  });

  test("cord: 14 ft of way and basin + 3 ft of slack leave 20 − 18.67 ft, with the caution", () => {
    expect(worth("cordLeft", planned(), FOOT)).toBeCloseTo(20 - 14 - 20 / 12 - 3, 3);
    expect(expected("cordLeft", planned()).caution).toBe("ask-the-electrician");
  });

  test("rain: 4 in of freeboard on 80 ft² of liner; an inch a day", () => {
    const rain = (4 * 36 * 24 * 0.95) / (80 * 144);
    expect(worth("rainToOverflow", planned(), INCH)).toBeCloseTo(rain, 3);
    expect(worth("daysToOverflow", planned(), 86_400_000)).toBeCloseTo(rain, 3);
  });

  test("heights over finished grade: rim −5, basin 20 in, bed 3 in; lip 30, liner edge 2 above it", () => {
    const design = planned({ rimBelowGrade: "5 in", bedThickness: "3 in", lipOverGrade: "30 in", linerEdgeOverLip: "2 in" });
    expect(worth("dugBottomOverGrade", design, INCH)).toBeCloseTo(-28, 9);
    expect(worth("topOfBedOverGrade", design, INCH)).toBeCloseTo(-25, 9);
    expect(worth("linerEdgeOverGrade", design, INCH)).toBeCloseTo(32, 9);
    expect(expected("wallFittingOverGrade", design).needs).toEqual(["fittingBelowRim"]);
  });

  test("a pump that cannot lift the water says so, with no flow; a card that ends early says at least", () => {
    expect(expected("flow", planned({ staticHead: "30 ft" }))).toMatchObject({ answer: "curve below static head", value: 0 });
    const early = source(inch.figures, inch.card, { pumpCurve: "0 gpm 24 ft; 10 gpm 23 ft" });
    expect(expected("flow", early)).toMatchObject({ answer: "beyond the last point", value: Math.round(10 * GPM) });
  });

  test("flexible pipe takes another C and says that its bore is taken for rigid pipe's", () => {
    const flexible = source(inch.figures, inch.card, { pumpCurve: parabola, pipeKind: "flexible PVC" });
    expect(expected("flow", flexible).assumes).toEqual(["pipeBore"]);
    expect(expected("flow", flexible).value ?? 0).toBeLessThan(expected("flow", planned()).value ?? 0);
    expect(expected("frictionHeadDarcy", flexible).needs).toEqual(["pipeKind"]);
  });

  test("friction by the independent second lies within a tenth of the first", () => {
    const [first, second] = [worth("frictionHead", planned(), 1), worth("frictionHeadDarcy", planned(), 1)];
    expect(Math.abs(second / first - 1)).toBeLessThan(0.1);
    expect(second).not.toBe(first);
  });
});

test("without a pump's curve the rest is reckoned at the wanted flow, and says so", () => {
  const design = source(inch.figures, inch.card, { pipeKind: "rigid" });
  expect(expected("flow", design).needs).toEqual(["pumpCurve"]);
  expect(worth("flowPerInch", design, GPM / 0.0254 / 60)).toBeCloseTo(125, 2);
  expect(expected("headOnLip", design)).toMatchObject({ assumes: ["pumpCurve"], warning: "heads out of range" });
});

test("inches and metric lead to the same figures", () => {
  const other = source(metric.figures, metric.card, { pumpCurve: metricParabola, pipeKind: "rigid" });
  const [first, second] = [expectations(planned(), {}), expectations(other, {})];
  let compared = 0;
  for (const [i, one] of first.entries()) {
    const two = second[i];
    expect(two?.answer, one.id).toBe(one.answer);
    if (one.value === undefined) continue;
    compared++;
    const near = Math.max(2, Math.abs(one.value) * 1e-4);
    expect(Math.abs((two?.value ?? 0) - one.value), one.id).toBeLessThanOrEqual(near);
    // typed about as finely in both
    expect(Math.abs((two?.doubt ?? 0) - (one.doubt ?? 0)), one.id).toBeLessThanOrEqual(Math.max(2, (one.doubt ?? 0) * 0.02));
  }
  expect(compared).toBeGreaterThan(30);
});
