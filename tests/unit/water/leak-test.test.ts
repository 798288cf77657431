import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expanded, readingUncertainty, type Uncertain } from "#core/doubt/index.ts";
import { inches } from "#core/units/index.ts";
import { figure, type LeakLoss, type LeakTest, leakSettling, leakTest, lostByFallsAndEdges } from "#core/water/index.ts";
import { certain, gallons, inchesOf, inGallons, squareFeet, taken } from "./given.ts";

const HOUR = 3600;
const square = squareFeet(20);
const area = figure("basin-area", square.value, 0.05);

const down = (id: string, inchesDown: number): Uncertain =>
  taken(
    readingUncertainty({
      reading: id,
      setUp: "tape",
      value: inches(inchesDown),
      resolution: inches(1 / 16),
      placingHalfWidth: inches(1 / 16),
    }),
  );

const test24: LeakTest = {
  kind: "basin, pump off",
  level: { first: down("a", 3), last: down("b", 3.5) },
  duration: figure("clock", 24 * HOUR, 60),
  perDepth: area,
  evaporated: { by: "control bucket", level: { first: down("c", 2), last: down("d", 2.25) } },
  conditions: { makeUpShut: true, rain: false, pump: "off" },
};

function loss(change: Partial<LeakTest> = {}): LeakLoss {
  const answer = taken(leakTest({ ...test24, ...change }));
  if (answer.answer !== "counts") throw new Error(answer.faults.join());
  return answer;
}

describe("leak test", () => {
  test("half an inch in a day, a quarter in the bucket, 20 ft²: 3.117 gal a day (worked by hand)", () => {
    const counted = loss();
    expect(inGallons(counted.lossPerDay)).toBeCloseTo(0.25 * 20 * 0.623377, 4);
    expect(inGallons(counted.evaporatedPerDay)).toBeCloseTo(0.25 * 20 * 0.623377, 4);
  });

  test("the same in half a day is twice as much a day", () => {
    expect(loss({ duration: certain(12 * HOUR) }).lossPerDay.value).toBeCloseTo(2 * loss().lossPerDay.value, 12);
  });

  test("down in basin and bucket alike is no loss, whatever the area", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.2, noNaN: true }), fc.double({ min: 0.1, max: 9, noNaN: true }), (drop, size) => {
        const level = { first: certain(0.1), last: certain(0.1 + drop) };
        const perDepth = figure("area", size, size / 10);
        const alike = loss({ level, perDepth, evaporated: { by: "control bucket", level } });
        expect(alike.lossPerDay.value).toBe(0);
        expect(expanded(alike.lossPerDay)).toBe(0);
      }),
    );
  });

  test("running: falls and pools evaporate with the basin", () => {
    const conditions = { makeUpShut: true, rain: false, pump: "ran" } as const;
    const running = loss({
      kind: "running",
      conditions,
      evaporatingArea: squareFeet(60),
      level: { first: down("a", 3), last: down("b", 4.5) },
    });
    expect(inGallons(running.lossPerDay)).toBeCloseTo((1.5 * 20 - 0.25 * 60) * 0.623377, 3);
    expect(inGallons(lostByFallsAndEdges(running, loss()))).toBeCloseTo((1.5 * 20 - 0.25 * 60 - 0.25 * 20) * 0.623377, 3);
  });

  test("without a bucket the weather's evaporation, with a doubt that does not fade", () => {
    const evaporated = { by: "weather", depthPerDay: figure("evaporation", inches(0.25), inches(0.1)) } as const;
    const byWeather = loss({ evaporated });
    expect(byWeather.lossPerDay.value).toBeCloseTo(loss().lossPerDay.value, 12);
    expect(expanded(byWeather.lossPerDay)).toBeGreaterThan(expanded(loss().lossPerDay));
    const days10 = loss({ evaporated, duration: certain(240 * HOUR), level: { first: down("a", 3), last: down("b", 8) } });
    expect(inGallons(days10.evaporatedPerDay)).toBeCloseTo(inGallons(byWeather.evaporatedPerDay), 9);
    expect(expanded(days10.lossPerDay)).toBeGreaterThan((2 * inches(0.1) * square.value) / Math.sqrt(3) - 1e-9);
  });

  test.each([
    [{ makeUpShut: false, rain: false, pump: "off" }, ["make-up not shut"]],
    [{ makeUpShut: true, rain: true, pump: "off" }, ["rain"]],
    [{ makeUpShut: true, rain: false, pump: "ran in part" }, ["pump not off"]],
    [{}, ["make-up not stated", "rain not stated", "pump not stated"]],
  ] as const)("does not count: %j", (conditions, faults) => {
    expect(taken(leakTest({ ...test24, conditions }))).toEqual({ answer: "does not count", faults });
  });

  test("a running test with the pump off does not count", () => {
    expect(taken(leakTest({ ...test24, kind: "running" }))).toEqual({ answer: "does not count", faults: ["pump not running"] });
  });

  test.each([
    [{ duration: certain(0) }, "number-not-positive", "leakTest/duration"],
    [{ perDepth: certain(-1) }, "number-not-positive", "leakTest/perDepth"],
    [{ evaporatingArea: certain(Number.NaN) }, "number-not-finite", "leakTest/evaporatingArea"],
    [{ level: { first: certain(Number.NaN), last: certain(0) } }, "number-not-finite", "leakTest/first"],
    [{ evaporated: { by: "weather", depthPerDay: certain(Number.POSITIVE_INFINITY) } }, "number-not-finite", "weather/evaporationPerDay"],
    [{ evaporated: { by: "control bucket", level: { first: certain(0), last: certain(Number.NaN) } } }, "number-not-finite", "bucket/last"],
  ] as const)("refuses by name %#", (change, code, place) => {
    expect(leakTest({ ...test24, ...change })).toMatchObject({ ok: false, refusal: { code, place } });
  });
});

describe("too short to call", () => {
  const limit = gallons(4).value;

  test("a loss far from the limit is settled", () => {
    expect(taken(leakSettling(loss(), gallons(20).value))).toEqual({ answer: "settled" });
    expect(taken(leakSettling(loss({ level: { first: down("a", 3), last: down("b", 6) } }), limit))).toEqual({ answer: "settled" });
  });

  test("six hours are too short; the hours it names settle it, a tenth less do not", () => {
    const short = loss({
      duration: figure("clock", 6 * HOUR, 60),
      level: { first: down("a", 3), last: down("b", 3.125) },
      evaporated: { by: "control bucket", level: { first: down("c", 2), last: down("d", 2.0625) } },
    });
    const answer = taken(leakSettling(short, limit));
    if (answer.answer !== "too close to call") throw new Error(answer.answer);
    expect(answer.further).toBeCloseTo(answer.seconds - 6 * HOUR, 6);
    const at = (seconds: number): LeakLoss => {
      const times = seconds / (6 * HOUR);
      return loss({
        duration: figure("clock", seconds, 60),
        level: { first: down("a", 3), last: down("b", 3 + 0.125 * times) },
        evaporated: { by: "control bucket", level: { first: down("c", 2), last: down("d", 2 + 0.0625 * times) } },
      });
    };
    expect(taken(leakSettling(at(answer.seconds * 1.001), limit))).toEqual({ answer: "settled" });
    expect(taken(leakSettling(at(answer.seconds * 0.9), limit)).answer).toBe("too close to call");
  });

  test("a source that both fades and stays, such as one tape for levels and sizes, is counted once", () => {
    const [fades, stays] = [3e-3, 4e-4];
    const both: LeakLoss = {
      answer: "counts",
      kind: "basin, pump off",
      lossPerDay: { value: 0.01, parts: new Map([["tape", fades + stays]]) },
      evaporatedPerDay: certain(0),
      seconds: 6 * HOUR,
      fading: { value: 0.01, parts: new Map([["tape", fades]]) },
    };
    const answer = taken(leakSettling(both, 0.012));
    if (answer.answer !== "too close to call") throw new Error(answer.answer);
    expect(2 * ((fades * 6 * HOUR) / answer.seconds + stays)).toBeCloseTo(0.002, 12);
  });

  test("where the weather's doubt is wider than the room, no time settles it, and it is named", () => {
    const byWeather = loss({ evaporated: { by: "weather", depthPerDay: figure("evaporation", inches(0.25), inches(0.2)) } });
    expect(taken(leakSettling(byWeather, limit))).toEqual({ answer: "time will not settle it", source: "figure:evaporation" });
  });

  test("a loss exactly on the limit is settled by nothing but certainty", () => {
    expect(taken(leakSettling(loss(), loss().lossPerDay.value)).answer).toBe("time will not settle it");
    const sure = loss({
      perDepth: square,
      duration: certain(24 * HOUR),
      level: { first: inchesOf(3), last: inchesOf(3.5) },
      evaporated: { by: "weather", depthPerDay: certain(0) },
    });
    expect(taken(leakSettling(sure, sure.lossPerDay.value))).toEqual({ answer: "settled" });
  });

  test("refuses by name", () => {
    expect(leakSettling(loss(), Number.NaN)).toMatchObject({ refusal: { code: "number-not-finite", place: "leakTest/limitPerDay" } });
    expect(leakSettling(loss(), -1)).toMatchObject({ refusal: { code: "number-not-positive", place: "leakTest/limitPerDay" } });
  });
});
