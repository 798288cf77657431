import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { type CalendarDay, calendarDay, dayNumber, isoDay, typedDay } from "#core/units/index.ts";
import { dayAt, daysLater, isAfter, lastDayOfCover } from "#core/warranty/index.ts";

const day = (text: string): CalendarDay => {
  const read = typedDay(text);
  if (read === undefined) throw new Error(`no day: ${text}`);
  return read;
};
const first = dayNumber(day("2023-01-01"));
/** Every day of six years, two of them leap years. */
const everyDay = Array.from({ length: 6 * 365 + 2 }, (_, index) => calendarDay(first + index));

describe("the last day of a cover", () => {
  it.each([
    // a year from the leap day has no 29 February; four years from it have one again
    ["2024-02-29", 12, "2025-02-28"],
    ["2024-02-29", 24, "2026-02-28"],
    ["2024-02-29", 48, "2028-02-29"],
    ["2024-02-29", 120, "2034-02-28"],
    ["2025-01-31", 1, "2025-02-28"],
    ["2024-01-31", 1, "2024-02-29"],
    ["2025-08-31", 18, "2027-02-28"],
    ["2025-12-31", 2, "2026-02-28"],
    ["2026-05-12", 24, "2028-05-12"],
    // 2100 is no leap year
    ["2096-02-29", 48, "2100-02-28"],
    ["2026-05-12", 0, "2026-05-12"],
  ])("%s and %i months: %s", (start, months, end) => {
    expect(isoDay(lastDayOfCover(day(start), months))).toBe(end);
  });

  it.each([1, 6, 12, 18, 24, 36, 120])("is luxon's for every day of six years and %i months", (months) => {
    const other = everyDay.filter(
      (start) => isoDay(lastDayOfCover(start, months)) !== DateTime.fromObject(start, { zone: "utc" }).plus({ months }).toISODate(),
    );
    expect(everyDay.at(-1)).toEqual(day("2028-12-31"));
    expect(other).toEqual([]);
  });
});

describe("the day where the site is", () => {
  // half and quarter hours, both sides of the date line, summer time north and south, and a zone that moved it by half an hour
  const zones = ["America/Chicago", "America/St_Johns", "Asia/Kathmandu", "Pacific/Auckland", "Pacific/Kiritimati", "Australia/Lord_Howe"];

  it.each(zones)("%s: luxon's, in the first and the last minutes of every day of two years", (zone) => {
    const other: string[] = [];
    let at = DateTime.fromISO("2025-01-01T00:00:00", { zone });
    for (let count = 0; count < 730; count += 1) {
      const next = at.plus({ days: 1 }).startOf("day");
      for (const moment of [at, at.plus({ hours: 13 }), next.minus({ minutes: 1 })])
        if (isoDay(dayAt(moment.toMillis(), zone)) !== moment.toISODate()) other.push(moment.toISO() ?? "");
      at = next;
    }
    expect(other).toEqual([]);
  });

  it("one moment is another day elsewhere", () => {
    // 2026-03-01, 03:30 UTC
    const moment = Date.UTC(2026, 2, 1, 3, 30);
    expect(isoDay(dayAt(moment, "America/Denver"))).toBe("2026-02-28");
    expect(isoDay(dayAt(moment, "Asia/Tokyo"))).toBe("2026-03-01");
    expect(isoDay(dayAt(moment, "No/Such_Zone"))).toBe("2026-03-01");
  });
});

describe("days", () => {
  it("that do not exist are none", () => {
    for (const text of ["2025-02-29", "2100-02-29", "2026-04-31", "2026-13-01", "2026-00-10", "2026-1-1", "12/31/2026", ""])
      expect(typedDay(text), text).toBeUndefined();
    expect(typedDay("2024-02-29")).toEqual({ year: 2024, month: 2, day: 29 });
  });

  it("are counted over ends of months and years as luxon counts them", () => {
    for (const start of everyDay.filter((_, index) => index % 7 === 0))
      for (const days of [-400, -1, 1, 30, 366])
        expect(isoDay(daysLater(start, days))).toBe(DateTime.fromObject(start, { zone: "utc" }).plus({ days }).toISODate());
    expect(isAfter(day("2026-03-01"), day("2026-02-28"))).toBe(true);
    expect(isAfter(day("2026-03-01"), day("2026-03-01"))).toBe(false);
  });
});
