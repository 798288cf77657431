import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { calendarDay, daysInMonth, type WallClock } from "../units/index.ts";
import { LONGEST_TEXT } from "./scan.ts";

export const dayOrders = ["month first", "day first"] as const;
/** How a day of three numbers is written where no year stands first: 5/6/2026 is the 6th of May, or the 5th of June. */
export type DayOrder = (typeof dayOrders)[number];

export interface DayAsked {
  readonly order: DayOrder;
  readonly place?: string;
}

/** A day as a table has it; midnight where it gives no time. */
export interface DayTyped extends WallClock {
  readonly withTime: boolean;
}

/** Days from 1970-01-01 to the day zero of a spreadsheet's count of 1900, for days after 28 February 1900: ECMA-376-1, 18.17.4.1. */
const SERIAL_ZERO = -25_569;
/** 1954 to 2119: a bare number outside is rather something else. */
const SERIALS = { least: 20_000, most: 80_000 } as const;
/** Years of two digits as spreadsheets read them: 00 to 29 are of this century. */
const CENTURY_TURNS = 30;

const months: readonly (readonly string[])[] = [
  ["jan", "january", "ene", "enero"],
  ["feb", "february", "febrero"],
  ["mar", "march", "marzo"],
  ["apr", "april", "abr", "abril"],
  ["may", "mayo"],
  ["jun", "june", "junio"],
  ["jul", "july", "julio"],
  ["aug", "august", "ago", "agosto"],
  ["sep", "sept", "september", "septiembre"],
  ["oct", "october", "octubre"],
  ["nov", "november", "noviembre"],
  ["dec", "december", "dic", "diciembre"],
];

const TIME = String.raw`(?:[T ,]+(\d{1,2}):(\d{2})(?::\d{2}(?:\.\d+)?)?\s*([AaPp]\.?\s?[Mm]\.?)?)?`;
const YEAR_FIRST = new RegExp(String.raw`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})${TIME}$`);
const YEAR_LAST = new RegExp(String.raw`^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})${TIME}$`);
const DAY_NAMED = new RegExp(String.raw`^(\d{1,2})[ -](?:de )?(\p{L}{3,10})\.?[ ,-]+(?:de )?(\d{4}|\d{2})${TIME}$`, "u");
const MONTH_NAMED = new RegExp(String.raw`^(\p{L}{3,10})\.? (\d{1,2}),? (\d{4}|\d{2})${TIME}$`, "u");
const SERIAL = /^(\d{5})(?:[.,](\d{1,12}))?$/;

const yearOf = (text: string): number => (text.length === 4 ? Number(text) : Number(text) + (Number(text) < CENTURY_TURNS ? 2000 : 1900));
const monthNamed = (name: string): number => months.findIndex((names) => names.includes(name.toLowerCase())) + 1;

interface Parts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly time: readonly (string | undefined)[];
}

function partsOf(text: string, order: DayOrder): Parts | undefined {
  const iso = YEAR_FIRST.exec(text);
  if (iso) return { year: Number(iso[1]), month: Number(iso[2]), day: Number(iso[3]), time: iso.slice(4) };
  const last = YEAR_LAST.exec(text);
  if (last) {
    const [, a = "", sign, b = "", year = "", ...time] = last;
    // with points between them the day always stands first
    const dayFirst = order === "day first" || sign === ".";
    return { year: yearOf(year), month: Number(dayFirst ? b : a), day: Number(dayFirst ? a : b), time };
  }
  const day = DAY_NAMED.exec(text);
  if (day) return { year: yearOf(day[3] ?? ""), month: monthNamed(day[2] ?? ""), day: Number(day[1]), time: day.slice(4) };
  const month = MONTH_NAMED.exec(text);
  if (month) return { year: yearOf(month[3] ?? ""), month: monthNamed(month[1] ?? ""), day: Number(month[2]), time: month.slice(4) };
  return undefined;
}

/** A spreadsheet's count of days, its fraction the time, to the minute. */
function fromSerial(text: string): DayTyped | undefined {
  const match = SERIAL.exec(text);
  if (match === null) return undefined;
  const count = Number(match[1]);
  if (count < SERIALS.least || count > SERIALS.most) return undefined;
  const fraction = match[2] ?? "";
  const minutes = Math.round(Number(`0.${fraction || "0"}`) * 1440);
  const day = calendarDay(count + SERIAL_ZERO + Math.floor(minutes / 1440));
  return { ...day, hour: Math.floor((minutes % 1440) / 60), minute: minutes % 60, withTime: minutes % 1440 !== 0 };
}

function hourOf(hour: number, half: string | undefined): number | undefined {
  if (half === undefined) return hour <= 23 ? hour : undefined;
  if (hour < 1 || hour > 12) return undefined;
  return (hour % 12) + (/^p/i.test(half) ? 12 : 0);
}

/**
 * A day, with or without a time, as spreadsheets write it: ISO 8601, 5/6/2026 in the given order, 5.6.2026, 5-Jun-26, June 5, 2026, or
 * the spreadsheet's own count of days. Never guesses which of two numbers is the month. Refuses `reading-empty`, `reading-not-understood`, and
 * `reading-out-of-range` for a day that no calendar has.
 */
export function readDay(typed: string, { order, place = "" }: DayAsked): Outcome<DayTyped> {
  if (typed.trim() === "") return refuse("reading-empty", place);
  if (typed.length > LONGEST_TEXT)
    return refuse("reading-out-of-range", place, { length: typed.length, longest: LONGEST_TEXT }, LONGEST_TEXT + 1);
  const text = typed.trim().replaceAll(/\s+/g, " ");
  const found = text.replace(/\p{Cs}/gu, "\uFFFD");
  const serial = fromSerial(text);
  if (serial) return ok(serial);
  const parts = partsOf(text, order);
  if (parts === undefined || parts.month === 0) return refuse("reading-not-understood", place, { found });
  const { year, month, day, time } = parts;
  const [hours, minutes, half] = time;
  const hour = hours === undefined ? 0 : hourOf(Number(hours), half);
  const minute = Number(minutes ?? 0);
  const isDay = month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month) && year >= 1900;
  if (!isDay || hour === undefined || minute > 59) return refuse("reading-out-of-range", place, { found });
  return ok({ year, month, day, hour, minute, withTime: hours !== undefined });
}
