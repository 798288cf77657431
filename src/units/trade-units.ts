import type { QuantityKind } from "./quantities.ts";

/** One trade or metric unit: a value x in it is (x + shift) × numerator / denominator in the fixed unit of its kind, exactly. */
export interface TradeUnit {
  readonly kind: QuantityKind;
  readonly numerator: bigint;
  readonly denominator: bigint;
  readonly shift: bigint;
}

const exactly = (kind: QuantityKind, numerator: bigint, denominator = 1n, shift = 0n): TradeUnit => ({
  kind,
  numerator,
  denominator,
  shift,
});

/**
 * The closed list of units that can be typed or printed. Exact factors: international inch and pound (1959), US gallon of
 * 231 in³ (NIST SP 811 App. B), °F = °C × 9/5 + 32.
 */
export const tradeUnits = {
  in: exactly("length", 25_400n),
  ft: exactly("length", 304_800n),
  mm: exactly("length", 1_000n),
  cm: exactly("length", 10_000n),
  m: exactly("length", 1_000_000n),
  "in²": exactly("area", 64_516n, 10_000n),
  "ft²": exactly("area", 9_290_304n, 10_000n),
  "cm²": exactly("area", 1n),
  "m²": exactly("area", 10_000n),
  gal: exactly("volume", 3_785_411_784n, 1_000_000n),
  L: exactly("volume", 1_000n),
  ml: exactly("volume", 1n),
  gpm: exactly("flow", 3_785_411_784n, 1_000_000n),
  gph: exactly("flow", 3_785_411_784n, 60_000_000n),
  "L/min": exactly("flow", 1_000n),
  "L/h": exactly("flow", 1_000n, 60n),
  "L/s": exactly("flow", 60_000n),
  "m³/h": exactly("flow", 1_000_000n, 60n),
  "gph/in": exactly("flowPerLength", 3_785_411_784n, 1_524_000n),
  "L/min/m": exactly("flowPerLength", 1_000n),
  "ft/s": exactly("velocity", 3_048n, 10n),
  "m/s": exactly("velocity", 1_000n),
  mph: exactly("velocity", 44_704n, 100n),
  "km/h": exactly("velocity", 1_000_000n, 3_600n),
  "°": exactly("angle", 1_000_000n),
  "MJ/m²": exactly("radiation", 100n),
  "kWh/m²": exactly("radiation", 360n),
  s: exactly("duration", 1_000n),
  min: exactly("duration", 60_000n),
  h: exactly("duration", 3_600_000n),
  d: exactly("duration", 86_400_000n),
  "°F": exactly("temperature", 5_000n, 9n, -32n),
  "°C": exactly("temperature", 1_000n),
  W: exactly("power", 1_000n),
  kW: exactly("power", 1_000_000n),
  V: exactly("voltage", 1_000n),
  A: exactly("current", 1_000n),
  lb: exactly("mass", 45_359_237n, 100_000n),
  kg: exactly("mass", 1_000n),
  g: exactly("mass", 1n),
  "1": exactly("count", 1n),
  "%": exactly("ratio", 10_000n),
  ppm: exactly("ratio", 1n),
} as const satisfies Record<string, TradeUnit>;
export type UnitSymbol = keyof typeof tradeUnits;

/** How a length is expected or printed. `ft-in` is feet and inches; a bare number there means inches. */
export type LengthUnit = "in" | "ft" | "ft-in" | "mm" | "cm" | "m";

/** Graduations to the inch that a tape in inches has. */
export const tapeMarks = [2, 4, 8, 16, 32, 64] as const;
export type TapeMarks = (typeof tapeMarks)[number];
