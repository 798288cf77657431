import type { CalendarDay } from "./calendar.ts";

/** A moment on a place's own wall clock. */
export interface LocalMoment extends CalendarDay {
  readonly hour: number;
  readonly minute: number;
  readonly zoneName: string;
}

const options = {
  year: "numeric",
  month: "numeric",
  day: "numeric",
  hour: "numeric",
  minute: "numeric",
  hourCycle: "h23",
  timeZoneName: "short",
} as const;

/** One for each zone there is: to make one takes an old phone longer than a page may. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known !== undefined) return known;
  try {
    const format = new Intl.DateTimeFormat("en-US", { ...options, timeZone: zone });
    formats.set(zone, format);
    return format;
  } catch {
    // a name that is no zone is not kept: there is no end of such names
    return formatOf("UTC");
  }
}

/** The first and the last moment that a machine's calendar knows, ms (ECMA-262, 21.4.1.1). */
const FARTHEST = 8.64e15;

/** A moment in a site's zone; beyond what a calendar knows the farthest that it does. An unknown zone falls back to UTC, which its name then says. */
export function momentIn(milliseconds: number, zone: string): LocalMoment {
  const parts = new Map<string, string>();
  const known = Math.max(-FARTHEST, Math.min(FARTHEST, milliseconds)) || 0;
  for (const { type, value } of formatOf(zone).formatToParts(known)) parts.set(type, value);
  const number = (type: string): number => Number(parts.get(type) ?? 0);
  return {
    year: number("year"),
    month: number("month"),
    day: number("day"),
    hour: number("hour"),
    minute: number("minute"),
    zoneName: parts.get("timeZoneName") ?? "UTC",
  };
}
