import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, standardUncertainty, withSource } from "#core/doubt/index.ts";
import { fitPlane, fourthPlace, type Place } from "#core/geometry/index.ts";

const place = (x: number, y: number, z: number): Place => ({ x, y, height: withSource(certain(z), `${x},${y}`, 0.001) });
const rectangle = (w: number, d: number, z: readonly number[]): Place[] =>
  [
    [0, 0],
    [w, 0],
    [w, d],
    [0, d],
  ].map(([x, y], i) => place(x ?? 0, y ?? 0, z[i] ?? 0));

function gapOf(places: readonly Place[]) {
  const gap = fourthPlace(places);
  if (!gap.ok) throw new Error(gap.refusal.code);
  return gap.value;
}

describe("fourth place off the plane of the other three", () => {
  const z = fc.double({ min: -0.05, max: 0.05, noNaN: true });
  const size = fc.double({ min: 0.3, max: 3, noNaN: true });

  test("one corner up by a gap lifts by that gap, with the doubt of four heights", () => {
    const gap = gapOf(rectangle(1.2, 0.9, [0, 0, 0.01, 0]));
    expect(gap.value).toBeCloseTo(0.01, 14);
    expect(standardUncertainty(gap)).toBeCloseTo(0.002, 12);
    expect(gapOf(rectangle(1.2, 0.9, [0, 0.01, 0, 0])).value).toBeCloseTo(-0.01, 14);
  });

  test("at the corners of a rectangle it is z1 - z2 + z3 - z4 and each residual of the plane a quarter of it", () => {
    fc.assert(
      fc.property(size, size, z, z, z, z, (w, d, z1, z2, z3, z4) => {
        const places = rectangle(w, d, [z1, z2, z3, z4]);
        const gap = gapOf(places).value;
        expect(gap).toBeCloseTo(z1 - z2 + z3 - z4, 12);
        const fit = fitPlane(places);
        if (!fit.ok) throw new Error(fit.refusal.code);
        for (const [i, residual] of fit.value.residuals.entries())
          expect(residual.value).toBeCloseTo(((i % 2 === 0 ? 1 : -1) * gap) / 4, 12);
      }),
    );
  });

  test("quarter points of a circle count alike", () => {
    const gap = gapOf([place(1, 0, 0.01), place(0, 1, 0.002), place(-1, 0, 0.003), place(0, -1, 0)]);
    expect(gap.value).toBeCloseTo(0.01 - 0.002 + 0.003, 14);
  });

  const uneven = [
    [0, 0],
    [1.1, 0.1],
    [1.4, 1.1],
    [-0.1, 0.8],
  ] as const;

  test("a tilted plane has no gap, whatever the four places", () => {
    fc.assert(
      fc.property(z, z, z, (a, b, c) => {
        expect(gapOf(uneven.map(([x, y]) => place(x, y, a + b * x + c * y))).value).toBeCloseTo(0, 12);
      }),
    );
  });

  test("off a rectangle the gap is the largest that one place has off the plane of the other three", () => {
    const places = uneven.map(([x, y], i) => place(x, y, i === 2 ? 0.01 : 0));
    const gaps = places.map((p, k) => {
      const fit = fitPlane(places.filter((_, i) => i !== k));
      if (!fit.ok) throw new Error(fit.refusal.code);
      const { a, b, c } = fit.value.plane;
      return Math.abs(p.height.value - a.value - b.value * p.x - c.value * p.y);
    });
    expect(Math.abs(gapOf(places).value)).toBeCloseTo(Math.max(...gaps), 12);
  });

  test("its size does not depend on the order; one place further round turns its sign", () => {
    fc.assert(
      fc.property(z, z, z, z, fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4, maxLength: 4 }), (z1, z2, z3, z4, order) => {
        const places = uneven.map(([x, y], i) => place(x, y, [z1, z2, z3, z4][i] ?? 0));
        const at = (i: number): Place => places[i] ?? place(0, 0, 0);
        const gap = gapOf(places).value;
        expect(Math.abs(gapOf(order.map(at)).value)).toBeCloseTo(Math.abs(gap), 12);
        expect(gapOf([1, 2, 3, 0].map(at)).value).toBeCloseTo(-gap, 12);
      }),
    );
  });

  test.each([
    ["three places", rectangle(1, 1, []).slice(0, 3), "points-too-few"],
    ["five places", [...rectangle(1, 1, []), place(0.5, 0.5, 0)], "points-too-many"],
    ["one spot twice", [...rectangle(1, 1, []).slice(0, 3), place(0.001, 0, 0)], "points-coincident"],
    ["three in one line", [place(0, 0, 0), place(1, 0, 0), place(2, 0, 0), place(1, 1, 0)], "points-collinear"],
  ] as const)("refuses %s by name", (_, places, code) => {
    expect(fourthPlace(places)).toMatchObject({ ok: false, refusal: { code } });
  });
});
