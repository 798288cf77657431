import type { PhotoNote, Position } from "#core/photo/index.ts";
import { textIn } from "./wall-clock.ts";

/** The tags of the GPS block, rationals already divided (0/0 is NaN, 1/0 is Infinity). */
export interface PositionTags {
  readonly latitude?: unknown;
  readonly latitudeRef?: unknown;
  readonly longitude?: unknown;
  readonly longitudeRef?: unknown;
  /** GPSHPositioningError, metres. */
  readonly error?: unknown;
}

export interface PositionRead {
  readonly position: Position | null;
  readonly notes: readonly PhotoNote[];
}

const none = (note: PhotoNote): PositionRead => ({ position: null, notes: [note] });

/** The place of the picture, whole or not at all: half a position, or one without its hemisphere, is no position. */
export function readPosition(tags: PositionTags): PositionRead {
  if (tags.latitude === undefined && tags.longitude === undefined) return none("position-missing");
  const latitude = degrees(tags.latitude, 90);
  const longitude = degrees(tags.longitude, 180);
  if (latitude === undefined || longitude === undefined) return none("position-broken");
  const north = sign(tags.latitudeRef, "N", "S");
  const east = sign(tags.longitudeRef, "E", "W");
  // A phone that withholds the place leaves the block with zeros and empty references (capacitor-plugins#2147).
  if (latitude === 0 && longitude === 0) return none(north === undefined && east === undefined ? "position-withheld" : "position-zero");
  if (north === undefined || east === undefined) return none("position-unsigned");
  const accuracy = metresToMillimetres(tags.error);
  const position = { latitude: signed(north, latitude), longitude: signed(east, longitude) };
  return { position: accuracy === undefined ? position : { ...position, accuracy }, notes: [] };
}

/** Adding 0 keeps the equator from being −0, which is no other place and compares as one. */
const signed = (sign: 1 | -1, degrees: number): number => sign * Math.round(degrees * 1e7) + 0;

function degrees(value: unknown, most: number): number | undefined {
  if (!Array.isArray(value) || value.length !== 3) return undefined;
  const [whole, minutes, seconds] = value as [unknown, unknown, unknown];
  if (![whole, minutes, seconds].every((part) => typeof part === "number" && Number.isFinite(part) && part >= 0)) return undefined;
  if ((minutes as number) >= 60 || (seconds as number) >= 60) return undefined;
  const total = (whole as number) + (minutes as number) / 60 + (seconds as number) / 3600;
  return total <= most ? total : undefined;
}

function sign(value: unknown, positive: string, negative: string): 1 | -1 | undefined {
  const text = textIn(value).toUpperCase();
  if (text === positive) return 1;
  return text === negative ? -1 : undefined;
}

/** Undefined for what no receiver reaches: nothing at all, and more than once round the earth. */
function metresToMillimetres(value: unknown): number | undefined {
  const millimetres = typeof value === "number" ? Math.round(value * 1000) : Number.NaN;
  return millimetres >= 1 && millimetres <= MOST_MILLIMETRES ? millimetres : undefined;
}

/** Round the earth, 40 000 km. */
const MOST_MILLIMETRES = 40_000_000_000;
