import type { Json } from "../../../ledger/index.ts";

/** The part of a browser's position that is kept: degrees, metres, ms. */
export interface Position {
  readonly coords: { readonly latitude: number; readonly longitude: number; readonly accuracy: number };
  readonly timestamp: number;
}

const whole = (value: number): number => Math.round(value) + 0;

/**
 * A position as it goes with a picture that was taken at `taken` (ms): integers of 1e-7 degree, accuracy in millimetres, age in ms
 * (how far in time the position lies from the picture). Undefined where the browser gave no place.
 */
export function whereOf(position: Position | undefined, taken: number): Json | undefined {
  if (position === undefined) return undefined;
  const { latitude, longitude, accuracy } = position.coords;
  if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) return undefined;
  return {
    latitude: whole(latitude * 1e7),
    longitude: whole(longitude * 1e7),
    ...(accuracy >= 0 && Number.isFinite(accuracy) ? { accuracy: whole(accuracy * 1000) } : {}),
    age: whole(Math.abs(taken - position.timestamp)),
  };
}

const METRES_PER_MILE = 1609.344;
const METRES_PER_FOOT = 0.3048;
/** From here on feet are no longer what anybody says (own). */
const MILES_FROM = METRES_PER_MILE / 5;

/** A distance on the ground in words, to two figures or so: a phone's place is no finer. Micrometres. */
export function distanceText(micrometres: number, units: "inch" | "metric", language: string): string {
  const metres = micrometres / 1e6;
  const large = units === "metric" ? metres >= 1000 : metres >= MILES_FROM;
  const unit = units === "metric" ? (large ? "kilometer" : "meter") : large ? "mile" : "foot";
  const inUnit = metres / { kilometer: 1000, meter: 1, mile: METRES_PER_MILE, foot: METRES_PER_FOOT }[unit];
  const rounded = large ? Number(inUnit.toFixed(inUnit < 10 ? 1 : 0)) : inUnit < 20 ? Math.round(inUnit) : Math.round(inUnit / 10) * 10;
  return new Intl.NumberFormat(language, { style: "unit", unit, unitDisplay: "long" }).format(rounded);
}
