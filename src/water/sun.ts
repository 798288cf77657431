/**
 * Sun above a place in a day, FAO-56 chapter 3. Angles in radians, radiation in MJ/m² a day.
 *
 *   d_r = 1 + 0.033 cos(2π J/365)      δ = 0.409 sin(2π J/365 - 1.39)      ω_s = arccos(-tan φ tan δ)      N = 24/π ω_s
 *   R_a = 24·60/π · 0.0820 d_r (ω_s sin φ sin δ + cos φ cos δ sin ω_s)
 *
 *   J  day of the year, 1 to 366      φ  latitude, + north      N  hours from sunrise to sunset
 *
 * Range: latitudes up to 66°, where the sun rises and sets every day. Source: FAO-56, examples 8 and 9.
 */
export const inverseDistance = (dayOfYear: number): number => 1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365);
export const declination = (dayOfYear: number): number => 0.409 * Math.sin((2 * Math.PI * dayOfYear) / 365 - 1.39);
export const sunsetAngle = (latitude: number, dayOfYear: number): number =>
  Math.acos(Math.min(1, Math.max(-1, -Math.tan(latitude) * Math.tan(declination(dayOfYear)))));
export const daylightHours = (latitude: number, dayOfYear: number): number => (24 / Math.PI) * sunsetAngle(latitude, dayOfYear);

const SOLAR_CONSTANT = 0.082;

export function extraterrestrialRadiation(latitude: number, dayOfYear: number): number {
  const angle = sunsetAngle(latitude, dayOfYear);
  const tilt = declination(dayOfYear);
  const overDay = angle * Math.sin(latitude) * Math.sin(tilt) + Math.cos(latitude) * Math.cos(tilt) * Math.sin(angle);
  return ((24 * 60) / Math.PI) * SOLAR_CONSTANT * inverseDistance(dayOfYear) * overDay;
}
