import { describe, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import { waterLostToTilt } from "#core/geometry/index.ts";
import { gallonsPerMinute, toGallonsPerMinute } from "#core/plumbing/index.ts";
import { CUBIC_METRES_PER_GALLON, cubicMetres, feet, inches, toGallons } from "#core/units/index.ts";
import { byHand, disagreement, published, source } from "./checked.ts";

const sp811 = source("NIST SP 811", "appendix B, on a page of its layout", "quoted");
const litres = (gallons: number): number => gallons * CUBIC_METRES_PER_GALLON * 1000;

describe("US gallons", () => {
  test("231 cubic inches, 3.785411784e-3 m³", () => {
    published(sp811, "gallon, m³", CUBIC_METRES_PER_GALLON, 3.785412e-3, { digits: 9 });
    const page = source("A unit converter's page", "US gallon", "seen");
    published(page, "gallon, m³", CUBIC_METRES_PER_GALLON, 3.785411784e-3, { digits: 15 });
    const oas = source("Organization of American States, unit tables", "chapter 42", "seen");
    published(oas, "gallon, in³", CUBIC_METRES_PER_GALLON / inches(1) ** 3, 231, { digits: 9 });
    published(oas, "gallons to the cubic foot", toGallons(cubicMetres(feet(1) ** 3)), 7.4805, { digits: 4 });
    published(byHand("1728/231"), "gallons to the cubic foot", toGallons(cubicMetres(feet(1) ** 3)), 7.48051948, { digits: 8 });
  });

  test("cubic foot 2.831685 E-02 m³, cubic inch 1.638706 E-05 m³", () => {
    published(sp811, "cubic foot, m³", feet(1) ** 3, 2.831685e-2, { digits: 8 });
    published(sp811, "cubic inch, m³", inches(1) ** 3, 1.638706e-5, { digits: 11 });
  });

  test("a gallon a minute 6.30901964e-5 m³/s, a cubic foot a second 448.831169 gpm", () => {
    const flow = byHand("231 in³ in 60 s");
    published(flow, "1 gpm, m³/s", gallonsPerMinute(1), 6.30901964e-5, { digits: 13 });
    published(flow, "1 cfs, gpm", toGallonsPerMinute(feet(1) ** 3), 448.831169, { digits: 6 });
  });

  test("water over an area: 1 in over 1 ft² 0.623377, 1/4 in over 100 ft² 15.584 gal; 1 mm over 1 m² 1 litre", () => {
    const over = byHand("depth × area, 231 in³");
    published(over, "gal of 1 in over 1 ft²", toGallons(cubicMetres(inches(1) * feet(1) ** 2)), 0.623377, { digits: 6 });
    published(over, "gal of 1/4 in over 100 ft²", toGallons(cubicMetres(inches(1 / 4) * 100 * feet(1) ** 2)), 15.584, { digits: 3 });
    published(over, "L of 1 mm over 1 m²", litres(toGallons(cubicMetres(0.001))), 1, { digits: 12 });
  });

  test("half an inch out of level one way over 100 ft² costs the same 15.584 gal", () => {
    const lost = waterLostToTilt(100 * feet(1) ** 2, { total: certain(inches(1 / 2)) });
    const gallons = lost.ok ? toGallons(cubicMetres(lost.value.value)) : Number.NaN;
    published(byHand("half the tilt × area"), "gal", gallons, 15.584, { digits: 3 });
  });

  test("charts in circulation are wrong", () => {
    const chart = source("A conversion chart of a digital library", "cubic yard, weight of water", "seen");
    const yard = feet(3) ** 3;
    published(byHand("27 ft³"), "cubic yard, m³", yard, 0.7646, { digits: 4 });
    disagreement(
      "cubic yard, m³",
      [
        [chart, 0.7616],
        [byHand("27 ft³"), 0.7646],
      ],
      "0.7646",
    );
    const document = source("A document of conversions", "cubic foot", "seen");
    published(byHand("12³"), "cubic foot, in³", feet(1) ** 3 / inches(1) ** 3, 1728, { digits: 8 });
    disagreement(
      "cubic inches to the cubic foot",
      [
        [document, 1729],
        [byHand("12³"), 1728],
      ],
      "1728",
    );
  });
});
