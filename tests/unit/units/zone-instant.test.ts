import fc from "fast-check";
import { DateTime } from "luxon";
import { expect, test } from "vitest";
import { zonedText } from "#core/units/index.ts";

const clock = (year: number, month: number, day: number, hour: number, minute = 0) => ({ year, month, day, hour, minute });

test("a wall clock with its zone's offset, summer and winter, half hours and far east", () => {
  expect(zonedText(clock(2026, 5, 11, 17), "America/Chicago")).toBe("2026-05-11T17:00-05:00");
  expect(zonedText(clock(2026, 1, 11, 17), "America/Chicago")).toBe("2026-01-11T17:00-06:00");
  expect(zonedText(clock(2026, 5, 11, 17, 5), "Asia/Kolkata")).toBe("2026-05-11T17:05+05:30");
  expect(zonedText(clock(2026, 5, 11, 0), "Pacific/Kiritimati")).toBe("2026-05-11T00:00+14:00");
  expect(zonedText(clock(2026, 5, 11, 17), "No/Where")).toBe("2026-05-11T17:00+00:00");
});

test("an hour that comes twice is the first; one that is left out is as far after it", () => {
  // 1 November 2026, 2:00 CDT becomes 1:00 CST; 8 March 2026, 2:00 CST becomes 3:00 CDT
  expect(zonedText(clock(2026, 11, 1, 1, 30), "America/Chicago")).toBe("2026-11-01T01:30-05:00");
  expect(zonedText(clock(2026, 3, 8, 2, 30), "America/Chicago")).toBe("2026-03-08T03:30-05:00");
});

test("every clock that a zone shows, beside luxon", () => {
  const zones = ["America/New_York", "America/Phoenix", "Europe/Berlin", "Australia/Lord_Howe", "America/St_Johns", "UTC"];
  fc.assert(
    fc.property(fc.constantFrom(...zones), fc.integer({ min: 0, max: 2_200_000 }), (zone, halfHours) => {
      const at = DateTime.fromMillis(halfHours * 1_800_000, { zone });
      const text = zonedText(at, zone);
      const read = DateTime.fromISO(text, { setZone: true });
      // the same clock; where it comes twice, the earlier of the two instants
      expect(text.slice(0, 16)).toBe(at.toFormat("yyyy-MM-dd'T'HH:mm"));
      expect([...at.getPossibleOffsets()].map((one) => one.toMillis()).sort((a, b) => a - b)[0]).toBe(read.toMillis());
    }),
    { seed: 6, numRuns: 500 },
  );
});
