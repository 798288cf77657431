import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { dayNumber, daysInMonth } from "../units/index.ts";

const shape = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,3}))?)?(Z|[+-]\d{2}:\d{2})?$/;

export interface InstantReading {
  /** Milliseconds since 1970-01-01T00:00:00Z. */
  readonly milliseconds: number;
  /** The step in which it was written, milliseconds. */
  readonly resolution: number;
}

/** Minutes east of UTC. `-00:00` says that the offset is unknown (RFC 3339 4.3), so it is none. */
function zoneMinutes(zone: string): number | undefined {
  if (zone === "Z") return 0;
  const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(4, 6));
  if (zone === "-00:00" || minutes > 14 * 60 || Number(zone.slice(4, 6)) > 59) return undefined;
  return zone.startsWith("-") ? -minutes : minutes;
}

/** ISO 8601 date and time with its zone offset, from 1970 on. A time without zone, a day that no month has, hour 24, second 60: refused. */
export function readInstant(typed: string, place: string): Outcome<InstantReading> {
  const text = typed.trim();
  const found = text.replace(/\p{Cs}/gu, "\uFFFD");
  const match = shape.exec(text);
  if (match === null) return refuse("reading-not-understood", place, { found }, 1);
  const start = typed.indexOf(text);
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = match.slice(1, 7).map((part) => Number(part ?? 0));
  const fraction = match[7] ?? "";
  const zone = match[8];
  if (zone === undefined) return refuse("reading-not-understood", place, { found, missing: "zone" }, start + text.length + 1);
  const offset = zoneMinutes(zone);
  if (offset === undefined) return refuse("reading-out-of-range", place, { found: zone }, start + text.length - zone.length + 1);
  if (year < 1970 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) {
    return refuse("reading-out-of-range", place, { found: text.slice(0, 10) }, start + 1);
  }
  if (hour > 23 || minute > 59 || second > 59) return refuse("reading-out-of-range", place, { found: text.slice(11) }, start + 12);
  const minutes = (dayNumber({ year, month, day }) * 24 + hour) * 60 + minute - offset;
  const resolution = match[6] === undefined ? 60_000 : 1_000 / 10 ** fraction.length;
  return ok({ milliseconds: minutes * 60_000 + second * 1_000 + Number(fraction.padEnd(3, "0") || "0"), resolution });
}
