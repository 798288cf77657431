import { faultIn, product, refused, scale, throughSteps, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { ofFactor, waterFactors } from "./factors.ts";
import { type DaySteps, daySteps } from "./penman-monteith.ts";
import { daylightHours } from "./sun.ts";
import { meanSaturationVapourPressure, saturationVapourPressure, vapourPressureFromExtremes, vapourPressureFromMean } from "./vapour.ts";

/** Weather of one day as it is typed. °C, %, kPa, m/s, m, degrees (+ north). */
export interface Weather {
  readonly highest: Uncertain;
  readonly lowest: Uncertain;
  readonly humidity:
    | { readonly kind: "extremes"; readonly most: Uncertain; readonly least: Uncertain }
    | { readonly kind: "mean"; readonly mean: Uncertain }
    | { readonly kind: "dew point"; readonly temperature: Uncertain }
    | { readonly kind: "vapour pressure"; readonly pressure: Uncertain };
  readonly wind: Uncertain;
  /** Height of the wind's reading; forecasts give it at 10 m. */
  readonly windHeight: number;
  readonly sun:
    | { readonly kind: "hours"; readonly hours: Uncertain }
    /** Share of the hours from sunrise to sunset, 0 to 1, for a look at the sky. */
    | { readonly kind: "share"; readonly share: Uncertain }
    | { readonly kind: "radiation"; readonly perDay: Uncertain };
  readonly latitude: number;
  readonly elevation: number;
  readonly dayOfYear: number;
  /** Heat into the ground, MJ/m² a day; absent: none, as over one day. */
  readonly soilHeat?: number;
}

interface Typed {
  readonly highest: Uncertain;
  readonly lowest: Uncertain;
  readonly wind: Uncertain;
  readonly damp: Uncertain;
  readonly dampLeast: Uncertain;
  readonly sun: Uncertain;
}

const dampOf = ({ humidity }: Weather): readonly [Uncertain, Uncertain] => {
  switch (humidity.kind) {
    case "extremes":
      return [humidity.most, humidity.least];
    case "mean":
      return [humidity.mean, humidity.mean];
    case "dew point":
      return [humidity.temperature, humidity.temperature];
    case "vapour pressure":
      return [humidity.pressure, humidity.pressure];
  }
};

const sunOf = ({ sun }: Weather): Uncertain => (sun.kind === "hours" ? sun.hours : sun.kind === "share" ? sun.share : sun.perDay);

function weatherFault(weather: Weather, [damp, dampLeast]: readonly [Uncertain, Uncertain]) {
  const percent = [0, 100] as const;
  const dampWanted =
    weather.humidity.kind === "dew point" ? ([-40, 60] as const) : weather.humidity.kind === "vapour pressure" ? "not negative" : percent;
  return faultIn("weather", {
    highest: [weather.highest, [-40, 60]],
    lowest: [weather.lowest, [-40, 60]],
    highestLessLowest: [weather.highest.value - weather.lowest.value, "not negative"],
    humidity: [damp, dampWanted],
    leastHumidity: [dampLeast, dampWanted],
    wind: [weather.wind, "not negative"],
    windHeight: [weather.windHeight, [0.1, 200]],
    latitude: [weather.latitude, [-66, 66]],
    elevation: [weather.elevation, [-450, 6000]],
    dayOfYear: [weather.dayOfYear, [1, 366]],
    soilHeat: [weather.soilHeat, "finite"],
    sun: [sunOf(weather), weather.sun.kind === "share" ? [0, 1] : weather.sun.kind === "hours" ? [0, 24] : "not negative"],
  });
}

const valuesOf = ({ highest, lowest, wind, damp, dampLeast, sun }: Typed): Record<keyof Typed, number> => ({
  highest: highest.value,
  lowest: lowest.value,
  wind: wind.value,
  damp: damp.value,
  dampLeast: dampLeast.value,
  sun: sun.value,
});

const upTo = (most: number, x: number): number => Math.min(most, Math.max(0, x));

function vapourPressureOf(weather: Weather, { highest, lowest, damp, dampLeast }: Record<keyof Typed, number>): number {
  const saturation = meanSaturationVapourPressure(highest, lowest);
  switch (weather.humidity.kind) {
    case "extremes":
      return vapourPressureFromExtremes(highest, lowest, upTo(100, damp), upTo(100, dampLeast));
    case "mean":
      return vapourPressureFromMean(highest, lowest, upTo(100, damp));
    case "dew point":
      return saturationVapourPressure(damp);
    case "vapour pressure":
      return upTo(saturation, damp);
  }
}

function stepsOf(weather: Weather, figures: Record<keyof Typed, number>): DaySteps {
  const { windHeight, latitude, elevation, dayOfYear, soilHeat = 0 } = weather;
  const daylight = daylightHours((latitude * Math.PI) / 180, dayOfYear);
  const sun =
    weather.sun.kind === "radiation"
      ? { solar: Math.max(0, figures.sun) }
      : { sunHours: weather.sun.kind === "hours" ? figures.sun : upTo(1, figures.sun) * daylight };
  const { highest, lowest } = figures;
  const wind = Math.max(0, figures.wind);
  return daySteps({
    highest,
    lowest,
    vapourPressure: vapourPressureOf(weather, figures),
    wind,
    windHeight,
    latitude,
    elevation,
    dayOfYear,
    soilHeat,
    ...sun,
  });
}

export interface EvaporationOfDay {
  readonly steps: DaySteps;
  /** Short grass, m a day (ET_o). */
  readonly grass: Uncertain;
  /** Open water, m a day; for a basin under stone an upper allowance. */
  readonly openWater: Uncertain;
}

/**
 * Evaporation of a day from typed weather: FAO-56 Penman-Monteith, then × 1.05 for open water under 2 m deep (FAO-56 Table 12, from
 * memory), ± 30 % for what the model is worth in a garden (own). Never below zero. Refuses weather outside FAO-56's range.
 */
export function evaporationOfDay(weather: Weather): Outcome<EvaporationOfDay> {
  const [damp, dampLeast] = dampOf(weather);
  const fault = weatherFault(weather, [damp, dampLeast]);
  if (fault) return refused(fault);
  const inputs: Typed = { highest: weather.highest, lowest: weather.lowest, wind: weather.wind, damp, dampLeast, sun: sunOf(weather) };
  const perDay = throughSteps({ ...inputs }, (figures) => Math.max(0, stepsOf(weather, figures).evaporation));
  const grass = scale(perDay, 1e-3);
  return ok({ steps: stepsOf(weather, valuesOf(inputs)), grass, openWater: product(grass, ofFactor(waterFactors.openWater)) });
}
