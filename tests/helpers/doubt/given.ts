import {
  certain,
  placingHalfWidths,
  type ReadingCircumstances,
  readingUncertainty,
  rectangular,
  type Uncertain,
  withSource,
} from "#core/doubt/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import { feet, inches } from "#core/units/index.ts";

export function taken<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`${outcome.refusal.code} at ${outcome.refusal.place}`);
  return outcome.value;
}

/** A value with one source of its own, by its half-width. */
export const given = (source: string, value: number, halfWidth: number): Uncertain =>
  withSource(certain(value), source, rectangular(halfWidth));

export const inchesGiven = (source: string, value: number, halfWidth: number): Uncertain => given(source, inches(value), inches(halfWidth));
export const feetGiven = (source: string, value: number, halfWidth: number): Uncertain => given(source, feet(value), feet(halfWidth));

/** A rod reading of one laser set-up, read to the sixteenth on a wiped rim. */
export function rod(reading: string, value: number, change: Partial<ReadingCircumstances> = {}): Uncertain {
  return taken(
    readingUncertainty({
      reading,
      setUp: "laser",
      value: inches(value),
      resolution: inches(1 / 16),
      placingHalfWidth: placingHalfWidths["wiped rim"],
      line: { kind: "laser", receiver: "fine", distance: feet(20) },
      ...change,
    }),
  );
}

/** A tape from one mark on the rim down to still water: one tape, so its error is shared. */
export const down = (reading: string, value: number): Uncertain =>
  taken(
    readingUncertainty({
      reading,
      setUp: "tape",
      value: inches(value),
      resolution: inches(1 / 16),
      placingHalfWidth: placingHalfWidths["still water"],
    }),
  );

/** A level tape between two points, read to the sixteenth, its ends held on a hard edge. */
export const taped = (reading: string, length: number): Uncertain =>
  taken(
    readingUncertainty({
      reading,
      setUp: "tape",
      value: feet(length),
      resolution: inches(1 / 16),
      placingHalfWidth: placingHalfWidths["hard edge"],
    }),
  );
