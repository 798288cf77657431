import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, standardUncertainty } from "#core/doubt/index.ts";
import {
  boreAsMeasured,
  type boreTables,
  drainBack,
  equivalentLength,
  equivalentRun,
  fittingKinds,
  hazenWilliamsCoefficients,
  nextPipeSize,
  nominalInches,
  pipeBore,
  pipeCoefficient,
  pipeContents,
  pipeSizeOf,
  pipeSizes,
  pipeVelocity,
  publishedLengths,
  VELOCITY_GUIDANCE,
} from "#core/plumbing/index.ts";
import { cubicMetres, feet, inches, toGallons } from "#core/units/index.ts";
import { answer, codeOf, doubted, gpm, NOT_NUMBERS, toFeet } from "./assumed.ts";

describe("sizes and bores", () => {
  test("a size is found by its nominal length in either system, and nothing near it", () => {
    for (const size of pipeSizes) expect(answer(pipeSizeOf(inches(nominalInches[size])))).toBe(size);
    expect(answer(pipeSizeOf(0.0381))).toBe("1-1/2");
    expect(codeOf(pipeSizeOf(inches(1.9)))).toBe("pipe-size-unknown");
    expect(codeOf(pipeSizeOf(0))).toBe("number-not-positive");
    for (const odd of NOT_NUMBERS) expect(codeOf(pipeSizeOf(odd))).toBe("number-not-finite");
    expect([nextPipeSize("1-1/2"), nextPipeSize("4")]).toEqual(["2", undefined]);
  });

  test("a thicker wall leaves less bore, size for size", () => {
    for (const size of pipeSizes) {
      const bore = (table: keyof typeof boreTables) => answer(pipeBore(size, table)).value;
      expect(bore("schedule 40, minimum wall")).toBeGreaterThan(bore("schedule 40, average wall"));
      expect(bore("schedule 40, average wall")).toBeGreaterThan(bore("schedule 80, average wall"));
    }
    expect(codeOf(pipeBore("1-1/2", "class 160"))).toBe("pipe-size-unknown");
  });

  test("a bore told for flexible pipe keeps the doubt it was told with", () => {
    expect(standardUncertainty(boreAsMeasured(inches(2), inches(1 / 16)))).toBeCloseTo(inches(1 / 16) / Math.sqrt(3), 15);
  });

  test("C: rigid 150, flexible lower, ribbed lowest; typed goes before", () => {
    const [rigid, smooth, ribbed] = (Object.keys(hazenWilliamsCoefficients) as (keyof typeof hazenWilliamsCoefficients)[]).map(
      (lining) => answer(pipeCoefficient(lining)).value,
    );
    expect([rigid, smooth, ribbed]).toEqual([150, 140, 100]);
    expect(answer(pipeCoefficient("flexible PVC, smooth bore", 148)).value).toBe(148);
    expect(codeOf(pipeCoefficient("rigid PVC", 0))).toBe("number-not-positive");
    expect(codeOf(pipeCoefficient("rigid PVC", Number.NaN))).toBe("number-not-finite");
  });
});

describe("fittings as equivalent length", () => {
  test("a figure is the first table's, its doubt reaches the other tables' figures", () => {
    const ell = answer(equivalentLength("90 ell", "2"));
    expect(toFeet(ell.value)).toBeCloseTo(5.7, 12);
    expect(toFeet(standardUncertainty(ell))).toBeCloseTo((0.2 * 5.7) / Math.sqrt(3), 12);
    expect(publishedLengths("90 ell", "2").map(({ length }) => Number(toFeet(length).toFixed(6)))).toEqual([5.7, 5.7, 6, 2]);
    expect(publishedLengths("90 ell", "2").map(({ apart }) => apart)).toEqual([false, false, false, true]);
  });

  test("larger fittings count for more pipe", () => {
    for (const kind of fittingKinds) {
      const lengths = pipeSizes.flatMap((size) =>
        publishedLengths(kind, size)
          .slice(0, 1)
          .map(({ length }) => length),
      );
      expect(lengths.length).toBeGreaterThan(1);
      expect([...lengths].sort((a, b) => a - b)).toEqual(lengths);
    }
  });

  test("two alike share their doubt, two unlike do not", () => {
    const u = (...kinds: readonly ("90 ell" | "45 ell")[]) =>
      standardUncertainty(
        answer(
          equivalentRun(
            certain(feet(20)),
            kinds.map((kind) => ({ kind, count: 1 })),
            "2",
          ),
        ),
      );
    expect(u("90 ell", "90 ell")).toBeCloseTo(2 * u("90 ell"), 12);
    expect(u("90 ell", "45 ell")).toBeCloseTo(Math.hypot(u("90 ell"), u("45 ell")), 12);
    expect(toFeet(answer(equivalentRun(certain(feet(20)), [{ kind: "90 ell", count: 3 }], "1-1/2")).value)).toBeCloseTo(32, 12);
  });

  test("refuses a part of a fitting, fewer than none, and one no table has", () => {
    const run = (count: number) => codeOf(equivalentRun(certain(feet(20)), [{ kind: "90 ell", count }], "2"));
    expect([run(0), run(1.5), run(-1), run(Number.NaN)]).toEqual(["ok", "count-not-whole", "number-not-positive", "number-not-finite"]);
    expect(codeOf(equivalentLength("swing check valve", "3"))).toBe("fitting-length-unknown");
    expect(codeOf(equivalentLength("gate valve", "4"))).toBe("fitting-length-unknown");
  });
});

describe("velocity against 5 ft/s", () => {
  test("below, above, and too close to call with the bore's doubt", () => {
    const at = (q: number, halfWidth = 0.02) => answer(pipeVelocity(gpm(q), doubted(inches(2.047), "bore", inches(halfWidth))));
    expect(at(40).against).toBe("below");
    expect(at(60).against).toBe("above");
    expect(at(51.3).against).toBe("too close to call");
    expect(at(51.5, 0).against).toBe("above");
    expect(VELOCITY_GUIDANCE).toBeCloseTo(1.524, 12);
  });

  test("the flow at the guidance has the guidance's velocity", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 5, noNaN: true }), (bore) => {
        const { flowAtGuidance } = answer(pipeVelocity(gpm(10), certain(inches(bore))));
        expect(answer(pipeVelocity(flowAtGuidance, certain(inches(bore)))).velocity.value).toBeCloseTo(VELOCITY_GUIDANCE, 9);
      }),
    );
    expect(codeOf(pipeVelocity(gpm(10), certain(0)))).toBe("number-not-positive");
    expect(codeOf(pipeVelocity(gpm(-1), certain(0.05)))).toBe("number-not-positive");
    expect(codeOf(pipeVelocity(gpm(Number.NaN), certain(0.05)))).toBe("number-not-finite");
  });
});

describe("what the pipe holds and what drains back", () => {
  const line = { bore: certain(inches(2.047)), length: certain(feet(40)), belowWater: certain(feet(2)) };
  const gallons = (v: { value: number } | undefined): number => toGallons(cubicMetres(v?.value ?? Number.NaN));

  test("without a check valve everything above the basin's water runs back", () => {
    const back = answer(drainBack(line));
    expect(gallons(back.contents)).toBeCloseTo(0.0407999 * 2.047 ** 2 * 40, 4);
    expect(gallons(back.withoutCheckValve)).toBeCloseTo(0.0407999 * 2.047 ** 2 * 38, 4);
    expect(back.withCheckValve).toBeUndefined();
  });

  test("with one, only what stands below it; what it keeps and what runs back are the rest", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), (at) => {
        const back = answer(drainBack({ ...line, toCheckValve: certain(feet(at)) }));
        expect(gallons(back.withCheckValve)).toBeCloseTo(0.0407999 * 2.047 ** 2 * Math.max(0, at - 2), 4);
        expect(gallons(back.withCheckValve) + gallons(back.kept)).toBeCloseTo(gallons(back.withoutCheckValve), 9);
      }),
    );
  });

  test("refuses a part longer than the whole and senseless figures", () => {
    expect(codeOf(drainBack({ ...line, belowWater: certain(feet(41)) }))).toBe("pipe-part-longer");
    expect(codeOf(drainBack({ ...line, toCheckValve: certain(feet(41)) }))).toBe("pipe-part-longer");
    expect(codeOf(drainBack({ ...line, bore: certain(0) }))).toBe("number-not-positive");
    expect(codeOf(drainBack({ ...line, toCheckValve: certain(-1) }))).toBe("number-not-positive");
    for (const odd of NOT_NUMBERS) expect(codeOf(pipeContents(certain(odd), certain(1)))).toBe("number-not-finite");
  });
});
