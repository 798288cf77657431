import { describe, expect, test } from "vitest";
import {
  add,
  type LevelLine,
  mean,
  ofReading,
  ofSetUp,
  placingHalfWidths,
  type ReadingCircumstances,
  readingUncertainty,
  standardUncertainty,
  subtract,
  tapePermittedError,
  type Uncertain,
} from "#core/doubt/index.ts";
import { feet, inches } from "#core/units/index.ts";

const sixteenth = inches(1 / 16);
const onFine: LevelLine = { kind: "laser", receiver: "fine" };

function take(changes: Partial<ReadingCircumstances> = {}): Uncertain {
  const taken = readingUncertainty({
    reading: "r1",
    setUp: "s1",
    value: 1.2,
    resolution: sixteenth,
    placingHalfWidth: sixteenth,
    line: onFine,
    ...changes,
  });
  if (!taken.ok) throw new Error(taken.refusal.code);
  return taken.value;
}

/** mm² that is new at each reading: what stays when the height of the line and the permitted error cancel. */
const ownSquare = (x: Uncertain): number =>
  [...x.parts].reduce((sum, [source, part]) => sum + (source.startsWith("reading:") ? part * part * 1e6 : 0), 0);

describe("doubt of one reading (half-widths are own figures, worked out by hand)", () => {
  test("rod to 1/16 in on a wiped rim, receiver on fine, 50 ft: u = 1.449 mm of its own", () => {
    expect(ownSquare(take())).toBeCloseTo(2.1, 3);
    expect(Math.sqrt(ownSquare(take()))).toBeCloseTo(1.449, 3);
  });

  test("the receiver on coarse: u² = 4.62 mm²", () => {
    expect(ownSquare(take({ line: { kind: "laser", receiver: "coarse" } }))).toBeCloseTo(4.62, 2);
  });

  test("each source has its size and belongs to the reading or to the set-up", () => {
    const parts = take().parts;
    const third = Math.sqrt(3);
    expect(parts.get(ofReading("r1", "resolution"))).toBeCloseTo(sixteenth / 2 / third, 12);
    expect(parts.get(ofReading("r1", "placing"))).toBeCloseTo(sixteenth / third, 12);
    expect(parts.get(ofReading("r1", "receiver"))).toBeCloseTo(sixteenth / third, 12);
    expect(parts.get(ofReading("r1", "slope"))).toBeCloseTo(sixteenth / 2 / third, 12);
    expect(parts.get(ofSetUp("s1", "line"))).toBeCloseTo(inches(1 / 8) / third, 12);
    expect(parts.get(ofSetUp("s1", "permitted-error"))).toBeCloseTo(0.0007 / third, 12);
    expect(parts.size).toBe(6);
  });

  test("a difference within one set-up keeps only what was new at each reading", () => {
    const difference = subtract(take({ reading: "r2", value: 1.3 }), take());
    expect(standardUncertainty(difference) * 1000).toBeCloseTo(Math.sqrt(2 * 2.1), 3);
    const apart = subtract(take({ reading: "r2", setUp: "s2", value: 1.3 }), take());
    expect(standardUncertainty(apart)).toBeGreaterThan(standardUncertainty(difference) * 1.3);
  });

  test("the slope goes with the distance, and 50 ft stands in where none was typed", () => {
    const at = (distance: number) => take({ line: { ...onFine, distance } }).parts.get(ofReading("r1", "slope")) ?? 0;
    expect(at(feet(50))).toBeCloseTo(take().parts.get(ofReading("r1", "slope")) ?? 0, 15);
    expect(at(feet(100)) / at(feet(25))).toBeCloseTo(4, 12);
    expect(at(0)).toBe(0);
  });

  test("a string with a line level leans 1/4 in in 10 ft and has no receiver", () => {
    const parts = take({ line: { kind: "string with line level", distance: feet(10) } }).parts;
    expect(parts.get(ofReading("r1", "slope"))).toBeCloseTo(inches(1 / 4) / Math.sqrt(3), 12);
    expect(parts.has(ofReading("r1", "receiver"))).toBe(false);
  });

  test("a tape without a line has resolution, placing and its permitted error, all of its own", () => {
    const parts = readingUncertainty({ reading: "r1", value: 0.4, resolution: 0.001, placingHalfWidth: placingHalfWidths.turf });
    expect(parts.ok && [...parts.value.parts.keys()]).toEqual([
      ofReading("r1", "resolution"),
      ofReading("r1", "placing"),
      ofReading("r1", "permitted-error"),
    ]);
  });

  test("the company's study replaces the figures, a known tape its permitted error", () => {
    const known = take({ instrument: { permittedErrorHalfWidth: 0 } });
    expect(known.parts.has(ofSetUp("s1", "permitted-error"))).toBe(false);
    const studied = readingUncertainty(
      { reading: "r1", value: 1, resolution: 0, placingHalfWidth: 0, instrument: { permittedErrorHalfWidth: 0 }, line: onFine },
      {
        laserSlope: 0,
        stringSlope: 0,
        spiritLevelSlope: 0,
        receiver: { fine: 0.003, coarse: 1 },
        lineHeight: 0,
        distance: 0,
        closing: { fine: 0, coarse: 0 },
      },
    );
    expect(studied.ok && standardUncertainty(studied.value)).toBeCloseTo(0.003 / Math.sqrt(3), 15);
  });

  test("the error of a spirit level drops out when it is turned end for end, and only then", () => {
    const gap = (reading: string, lay: "first" | "turned" | "both ways") =>
      take({
        reading,
        resolution: 0,
        placingHalfWidth: 0,
        instrument: { permittedErrorHalfWidth: 0 },
        line: { kind: "spirit level", distance: 1.2, lay },
      });
    expect(standardUncertainty(gap("a", "first"))).toBeCloseTo(0.0006 / Math.sqrt(3), 15);
    expect(standardUncertainty(mean([gap("a", "first"), gap("b", "turned")]))).toBe(0);
    expect(standardUncertainty(mean([gap("a", "first"), gap("b", "first")]))).toBeGreaterThan(0.0003);
    expect(standardUncertainty(gap("a", "both ways"))).toBe(0);
    expect(standardUncertainty(add(gap("a", "first"), gap("b", "turned")))).toBe(0);
  });

  test.each([
    [{ value: Number.NaN }, "number-not-finite", "reading/value"],
    [{ resolution: Number.POSITIVE_INFINITY }, "number-not-finite", "reading/resolution"],
    [{ placingHalfWidth: -0.001 }, "number-not-positive", "reading/placingHalfWidth"],
    [{ instrument: { permittedErrorHalfWidth: -1 } }, "number-not-positive", "reading/permittedErrorHalfWidth"],
    [{ line: { ...onFine, distance: -3 } }, "number-not-positive", "reading/distance"],
  ] as const)("refuses %j by name", (changes, code, place) => {
    const taken = readingUncertainty({ reading: "r", value: 1, resolution: 0, placingHalfWidth: 0, ...changes });
    expect(taken).toMatchObject({ ok: false, refusal: { code, place } });
  });

  test("a length that is whole metres but for the arithmetic does not count as the next metre", () => {
    expect(tapePermittedError(5 + 1e-12)).toBe(tapePermittedError(5));
    expect(tapePermittedError(5.001)).toBeGreaterThan(tapePermittedError(5));
    expect(tapePermittedError(-5)).toBe(tapePermittedError(5));
    expect(tapePermittedError(0.1)).toBe(tapePermittedError(1));
  });
});
