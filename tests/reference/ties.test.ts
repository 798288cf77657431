import { describe, test } from "vitest";
import { standardUncertainty } from "#core/doubt/index.ts";
import { CHI_SQUARE_95, ELLIPSE_95, type Mark, type PlaceByTies, placeByTies, type SideSaid, type Tie } from "#core/geometry/index.ts";
import { mark, taped, tiesTo } from "../unit/geometry/tie-marks.ts";
import { byHand, published, same, source } from "./checked.ts";

function place(marks: readonly Mark[], ties: readonly Tie[], said?: SideSaid): PlaceByTies {
  const found = placeByTies(marks, ties, said);
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}
const placed = (...args: Parameters<typeof place>): Extract<PlaceByTies, { kind: "placed" }> => {
  const found = place(...args);
  if (found.kind !== "placed") throw new Error("mirrored");
  return found;
};
const left: SideSaid = { from: "A", to: "B", side: "left" };

/** Right-angled and 13-14-15 triangles: whole numbers by Pythagoras, worked out by hand. */
describe("two distances, exact triangles (worked out by hand)", () => {
  test.each([
    [10, 6, 8, 3.6, 4.8],
    [14, 13, 15, 5, 12],
  ])("A to B %d, distances %d and %d: %d, ± %d", (apart, r, s, x, y) => {
    const found = place(
      [mark("A", 0, 0), mark("B", apart, 0)],
      [
        { mark: "A", distance: taped("a", r) },
        { mark: "B", distance: taped("b", s) },
      ],
    );
    if (found.kind !== "mirrored") throw new Error("not mirrored");
    for (const [at, sign] of [[found.left, 1] as const, [found.right, -1] as const]) {
      const triangle = byHand(`right-angled and 13-14-15 triangles, whole numbers by Pythagoras`);
      published(triangle, "both mirror places", [at.point.x.value, at.point.y.value], [x, sign * y], { digits: 12 });
    }
  });
});

/**
 * Two equal doubts s crossing at angle g: semi-axes s/(√2 sin g/2) and s/(√2 cos g/2), root of their squares' sum √2 s / sin g.
 * Usual formulas of two-distance fixes (textbook, from memory); figures worked out from them in units of s.
 */
describe("error ellipse of two distances (formulas from memory, figures worked out)", () => {
  test.each([
    { what: "90 degrees", apart: 10, x: 3.6, y: 4.8, major: 1, minor: 1, together: Math.SQRT2, degrees: 90, poor: false },
    { what: "13-14-15 triangle", apart: 14, x: 5, y: 12, major: 1.425219, minor: 0.814411, together: 1.641498, degrees: 59, poor: false },
    {
      what: "close to the line of its marks",
      apart: 10,
      x: 5,
      y: 0.5,
      major: 7.106335,
      minor: 0.710634,
      together: 7.141778,
      degrees: 169,
      poor: true,
    },
  ])("$what", ({ apart, x, y, major, minor, together, degrees, poor }) => {
    const s = 0.01;
    const marks = [mark("A", 0, 0), mark("B", apart, 0)];
    const { ellipse, crossing, concerns } = placed(marks, tiesTo(marks, { x, y }, [], s), left);
    const formulas = source("Two-distance fixes", "s/(√2 sin γ/2), s/(√2 cos γ/2), √2 s/sin γ, in textbooks", "from memory");
    published(formulas, "semi-axes in units of s", [ellipse.semiMajor / s, ellipse.semiMinor / s], [major, minor], { digits: 5 });
    published(formulas, "root of the sum of their squares", Math.hypot(ellipse.semiMajor, ellipse.semiMinor) / s, together, { digits: 5 });
    published(formulas, "crossing, whole degrees", crossing.degrees, degrees, { digits: 9 });
    same(
      source("Poor crossing", "below 30 or above 150 degrees", "own"),
      "named as poor",
      [crossing.poor, concerns.includes("poor crossing")],
      [poor, poor],
    );
  });
});

/**
 * Ghilani and Wolf, Adjustment Computations, chapter 14, trilateration of one station from three. Stations and distances (feet)
 * SEEN in a worksheet of the book; its result was not legible there. Expected: least squares by a search over x and y, outside
 * this project and without derivatives, and the inverse normal matrix at unit weight.
 */
describe("three distances by least squares, Ghilani and Wolf chapter 14 (input SEEN, result worked out by another method)", () => {
  const marks = [mark("A", 865.4, 4527.15), mark("B", 2432.55, 2047.25), mark("C", 2865.22, 27.15)];
  const lengths = [6049, 4736.83, 5446.49];
  const ties = marks.map(({ name }, i) => ({ mark: name, distance: taped(name, lengths[i] ?? 0, 1) }));

  test("place, residuals, ellipse at unit weight", () => {
    const { point, residuals, ellipse } = placed(marks, ties);
    const book = source(
      "Ghilani and Wolf, Adjustment Computations",
      "chapter 14: stations and distances seen, result by a search without derivatives",
      "worked out",
    );
    published(book, "place, ft", [point.x.value, point.y.value], [6861.316788, 3727.818566], { digits: 4 });
    published(
      book,
      "residuals, ft",
      residuals.map(({ residual }) => residual.value),
      [0.037373, -0.076793, 0.047366],
      { digits: 4 },
    );
    published(
      book,
      "variances at unit weight",
      [point.x, point.y].map((of) => standardUncertainty(of) ** 2),
      [0.630189, 2.494689],
      { digits: 5 },
    );
    published(book, "ellipse at unit weight", [ellipse.semiMajor, ellipse.semiMinor], [1.656949, 0.615952], { digits: 5 });
  });
});

/** NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, upper critical values, 5 in 100; the digits SEEN in a table that agrees with it. */
test("chi-square exceeded in 5 cases of 100 (NIST e-Handbook 1.3.6.7.4)", () => {
  const printed = [3.841, 5.991, 7.815, 9.488, 11.07, 12.592, 14.067, 15.507, 16.919, 18.307];
  const handbook = source("NIST/SEMATECH e-Handbook", "1.3.6.7.4 chi-square, in a table that agrees with it", "quoted");
  published(handbook, "exceeded in 5 of 100, 1 to 10 degrees of freedom", [...CHI_SQUARE_95], printed, { digits: 3 });
});

/** In two dimensions 1 − exp(−k²/2) lie within k standard ellipses: closed form. */
test("the standard ellipse covers 39.35 in 100, its 2.4477-fold 95 (closed form)", () => {
  const within = (k: number): number => 1 - Math.exp((-k * k) / 2);
  const closed = byHand("1 − exp(−k²/2)");
  published(closed, "share within the standard ellipse and within its 2.4477-fold", [within(1), within(ELLIPSE_95)], [0.3935, 0.95], {
    digits: 4,
  });
  published(closed, "factor for 95 of 100", ELLIPSE_95, 2.44775, { digits: 5 });
});
