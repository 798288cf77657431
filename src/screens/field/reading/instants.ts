const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** Minutes by which a zone is ahead of UTC at an instant; 0 where this phone does not know the zone, as everywhere else. */
function aheadOf(zone: string, instant: number): number {
  try {
    const parts = new Intl.DateTimeFormat("en-US", { timeZone: zone, timeZoneName: "longOffset" }).formatToParts(instant);
    const named = parts.find(({ type }) => type === "timeZoneName")?.value ?? "GMT";
    const [, sign, hours = "0", minutes = "0"] = /GMT([+-])(\d{2}):?(\d{2})?/.exec(named) ?? [];
    return (sign === "-" ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
  } catch {
    return 0;
  }
}

const two = (n: number): string => String(n).padStart(2, "0");

/** An instant as it is entered: the site's own time with its offset, to the minute. */
export function instantText(instant: number, zone: string): string {
  const ahead = aheadOf(zone, instant);
  const offset = `${ahead < 0 ? "-" : "+"}${two(Math.floor(Math.abs(ahead) / 60))}:${two(Math.abs(ahead) % 60)}`;
  return `${new Date(instant + ahead * MINUTE_MS).toISOString().slice(0, 16)}${offset}`;
}

/**
 * The instant that a day and time of the site means (`2026-11-25T16:05`), ms. Of the two that an autumn night may have, the first; a
 * time that a spring night leaves out counts on from before it. Undefined for what is no day and time.
 */
export function instantOf(dayAndTime: string, zone: string): number | undefined {
  const asUtc = Date.parse(`${dayAndTime}Z`);
  if (Number.isNaN(asUtc)) return undefined;
  // offsets of the day before and the day after: no zone changes twice in two days
  const offsets = [aheadOf(zone, asUtc - DAY_MS), aheadOf(zone, asUtc + DAY_MS)] as const;
  const met = offsets.map((ahead) => ({ ahead, instant: asUtc - ahead * MINUTE_MS }));
  const real = met.filter(({ ahead, instant }) => aheadOf(zone, instant) === ahead).map(({ instant }) => instant);
  return real.length > 0 ? Math.min(...real) : asUtc - offsets[0] * MINUTE_MS;
}
