import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LengthUnit, readLength, readQuantity } from "#core/reading/index.ts";
import { formatLength, formatQuantity, nearest, type QuantityKind, tapeMarks } from "#core/units/index.ts";

const units = fc.constantFrom<LengthUnit>("in", "ft", "ft-in", "mm", "cm", "m");
const kinds = fc.constantFrom<readonly [QuantityKind, string]>(
  ["length", "in"],
  ["area", "ft2"],
  ["volume", "gal"],
  ["duration", "min"],
  ["instant", ""],
  ["temperature", "°F"],
  ["power", "W"],
  ["mass", "lb"],
  ["count", "1"],
  ["ratio", "%"],
);
/** Any text at all, and text made of the pieces that readings are made of, which gets deeper. */
const anyText = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.array(fc.constantFrom(..."0123456789  //--.,'\"½⅓⅟′″’”−–+:%°hdmftin"), { maxLength: 20 }).map((pieces) => pieces.join("")),
);

describe("any text", () => {
  it("is read as finite integers or refused with a column inside the text, and never throws", () => {
    fc.assert(
      fc.property(anyText, units, fc.boolean(), (typed, unit, signed) => {
        const outcome = readLength(typed, unit, { signed });
        if (outcome.ok) {
          const { micrometres, resolution } = outcome.value;
          return Number.isInteger(micrometres) && !Object.is(micrometres, -0) && Number.isInteger(resolution) && resolution > 0;
        }
        const { code, column = 0, figures } = outcome.refusal;
        return code.startsWith("reading-") && column >= 1 && column <= typed.length + 1 && String(figures.found ?? "").isWellFormed();
      }),
      { numRuns: 3_000 },
    );
  });

  it("the same for every other kind", () => {
    fc.assert(
      fc.property(anyText, kinds, ([...typed], [kind, unit]) => {
        const outcome = readQuantity(typed.join(""), { kind, unit });
        if (!outcome.ok) return outcome.refusal.code.startsWith("reading-") && (outcome.refusal.column ?? 0) >= 1;
        return Number.isSafeInteger(outcome.value.value) && Number.isSafeInteger(outcome.value.resolution) && outcome.value.resolution > 0;
      }),
      { numRuns: 3_000 },
    );
  });

  it("the expected unit never changes a reading whose unit was typed", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 500 }),
        fc.constantFrom("in", "ft", "mm", "cm", "m", '"', "'"),
        units,
        units,
        (n, typed, one, other) => {
          expect(readLength(`${n} ${typed}`, one)).toEqual(readLength(`${n} ${typed}`, other));
        },
      ),
    );
  });
});

describe("reading and printing", () => {
  const onMarks = fc.record({
    wholeInches: fc.integer({ min: -3_600, max: 3_600 }),
    sixtyFourths: fc.nat(63),
    marks: fc.constantFrom(...tapeMarks),
    as: fc.constantFrom<"in" | "ft-in">("in", "ft-in"),
    expected: units,
  });

  it("a length on the tape's marks comes back as it was, whatever unit is expected", () => {
    fc.assert(
      fc.property(onMarks, ({ wholeInches, sixtyFourths, marks, as, expected }) => {
        const count = wholeInches * marks + (sixtyFourths % marks);
        const value = Number(nearest(BigInt(count) * 25_400n, BigInt(marks)));
        expect(readLength(formatLength(value, as, marks), expected, { signed: true })).toMatchObject({
          ok: true,
          value: { micrometres: value },
        });
      }),
      { numRuns: 1_000 },
    );
  });

  it("what was typed in marks prints as the same place on the tape", () => {
    const typed = fc.record({ feet: fc.nat(50), whole: fc.nat(11), numerator: fc.nat(63), marks: fc.constantFrom(...tapeMarks) });
    fc.assert(
      fc.property(typed, ({ feet, whole, numerator, marks }) => {
        const text = `${feet}' ${whole} ${numerator % marks}/${marks}"`;
        const first = readLength(text, "in");
        if (!first.ok) throw new Error(text);
        expect(first.value.marks).toBe(marks);
        const printed = formatLength(first.value.micrometres, "ft-in", marks);
        const second = readLength(printed, "mm");
        expect(second).toMatchObject({ ok: true, value: { micrometres: first.value.micrometres } });
        expect(formatLength(first.value.micrometres, "ft-in", marks)).toBe(printed);
      }),
      { numRuns: 1_000 },
    );
  });

  it("millimetres come back from mm, cm and m", () => {
    fc.assert(
      fc.property(fc.integer({ min: -900_000, max: 900_000 }), fc.constantFrom<LengthUnit>("mm", "cm", "m"), (millimetres, as) => {
        const read = readLength(formatLength(millimetres * 1_000, as), "in", { signed: true });
        expect(read).toMatchObject({ ok: true, value: { micrometres: millimetres * 1_000 } });
      }),
    );
  });

  it("printing never moves a length by more than half a mark", () => {
    fc.assert(
      fc.property(fc.integer({ min: -9e8, max: 9e8 }), fc.constantFrom(...tapeMarks), (micrometres, marks) => {
        const read = readLength(formatLength(micrometres, "ft-in", marks), "m", { signed: true });
        if (!read.ok) throw new Error(JSON.stringify(read));
        expect(Math.abs(read.value.micrometres - micrometres)).toBeLessThanOrEqual(12_700 / marks + 0.5);
      }),
    );
  });

  it("durations of whole minutes below 72 h, whole watts and counts come back", () => {
    const preferences = { lengths: "inch" } as const;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 72 * 60 - 1 }), (minutes) => {
        const text = formatQuantity("duration", minutes * 60_000, preferences);
        expect(readQuantity(text, { kind: "duration", unit: "d" })).toMatchObject({ ok: true, value: { value: minutes * 60_000 } });
        const power = formatQuantity("power", minutes * 1_000, preferences);
        expect(readQuantity(power, { kind: "power", unit: "kW" })).toMatchObject({ ok: true, value: { value: minutes * 1_000 } });
        expect(readQuantity(formatQuantity("count", minutes, preferences), { kind: "count", unit: "1" })).toMatchObject({
          value: { value: minutes },
        });
      }),
    );
  });

  it("instants come back to the millisecond", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 253_402_300_799_999 }), (milliseconds) => {
        const text = formatQuantity("instant", milliseconds, { lengths: "metric" });
        expect(text).toBe(new Date(milliseconds).toISOString().replace(".000Z", "Z"));
        expect(readQuantity(text, { kind: "instant", unit: "" })).toMatchObject({ ok: true, value: { value: milliseconds } });
      }),
    );
  });
});
