import fc from "fast-check";
import { DateTime } from "luxon";
import { describe, expect, test } from "vitest";
import { type DayOrder, readDay } from "#core/reading/index.ts";

const read = (text: string, order: DayOrder = "month first") => {
  const day = readDay(text, { order, place: "p" });
  return day.ok
    ? `${day.value.year}-${day.value.month}-${day.value.day} ${day.value.hour}:${day.value.minute}${day.value.withTime ? "" : " no time"}`
    : day.refusal.code;
};

describe("a day as spreadsheets write it", () => {
  test.each([
    ["2026-05-11", "2026-5-11 0:0 no time"],
    ["2026-05-11 07:30", "2026-5-11 7:30"],
    ["2026-05-11T07:30:15", "2026-5-11 7:30"],
    ["5/11/2026", "2026-5-11 0:0 no time"],
    ["5/11/26", "2026-5-11 0:0 no time"],
    ["5/11/29", "2029-5-11 0:0 no time"],
    // two digits as spreadsheets read them: 30 and above are of the last century
    ["5/11/30", "1930-5-11 0:0 no time"],
    ["5/11/2026 5:04 PM", "2026-5-11 17:4"],
    ["5/11/2026 12:04 AM", "2026-5-11 0:4"],
    ["11-May-26", "2026-5-11 0:0 no time"],
    ["May 11, 2026", "2026-5-11 0:0 no time"],
    ["11 de mayo de 2026", "2026-5-11 0:0 no time"],
    // with points the day stands first, whatever the order of strokes
    ["5.11.2026", "2026-11-5 0:0 no time"],
  ])("%s", (text, is) => {
    expect(read(text)).toBe(is);
  });

  test("three numbers are read in the order that is said, and a month that no year has is refused, not turned round", () => {
    expect(read("5/6/2026", "month first")).toBe("2026-5-6 0:0 no time");
    expect(read("5/6/2026", "day first")).toBe("2026-6-5 0:0 no time");
    expect(read("25/6/2026", "month first")).toBe("reading-out-of-range");
    expect(read("6/25/2026", "day first")).toBe("reading-out-of-range");
  });

  test.each([
    // 45292 is 1 January 2024, 46153 is 11 May 2026: a spreadsheet's own count
    ["45292", "2024-1-1 0:0 no time"],
    ["46153", "2026-5-11 0:0 no time"],
    ["46153.5", "2026-5-11 12:0"],
    ["46153,729166666667", "2026-5-11 17:30"],
    // to the minute: the last half of one is the next day
    ["46153.99999", "2026-5-12 0:0 no time"],
  ])("the spreadsheet's count of days %s", (text, is) => {
    expect(read(text)).toBe(is);
  });

  test("what is no day, or none of the calendar, is refused", () => {
    for (const text of ["Monday", "5/11", "20260511", "12", "5/11/2026 25", "11-Foo-26", "1e5", "=TODAY()"])
      expect(read(text), text).toBe("reading-not-understood");
    for (const text of ["2026-02-29", "2/30/2026", "2026-13-01", "5/11/2026 24:00", "5/11/2026 13:00 PM", "2026-05-11 07:61"])
      expect(read(text), text).toBe("reading-out-of-range");
    expect(read("  ")).toBe("reading-empty");
  });

  test("any day of two centuries in each way of writing it, beside luxon", () => {
    fc.assert(
      fc.property(fc.integer({ min: 20_000, max: 80_000 }), (count) => {
        const day = DateTime.fromISO("1899-12-30", { zone: "utc" }).plus({ days: count });
        const is = `${day.year}-${day.month}-${day.day} 0:0 no time`;
        expect(read(String(count))).toBe(is);
        expect(read(day.toFormat("yyyy-MM-dd"))).toBe(is);
        expect(read(day.toFormat("M/d/yyyy"), "month first")).toBe(is);
        expect(read(day.toFormat("d/M/yyyy"), "day first")).toBe(is);
        expect(read(day.toFormat("d-LLL-yyyy"))).toBe(is);
        expect(read(day.toFormat("d LLLL yyyy", { locale: "es" }))).toBe(is);
      }),
      { seed: 6, numRuns: 300 },
    );
  });

  test("whatever is typed, it is a day of the calendar or a refusal", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[0-9/.:, -]{0,16}$/)),
        fc.constantFrom<DayOrder>("month first", "day first"),
        (text, order) => {
          const day = readDay(text, { order });
          if (!day.ok) return;
          const { year, month, day: of, hour, minute } = day.value;
          expect(DateTime.utc(year, month, of, hour, minute).isValid).toBe(true);
        },
      ),
      { seed: 6, numRuns: 1000 },
    );
  });
});
