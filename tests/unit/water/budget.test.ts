import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain as exactly, expanded, readingUncertainty, standardUncertainty } from "#core/doubt/index.ts";
import { inches } from "#core/units/index.ts";
import {
  compareDrawDown,
  daysToOverflow,
  daysWithoutMakeUp,
  expectedDrawDown,
  figure,
  measuredDrawDown,
  overflow,
  reserve,
  timeToFill,
  timeUntilAir,
  waterInTransit,
} from "#core/water/index.ts";
import { certain, feetOf, gallons, gallonsPerMinute, inchesOf, inGallons, inInches, squareFeet, taken } from "./given.ts";

const perDepth = certain(gallons(12.5).value / inches(1));

const down = (id: string, inchesDown: number) =>
  taken(
    readingUncertainty({
      reading: id,
      setUp: "rim mark",
      value: inches(inchesDown),
      resolution: inches(1 / 16),
      placingHalfWidth: inches(1 / 16),
    }),
  );

describe("water in transit", () => {
  const piece = { length: feetOf(12), width: feetOf(2), depth: inchesOf(0.5) };
  const pool = { area: squareFeet(10), head: inchesOf(0.68) };

  test("stream 7.48, pool behind the lip 4.24, pipe 8.72 gal (worked by hand); a check valve keeps the pipe full", () => {
    const pipe = { contents: gallons(8.716), staysFull: false };
    const away = taken(waterInTransit({ pieces: [piece], pools: [pool], pipe }));
    expect(inGallons(away.stream)).toBeCloseTo(7.4805, 4);
    expect(inGallons(away.pools)).toBeCloseTo(4.239, 3);
    expect(inGallons(away.pipe)).toBeCloseTo(8.716, 9);
    expect(inGallons(away.whole)).toBeCloseTo(7.4805 + 4.239 + 8.716, 3);
    const kept = taken(waterInTransit({ pieces: [piece], pools: [pool], pipe: { ...pipe, staysFull: true } }));
    expect(kept.pipe.value).toBe(0);
    expect(kept.whole.value).toBeLessThan(away.whole.value);
    expect(taken(waterInTransit({ pieces: [], pools: [] })).whole.value).toBe(0);
  });

  test("the head of one lip in two pools counts its doubt in full", () => {
    const head = figure("head", 0.017, 0.003);
    const one = taken(waterInTransit({ pieces: [], pools: [{ area: certain(1), head }] }));
    const two = taken(waterInTransit({ pieces: [], pools: [1, 1].map((area) => ({ area: certain(area), head })) }));
    expect(standardUncertainty(two.whole)).toBeCloseTo(2 * standardUncertainty(one.whole), 12);
  });

  test.each([
    [{ pieces: [{ ...piece, width: certain(0) }], pools: [] }, "number-not-positive", "stream/0/width"],
    [{ pieces: [piece, { ...piece, depth: certain(-1) }], pools: [] }, "number-not-positive", "stream/1/depth"],
    [{ pieces: [], pools: [{ ...pool, area: certain(Number.NaN) }] }, "number-not-finite", "pool/0/area"],
    [{ pieces: [], pools: [], pipe: { contents: certain(-1), staysFull: true } }, "number-not-positive", "pipe/contents"],
  ] as const)("refuses by name %#", (course, code, place) => {
    expect(waterInTransit(course)).toMatchObject({ ok: false, refusal: { code, place } });
  });
});

describe("draw-down", () => {
  test("25 gal away from a basin of 12.5 gal to the inch: 2 in", () => {
    expect(inInches(taken(expectedDrawDown(gallons(25), perDepth)))).toBeCloseTo(2, 10);
  });

  test("measured from one mark at rest and running: the tape's own error cancels", () => {
    const [rest, running] = [down("rest", 3), down("running", 5.25)];
    const measured = taken(measuredDrawDown(rest, running));
    expect(inInches(measured)).toBeCloseTo(2.25, 10);
    expect([...measured.parts.keys()].some((source) => source.endsWith("permitted-error"))).toBe(false);
  });

  test("2 1/4 in where 2 in were expected: 3.1 gal more, within their doubt only where the water in transit is a guess", () => {
    const [rest, running] = [down("rest", 3), down("running", 5.25)];
    const sure = taken(compareDrawDown(gallons(25), perDepth, rest, running));
    expect(inGallons(sure.unexplained)).toBeCloseTo(3.125, 9);
    expect(sure.agreement.agrees).toBe(false);
    const guess = taken(compareDrawDown(figure("in-transit", gallons(25).value, gallons(7.5).value), perDepth, rest, running));
    expect(guess.agreement.agrees).toBe(true);
    expect(inInches(guess.difference)).toBeCloseTo(0.25, 9);
  });

  test("water that rose is a negative draw-down, not a fault", () => {
    expect(taken(measuredDrawDown(inchesOf(5), inchesOf(4))).value).toBeLessThan(0);
    expect(expectedDrawDown(certain(-1), perDepth)).toMatchObject({ refusal: { place: "basin/inTransit" } });
    expect(expectedDrawDown(certain(1), certain(0))).toMatchObject({ refusal: { place: "basin/perDepth" } });
    expect(measuredDrawDown(certain(Number.NaN), certain(0))).toMatchObject({ refusal: { place: "drawDown/atRest" } });
    expect(compareDrawDown(gallons(1), perDepth, certain(0), certain(Number.NaN))).toMatchObject({
      refusal: { place: "drawDown/running" },
    });
    expect(compareDrawDown(gallons(-1), perDepth, certain(0), certain(0))).toMatchObject({ refusal: { place: "basin/inTransit" } });
  });
});

describe("reserve", () => {
  test("250 gal usable over 100 in transit: 2.5, and 150 left", () => {
    const answer = taken(reserve(gallons(250), gallons(100)));
    expect(answer.ratio.value).toBeCloseTo(2.5, 12);
    expect(inGallons(answer.left)).toBeCloseTo(150, 9);
    expect(answer.answer).toBe("intake stays covered");
    expect(taken(reserve(gallons(80), gallons(100))).answer).toBe("intake draws air");
  });

  test("a twice as good reserve for twice the water; the ratio has no unit", () => {
    const size = fc.double({ min: 0.01, max: 10, noNaN: true });
    fc.assert(
      fc.property(size, size, size, (usable, away, unit) => {
        const ratio = (u: number, t: number): number => taken(reserve(certain(u), certain(t))).ratio.value;
        expect(ratio(unit * usable, unit * away)).toBeCloseTo(ratio(usable, away), 8);
        expect(ratio(2 * usable, away)).toBeCloseTo(2 * ratio(usable, away), 8);
      }),
    );
  });

  test("250 gal at 50 gpm with nothing back: 5 min; half of it back 10 min; all back never", () => {
    const lasting = (back: number): number | string => {
      const answer = taken(timeUntilAir(gallons(250), gallonsPerMinute(50), gallonsPerMinute(back)));
      return answer.answer === "draws air after" ? Math.round(answer.seconds.value) : answer.answer;
    };
    expect([lasting(0), lasting(25), lasting(50), lasting(60)]).toEqual([300, 600, "all comes back", "all comes back"]);
    expect(taken(timeUntilAir(certain(0), gallonsPerMinute(50), certain(0)))).toEqual({ answer: "draws air at once" });
    expect(taken(timeToFill(gallons(100), gallonsPerMinute(50))).value).toBeCloseTo(120, 9);
  });

  test("150 gal left at 5 gal a day last 30 days", () => {
    const lasts = taken(daysWithoutMakeUp(gallons(150), gallons(5)));
    expect(lasts.answer === "lasts" && lasts.days.value).toBeCloseTo(30, 9);
    expect(taken(daysWithoutMakeUp(gallons(-1), gallons(5)))).toEqual({ answer: "nothing left" });
    expect(taken(daysWithoutMakeUp(gallons(1), gallons(0)))).toEqual({ answer: "no loss" });
  });

  test("refuses by name", () => {
    expect(reserve(certain(0), certain(1))).toMatchObject({ refusal: { code: "number-not-positive", place: "basin/usable" } });
    expect(reserve(certain(1), certain(Number.NaN))).toMatchObject({ refusal: { code: "number-not-finite", place: "basin/inTransit" } });
    expect(timeUntilAir(certain(1), certain(0), certain(0))).toMatchObject({ refusal: { place: "basin/flow" } });
    expect(timeUntilAir(certain(1), certain(1), certain(-1))).toMatchObject({ refusal: { place: "basin/comesBack" } });
    expect(timeToFill(certain(1), certain(0))).toMatchObject({ refusal: { place: "basin/flow" } });
    expect(daysWithoutMakeUp(certain(1), certain(Number.POSITIVE_INFINITY))).toMatchObject({ refusal: { place: "basin/lossPerDay" } });
  });
});

describe("overflow", () => {
  const facts = { perDepth, freeboard: inchesOf(4), linedArea: squareFeet(80) };

  test("4 in of freeboard are 50 gal: 1.0026 in of rain on 80 ft² fill them (worked by hand)", () => {
    const answer = taken(overflow(facts));
    if (answer.answer !== "room for rain") throw new Error(answer.answer);
    expect(inGallons(answer.room)).toBeCloseTo(50, 9);
    expect(inInches(answer.rainToOverflow)).toBeCloseTo(50 / (80 * 0.623377), 4);
    const days = taken(daysToOverflow(answer.room, facts.linedArea, inchesOf(0.1), gallons(2)));
    expect(days.answer === "overflows after" && days.days.value).toBeCloseTo(50 / (80 * 0.0623377 - 2), 3);
    expect(taken(daysToOverflow(answer.room, facts.linedArea, inchesOf(0.01), gallons(2)))).toEqual({ answer: "loses more than it rains" });
    expect(taken(daysToOverflow(answer.room, facts.linedArea, inchesOf(0)))).toEqual({ answer: "loses more than it rains" });
  });

  test("freeboard read while running: what comes back takes its part, or more than it", () => {
    const less = taken(overflow({ ...facts, comesBack: gallons(20) }));
    expect(inGallons(less.room)).toBeCloseTo(30, 9);
    expect(taken(overflow({ ...facts, comesBack: gallons(60) })).answer).toBe("overflows when the pump stops");
  });

  test("more freeboard takes more rain, more lined area less; the doubt of the freeboard carries over in proportion", () => {
    const size = fc.double({ min: 0.02, max: 3, noNaN: true });
    fc.assert(
      fc.property(size, size, size, (freeboard, area, more) => {
        const rain = (f: number, a: number): number => {
          const answer = taken(overflow({ perDepth, freeboard: certain(f), linedArea: certain(a) }));
          return answer.answer === "room for rain" ? answer.rainToOverflow.value : Number.NaN;
        };
        expect(rain(freeboard + more, area)).toBeGreaterThan(rain(freeboard, area));
        expect(rain(freeboard, area + more)).toBeLessThan(rain(freeboard, area));
      }),
    );
    const answer = taken(overflow({ ...facts, freeboard: figure("freeboard", 0.1, 0.01), linedArea: exactly(8) }));
    expect(answer.answer === "room for rain" && expanded(answer.rainToOverflow) / answer.rainToOverflow.value).toBeCloseTo(
      0.2 / Math.sqrt(3),
      10,
    );
  });

  test("refuses by name", () => {
    expect(overflow({ ...facts, freeboard: certain(-1) })).toMatchObject({ refusal: { place: "overflow/freeboard" } });
    expect(overflow({ ...facts, linedArea: certain(0) })).toMatchObject({ refusal: { place: "overflow/linedArea" } });
    expect(overflow({ ...facts, comesBack: certain(Number.NaN) })).toMatchObject({
      refusal: { code: "number-not-finite", place: "overflow/comesBack" },
    });
    expect(daysToOverflow(certain(-1), certain(1), certain(1))).toMatchObject({ refusal: { place: "overflow/room" } });
    expect(daysToOverflow(certain(1), certain(1), certain(-1))).toMatchObject({ refusal: { place: "overflow/rainPerDay" } });
  });
});
