import type { Check, ToleranceSheet } from "../job/index.ts";
import { formatQuantity, type QuantityKind, type TapeMarks, tapeMarks, type UnitPreferences } from "../units/index.ts";

/** A doubt of a quarter inch or more is told in sixteenths, a smaller one in sixty-fourths: nobody reads it finer. */
const QUARTER_INCH = 6350;
const MINUTE_MS = 60_000;

/** What is worked out from several readings is told in thirty-seconds, finer than the tape was read. */
const DERIVED_MARKS = 32;

/** A doubt is rounded up, never down: to those marks, a tenth of a millimetre, or whole minutes. */
export function doubtText(kind: QuantityKind, value: number, units: UnitPreferences): string {
  if (kind === "duration") return formatQuantity(kind, Math.ceil(value / MINUTE_MS) * MINUTE_MS, units);
  if (kind !== "length") return formatQuantity(kind, value, units);
  if (units.lengths === "metric") return `${Math.ceil(value / 100) / 10} mm`;
  const marks = value >= QUARTER_INCH ? 16 : 64;
  // the stored integer may lie half a micrometre above what was computed
  return formatQuantity("length", Math.round((Math.ceil(((value - 0.5) * marks) / 25_400) * 25_400) / marks), { ...units, marks });
}

/** The tape's own marks, those of the instrument that the check's first item names; finer where a value is worked out from several. */
export function marksOf(sheet: ToleranceSheet | undefined, check: Check | undefined): TapeMarks {
  const item = sheet?.items.find((i) => i.id === check?.items[0]);
  const resolution = sheet?.instruments.find((i) => i.id === item?.instrument)?.resolution ?? 1588;
  const own = tapeMarks.find((marks) => Math.round(25_400 / marks) <= resolution + 1) ?? 16;
  const isDerived = check !== undefined && check.items.length + (check.minus?.length ?? 0) > 1;
  return isDerived && own < DERIVED_MARKS ? DERIVED_MARKS : own;
}
