const HALF_HOUR_MS = 1_800_000;

/** A clock of the site's zone; of UTC where this phone does not know the zone, as everywhere else. */
function formatIn(zone: string, language: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  try {
    return new Intl.DateTimeFormat(language, { ...options, timeZone: zone });
  } catch {
    return new Intl.DateTimeFormat(language, { ...options, timeZone: "UTC" });
  }
}

/** Hour of the day at the site, 0 to 23. */
export const hourAt = (instant: number, zone: string): number =>
  Number(formatIn(zone, "en-US", { hour: "numeric", hourCycle: "h23" }).format(instant));

/** Day at the site, as `2026-05-12`. */
export const dayAt = (instant: number, zone: string): string =>
  formatIn(zone, "sv-SE", { year: "numeric", month: "2-digit", day: "2-digit" }).format(instant);

/** The site's clock for large type, `16:00`; with the day of the week where that is not the day of `now`. */
export function clockAt(instant: number, now: number, zone: string, language: string): string {
  const day = dayAt(instant, zone) === dayAt(now, zone) ? {} : ({ weekday: "short" } as const);
  const text = formatIn(zone, language, { ...day, hour: "numeric", minute: "2-digit", hourCycle: "h23" }).format(instant);
  // some languages write 09:30 whatever is asked; the sentences beside it say 9:30
  return text.replace(/\b0(?=\d:)/, "");
}

/** The half hour that comes next at or after an instant: nobody plans finer. */
export const halfHourFrom = (instant: number): number => Math.ceil(instant / HALF_HOUR_MS) * HALF_HOUR_MS;
export { HALF_HOUR_MS };
