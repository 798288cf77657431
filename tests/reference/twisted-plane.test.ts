import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { fitPlane, fourthPlace } from "#core/geometry/index.ts";

/** No published example of four corners was found: worked out by hand, (0,0) (10,0) (10,6) (0,6) with z 0, 0.02, 0.05, 0.01. */
describe("plane through four corners of a rectangle (worked out by hand, no publication found)", () => {
  const places = [
    [0, 0, 0],
    [10, 0, 0.02],
    [10, 6, 0.05],
    [0, 6, 0.01],
  ].map(([x = 0, y = 0, z = 0]) => ({ x, y, height: certain(z) }));

  test("coefficients, residuals, slope, twist", () => {
    const fit = fitPlane(places);
    if (!fit.ok) throw new Error(fit.refusal.code);
    const { plane, residuals } = fit.value;
    expect(plane.a.value).toBeCloseTo(-0.005, 12);
    expect(plane.b.value).toBeCloseTo(0.003, 12);
    expect(plane.c.value).toBeCloseTo(0.01 / 3, 12);
    expect(Math.hypot(plane.b.value, plane.c.value)).toBeCloseTo(0.0044845, 7);
    for (const [i, expected] of [0.005, -0.005, 0.005, -0.005].entries()) expect(residuals[i]?.value).toBeCloseTo(expected, 12);
    const gap = fourthPlace(places);
    expect(gap.ok && gap.value.value).toBeCloseTo(0.02, 12);
  });
});
