import * as radiation from "./radiation.ts";
import * as sun from "./sun.ts";
import * as vapour from "./vapour.ts";

/**
 * Evaporation of well-watered short grass, FAO-56 equation 6.
 *
 *   ET_o = [0.408 Δ (R_n - G) + γ 900/(T + 273) u_2 (e_s - e_a)] / [Δ + γ (1 + 0.34 u_2)]        mm a day
 *
 *   T  mean of the day's highest and lowest, °C      u_2  wind at 2 m, m/s      R_n, G  net radiation, into the ground, MJ/m² a day
 *   e_s, e_a, Δ, γ  see `vapour.ts`
 *
 * Source: FAO-56, examples 17 (5.72) and 18 (3.88). Accuracy: the formula to its printed digits; over a garden 15 to 30 % (own).
 */
export interface PenmanMonteithTerms {
  readonly temperature: number;
  readonly slope: number;
  readonly psychrometric: number;
  readonly netRadiation: number;
  readonly soilHeat: number;
  readonly wind: number;
  readonly saturation: number;
  readonly vapourPressure: number;
}

export function penmanMonteith(terms: PenmanMonteithTerms): number {
  const { temperature, slope, psychrometric, netRadiation, soilHeat, wind, saturation, vapourPressure } = terms;
  const fromRadiation = 0.408 * slope * (netRadiation - soilHeat);
  const fromAir = psychrometric * (900 / (temperature + 273)) * wind * (saturation - vapourPressure);
  return (fromRadiation + fromAir) / (slope + psychrometric * (1 + 0.34 * wind));
}

/** Plain figures of one day: °C, m/s, kPa, MJ/m² a day, degrees, m. */
export interface DayFigures {
  readonly highest: number;
  readonly lowest: number;
  readonly vapourPressure: number;
  readonly wind: number;
  readonly windHeight: number;
  /** Of the sun: hours of sunshine, or the radiation itself. */
  readonly sunHours?: number;
  readonly solar?: number;
  readonly latitude: number;
  readonly elevation: number;
  readonly dayOfYear: number;
  readonly soilHeat: number;
}

export interface DaySteps extends PenmanMonteithTerms {
  readonly pressure: number;
  readonly daylight: number;
  readonly extraterrestrial: number;
  readonly solar: number;
  readonly clearSky: number;
  readonly netShortWave: number;
  readonly netLongWave: number;
  /** mm a day. */
  readonly evaporation: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** All the steps of one day, from typed weather to mm a day. The figures have been looked at by the caller. */
export function daySteps(day: DayFigures): DaySteps {
  const latitude = radians(day.latitude);
  const daylight = sun.daylightHours(latitude, day.dayOfYear);
  const extraterrestrial = sun.extraterrestrialRadiation(latitude, day.dayOfYear);
  const hours = Math.min(daylight, Math.max(0, day.sunHours ?? 0));
  const solar = day.solar ?? radiation.solarRadiation(hours, daylight, extraterrestrial);
  const clearSky = radiation.clearSkyRadiation(day.elevation, extraterrestrial);
  const netShortWave = radiation.netShortWave(solar);
  const netLongWave = radiation.netLongWave(day.highest, day.lowest, day.vapourPressure, solar, clearSky);
  const temperature = (day.highest + day.lowest) / 2;
  const pressure = vapour.atmosphericPressure(day.elevation);
  const terms = {
    temperature,
    slope: vapour.vapourPressureSlope(temperature),
    psychrometric: vapour.psychrometricConstant(pressure),
    netRadiation: netShortWave - netLongWave,
    soilHeat: day.soilHeat,
    wind: vapour.windAtTwoMetres(day.wind, day.windHeight),
    saturation: vapour.meanSaturationVapourPressure(day.highest, day.lowest),
    vapourPressure: day.vapourPressure,
  };
  const evaporation = penmanMonteith(terms);
  return { ...terms, pressure, daylight, extraterrestrial, solar, clearSky, netShortWave, netLongWave, evaporation };
}
