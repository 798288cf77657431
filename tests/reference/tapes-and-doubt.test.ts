import { describe, test } from "vitest";
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
import { byHand, published, source } from "./checked.ts";

const exact = { digits: 9 } as const;

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
    const classes = source("EC 2004/22 MI-008 and OIML R 35", "tape classes I, II, III, in makers' and dealers' tables", "quoted");
    published(
      classes,
      "permitted error at 3, 5, 8, 10 m, mm",
      [permitted("I"), permitted("II"), permitted("III")],
      [one, two, three],
      exact,
    );
  });

  test.each([
    [2, 0.7],
    [15, 3.3],
    [20, 4.3],
    [30, 6.3],
  ])("class II at %i m: %f mm (worked out from the formula)", (length, error) => {
    published(byHand("0.3 + 0.2 L"), "class II at 2, 15, 20, 30 m, mm", tapePermittedError(length) * 1000, error, exact);
  });

  test("a begun metre counts whole (from memory)", () =>
    published(
      source("OIML R 35", "L is rounded up to the next metre", "from memory"),
      "class II at 4.01 m, mm",
      tapePermittedError(4.01) * 1000,
      1.3,
      exact,
    ));
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
    const found = handbook44Tapes.find((tape) => Math.abs(tape.upTo - feet(upTo)) < 1e-9)?.halfWidth ?? Number.NaN;
    const handbook = source("NIST Handbook 44", "section 5.52, metal tapes, in an access-board paper", "quoted");
    published(handbook, "tolerance up to 6, 30, 55, 80, 100 ft, in", toInches(metres(found)), halfWidth, exact);
  });
});

/** GUM 4.3.7 and F.2.2.1 (clauses from memory); the figures worked out by hand. */
describe("standard uncertainty of a tape reading, GUM (from memory)", () => {
  const resolution = source("GUM", "4.3.7 and F.2.2.1, a/√3 and d/(2√3), figures worked out", "from memory");
  const asInches = (u: number): number => toInches(metres(u));
  const together = (...us: number[]): number => standardUncertainty(us.reduce((x, u, i) => withSource(x, `source ${i}`, u), certain(0)));

  test("graduated 1/16 in: 0.018042 in; 1/8 in: 0.036084 in", () => {
    const read = [1 / 16, 1 / 8].map((step) => asInches(resolutionUncertainty(inches(step))));
    published(resolution, "u of a tape in 1/16 and 1/8 in", read, [0.018042, 0.036084], { digits: 6 });
  });

  test("10 m class II graduated in millimetres: 1.32791 and 0.28868, together 1.35892 mm", () => {
    const [permitted, read] = [rectangular(tapePermittedError(10)), resolutionUncertainty(0.001)];
    const ours = [permitted, read, together(permitted, read)].map((u) => u * 1000);
    published(resolution, "u of 10 m class II in millimetres, mm", ours, [1.32791, 0.28868, 1.35892], { digits: 5 });
  });

  test("30 ft tape by Handbook 44 read to 1/16 in: 0.040344 in", () => {
    const thirtyFeet = handbook44Tapes[1].halfWidth;
    const u = asInches(together(rectangular(thirtyFeet), resolutionUncertainty(inches(1 / 16))));
    published(resolution, "u of a 30 ft tape by Handbook 44, in", [u, 1.65 * u], [0.040344, 0.066567], { digits: 5 });
  });
});
