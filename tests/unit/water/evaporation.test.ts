import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contributors, expanded } from "#core/doubt/index.ts";
import { evaporationOfDay, fao56, figure, poolEvaporation, type Weather } from "#core/water/index.ts";
import { certain, taken } from "./given.ts";

const summer: Weather = {
  highest: figure("highest", 30, 1),
  lowest: figure("lowest", 18, 1),
  humidity: { kind: "mean", mean: figure("humidity", 60, 10) },
  wind: figure("wind", 3, 1),
  windHeight: 10,
  sun: { kind: "share", share: figure("sun", 0.7, 0.15) },
  latitude: 40,
  elevation: 200,
  dayOfYear: 200,
};

const millimetres = (weather: Weather): number => taken(evaporationOfDay(weather)).grass.value * 1000;

describe("evaporation of a day", () => {
  test("a summer day is 3 to 8 mm, open water a twentieth more, its doubt near a third", () => {
    const day = taken(evaporationOfDay(summer));
    expect(day.grass.value * 1000).toBeGreaterThan(3);
    expect(day.grass.value * 1000).toBeLessThan(8);
    expect(day.openWater.value).toBeCloseTo(1.05 * day.grass.value, 12);
    expect(expanded(day.openWater) / day.openWater.value).toBeGreaterThan(0.3);
    expect(contributors(day.openWater)[0]?.source).toBe("factor:open-water-coefficient");
    expect(contributors(day.openWater)).toHaveLength(3);
  });

  test("more wind, sun and warmth take more, damper air less where it blows", () => {
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(unit, unit, unit, (windy, sunny, damp) => {
        const day: Weather = {
          ...summer,
          highest: certain(30),
          lowest: certain(18),
          wind: certain(0.5 + 4 * windy),
          humidity: { kind: "mean", mean: certain(20 + 60 * damp) },
          sun: { kind: "share", share: certain(0.1 + 0.8 * sunny) },
        };
        const base = millimetres(day);
        expect(millimetres({ ...day, wind: certain(0.7 + 4 * windy) })).toBeGreaterThan(base);
        expect(millimetres({ ...day, sun: { kind: "share", share: certain(0.15 + 0.8 * sunny) } })).toBeGreaterThan(base);
        expect(millimetres({ ...day, highest: certain(31), lowest: certain(19) })).toBeGreaterThan(base);
        // In nearly still air the formula's long-wave loss falls as fast with the damp as the air's own pull.
        const blowing = { ...day, wind: certain(2.5 + 4 * windy) };
        expect(millimetres({ ...blowing, humidity: { kind: "mean", mean: certain(25 + 60 * damp) } })).toBeLessThan(millimetres(blowing));
      }),
    );
  });

  test("the four ways to state how damp it is agree; so do the three ways to state the sun", () => {
    const { steps } = taken(evaporationOfDay(summer));
    const pressure: Weather = { ...summer, humidity: { kind: "vapour pressure", pressure: certain(steps.vapourPressure) } };
    expect(millimetres(pressure)).toBeCloseTo(steps.evaporation, 9);
    const t = Math.log(steps.vapourPressure / 0.6108);
    const dew: Weather = { ...summer, humidity: { kind: "dew point", temperature: certain((237.3 * t) / (17.27 - t)) } };
    expect(millimetres(dew)).toBeCloseTo(steps.evaporation, 9);
    const extremes: Weather = { ...summer, humidity: { kind: "extremes", most: certain(60), least: certain(60) } };
    expect(millimetres(extremes)).toBeCloseTo(steps.evaporation, 9);
    expect(millimetres({ ...summer, sun: { kind: "hours", hours: certain(0.7 * steps.daylight) } })).toBeCloseTo(steps.evaporation, 9);
    expect(millimetres({ ...summer, sun: { kind: "radiation", perDay: certain(steps.solar) } })).toBeCloseTo(steps.evaporation, 9);
  });

  test("north and south: the same half a year apart, but for the sun's distance", () => {
    const day = (latitude: number, dayOfYear: number): number => taken(fao56.daylightHours((latitude * Math.PI) / 180, dayOfYear));
    expect(day(40, 172) + day(-40, 172)).toBeCloseTo(24, 9);
  });

  test.each([
    [{ highest: certain(Number.NaN) }, "number-not-finite", "weather/highest"],
    [{ highest: certain(90) }, "reading-out-of-range", "weather/highest"],
    [{ lowest: certain(31) }, "number-not-positive", "weather/highestLessLowest"],
    [{ humidity: { kind: "mean", mean: certain(120) } }, "reading-out-of-range", "weather/humidity"],
    [{ wind: certain(-1) }, "number-not-positive", "weather/wind"],
    [{ windHeight: 0 }, "reading-out-of-range", "weather/windHeight"],
    [{ latitude: 80 }, "reading-out-of-range", "weather/latitude"],
    [{ dayOfYear: 0 }, "reading-out-of-range", "weather/dayOfYear"],
    [{ sun: { kind: "share", share: certain(1.2) } }, "reading-out-of-range", "weather/sun"],
    [{ elevation: Number.POSITIVE_INFINITY }, "number-not-finite", "weather/elevation"],
  ] as const)("refuses by name %#", (change, code, place) => {
    expect(evaporationOfDay({ ...summer, ...change })).toMatchObject({ ok: false, refusal: { code, place } });
  });

  test("more sun than a clear sky gives counts as a clear sky for what is radiated back", () => {
    const back = (solar: number): number => taken(fao56.netLongWave(25, 15, 1.5, solar, 20));
    expect(back(25)).toBe(back(20));
    expect(back(15)).toBeLessThan(back(20));
  });

  test("its steps refuse by name too", () => {
    expect(fao56.saturationVapourPressure(Number.NaN)).toMatchObject({
      refusal: { code: "number-not-finite", place: "weather/temperature" },
    });
    expect(fao56.windAtTwoMetres(1, 0)).toMatchObject({ refusal: { code: "reading-out-of-range", place: "weather/height" } });
    expect(fao56.solarRadiation(1, 0, 20)).toMatchObject({ refusal: { code: "number-not-positive", place: "weather/daylight" } });
  });
});

describe("evaporation of a pool", () => {
  const pool = { water: certain(27), air: certain(27), humidity: certain(50), wind: certain(0) };

  test("cold water under damp air loses nothing; wind takes more", () => {
    expect(taken(poolEvaporation({ ...pool, water: certain(5), humidity: certain(90) })).inUse.value).toBe(0);
    expect(taken(poolEvaporation({ ...pool, wind: certain(2) })).inUse.value).toBeGreaterThan(taken(poolEvaporation(pool)).inUse.value);
  });

  test("refuses by name", () => {
    expect(poolEvaporation({ ...pool, water: certain(-1) })).toMatchObject({
      refusal: { code: "reading-out-of-range", place: "weather/water" },
    });
    expect(poolEvaporation({ ...pool, wind: certain(-1) })).toMatchObject({
      refusal: { code: "number-not-positive", place: "weather/wind" },
    });
    expect(poolEvaporation({ ...pool, air: certain(Number.NaN) })).toMatchObject({
      refusal: { code: "number-not-finite", place: "weather/air" },
    });
  });
});
