import { isBlank, textIn } from "./wall-clock.ts";

/** Minutes east of UTC between which every offset of the world lies. */
const LEAST = -12 * 60;
const GREATEST = 14 * 60;
const QUARTER_MS = 900_000;
const MINUTE_MS = 60_000;

/** Farthest that the satellites' time may lie off an offset from the wall clock to tell it (own). */
const OFF_OFFSET_MS = 120_000;

/**
 * Offsets off the full hour that some place keeps or kept since 1990 (IANA time zone data base; a test compares). A fix
 * that is a quarter of an hour old would else make an offset that nobody has.
 */
const BETWEEN_HOURS = [-570, -510, -270, -210, -150, 210, 270, 330, 345, 390, 510, 525, 570, 585, 630, 690, 765, 825];

/** An offset of quarter hours from −12:00 to +14:00, in minutes; undefined where the camera says that it does not know. */
export function readOffset(value: unknown): number | "not-understood" | undefined {
  const text = textIn(value);
  if (isBlank(text)) return undefined;
  if (text === "Z") return 0;
  const parts = /^([+-])(\d{1,2}):?(\d{2})$/.exec(text);
  if (!parts) return "not-understood";
  const minutes = (parts[1] === "-" ? -1 : 1) * (Number(parts[2]) * 60 + Number(parts[3]));
  if (Number(parts[3]) > 59 || minutes % 15 !== 0 || minutes < LEAST || minutes > GREATEST) return "not-understood";
  return minutes;
}

/** `+hh:mm` or `-hh:mm` of minutes east of UTC. */
export function offsetText(minutes: number): string {
  const absolute = Math.abs(minutes);
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${minutes < 0 ? "-" : "+"}${two(Math.floor(absolute / 60))}:${two(absolute % 60)}`;
}

/** The offset that the wall clock has against UTC, in minutes; undefined where no place on earth keeps it. */
export function offsetBetween(wallClock: number, utc: number): number | undefined {
  const difference = wallClock - utc;
  const rounded = Math.round(difference / QUARTER_MS) * QUARTER_MS;
  const minutes = rounded / MINUTE_MS;
  const kept = minutes % 60 === 0 || BETWEEN_HOURS.includes(minutes);
  const near = Math.abs(difference - rounded) <= OFF_OFFSET_MS;
  return near && kept && minutes >= LEAST && minutes <= GREATEST ? minutes : undefined;
}
