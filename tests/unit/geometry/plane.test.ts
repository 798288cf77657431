import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, expanded, standardUncertainty, withSource } from "#core/doubt/index.ts";
import { fitPlane, type Place, planeAt } from "#core/geometry/index.ts";

const place = (x: number, y: number, z: number): Place => ({ x, y, height: withSource(certain(z), `${x},${y}`, 0.001) });

function fitted(places: readonly Place[]) {
  const fit = fitPlane(places);
  if (!fit.ok) throw new Error(fit.refusal.code);
  return fit.value;
}

describe("plane through the places of a rim", () => {
  test("three places carry it exactly", () => {
    const { plane, residuals, conditioning } = fitted([place(0, 0, 1), place(2, 0, 1.02), place(0, 1, 0.97)]);
    expect(plane.a.value).toBeCloseTo(1, 14);
    expect(plane.b.value).toBeCloseTo(0.01, 14);
    expect(plane.c.value).toBeCloseTo(-0.03, 14);
    for (const residual of residuals) expect(Math.abs(residual.value)).toBeLessThan(1e-15);
    expect(conditioning).toBeGreaterThan(0.3);
  });

  test("a square is conditioned 1, a strip of 10 to 1 a tenth", () => {
    const rectangle = (w: number, d: number) => fitted([place(0, 0, 0), place(w, 0, 0), place(w, d, 0), place(0, d, 0)]).conditioning;
    expect(rectangle(1, 1)).toBeCloseTo(1, 12);
    expect(rectangle(10, 1)).toBeCloseTo(0.1, 12);
  });

  test("the doubt of the slope across a rectangle is that of one height over the width (four heights, alike)", () => {
    const { plane } = fitted([place(0, 0, 0), place(2, 0, 0), place(2, 3, 0), place(0, 3, 0)]);
    expect(standardUncertainty(plane.b)).toBeCloseTo(0.001 / 2, 12);
    expect(standardUncertainty(plane.c)).toBeCloseTo(0.001 / 3, 12);
    expect(standardUncertainty(planeAt(plane, 1, 1.5))).toBeCloseTo(0.001 / 2, 12);
  });

  const height = fc.double({ min: -0.1, max: 0.1, noNaN: true });
  const grid = fc
    .uniqueArray(fc.record({ i: fc.integer({ min: 0, max: 6 }), j: fc.integer({ min: 0, max: 6 }), z: height }), {
      minLength: 4,
      maxLength: 8,
      selector: ({ i, j }) => `${i},${j}`,
    })
    .map((list) => list.map(({ i, j, z }) => place(i * 0.3, j * 0.3, z)));

  test("the order of the places changes no bit of the plane", () => {
    fc.assert(
      fc.property(grid, (places) => {
        const [one, other] = [fitPlane(places), fitPlane([...places].reverse())];
        expect(other.ok).toBe(one.ok);
        if (!one.ok || !other.ok) return;
        for (const name of ["a", "b", "c"] as const) {
          expect(other.value.plane[name].value).toBe(one.value.plane[name].value);
          expect(expanded(other.value.plane[name])).toBe(expanded(one.value.plane[name]));
        }
      }),
    );
  });

  test("least squares: the residuals sum to nothing, along x and along y too; a plane added goes into the plane alone", () => {
    fc.assert(
      fc.property(grid, height, height, (places, tiltX, tiltY) => {
        const fit = fitPlane(places);
        if (!fit.ok) return;
        const sum = (weigh: (p: Place) => number) =>
          places.reduce((s, p, i) => s + weigh(p) * (fit.value.residuals[i]?.value ?? Number.NaN), 0);
        expect(sum(() => 1)).toBeCloseTo(0, 12);
        expect(sum(({ x }) => x)).toBeCloseTo(0, 12);
        expect(sum(({ y }) => y)).toBeCloseTo(0, 12);
        const tilted = fitted(places.map((p) => place(p.x, p.y, p.height.value + 0.05 + tiltX * p.x + tiltY * p.y)));
        expect(tilted.plane.b.value).toBeCloseTo(fit.value.plane.b.value + tiltX, 11);
        expect(tilted.plane.c.value).toBeCloseTo(fit.value.plane.c.value + tiltY, 11);
        for (const [i, residual] of tilted.residuals.entries())
          expect(residual.value).toBeCloseTo(fit.value.residuals[i]?.value ?? Number.NaN, 11);
      }),
    );
  });

  test.each([
    ["two places", [place(0, 0, 0), place(1, 0, 0)], "points-too-few"],
    ["none", [], "points-too-few"],
    ["one spot twice", [place(0, 0, 0), place(1, 0, 0), place(1, 0.001, 0), place(0, 1, 0)], "points-coincident"],
    ["one line", [place(0, 0, 0), place(1, 1, 0), place(2, 2, 0), place(3, 3, 0)], "points-collinear"],
    ["nearly one line", [place(0, 0, 0), place(1, 0.001, 0), place(2, 0, 0)], "points-collinear"],
    ["a height that is no number", [place(0, 0, 0), place(1, 0, Number.NaN), place(0, 1, 0)], "number-not-finite"],
  ] as const)("refuses %s by name", (_, places, code) => {
    expect(fitPlane(places)).toMatchObject({ ok: false, refusal: { code } });
  });

  test("says which two are in one spot", () => {
    const fit = fitPlane([place(0, 0, 0), place(1, 0, 0), place(1, 0.001, 0)]);
    expect(!fit.ok && fit.refusal.figures).toEqual({ first: 2, second: 3 });
  });
});
