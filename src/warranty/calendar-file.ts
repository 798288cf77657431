import { type CalendarDay, instantText } from "../units/index.ts";
import { daysLater } from "./days.ts";

/** One whole day of a calendar. It is a date and never an instant, so no zone can move it. */
export interface CalendarEvent {
  /** The same whenever the file is made again: a calendar that takes it in twice has it once. */
  readonly uid: string;
  readonly day: CalendarDay;
  readonly summary: string;
  readonly description?: string;
}

export interface Calendar {
  readonly name: string;
  /** When the file is made, milliseconds. */
  readonly stamp: number;
  readonly events: readonly CalendarEvent[];
}

/** Octets of one line at most, without its end (RFC 5545, 3.1). */
const MOST_OCTETS = 75;

const octets = (sign: string): number => {
  const point = sign.codePointAt(0) ?? 0;
  return point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
};

/**
 * A text value (3.3.11): no control character but the tab, no half of a pair, and what has a meaning of its own escaped. Signs that
 * some reader takes for the end of a line are one here, so that no text slips in a line of its own.
 */
const escaped = (text: string): string =>
  [...text.replaceAll(/\r\n?|[\u0085\u2028\u2029]/g, "\n")]
    .map((sign) => {
      const point = sign.codePointAt(0) ?? 0;
      if (sign === "\n") return "\\n";
      if ((point < 0x20 && sign !== "\t") || (point >= 0x7f && point <= 0x9f)) return "";
      if (point >= 0xd800 && point <= 0xdfff) return "\ufffd";
      return sign === "\\" || sign === ";" || sign === "," ? `\\${sign}` : sign;
    })
    .join("");

/** A content line, folded between signs and never inside one, and ended as the standard ends it. */
function line(content: string): string {
  const lines: string[] = [];
  let own = "";
  let used = 0;
  for (const sign of content) {
    const size = octets(sign);
    if (used + size > MOST_OCTETS) {
      lines.push(own);
      // the blank that begins what goes on counts
      own = " ";
      used = 1;
    }
    own += sign;
    used += size;
  }
  return [...lines, own].map((one) => `${one}\r\n`).join("");
}

const padded = (value: number, width: number): string => value.toString().padStart(width, "0");
const dateOf = ({ year, month, day }: CalendarDay): string => `${padded(year, 4)}${padded(month, 2)}${padded(day, 2)}`;
/** '20260512T140400Z': whole seconds, UTC. */
const stampOf = (milliseconds: number): string =>
  instantText(Math.floor(milliseconds / 1000) * 1000)
    .replaceAll(/[-:]/g, "")
    .replace(/\.\d+/, "");

function event({ uid, day, summary, description }: CalendarEvent, stamp: string): readonly string[] {
  return [
    "BEGIN:VEVENT",
    `UID:${escaped(uid)}`,
    `DTSTAMP:${stamp}`,
    `DTSTART;VALUE=DATE:${dateOf(day)}`,
    `DTEND;VALUE=DATE:${dateOf(daysLater(day, 1))}`,
    `SUMMARY:${escaped(summary)}`,
    ...(description === undefined || description === "" ? [] : [`DESCRIPTION:${escaped(description)}`]),
    "TRANSP:TRANSPARENT",
    "END:VEVENT",
  ];
}

/** A date has four digits for its year (3.3.4), and so has the day after, on which it ends. */
const canBeSaid = ({ day }: CalendarEvent): boolean => day.year >= 0 && daysLater(day, 1).year <= 9999;

/** A calendar file (RFC 5545; its name as in RFC 7986) of whole days; what lies beyond the year 9999 is left out. */
export function calendarFile({ name, stamp, events }: Calendar): string {
  const at = stampOf(stamp);
  return [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Asburied//As-buried records//EN",
    "CALSCALE:GREGORIAN",
    `NAME:${escaped(name)}`,
    ...events.filter(canBeSaid).flatMap((one) => event(one, at)),
    "END:VCALENDAR",
  ]
    .map(line)
    .join("");
}
