/**
 * Water vapour in air, FAO-56 chapter 3. kPa, °C, m, m/s.
 *
 *   e°(T) = 0.6108 exp(17.27 T / (T + 237.3))        Δ = 4098 e°(T) / (T + 237.3)²
 *   P = 101.3 ((293 - 0.0065 z) / 293)^5.26          γ = 0.665e-3 P
 *   e_a = (e°(T_min) RH_max/100 + e°(T_max) RH_min/100) / 2,  or  RH_mean/100 e_s,  or  e°(T_dew)
 *   u_2 = u_z 4.87 / ln(67.8 z - 5.42)
 *
 * Range: −20 to 50 °C, wind from above 0.1 m. Source: Allen and others, FAO Irrigation and Drainage Paper 56 (1998): equations from
 * memory, its worked examples 2, 3, 5, 14, 17, 18 and 20 (quoted in public tests) verify them. Accuracy: its printed digits.
 */
export const saturationVapourPressure = (t: number): number => 0.6108 * Math.exp((17.27 * t) / (t + 237.3));
export const vapourPressureSlope = (t: number): number => (4098 * saturationVapourPressure(t)) / (t + 237.3) ** 2;
export const meanSaturationVapourPressure = (highest: number, lowest: number): number =>
  (saturationVapourPressure(highest) + saturationVapourPressure(lowest)) / 2;
export const atmosphericPressure = (elevation: number): number => 101.3 * ((293 - 0.0065 * elevation) / 293) ** 5.26;
export const psychrometricConstant = (pressure: number): number => 0.665e-3 * pressure;
export const vapourPressureFromExtremes = (highest: number, lowest: number, mostHumid: number, leastHumid: number): number =>
  (saturationVapourPressure(lowest) * mostHumid + saturationVapourPressure(highest) * leastHumid) / 200;
export const vapourPressureFromMean = (highest: number, lowest: number, humidity: number): number =>
  (meanSaturationVapourPressure(highest, lowest) * humidity) / 100;
export const windAtTwoMetres = (wind: number, height: number): number => (wind * 4.87) / Math.log(67.8 * height - 5.42);
