import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { waterLostToTilt } from "#core/geometry/index.ts";
import { CUBIC_METRES_PER_GALLON, cubicMetres, feet, inches, toGallons } from "#core/units/index.ts";

describe("US gallons", () => {
  test("231 cubic inches, 3.785411784e-3 m³ (SEEN, quoted; layout of NIST SP 811 appendix B: 3.785412 E-03)", () => {
    expect(CUBIC_METRES_PER_GALLON).toBeCloseTo(3.785411784e-3, 15);
    expect(toGallons(cubicMetres(231 * inches(1) ** 3))).toBeCloseTo(1, 12);
  });

  test("7.4805 gallons to the cubic foot (SEEN in a table of the Organization of American States)", () => {
    expect(toGallons(cubicMetres(feet(1) ** 3))).toBeCloseTo(7.4805, 4);
    expect(toGallons(cubicMetres(feet(1) ** 3))).toBeCloseTo(1728 / 231, 10);
  });

  test("cubic foot 2.831685 E-02 m³, cubic inch 1.638706 E-05 m³ (SEEN, same layout as SP 811 appendix B)", () => {
    expect(feet(1) ** 3).toBeCloseTo(2.831685e-2, 8);
    expect(inches(1) ** 3).toBeCloseTo(1.638706e-5, 11);
  });

  test("water over an area: 1 in over 1 ft² 0.623377, 1/4 in over 100 ft² 15.584 gal; 1 mm over 1 m² 1 litre (worked out)", () => {
    expect(toGallons(cubicMetres(inches(1) * feet(1) ** 2))).toBeCloseTo(0.623377, 6);
    expect(toGallons(cubicMetres(inches(1 / 4) * 100 * feet(1) ** 2))).toBeCloseTo(15.584, 3);
    expect(toGallons(cubicMetres(0.001)) * CUBIC_METRES_PER_GALLON).toBeCloseTo(0.001, 15);
  });

  test("half an inch out of level one way over 100 ft² costs the same 15.584 gal", () => {
    const lost = waterLostToTilt(100 * feet(1) ** 2, { total: certain(inches(1 / 2)) });
    expect(lost.ok && toGallons(cubicMetres(lost.value.value))).toBeCloseTo(15.584, 3);
  });
});
