import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawingScales, fitToSheet, onSheet, type Vector } from "#core/geometry/index.ts";
import { feet, inches } from "#core/units/index.ts";

const box = (width: number, height: number): Vector[] => [
  { x: -1, y: 2 },
  { x: width - 1, y: height + 2 },
];
function fitted(...args: Parameters<typeof fitToSheet>) {
  const found = fitToSheet(...args);
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}

describe("fit to the sheet", () => {
  test.each([
    [10, 5, 50],
    [10.01, 5, 100],
    [5, 2, 25],
    [1, 1, 10],
    [3, 3, 25],
  ])("%f by %f m on 200 by 120 mm: 1:%d", (width, height, ratio) => {
    expect(fitted(box(width, height), 0.2, 0.12).scale).toEqual({ ratio });
  });

  test("40 by 20 ft on 10 by 6 in: 1/4 in to the foot; 41 ft: 3/16", () => {
    expect(fitted(box(feet(40), feet(20)), inches(10), inches(6), "inches").scale).toEqual({ ratio: 48, said: { inches: "1/4", feet: 1 } });
    expect(fitted(box(feet(41), feet(20)), inches(10), inches(6), "inches").scale).toEqual({
      ratio: 64,
      said: { inches: "3/16", feet: 1 },
    });
  });

  test("scales go down without a step back", () => {
    for (const scales of Object.values(drawingScales)) {
      const ratios = scales.map(({ ratio }) => ratio);
      expect([...ratios].sort((x, y) => x - y)).toEqual(ratios);
    }
  });

  test("every point lies on the paper, in its middle, up is up, and lengths keep the scale", () => {
    const coordinate = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 2, maxLength: 9 }),
        fc.constantFrom("metric" as const, "inches" as const),
        (points, units) => {
          const found = fitted(points, 0.25, 0.18, units);
          const drawn = points.map((point) => onSheet(found, point));
          const [xs, ys] = [drawn.map(({ x }) => x), drawn.map(({ y }) => y)];
          expect(Math.min(...xs)).toBeGreaterThanOrEqual(-1e-9);
          expect(Math.max(...xs)).toBeLessThanOrEqual(0.25 + 1e-9);
          expect((Math.min(...xs) + Math.max(...xs)) / 2).toBeCloseTo(0.125, 9);
          expect((Math.min(...ys) + Math.max(...ys)) / 2).toBeCloseTo(0.09, 9);
          const [p, q, r, s] = [points[0], points[1], drawn[0], drawn[1]] as [Vector, Vector, Vector, Vector];
          expect((q.x - p.x) / found.scale.ratio).toBeCloseTo(s.x - r.x, 12);
          expect((q.y - p.y) / found.scale.ratio).toBeCloseTo(r.y - s.y, 12);
        },
      ),
    );
  });

  test("one point alone takes the largest scale, in the middle", () => {
    const found = fitted([{ x: 3, y: 4 }], 0.2, 0.1);
    expect(found.scale.ratio).toBe(5);
    expect(onSheet(found, { x: 3, y: 4 })).toEqual({ x: expect.closeTo(0.1, 12), y: expect.closeTo(0.05, 12) });
  });

  test.each([
    ["no points", [], 0.2, 0.1, "points-too-few"],
    ["a point that is no number", [{ x: Number.NaN, y: 0 }], 0.2, 0.1, "number-not-finite"],
    ["paper without width", box(1, 1), 0, 0.1, "number-not-positive"],
    ["paper of negative height", box(1, 1), 0.2, -0.1, "number-not-positive"],
    ["endless paper", box(1, 1), Number.POSITIVE_INFINITY, 0.1, "number-not-finite"],
    ["a mile on a card", box(1609, 1), 0.2, 0.1, "drawing-does-not-fit"],
  ] as const)("refuses %s", (_, points, width, height, code) => {
    expect(fitToSheet(points, width, height)).toMatchObject({ ok: false, refusal: { code } });
  });
});
