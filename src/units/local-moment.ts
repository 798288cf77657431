import type { CalendarDay } from "./calendar.ts";

/** A moment on a place's own wall clock. */
export interface LocalMoment extends CalendarDay {
  readonly hour: number;
  readonly minute: number;
  readonly zoneName: string;
}

/** A moment in a site's zone. An unknown zone falls back to UTC, which its name then says. */
export function momentIn(milliseconds: number, zone: string): LocalMoment {
  const parts = new Map<string, string>();
  let format: Intl.DateTimeFormat;
  const options = {
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    hourCycle: "h23",
    timeZoneName: "short",
  } as const;
  try {
    format = new Intl.DateTimeFormat("en-US", { ...options, timeZone: zone });
  } catch {
    format = new Intl.DateTimeFormat("en-US", { ...options, timeZone: "UTC" });
  }
  for (const { type, value } of format.formatToParts(milliseconds)) parts.set(type, value);
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
