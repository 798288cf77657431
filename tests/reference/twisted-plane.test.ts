import { describe, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { fitPlane, fourthPlace } from "#core/geometry/index.ts";
import { byHand, published } from "./checked.ts";

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
    const corners = byHand("least squares over corners (0,0) (10,0) (10,6) (0,6), heights 0, 0.02, 0.05, 0.01");
    published(corners, "coefficients", [plane.a.value, plane.b.value, plane.c.value], [-0.005, 0.003, 0.01 / 3], { digits: 12 });
    published(corners, "slope", Math.hypot(plane.b.value, plane.c.value), 0.0044845, { digits: 7 });
    const left = residuals.map(({ value }) => value);
    published(corners, "residuals, ± twist/4", left, [0.005, -0.005, 0.005, -0.005], { digits: 12 });
    const gap = fourthPlace(places);
    published(corners, "gap under the fourth corner", gap.ok ? gap.value.value : Number.NaN, 0.02, { digits: 12 });
  });
});
