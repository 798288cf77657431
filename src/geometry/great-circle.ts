import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { type Metres, metres } from "../units/index.ts";

/** A place on the earth, degrees: north and east positive. */
export interface EarthPoint {
  readonly latitude: number;
  readonly longitude: number;
}

/** Mean radius R1 of the earth (IUGG; WGS 84 axes), metres. */
export const EARTH_RADIUS = 6_371_008.8;

/** Share by which a great circle on the sphere may differ from the shortest way on the WGS 84 ellipsoid: 0.56 % was the worst found. */
export const SPHERE_SHARE = 0.006;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const squareOfSine = (angle: number): number => Math.sin(angle / 2) ** 2;

/**
 * Distance along the great circle between two places, metres, by the haversine form, which keeps its digits for places near
 * one another. Refuses `number-not-finite` and `reading-out-of-range` (latitude beyond ±90°, longitude beyond ±180°).
 */
export function greatCircle(from: EarthPoint, to: EarthPoint): Outcome<Metres> {
  for (const [name, { latitude, longitude }] of Object.entries({ from, to })) {
    if (!(Number.isFinite(latitude) && Number.isFinite(longitude))) return refuse("number-not-finite", name);
    if (Math.abs(latitude) > 90 || Math.abs(longitude) > 180) return refuse("reading-out-of-range", name);
  }
  const along = squareOfSine(radians(to.latitude - from.latitude));
  const across = squareOfSine(radians(to.longitude - from.longitude));
  const h = along + Math.cos(radians(from.latitude)) * Math.cos(radians(to.latitude)) * across;
  // rounding must not carry the sine of opposite points beyond 1
  return ok(metres(2 * EARTH_RADIUS * Math.asin(Math.sqrt(Math.min(1, h)))));
}
