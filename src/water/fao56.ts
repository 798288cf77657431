import { faultIn, refused, type Wanted } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { penmanMonteith } from "./penman-monteith.ts";
import * as radiation from "./radiation.ts";
import * as sun from "./sun.ts";
import * as vapour from "./vapour.ts";

/** The sub-steps of FAO-56 by name, each refusing what lies outside its range. Plain numbers in the units of `vapour`, `sun`, `radiation`. */
const ranges = {
  temperature: [-40, 60],
  highest: [-40, 60],
  lowest: [-40, 60],
  elevation: [-450, 6000],
  pressure: "positive",
  humidity: [0, 100],
  mostHumid: [0, 100],
  leastHumid: [0, 100],
  wind: "not negative",
  height: [0.1, 200],
  dayOfYear: [1, 366],
  latitude: [-1.152, 1.152],
  hours: "not negative",
  daylight: "positive",
  extraterrestrial: "positive",
  solar: "not negative",
  clearSky: "positive",
  vapourPressure: "not negative",
  before: [-40, 60],
  after: [-40, 60],
  now: [-40, 60],
  slope: "positive",
  psychrometric: "positive",
  netRadiation: "finite",
  soilHeat: "finite",
  saturation: "positive",
} as const satisfies Record<string, Wanted>;
type Name = keyof typeof ranges;

const guarded =
  <const Names extends readonly Name[]>(names: Names, of: (...figures: { [K in keyof Names]: number }) => number) =>
  (...figures: { [K in keyof Names]: number }): Outcome<number> => {
    const list: readonly number[] = figures;
    const fault = faultIn("weather", Object.fromEntries(names.map((name, i) => [name, [list[i] ?? Number.NaN, ranges[name]] as const])));
    return fault ? refused(fault) : ok(of(...figures));
  };

export const fao56 = {
  saturationVapourPressure: guarded(["temperature"], vapour.saturationVapourPressure),
  vapourPressureSlope: guarded(["temperature"], vapour.vapourPressureSlope),
  meanSaturationVapourPressure: guarded(["highest", "lowest"], vapour.meanSaturationVapourPressure),
  atmosphericPressure: guarded(["elevation"], vapour.atmosphericPressure),
  psychrometricConstant: guarded(["pressure"], vapour.psychrometricConstant),
  vapourPressureFromExtremes: guarded(["highest", "lowest", "mostHumid", "leastHumid"], vapour.vapourPressureFromExtremes),
  vapourPressureFromMean: guarded(["highest", "lowest", "humidity"], vapour.vapourPressureFromMean),
  windAtTwoMetres: guarded(["wind", "height"], vapour.windAtTwoMetres),
  inverseDistance: guarded(["dayOfYear"], sun.inverseDistance),
  declination: guarded(["dayOfYear"], sun.declination),
  sunsetAngle: guarded(["latitude", "dayOfYear"], sun.sunsetAngle),
  daylightHours: guarded(["latitude", "dayOfYear"], sun.daylightHours),
  extraterrestrialRadiation: guarded(["latitude", "dayOfYear"], sun.extraterrestrialRadiation),
  solarRadiation: guarded(["hours", "daylight", "extraterrestrial"], radiation.solarRadiation),
  clearSkyRadiation: guarded(["elevation", "extraterrestrial"], radiation.clearSkyRadiation),
  netShortWave: guarded(["solar"], radiation.netShortWave),
  netLongWave: guarded(["highest", "lowest", "vapourPressure", "solar", "clearSky"], radiation.netLongWave),
  monthlySoilHeat: guarded(["before", "after"], radiation.monthlySoilHeat),
  monthlySoilHeatSoFar: guarded(["before", "now"], radiation.monthlySoilHeatSoFar),
  penmanMonteith: guarded(
    ["temperature", "slope", "psychrometric", "netRadiation", "soilHeat", "wind", "saturation", "vapourPressure"],
    (temperature, slope, psychrometric, netRadiation, soilHeat, wind, saturation, vapourPressure) =>
      penmanMonteith({ temperature, slope, psychrometric, netRadiation, soilHeat, wind, saturation, vapourPressure }),
  ),
} as const;
