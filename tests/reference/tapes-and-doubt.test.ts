import { describe, expect, test } from "vitest";
import {
  certain,
  handbook44Tapes,
  rectangular,
  resolutionUncertainty,
  standardUncertainty,
  type TapeClass,
  tapePermittedError,
  withSource,
} from "#core/doubt/index.ts";
import { feet, inches, metres, toInches } from "#core/units/index.ts";

/**
 * Accuracy classes of EC 2004/22 MI-008 and OIML R 35, millimetres. The values at 3, 5, 8 and 10 m SEEN in tables of tape
 * makers and dealers that quote the directive; the formula a + b L from memory, agreeing with all of them.
 */
describe("tape classes, MI-008 / OIML R 35 (SEEN, quoted)", () => {
  test.each([
    [3, 0.4, 0.9, 1.8],
    [5, 0.6, 1.3, 2.6],
    [8, 0.9, 1.9, 3.8],
    [10, 1.1, 2.3, 4.6],
  ])("%i m: I %f, II %f, III %f mm", (length, one, two, three) => {
    const permitted = (tapeClass: TapeClass): number => tapePermittedError(length, tapeClass) * 1000;
    expect(permitted("I")).toBeCloseTo(one, 10);
    expect(permitted("II")).toBeCloseTo(two, 10);
    expect(permitted("III")).toBeCloseTo(three, 10);
  });

  test.each([
    [2, 0.7],
    [15, 3.3],
    [20, 4.3],
    [30, 6.3],
  ])("class II at %i m: %f mm (worked out from the formula)", (length, error) => {
    expect(tapePermittedError(length) * 1000).toBeCloseTo(error, 10);
  });

  test("a begun metre counts whole (from memory)", () => expect(tapePermittedError(4.01)).toBe(tapePermittedError(5)));
});

/** NIST Handbook 44 section 5.52, metal tapes, maintenance and acceptance tolerances. SEEN, quoted in an access-board paper on tolerances. */
describe("NIST Handbook 44 5.52 (SEEN, quoted)", () => {
  test.each([
    [6, 1 / 32],
    [30, 1 / 16],
    [55, 1 / 8],
    [80, 3 / 16],
    [100, 1 / 4],
  ])("up to %i ft: %f in", (upTo, halfWidth) => {
    expect(handbook44Tapes.find((tape) => Math.abs(tape.upTo - feet(upTo)) < 1e-9)?.halfWidth).toBeCloseTo(inches(halfWidth), 12);
  });
});

/** GUM 4.3.7 and F.2.2.1 (clauses from memory); the figures worked out by hand. */
describe("standard uncertainty of a tape reading, GUM (from memory)", () => {
  const asInches = (u: number): number => toInches(metres(u));
  const together = (...us: number[]): number => standardUncertainty(us.reduce((x, u, i) => withSource(x, `source ${i}`, u), certain(0)));

  test("graduated 1/16 in: 0.018042 in; 1/8 in: 0.036084 in", () => {
    expect(asInches(resolutionUncertainty(inches(1 / 16)))).toBeCloseTo(0.018042, 6);
    expect(asInches(resolutionUncertainty(inches(1 / 8)))).toBeCloseTo(0.036084, 6);
  });

  test("10 m class II graduated in millimetres: 1.32791 and 0.28868, together 1.35892 mm", () => {
    const [permitted, read] = [rectangular(tapePermittedError(10)), resolutionUncertainty(0.001)];
    expect(permitted * 1000).toBeCloseTo(1.32791, 5);
    expect(read * 1000).toBeCloseTo(0.28868, 5);
    expect(together(permitted, read) * 1000).toBeCloseTo(1.35892, 5);
  });

  test("30 ft tape by Handbook 44 read to 1/16 in: 0.040344 in", () => {
    const thirtyFeet = handbook44Tapes[1].halfWidth;
    expect(asInches(together(rectangular(thirtyFeet), resolutionUncertainty(inches(1 / 16))))).toBeCloseTo(0.040344, 6);
  });
});
