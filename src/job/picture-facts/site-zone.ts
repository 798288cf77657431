const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** Minutes that a zone lies east of UTC at an instant; undefined for a zone that this machine does not know. */
function offsetAt(instant: number, zone: string): number | undefined {
  try {
    const parts = new Intl.DateTimeFormat("en-US", { timeZone: zone, timeZoneName: "longOffset" }).formatToParts(instant);
    const name = parts.find(({ type }) => type === "timeZoneName")?.value ?? "";
    const match = /^GMT(?:([+-])(\d{2}):(\d{2}))?$/.exec(name);
    if (match === null) return undefined;
    return (match[1] === "-" ? -1 : 1) * (Number(match[2] ?? 0) * 60 + Number(match[3] ?? 0));
  } catch {
    return undefined;
  }
}

/**
 * Minutes east of UTC that a clock of the zone may have stood at when it read this wall clock (given as if it were UTC, ms): one,
 * two in the hour that comes twice, none in the hour that is left out or where the zone is not known. It goes by the day of the
 * wall clock alone.
 */
export function offsetsWhenRead(wallClock: number, zone: string): readonly number[] {
  const around = [offsetAt(wallClock - DAY_MS, zone), offsetAt(wallClock + DAY_MS, zone)];
  const read = around.filter((offset) => offset !== undefined && offsetAt(wallClock - offset * MINUTE_MS, zone) === offset);
  return [...new Set(read as number[])].sort((a, b) => b - a);
}
