import { offsetBetween } from "./offset.ts";
import { DAY_MS, isBlank, readDate, textIn, type WallClock } from "./wall-clock.ts";

export interface SatelliteTags {
  /** Hours, minutes, seconds in UTC. */
  readonly gpsTime?: unknown;
  /** `YYYY:MM:DD` in UTC. */
  readonly gpsDate?: unknown;
}

export interface SatelliteRead {
  /** Milliseconds since 1970 UTC. */
  readonly utc: number;
  /** The day stood in the file, or is the one that brings the time of day nearest the wall clock. */
  readonly day: "given" | "nearest";
}

/**
 * The satellites' time. Without its date, the day that brings it nearest the wall clock, never today; where two days fit
 * (a clock 13 hours ahead shows what one 11 hours behind does), the one whose offset suits `longitude`, in degrees east.
 */
export function readSatellite(tags: SatelliteTags, clock: WallClock | undefined, longitude: number | undefined): SatelliteRead | undefined {
  const ofDay = timeOfDay(tags.gpsTime);
  if (ofDay === undefined) return undefined;
  const date = textIn(tags.gpsDate);
  if (!isBlank(date)) {
    const day = readDate(`${date.slice(0, 10)} 00:00:00`);
    return typeof day === "object" ? { utc: day.asUtc + ofDay, day: "given" } : undefined;
  }
  // Midnight sharp without a date is what a phone leaves that blanked the block, not a time.
  if (!clock || ofDay === 0) return undefined;
  const sameDay = Math.floor(clock.asUtc / DAY_MS) * DAY_MS + ofDay;
  const days = [sameDay - DAY_MS, sameDay, sameDay + DAY_MS];
  const nearest = leastBy(days, (utc) => Math.abs(utc - clock.asUtc));
  const utc = longitude === undefined ? nearest : suitingLongitude(days, clock, longitude, nearest);
  return { utc, day: "nearest" };
}

function suitingLongitude(days: readonly number[], clock: WallClock, longitude: number, nearest: number): number {
  const fitting = days.filter((utc) => offsetBetween(clock.asUtc, utc) !== undefined);
  // Fifteen degrees to the hour, four minutes to the degree: mean solar time tells days apart, no more.
  return fitting.length < 2 ? nearest : leastBy(fitting, (utc) => Math.abs((clock.asUtc - utc) / 60_000 - longitude * 4));
}

const leastBy = (values: readonly number[], by: (value: number) => number): number => values.reduce((a, b) => (by(b) < by(a) ? b : a));

function timeOfDay(value: unknown): number | undefined {
  const parts = Array.isArray(value) ? value.map(Number) : [];
  const [hours, minutes, seconds] = parts as [number, number, number];
  if (parts.length !== 3 || !parts.every((part) => Number.isFinite(part) && part >= 0)) return undefined;
  if (hours >= 24 || minutes >= 60 || seconds >= 60) return undefined;
  const milliseconds = Math.floor((hours * 3600 + minutes * 60 + seconds) * 1000);
  return milliseconds < DAY_MS ? milliseconds : undefined;
}
