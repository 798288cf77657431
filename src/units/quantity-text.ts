import { instantText } from "./calendar.ts";
import { durationText } from "./duration-text.ts";
import { formatLength } from "./length-text.ts";
import type { QuantityKind } from "./quantities.ts";
import { decimalText, storedInteger } from "./rounding.ts";
import { type LengthUnit, type TapeMarks, tradeUnits, type UnitSymbol } from "./trade-units.ts";

/** How a company wants quantities printed. */
export interface UnitPreferences {
  /** `inch`: in, gal, gpm, ft/s, °F, lb, ft². `metric`: mm or m, L, L/min, m/s, °C, kg, m². */
  readonly lengths: "inch" | "metric";
  /** The marks of the tape to round to, to the inch; 16 where nothing is said. */
  readonly marks?: TapeMarks;
  /** Forces the way lengths are written; otherwise feet beside inches from 3 ft on, metres from 1 m on (own choice). */
  readonly lengthAs?: LengthUnit;
}

function lengthUnitFor(micrometres: number, preferences: UnitPreferences): LengthUnit {
  if (preferences.lengthAs !== undefined) return preferences.lengthAs;
  const magnitude = Math.abs(micrometres);
  if (preferences.lengths === "inch") return magnitude >= 36 * 25_400 ? "ft-in" : "in";
  return magnitude >= 1_000_000 ? "m" : "mm";
}

/** The stored integer in the unit, with the unit's symbol; rounded once. Two decimals below 1, one below 100, none above. */
function inUnit(value: bigint, symbol: UnitSymbol, mostDecimals = 2): string {
  const { numerator, denominator, shift } = tradeUnits[symbol];
  const top = value * denominator - shift * numerator;
  const magnitude = top < 0n ? -top : top;
  const wanted = magnitude < numerator ? 2 : magnitude < 100n * numerator ? 1 : 0;
  return `${decimalText(top, numerator, Math.min(wanted, mostDecimals))} ${symbol}`;
}

/** A flow as pumps are spoken of: gallons an hour below one a minute, else a minute; a tenth below ten, whole above (own). */
function flowText(exact: bigint, inch: boolean): string {
  if (!inch) return inUnit(exact, "L/min", magnitudeOf(exact) < 10_000n ? 1 : 0);
  const gallon = tradeUnits.gpm.numerator / tradeUnits.gpm.denominator;
  if (magnitudeOf(exact) < gallon) return inUnit(exact, "gph", 0);
  return inUnit(exact, "gpm", magnitudeOf(exact) < 10n * gallon ? 1 : 0);
}

const magnitudeOf = (value: bigint): bigint => (value < 0n ? -value : value);

/**
 * A stored integer (fixed unit of its kind, see `fixedUnits`) as text in the company's units: `3 1/2 in`, `15.6 gal`, `68 °F`,
 * `37 gpm`, `4.2 ft/s`, `2 h 15 min`, `120 W`, `45 lb`, `2 %`, an instant as ISO 8601 in UTC. Rounded once, half away from zero. Throws on what is no integer.
 */
export function formatQuantity(kind: QuantityKind, value: number, preferences: UnitPreferences): string {
  const exact = storedInteger(value);
  const inch = preferences.lengths === "inch";
  switch (kind) {
    case "length":
      return formatLength(value, lengthUnitFor(value, preferences), preferences.marks);
    case "area":
      return inUnit(exact, inch ? "ft²" : "m²");
    case "volume":
      return inUnit(exact, inch ? "gal" : "L");
    case "flow":
      return flowText(exact, inch);
    case "flowPerLength":
      return inUnit(exact, inch ? "gph/in" : "L/min/m", 0);
    case "velocity":
      return inch ? inUnit(exact, "ft/s", 1) : inUnit(exact, "m/s", 2);
    case "angle":
      return `${decimalText(exact, tradeUnits["°"].numerator, 4)}°`;
    case "radiation":
      return inUnit(exact, "MJ/m²", 1);
    case "duration":
      return durationText(exact);
    case "instant":
      return instantText(value);
    case "temperature":
      return inUnit(exact, inch ? "°F" : "°C", 1);
    case "power":
      return inUnit(exact, "W", 1);
    case "voltage":
      return inUnit(exact, "V", 1);
    case "current":
      return inUnit(exact, "A", 1);
    case "mass":
      return inUnit(exact, inch ? "lb" : "kg");
    case "count":
      return exact.toString();
    case "ratio":
      return `${decimalText(exact, tradeUnits["%"].numerator, 2)} %`;
  }
}
