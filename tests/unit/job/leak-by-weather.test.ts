import { describe, expect, test } from "vitest";
import { type Check, type Item, sheetFaults, type ToleranceSheet } from "#core/job/index.ts";
import { dayOfYear } from "#core/job/test-weather.ts";
import type { Json } from "#core/ledger/index.ts";
import { answerItem, bench, book, lengthItem } from "../../helpers/job.ts";

const words = (en: string) => ({ en });
const own = { weight: "if you have it" } as const;
const weatherItem = (id: string, quantity: NonNullable<Item["quantity"]>, inch: string, metric: string): Item =>
  lengthItem(id, { ...own, quantity, unit: { inch, metric } });
const check: Check = {
  id: "day-loss",
  step: "step-one",
  title: words("Loss"),
  function: "loss a day",
  leak: "basin, pump off",
  items: ["basin-first", "basin-last"],
  bucket: ["bucket-first", "bucket-last"],
  conditions: ["what-held"],
  weather: {
    highest: "day-highest",
    lowest: "day-lowest",
    humidity: "day-humidity",
    wind: "day-wind",
    sunshine: "day-sun",
    radiation: "day-radiation",
  },
  kind: "volume",
  weight: "open",
  upper: 18_927,
};
const sheet = bench({
  items: [
    lengthItem("basin-first"),
    lengthItem("basin-last"),
    lengthItem("bucket-first", own),
    lengthItem("bucket-last", own),
    weatherItem("day-highest", "temperature", "°F", "°C"),
    weatherItem("day-lowest", "temperature", "°F", "°C"),
    weatherItem("day-humidity", "ratio", "%", "%"),
    weatherItem("day-wind", "velocity", "mph", "m/s"),
    weatherItem("day-sun", "duration", "h", "h"),
    weatherItem("day-radiation", "radiation", "MJ/m²", "MJ/m²"),
    answerItem("what-held", {
      weight: "asked",
      choices: [
        { id: "all-kept", title: words("kept"), accepts: true, means: ["make-up shut", "no rain", "pump off"] },
        { id: "it-ran", title: words("ran"), accepts: true, means: ["make-up shut", "no rain", "pump ran"] },
        { id: "rain-fell", title: words("rain"), accepts: false, means: ["make-up shut", "rain", "pump off"] },
      ],
    }),
  ],
  checks: [check],
});
const figure = (typed: string, unit: string) => ({ typed, unit });
const hour = 3_600_000;

/** FAO-56 example 18: Uccle, 50 deg 48' N, 100 m, 6 July. */
const uccle = { latitude: figure("50.8", "°"), elevation: figure("100", "m") };
const sixthOfJuly = Date.UTC(2026, 6, 6);
/**
 * Its highest and lowest, 10 km/h of wind at 10 m, R_s 22.07 MJ/m² a day. Its vapour pressure of 1.409 kPa comes of a greatest and a
 * least humidity; in one figure that is 1.409 / 1.9975 = 70.5 % of the saturation.
 */
const typed = {
  "day-highest": ["21.5", "°C"],
  "day-lowest": ["12.3", "°C"],
  "day-humidity": ["70.5", "%"],
  "day-wind": ["2.78", "m/s"],
  "day-radiation": ["22.07", "MJ/m²"],
} as const;
const basin = { basinLength: figure("60", "in"), basinWidth: figure("48", "in"), basinDepth: figure("24", "in") };

interface Asked {
  readonly weather?: Readonly<Record<string, readonly [string, string]>>;
  readonly figures?: object;
  readonly choice?: string;
  readonly hours?: number;
  readonly last?: string;
  readonly bucket?: boolean;
  readonly of?: ToleranceSheet;
}
function tested({
  weather = typed,
  figures = uccle,
  choice = "all-kept",
  hours = 24,
  last = "4 8/16",
  bucket = false,
  of = sheet,
}: Asked = {}) {
  const b = book(of);
  b.enter("design-set", { figures: { ...basin, ...figures } as Json, switches: {} });
  const [first, then] = [{ at: sixthOfJuly }, { at: sixthOfJuly + hours * hour }];
  b.read("basin-first", "4 0/16", {}, first);
  if (bucket) b.read("bucket-first", "1 0/16", {}, first);
  b.read("basin-last", last, {}, then);
  if (bucket) b.read("bucket-last", "1 2/16", {}, then);
  for (const [item, [value, unit]] of Object.entries(weather)) b.read(item, value, { unit });
  b.answer("what-held", choice);
  return b.finding("day-loss");
}
const litres = (millilitres = Number.NaN): number => millilitres / 1000;
const faultsOf = (of: ToleranceSheet) => sheetFaults(of as unknown as Json).map(({ place }) => place);

/** 60 x 48 in. */
const AREA = 60 * 48 * 0.0254 ** 2;
/** 1/2 in of it, litres. */
const HALF_INCH = AREA * 12.7;

describe("what evaporated by the typed weather of the test", () => {
  test("the sheet has no fault; a figure of the weather is read in its own kind and must be there", () => {
    expect(faultsOf(sheet)).toEqual([]);
    const other = (weather: object) => faultsOf({ ...sheet, checks: [{ ...check, weather: { ...check.weather, ...weather } as never }] });
    expect(other({ wind: "day-sun" })).toEqual(["sheet/checks/day-loss/weather/wind"]);
    expect(other({ wind: "day-storm" })).toEqual(["sheet/checks/day-loss/items"]);
  });

  test("FAO-56 example 18 (3.88 mm of grass, quoted), open water 1.05 of it (Table 12, from memory): 16.03 L a day are lost", () => {
    const { value, entries } = tested();
    expect(litres(value)).toBeCloseTo(HALF_INCH - AREA * 1.05 * 3.88, 1);
    // two levels and five figures of the weather
    expect(entries).toHaveLength(7);
  });

  test("by the hours of sun, 9.25 h (from memory), the same 3.88 mm", () => {
    const { "day-radiation": _, ...rest } = typed;
    const { value } = tested({ weather: { ...rest, "day-sun": ["9.25", "h"] } });
    expect(litres(value)).toBeCloseTo(HALF_INCH - AREA * 1.05 * 3.88, 1);
  });

  test("its doubt is honestly larger than a bucket's: ± 0.30 on 1.05 and what the weather may be off in the garden", () => {
    const [byWeather, byDesign] = [tested(), tested({ weather: {}, figures: { evaporationPerDay: figure("4.074", "mm") } })];
    const formula = (AREA * 3.88 * 0.3) / Math.sqrt(3);
    const readings = (byDesign.doubt ?? 0) / 1000;
    expect(litres(byWeather.doubt)).toBeGreaterThan(2 * formula);
    expect(litres(byWeather.doubt)).toBeGreaterThan(readings);
    expect(byWeather.contributors).toHaveLength(3);
    const [largest = 0, second = 0, third = 0] = byWeather.contributors?.map(({ u }) => u) ?? [];
    expect(largest >= second && second >= third).toBe(true);
  });

  test("the bucket goes before the weather, the weather before the design", () => {
    // 1/2 in less 1/8 in of the bucket
    expect(litres(tested({ bucket: true }).value)).toBeCloseTo(AREA * 9.525, 1);
    const planned = { ...uccle, evaporationPerDay: figure("1", "in") };
    expect(litres(tested({ figures: planned }).value)).toBeCloseTo(HALF_INCH - AREA * 1.05 * 3.88, 1);
    expect(litres(tested({ figures: planned, weather: {} }).value)).toBeCloseTo(HALF_INCH - AREA * 25.4, 1);
  });
});

describe("running", () => {
  const of: ToleranceSheet = { ...sheet, checks: [{ ...check, leak: "running" }] };
  const ran = { of, choice: "it-ran", last: "5" };

  test("the weather takes from all open water: 1 in of 20 ft² less 4.074 mm of 60 ft²", () => {
    const { value } = tested({ ...ran, figures: { ...uccle, openWaterArea: figure("60.0", "ft²") } });
    expect(litres(value)).toBeCloseTo(AREA * 25.4 - 3 * AREA * 1.05 * 3.88, 0);
  });

  test("its area unknown, the finding names it", () => {
    const { verdict, unknown, says } = tested(ran);
    expect([verdict, unknown, says.key]).toEqual(["not taken", ["openWaterArea"], "leak.area-unknown"]);
  });
});

describe("what is missing is named", () => {
  test("weather half typed: the rest of it, whatever the design says", () => {
    const { "day-wind": _, ...rest } = typed;
    const half = tested({ weather: rest, figures: { ...uccle, evaporationPerDay: figure("1/4", "in") } });
    expect(half).toMatchObject({ verdict: "not taken", missing: [{ item: "day-wind" }] });
    const sunless = Object.fromEntries(Object.entries(typed).filter(([item]) => item !== "day-radiation"));
    expect(tested({ weather: sunless }).missing).toEqual([{ item: "day-sun" }]);
  });

  test.each(["latitude", "elevation"])("%s unknown", (key) => {
    const { verdict, unknown, says } = tested({ figures: { ...uccle, [key]: "unknown" } });
    expect([verdict, unknown, says.key]).toEqual(["not taken", [key], "leak.site-unknown"]);
  });

  test("neither bucket nor weather nor design: the weather's items, and the figure that would do", () => {
    const { says, missing, unknown } = tested({ weather: {}, figures: {} });
    expect(says.key).toBe("leak.no-evaporation");
    expect(missing?.map(({ item }) => item)).toEqual(["day-highest", "day-lowest", "day-humidity", "day-wind", "day-sun"]);
    expect(unknown).toEqual(["evaporationPerDay"]);
  });

  test("a highest below the lowest does not hold together", () => {
    const { verdict, value, says } = tested({ weather: { ...typed, "day-highest": ["10.0", "°C"] } });
    expect([verdict, value, says.key]).toEqual(["not taken", undefined, "leak.weather-odd"]);
  });

  test("rain fell: it does not count, whatever of the weather is missing", () => {
    expect(tested({ choice: "rain-fell", weather: {}, figures: {} })).toMatchObject({ verdict: "not taken", says: { key: "leak.rain" } });
  });
});

describe("part of a day", () => {
  test("of half a day anything from none to all of the day's evaporation may have fallen into it", () => {
    const [half, whole] = [tested({ hours: 12, last: "4 4/16" }), tested()];
    // the same rate, and the middle of what may have evaporated the same
    expect(litres(half.value)).toBeCloseTo(litres(whole.value), 1);
    // half-width: the whole of 1.05 x 3.88 mm a day
    expect(half.contributors?.map(({ name }) => name)).toContain("own:part-of-day");
    const part = half.contributors?.find(({ name }) => name === "own:part-of-day");
    expect(litres(part?.u)).toBeCloseTo((AREA * 1.05 * 3.88) / Math.sqrt(3), 1);
    expect(whole.contributors?.map(({ name }) => name)).not.toContain("own:part-of-day");
  });

  test("too short says how many hours would settle it, in whole days, and that many do", () => {
    const short = tested({ hours: 6, last: "4 2/16" });
    expect([short.verdict, short.says.key]).toEqual(["too close to call", "leak.longer"]);
    const whole = (short.says.figures.wholeDuration as number) / hour;
    expect(whole % 24).toBe(0);
    // the same 1/2 in a day over that time
    const long = tested({ hours: whole, last: `${4 + whole / 48}` });
    expect(Math.abs(litres(long.value) - litres(short.value))).toBeLessThan(0.1);
    expect(tested({ hours: whole, last: `${4 + Math.floor(whole / 48)} ${((whole / 24) % 2) * 8}/16` }).verdict).toBe("within");
  });

  test("no time settles what the formula leaves open", () => {
    // 17.9 L of loss less 1 L than the limit: the formula alone is worth more than that
    const close = tested({ hours: 48, last: "5 1/16" });
    expect([close.verdict, close.says.key]).toEqual(["too close to call", "leak.no-longer"]);
  });
});

test("the day of the year is the calendar's, over leap years and centuries", () => {
  const day = 24 * hour;
  for (const year of [1970, 1971, 1972, 1999, 2000, 2001, 2026, 2028, 2099, 2100, 2101]) {
    const first = Date.UTC(year, 0, 1);
    expect([year, dayOfYear(first), dayOfYear(first - 1)]).toEqual([year, 1, (first - Date.UTC(year - 1, 0, 1)) / day]);
  }
  expect(dayOfYear(Date.UTC(2026, 6, 6, 12))).toBe(187);
  expect(dayOfYear(Date.UTC(2028, 11, 31, 23))).toBe(366);
});
