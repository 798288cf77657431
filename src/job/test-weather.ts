import { rectangular, scale, type Uncertain, withSource } from "../doubt/index.ts";
import { fixedPerSi } from "../units/index.ts";
import { evaporationOfDay, SECONDS_PER_DAY, type Weather } from "../water/index.ts";
import { type Context, instancesOf, pointOf, readAll } from "./evaluation.ts";
import { sourceFor } from "./expected.ts";
import type { About } from "./fact.ts";
import { figureValue } from "./figures.ts";
import type { Live } from "./live.ts";
import { aboutOf } from "./series.ts";
import type { WeatherTyped } from "./sheet.ts";

/** How far a forecast or a station down the road lies from the garden, half-widths: all own. °C, share of 1, share of the wind, hours, share of the sun. */
const fromGarden = { temperature: 2, humidity: 10, wind: 0.4, sunshine: 1, radiation: 0.15 } as const;
/** Forecasts and stations give the wind at this height, m. */
const WIND_HEIGHT = 10;
const SECONDS_PER_HOUR = 3600;
const JOULES_PER_MEGAJOULE = 1e6;
const MS_PER_DAY = 1000 * SECONDS_PER_DAY;

/** What evaporated by the weather of a test, m a day; or what of the weather is missing; or that it does not hold together. */
export type ByWeather =
  | { readonly state: "worked out"; readonly depthPerDay: Uncertain; readonly entries: readonly Live[] }
  | { readonly state: "missing"; readonly missing: readonly About[]; readonly unknown: readonly string[]; readonly begun: boolean }
  | { readonly state: "does not hold together"; readonly entries: readonly Live[] };

/** Days from 1 January 1970 to 1 January of a year. */
function firstDayOf(year: number): number {
  const before = year - 1;
  return 365 * (year - 1970) + Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400) - 477;
}

/** Day of the year, 1 to 366, at an instant in ms; the site's own midnight makes no difference here. */
export function dayOfYear(instant: number): number {
  const days = Math.floor(instant / MS_PER_DAY);
  const near = 1970 + Math.floor(days / 365.2425);
  // the mean year lies up to a day beside the real ones
  const year = [near + 1, near, near - 1].find((one) => firstDayOf(one) <= days) ?? near;
  return days - firstDayOf(year) + 1;
}

type Role = keyof WeatherTyped;

/** The typed weather as the water's arithmetic takes it, each with what it may be off besides. */
function readWeather(context: Context, typed: WeatherTyped) {
  const roles = Object.keys(typed) as Role[];
  const readings = readAll(context, Object.values(typed));
  const of = (role: Role): Uncertain | undefined => pointOf(readings.get(typed[role] ?? "") ?? [])?.value;
  const off = (value: Uncertain, role: string, halfWidth: number): Uncertain =>
    withSource(value, `weather:${role}`, rectangular(halfWidth));
  const [highest, lowest, humidity, wind, sunshine, radiation] = [
    of("highest"),
    of("lowest"),
    of("humidity"),
    of("wind"),
    of("sunshine"),
    of("radiation"),
  ];
  const hours = (value: Uncertain): Uncertain => scale(value, 1 / SECONDS_PER_HOUR);
  const sun: Weather["sun"] | undefined = radiation
    ? {
        kind: "radiation",
        perDay: off(
          scale(radiation, 1 / JOULES_PER_MEGAJOULE),
          "radiation",
          fromGarden.radiation * (radiation.value / JOULES_PER_MEGAJOULE),
        ),
      }
    : sunshine && { kind: "hours", hours: off(hours(sunshine), "sunshine", fromGarden.sunshine) };
  return {
    highest: highest && off(highest, "highest", fromGarden.temperature),
    lowest: lowest && off(lowest, "lowest", fromGarden.temperature),
    humidity: humidity && off(scale(humidity, 100), "humidity", fromGarden.humidity),
    wind: wind && off(wind, "wind", fromGarden.wind * wind.value),
    sun,
    missing: roles.filter((role) => role !== "radiation" && of(role) === undefined && !(role === "sunshine" && sun)),
    begun: roles.some((role) => of(role) !== undefined),
    entries: [...readings.values()].flat().map(({ fact }) => fact),
  };
}

/**
 * What evaporates a day by the typed weather of a test: FAO-56, open water. Latitude and elevation are figures of the design; the
 * day of the year is that of the test. Half-widths of what is typed are own, and the model's own ± 30 % stands on top of them.
 */
export function evaporationByWeather(context: Context, typed: WeatherTyped, at: number): ByWeather {
  const { highest, lowest, humidity, wind, sun, missing, begun, entries } = readWeather(context, typed);
  const source = sourceFor(context.state, undefined);
  const latitude = figureValue(source, "latitude", "angle");
  const elevation = figureValue(source, "elevation", "length");
  const unknown = [...(latitude === undefined ? ["latitude"] : []), ...(elevation === undefined ? ["elevation"] : [])];
  if (!highest || !lowest || !humidity || !wind || !sun || latitude === undefined || elevation === undefined) {
    const waits = instancesOf(
      context,
      missing.map((role) => typed[role] ?? ""),
    );
    return { state: "missing", missing: waits.map(aboutOf), unknown, begun };
  }
  const day = evaporationOfDay({
    highest,
    lowest,
    humidity: { kind: "mean", mean: humidity },
    wind,
    windHeight: WIND_HEIGHT,
    sun,
    latitude: latitude / fixedPerSi("angle"),
    elevation: elevation / fixedPerSi("length"),
    dayOfYear: dayOfYear(at),
  });
  return day.ok ? { state: "worked out", depthPerDay: day.value.openWater, entries } : { state: "does not hold together", entries };
}

/** Source of doubt: which part of a day's evaporation falls into a part of a day. */
export const PART_OF_DAY = "own:part-of-day";

/**
 * A day's evaporation as it counts over a test of so many seconds. Of the part f of the last day anything from 2 f - 1 (or nothing) to 2 f
 * (or all) of it may have evaporated: the sun stands over half of it. The middle is f; the half-width the smaller of f and 1 - f (own).
 */
export function overWholeDays(depthPerDay: Uncertain, seconds: number): Uncertain {
  const days = seconds / SECONDS_PER_DAY;
  const part = days - Math.floor(days);
  const share = days > 0 ? Math.min(part, 1 - part) / days : 0;
  return share === 0 ? depthPerDay : withSource(depthPerDay, PART_OF_DAY, rectangular(share * depthPerDay.value));
}
