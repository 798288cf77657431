import { certain, type Uncertain } from "#core/doubt/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import { CUBIC_METRES_PER_GALLON, feet, inches } from "#core/units/index.ts";
import { figure, KILOGRAMS_PER_POUND } from "#core/water/index.ts";

export function taken<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`${outcome.refusal.code} at ${outcome.refusal.place}`);
  return outcome.value;
}

export const pounds = (n: number): Uncertain => certain(n * KILOGRAMS_PER_POUND);
export const inchesOf = (n: number): Uncertain => certain(inches(n));
export const feetOf = (n: number): Uncertain => certain(feet(n));
export const squareFeet = (n: number): Uncertain => certain(n * feet(1) * feet(1));
export const gallons = (n: number): Uncertain => certain(n * CUBIC_METRES_PER_GALLON);
export const inGallons = (x: Uncertain): number => x.value / CUBIC_METRES_PER_GALLON;
export const inInches = (x: Uncertain): number => x.value / 0.0254;
/** Gallons a minute in m³/s. */
export const gallonsPerMinute = (n: number): Uncertain => certain((n * CUBIC_METRES_PER_GALLON) / 60);
export { certain, figure };
