import { expanded, type Uncertain } from "../doubt/index.ts";

/** Nearest whole number, half away from zero, so that a value and its mirror round alike. */
export const toInteger = (x: number): number => {
  const size = Math.round(Math.abs(x));
  return x < 0 && size !== 0 ? -size : size;
};

/** Fixed units per SI unit: micrometres for lengths (the default), millilitres for volumes. */
export const MICROMETRES_PER_METRE = 1e6;
export const MILLILITRES_PER_CUBIC_METRE = 1e6;

export interface StoredMeasurement {
  readonly value: number;
  /** U = 2 u. */
  readonly expanded: number;
}

/** The one place where a finding leaves floats: value and U, each rounded once to the fixed unit. */
export function leaveCore(x: Uncertain, perUnit: number = MICROMETRES_PER_METRE): StoredMeasurement {
  return { value: toInteger(x.value * perUnit), expanded: toInteger(expanded(x) * perUnit) };
}
