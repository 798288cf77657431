import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import {
  type CementTableName,
  cementTables,
  cureClock,
  type GlueSession,
  jointTimes,
  labelClock,
  pipeSizes,
  released,
} from "#core/plumbing/index.ts";
import { answer, codeOf, doubted, NOT_NUMBERS } from "./assumed.ts";

const HOUR = 3_600_000;
const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
const session = (fahrenheit: number, more: Partial<GlueSession> = {}): GlueSession => ({
  kind: "rigid PVC",
  size: "1-1/2",
  coldest: certain(celsius(fahrenheit)),
  humidity: "dry",
  ...more,
});
const hours = (one: GlueSession): number => answer(jointTimes(one)).cure / HOUR;

describe("set and cure times", () => {
  const tables = Object.keys(cementTables) as CementTableName[];

  test("never shorter when colder, wetter, larger or under more pressure; cure never before set", () => {
    const temperature = fc.double({ min: 1, max: 99, noNaN: true });
    fc.assert(
      fc.property(temperature, temperature, fc.constantFrom(...tables), fc.constantFrom(...pipeSizes), (a, b, table, size) => {
        const [cold, warm] = [Math.min(a, b), Math.max(a, b)];
        expect(hours(session(cold, { table, size }))).toBeGreaterThanOrEqual(hours(session(warm, { table, size })));
        expect(hours(session(cold, { table, size, humidity: "humid" }))).toBeCloseTo(1.5 * hours(session(cold, { table, size })), 9);
        expect(hours(session(cold, { table, size: "4" }))).toBeGreaterThanOrEqual(hours(session(cold, { table, size })));
        expect(hours(session(cold, { table, size, pressure: 1.4e6 }))).toBeGreaterThanOrEqual(hours(session(cold, { table, size })));
        const times = answer(jointTimes(session(cold, { table, size })));
        expect(times.set).toBeLessThanOrEqual(times.cure);
        expect(Number.isSafeInteger(times.set) && Number.isSafeInteger(times.cure)).toBe(true);
      }),
    );
  });

  test("every table has a figure for each of its bands and sizes", () => {
    for (const { bands, sizes, cure, ...rest } of Object.values(cementTables)) {
      const blocks = [...cure.map(({ minutes }) => minutes), ...("set" in rest ? [rest.set] : [])];
      for (const rows of blocks) {
        expect(rows).toHaveLength(bands.length);
        for (const row of rows) expect(row).toHaveLength(sizes.length);
      }
    }
  });

  test("on the bound of two bands the colder one counts, also through stored thousandths of a degree", () => {
    expect(hours(session(60))).toBe(4);
    expect(hours(session(61))).toBe(2);
    for (const bound of [40, 60]) {
      const stored = Math.round(celsius(bound) * 1000) / 1000;
      expect(hours({ ...session(0), coldest: certain(stored) })).toBe(hours(session(bound)));
    }
    expect([hours(session(0)), hours(session(100))]).toEqual([16, 2]);
  });

  test("a doubt that reaches into a colder band takes that band and says so", () => {
    const doubtful = answer(jointTimes({ ...session(0), coldest: doubted(celsius(61), "thermometer", 2) }));
    expect([doubtful.cure / HOUR, doubtful.colderBand]).toEqual([4, true]);
    expect(answer(jointTimes(session(61))).colderBand).toBe(false);
    expect(answer(jointTimes({ ...session(0), coldest: doubted(celsius(1), "thermometer", 2) })).cure / HOUR).toBe(16);
  });

  test("humidity: above 60 % or not known counts as humid", () => {
    const at = (humidity: GlueSession["humidity"]) => hours(session(70, { humidity }));
    expect([at("dry"), at(0.6), at(0.61), at("humid"), at("not known")]).toEqual([2, 2, 3, 3, 3]);
  });

  test("flexible PVC has no table: the can's own time, and the can rules over any table", () => {
    const can = { set: 2 * HOUR, cure: 30 * HOUR };
    expect(codeOf(jointTimes(session(70, { kind: "flexible PVC" })))).toBe("cure-time-unknown");
    expect(codeOf(jointTimes(session(70, { kind: "ABS to PVC transition" })))).toBe("cure-time-unknown");
    expect(answer(jointTimes(session(70, { kind: "flexible PVC", can, humidity: "humid" })))).toMatchObject({
      ...can,
      basis: { kind: "can" },
      humid: false,
    });
    expect(hours(session(70, { can }))).toBe(30);
    expect(hours(session(120, { can }))).toBe(30);
  });

  test("a table without set times lets the cure time stand for it, and says so", () => {
    const times = answer(jointTimes(session(70, { table: "C" })));
    expect([times.set, times.setIsCure]).toEqual([2 * HOUR, true]);
  });

  test("refuses what the table does not reach, and senseless figures", () => {
    expect(codeOf(jointTimes(session(101)))).toBe("cure-temperature-outside");
    expect(codeOf(jointTimes(session(-1)))).toBe("cure-temperature-outside");
    expect(codeOf(jointTimes(session(70, { pressure: 3e6 })))).toBe("cure-pressure-outside");
    expect(codeOf(jointTimes(session(70, { pressure: -1 })))).toBe("number-not-positive");
    expect(codeOf(jointTimes(session(70, { humidity: -0.1 })))).toBe("number-not-positive");
    expect(codeOf(jointTimes(session(70, { can: { set: 0, cure: HOUR } })))).toBe("number-not-positive");
    expect(codeOf(jointTimes(session(70, { can: { set: HOUR, cure: 1 } })))).toBe("cure-before-set");
    for (const odd of NOT_NUMBERS) {
      expect(codeOf(jointTimes(session(odd)))).toBe("number-not-finite");
      expect(codeOf(jointTimes(session(70, { humidity: odd })))).toBe("number-not-finite");
      expect(codeOf(jointTimes(session(70, { can: { set: odd, cure: odd } })))).toBe("number-not-finite");
    }
  });
});

describe("the clock", () => {
  const noon = Date.UTC(2026, 4, 6, 12);

  test("counts from the last joint: set releases handling and backfill, cure releases water", () => {
    const clock = answer(cureClock(noon, answer(jointTimes(session(50, { humidity: "humid" })))));
    expect([new Date(clock.setFrom).toISOString(), new Date(clock.cureFrom).toISOString()]).toEqual([
      "2026-05-06T15:00:00.000Z",
      "2026-05-06T18:00:00.000Z",
    ]);
    expect(released.cure).toEqual(["water"]);
    expect(released.set).toContain("handling");
  });

  test("the same for sealant, patch primer and foam by their labels", () => {
    expect(answer(labelClock("foam", noon, 8 * HOUR))).toEqual({ product: "foam", metFrom: noon + 8 * HOUR });
    expect(codeOf(labelClock("sealant", noon, 0))).toBe("number-not-positive");
    expect(codeOf(labelClock("patch primer", Number.NaN, 1))).toBe("number-not-finite");
    expect(codeOf(labelClock("foam", noon, Number.POSITIVE_INFINITY))).toBe("number-not-finite");
  });

  test("refuses an instant that is none", () => {
    const times = { set: 1, cure: 2 };
    expect(codeOf(cureClock(-1, times))).toBe("number-not-positive");
    expect(codeOf(cureClock(0.5, times))).toBe("number-not-finite");
    for (const odd of NOT_NUMBERS) expect(codeOf(cureClock(odd, times))).toBe("number-not-finite");
    expect(codeOf(cureClock(noon, { set: -1, cure: 2 }))).toBe("number-not-positive");
  });
});
