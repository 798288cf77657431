import { type CalendarDay, dayNumber } from "./calendar.ts";
import { momentIn } from "./local-moment.ts";

const MINUTE = 60_000;

/** What a wall clock shows. */
export interface WallClock extends CalendarDay {
  readonly hour: number;
  readonly minute: number;
}

const asUtc = (clock: WallClock): number => ((dayNumber(clock) * 24 + clock.hour) * 60 + clock.minute) * MINUTE;

/** Minutes east of UTC in a zone at an instant (ms). */
const offsetAt = (instant: number, zone: string): number =>
  Math.round((asUtc(momentIn(instant, zone)) - Math.floor(instant / MINUTE) * MINUTE) / MINUTE);

/**
 * A wall clock's moment in a zone as ISO 8601 with its offset, `2026-05-11T17:00-05:00`. An hour that a change of clocks leaves out is
 * the one as far after it; one that comes twice is the first. An unknown zone counts as UTC.
 */
export function zonedText(clock: WallClock, zone: string): string {
  const plain = asUtc(clock);
  // the offsets before and after any change of clocks nearby; the earlier instant that shows this very clock
  const candidates = [offsetAt(plain - 86_400_000, zone), offsetAt(plain + 86_400_000, zone)];
  const instants = candidates.map((offset) => plain - offset * MINUTE).sort((a, b) => a - b);
  const shown = instants.find((instant) => asUtc(momentIn(instant, zone)) === plain);
  const instant = shown ?? plain - (candidates[0] ?? 0) * MINUTE;
  const offset = offsetAt(instant, zone);
  const local = momentIn(instant, zone);
  const [sign, size] = [offset < 0 ? "-" : "+", Math.abs(offset)];
  return `${four(local.year)}-${two(local.month)}-${two(local.day)}T${two(local.hour)}:${two(local.minute)}${sign}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

const two = (value: number): string => String(value).padStart(2, "0");
const four = (value: number): string => String(value).padStart(4, "0");
