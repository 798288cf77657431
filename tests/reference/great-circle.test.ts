import geodesic from "geographiclib-geodesic";
import { describe, test } from "vitest";
import { EARTH_RADIUS, type EarthPoint, greatCircle, SPHERE_SHARE } from "#core/geometry/index.ts";
import { between, byHand, published, source } from "./checked.ts";

const library = source("GeographicLib geodesic (Karney 2013)", "Inverse on WGS 84, geographiclib-geodesic 2.2.0", "seen");
const { WGS84 } = geodesic.Geodesic;

const ours = (from: EarthPoint, to: EarthPoint): number => {
  const distance = greatCircle(from, to);
  return distance.ok ? distance.value : Number.NaN;
};
const theirs = (from: EarthPoint, to: EarthPoint): number =>
  WGS84.Inverse(from.latitude, from.longitude, to.latitude, to.longitude).s12 ?? Number.NaN;

/** A rule, not chance: the same pairs every time. */
function* pairs(): Generator<readonly [string, EarthPoint, EarthPoint]> {
  for (const latitude of [-65, -33, -1, 0, 12.5, 29, 41.0021, 48, 60, 71]) {
    for (const bearing of [0, 31, 90, 137, 222, 305]) {
      for (const metres of [5, 40, 150, 2_000, 90_000, 3_000_000]) {
        const from = { latitude, longitude: -93.6 };
        const end = WGS84.Direct(latitude, from.longitude, bearing, metres);
        yield [`${metres} m`, from, { latitude: end.lat2 ?? Number.NaN, longitude: end.lon2 ?? Number.NaN }];
      }
    }
  }
}

describe("great circle", () => {
  test("360 pairs from 5 m to 3,000 km lie within the share that the core adds to its doubt", () => {
    for (const [size, from, to] of pairs())
      published(library, `great circle, ${size}`, ours(from, to), theirs(from, to), { share: SPHERE_SHARE });
  });

  test("the share is needed: the worst pair uses more than eight tenths of it", () => {
    const worst = Math.max(...[...pairs()].map(([, from, to]) => Math.abs(ours(from, to) / theirs(from, to) - 1)));
    between(library, "worst share over all pairs", worst, 0.8 * SPHERE_SHARE, SPHERE_SHARE);
  });

  test("a quarter and half of the sphere, across the date line, and no distance at all", () => {
    const quarter = byHand("π R / 2");
    published(
      quarter,
      "pole from the equator, m",
      ours({ latitude: 0, longitude: 17 }, { latitude: 90, longitude: -40 }),
      (Math.PI * EARTH_RADIUS) / 2,
      { share: 1e-12 },
    );
    published(
      byHand("π R"),
      "opposite points, m",
      ours({ latitude: 30, longitude: 20 }, { latitude: -30, longitude: -160 }),
      Math.PI * EARTH_RADIUS,
      { share: 1e-7 },
    );
    published(
      byHand("R × 0.2° in radians"),
      "over the date line, m",
      ours({ latitude: 0, longitude: 179.9 }, { latitude: 0, longitude: -179.9 }),
      EARTH_RADIUS * 0.2 * (Math.PI / 180),
      { share: 1e-9 },
    );
    published(byHand("the same place"), "m", ours({ latitude: 41, longitude: -93 }, { latitude: 41, longitude: -93 }), 0, { absolute: 0 });
  });
});
