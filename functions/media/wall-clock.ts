import type { PhotoNote } from "#core/photo/index.ts";

/** A date and time of day as a camera writes it, without a zone. */
export interface WallClock {
  /** Milliseconds as if the wall clock were UTC: for differences only, never an instant. */
  readonly asUtc: number;
  /** `2026-05-04T10:22:31`; fractions are dropped. */
  readonly text: string;
  /** What stands behind the time in the same tag, where some phones put the offset; empty by the standard. */
  readonly behind: string;
}

export const DAY_MS = 86_400_000;

/** A tag's text up to its first NUL (Exif 2.32, 4.6.2), also where a camera declared the same bytes as plain bytes. */
export function textIn(value: unknown): string {
  const raw = value instanceof Uint8Array ? String.fromCharCode(...value.subarray(0, 64)) : value;
  return typeof raw === "string" ? (raw.split("\0", 1)[0] ?? "").trim() : "";
}

/** Whether nothing but blanks and the colons between them is there: the standard's word for unknown. */
export const isBlank = (text: string): boolean => /^[:\s]*$/.test(text);

const DATE = /^(\d{4})[:/-]([ \d]?\d)[:/-]([ \d]?\d)[ T]([ \d]?\d):([ \d]?\d):([ \d]?\d)(?:[.,]\d*)?(Z|[+-]\d{1,2}:?\d{2})?$/;
/** A field left blank: a colon with nothing before it, or one at the end. */
const FIELD_BLANK = /(?:^|[: ]):|:$/;
const DATE_ALONE = /^\d{4}[:/-]\d{2}[:/-]\d{2}$/;

/** `YYYY:MM:DD HH:MM:SS` (Exif 2.32, 4.6.5) as it stands, whatever zone the machine is in; undefined where it is unknown. */
export function readDate(value: unknown): WallClock | Extract<PhotoNote, "time-zeros" | "time-impossible"> | undefined {
  const text = textIn(value);
  if (isBlank(text) || DATE_ALONE.test(text)) return undefined;
  if (/^[0:\s]+$/.test(text)) return "time-zeros";
  const parts = DATE.exec(text);
  if (!parts) return /^[\d :]*$/.test(text) && FIELD_BLANK.test(text) ? undefined : "time-impossible";
  const numbers = parts.slice(1, 7).map(Number) as [number, number, number, number, number, number];
  const [year, month, day, hour, minute, second] = numbers;
  const asUtc = Date.UTC(year, month - 1, day, hour, minute, second);
  const [, ...rest] = numbers.map((part) => String(part).padStart(2, "0"));
  const asGiven = `${parts[1]}-${rest[0]}-${rest[1]}T${rest[2]}:${rest[3]}:${rest[4]}`;
  // A date that rolls over prints as another one: 13 months, 30 February, 24:00, a second of 60, the year 99.
  return textOf(asUtc) === asGiven ? { asUtc, text: asGiven, behind: parts[7] ?? "" } : "time-impossible";
}

/** Milliseconds as `YYYY-MM-DDTHH:MM:SS`; undefined outside the years that four digits hold. */
export function textOf(asUtc: number): string | undefined {
  const inRange = asUtc >= -62_135_596_800_000 && asUtc <= 253_402_300_799_999;
  return inRange ? new Date(asUtc).toISOString().slice(0, 19) : undefined;
}
