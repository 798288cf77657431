import { fao56 } from "#core/water/index.ts";
import { type Figure, type Rows, refuses } from "./rows.ts";

type Name = keyof typeof fao56;
type Bounds = readonly [value: number, wanted: Figure["wanted"]];

const temperature = (value: number): Bounds => [value, [-40, 60]];
const extremes = { highest: temperature(30), lowest: temperature(18) };
const day: Bounds = [200, [1, 366]];
const sun = { latitude: [0.7, [-1.152, 1.152]], dayOfYear: day } as const;
const percent = (value: number): Bounds => [value, [0, 100]];

/** The figures of each sub-step, in the order in which it takes them. */
const steps: Readonly<Record<Name, Readonly<Record<string, Bounds>>>> = {
  saturationVapourPressure: { temperature: temperature(20) },
  vapourPressureSlope: { temperature: temperature(20) },
  meanSaturationVapourPressure: extremes,
  atmosphericPressure: { elevation: [200, [-450, 6000]] },
  psychrometricConstant: { pressure: [100, "positive"] },
  vapourPressureFromExtremes: { ...extremes, mostHumid: percent(80), leastHumid: percent(40) },
  vapourPressureFromMean: { ...extremes, humidity: percent(60) },
  windAtTwoMetres: { wind: [3, "not negative"], height: [10, [0.1, 200]] },
  inverseDistance: { dayOfYear: day },
  declination: { dayOfYear: day },
  sunsetAngle: sun,
  daylightHours: sun,
  extraterrestrialRadiation: sun,
  solarRadiation: { hours: [8, "not negative"], daylight: [14, "positive"], extraterrestrial: [40, "positive"] },
  clearSkyRadiation: { elevation: [200, [-450, 6000]], extraterrestrial: [40, "positive"] },
  netShortWave: { solar: [22, "not negative"] },
  netLongWave: { ...extremes, vapourPressure: [1.5, "not negative"], solar: [22, "not negative"], clearSky: [30, "positive"] },
  monthlySoilHeat: { before: temperature(14), after: temperature(18) },
  monthlySoilHeatSoFar: { before: temperature(14), now: temperature(16) },
  penmanMonteith: {
    temperature: temperature(17),
    slope: [0.12, "positive"],
    psychrometric: [0.067, "positive"],
    netRadiation: [13, "finite"],
    soilHeat: [0.1, "finite"],
    wind: [2, "not negative"],
    saturation: [2, "positive"],
    vapourPressure: [1.4, "not negative"],
  },
};

export const fao56Rows: Rows = Object.fromEntries(
  (Object.keys(steps) as Name[]).map((step) => {
    const figures = Object.fromEntries(
      Object.entries(steps[step]).map(([name, [value, wanted]]) => [name, { value, wanted, place: `weather/${name}` }]),
    );
    const call = fao56[step] as (...list: readonly number[]) => ReturnType<(typeof fao56)[Name]>;
    return [step, refuses(figures, (_, plain) => call(...Object.keys(figures).map((name) => plain[name] ?? Number.NaN)))];
  }),
);
