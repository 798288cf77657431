/**
 * Radiation that reaches the ground and leaves it, FAO-56 chapter 3. MJ/m² a day, °C, kPa, m.
 *
 *   R_s = (0.25 + 0.50 n/N) R_a        R_so = (0.75 + 2e-5 z) R_a        R_ns = (1 - 0.23) R_s
 *   R_nl = 4.903e-9 (T_max,K⁴ + T_min,K⁴)/2 (0.34 - 0.14 √e_a) (1.35 R_s/R_so - 0.35)        R_n = R_ns - R_nl
 *
 * R_s/R_so counts as 1 at most. Source: FAO-56, examples 10, 11 and 12; equations from memory. Albedo 0.23 is grass: open water
 * takes more, which the coefficient for open water carries.
 */
export const solarRadiation = (hours: number, daylight: number, extraterrestrial: number): number =>
  (0.25 + (0.5 * hours) / daylight) * extraterrestrial;
export const clearSkyRadiation = (elevation: number, extraterrestrial: number): number => (0.75 + 2e-5 * elevation) * extraterrestrial;

const ALBEDO_OF_GRASS = 0.23;
export const netShortWave = (solar: number): number => (1 - ALBEDO_OF_GRASS) * solar;

const STEFAN_BOLTZMANN = 4.903e-9;
const KELVIN_AT_ZERO_CELSIUS = 273.16;

export function netLongWave(highest: number, lowest: number, vapourPressure: number, solar: number, clearSky: number): number {
  const fourth = (t: number): number => (t + KELVIN_AT_ZERO_CELSIUS) ** 4;
  const humid = 0.34 - 0.14 * Math.sqrt(vapourPressure);
  const cloudy = 1.35 * Math.min(1, solar / clearSky) - 0.35;
  return ((STEFAN_BOLTZMANN * (fourth(highest) + fourth(lowest))) / 2) * humid * cloudy;
}

/** G over a month, by the means of the month before and after, or of the month before and this one. MJ/m² a day. */
export const monthlySoilHeat = (before: number, after: number): number => 0.07 * (after - before);
export const monthlySoilHeatSoFar = (before: number, now: number): number => 0.14 * (now - before);
