import { type CalendarDay, daysInMonth } from "../units/index.ts";

export type Language = "en" | "es";

const months: Readonly<Record<Language, readonly string[]>> = {
  en: ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"],
  es: ["enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre"],
};

/** A day as it prints: '12 May 2026', '12 de mayo de 2026'. Never a form in which day and month could be mistaken. */
export function dayText({ year, month, day }: CalendarDay, language: Language): string {
  const name = months[language][month - 1] ?? "";
  return language === "es" ? `${day} de ${name} de ${year}` : `${day} ${name} ${year}`;
}

interface Moment extends CalendarDay {
  readonly hour: number;
  readonly minute: number;
  readonly zoneName: string;
}

/** A moment in a site's zone. An unknown zone falls back to UTC, which its name then says. */
export function momentIn(milliseconds: number, zone: string): Moment {
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

/** '12 May 2026, 9:04 EDT'. */
export function momentText(milliseconds: number, zone: string, language: Language): string {
  const moment = momentIn(milliseconds, zone);
  return `${dayText(moment, language)}, ${moment.hour}:${String(moment.minute).padStart(2, "0")} ${moment.zoneName}`;
}

/** A typed day, 'YYYY-MM-DD'. It never passes through an instant, so no zone can move it. */
export function typedDay(text: string): CalendarDay | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return undefined;
  const [year = 0, month = 0, day = 0] = match.slice(1).map(Number);
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month) ? { year, month, day } : undefined;
}

/**
 * The last day of a cover of whole months: the day of the same number, or the month's last where it has none
 * (29 February 2024 and a year: 28 February 2025; 31 January and a month: 28 February). One rule, used wherever a cover ends.
 */
export function lastDayOfCover({ year, month, day }: CalendarDay, coveredMonths: number): CalendarDay {
  const index = year * 12 + (month - 1) + coveredMonths;
  const endYear = Math.floor(index / 12);
  const endMonth = (index % 12) + 1;
  return { year: endYear, month: endMonth, day: Math.min(day, daysInMonth(endYear, endMonth)) };
}

/** A camera's wall clock as it wrote it, '2026-05-12T07:05:00', in the record's way; anything else as it stands. */
export function clockText(text: string, language: Language): string {
  const match = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})/.exec(text);
  const day = typedDay(match?.[1] ?? "");
  return match === null || day === undefined ? text : `${dayText(day, language)}, ${Number(match[2])}:${match[3]}`;
}
