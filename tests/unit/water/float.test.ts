import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expanded } from "#core/doubt/index.ts";
import {
  type FloatingBasin,
  figure,
  floatOccasions,
  floatOn,
  KILOGRAMS_PER_POUND,
  liftDepth,
  rainInTheHole,
  roomBeforeLift,
  waterToLeave,
} from "#core/water/index.ts";
import { certain, inchesOf, inInches, pounds, squareFeet, taken } from "./given.ts";

const side = 45 / 12;
const basin: FloatingBasin = { mass: pounds(75), area: squareFeet(side * side), rimHeight: inchesOf(24) };

describe("a basin that floats", () => {
  test("45 in square of 75 lb rises on about 1.0 in", () => {
    const lift = taken(liftDepth(basin));
    expect(inInches(lift.risesOn)).toBeCloseTo(1.027, 3);
    expect(lift.answer).toBe("lifts");
  });

  test("with water inside it is that much above the inside level; blocks that displace make the inside count for less", () => {
    expect(inInches(taken(liftDepth(basin, inchesOf(6))).liftDepth)).toBeCloseTo(7.027, 3);
    expect(inInches(taken(liftDepth({ ...basin, displacedShare: certain(0.5) }, inchesOf(6))).liftDepth)).toBeCloseTo(4.027, 3);
  });

  test("filled to within an inch of the rim, water runs in before it lifts", () => {
    expect(taken(liftDepth(basin, inchesOf(23))).answer).toBe("fills first");
  });

  test("8 in outside: leave 7 in and its doubt inside; the room is then just above zero", () => {
    const leave = taken(waterToLeave({ ...basin, mass: figure("basin-mass", 75 * KILOGRAMS_PER_POUND, 2) }, inchesOf(8)));
    expect(leave.answer).toBe("leave water");
    expect(inInches(leave.inside)).toBeCloseTo(6.973, 3);
    expect(leave.leaveAtLeast).toBeCloseTo(leave.inside.value + expanded(leave.inside), 12);
    const room = taken(
      roomBeforeLift({ ...basin, mass: figure("basin-mass", 75 * KILOGRAMS_PER_POUND, 2) }, inchesOf(8), certain(leave.leaveAtLeast)),
    );
    expect(room.value).toBeGreaterThan(0);
    expect(room.value).toBeCloseTo(expanded(room), 5);
  });

  test("half an inch outside: it rests empty; more outside than the rim is high: full is not enough", () => {
    expect(taken(waterToLeave(basin, inchesOf(0.5))).answer).toBe("none needed");
    expect(taken(waterToLeave(basin, inchesOf(0.5)))).toMatchObject({ leaveAtLeast: 0, volume: 0 });
    expect(taken(waterToLeave(basin, inchesOf(26))).answer).toBe("full is not enough");
  });

  test("four occasions, each with its own depth outside or the figure that is missing", () => {
    const rain = { depth: inchesOf(2), catchArea: squareFeet(60), holeArea: squareFeet(34) };
    const facts = { waterSeen: inchesOf(3), rain, layerTop: inchesOf(6), groundWater: inchesOf(18) };
    const answers = floatOccasions.map((occasion) => taken(floatOn(occasion, basin, facts)));
    expect(answers.map((answer) => answer.answer)).toEqual(["leave water", "leave water", "leave water", "leave water"]);
    expect(answers.map((answer) => ("outside" in answer ? Math.round(inInches(answer.outside) * 100) / 100 : 0))).toEqual([3, 6.02, 6, 18]);
    const missing = floatOccasions.map((occasion) => taken(floatOn(occasion, { mass: basin.mass, area: basin.area }, {})));
    expect(missing.map((answer) => ("missing" in answer ? answer.missing : ""))).toEqual(["waterSeen", "rain", "layerTop", "rimHeight"]);
    const winter = taken(floatOn("winter emptying", basin, {}));
    expect("outside" in winter && inInches(winter.outside)).toBeCloseTo(24, 10);
  });

  test("heavier rests on more, wider on less, and twice the basin in weight and area rises on the same depth", () => {
    const size = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(size, size, size, (mass, area, more) => {
        const rises = (m: number, a: number): number => taken(liftDepth({ mass: certain(m), area: certain(a) })).risesOn.value;
        expect(rises(mass + more, area)).toBeGreaterThan(rises(mass, area));
        expect(rises(mass, area + more)).toBeLessThan(rises(mass, area));
        expect(rises(2 * mass, 2 * area)).toBeCloseTo(rises(mass, area), 12);
      }),
    );
  });

  test("leaving what it says undoes the lift", () => {
    const depth = fc.double({ min: 0, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(depth, fc.double({ min: 0, max: 0.9, noNaN: true }), (outside, share) => {
        const with_ = { ...basin, displacedShare: certain(share) };
        const leave = taken(waterToLeave(with_, certain(outside)));
        expect(taken(roomBeforeLift(with_, certain(outside), certain(leave.leaveAtLeast))).value).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test.each([
    [{ mass: certain(0) }, "number-not-positive", "basin/mass"],
    [{ mass: certain(Number.NaN) }, "number-not-finite", "basin/mass"],
    [{ area: certain(-1) }, "number-not-positive", "basin/area"],
    [{ displacedShare: certain(1) }, "number-not-positive", "basin/freeShare"],
    [{ rimHeight: certain(0) }, "number-not-positive", "basin/rimHeight"],
  ] as const)("refuses by name %#", (change, code, place) => {
    expect(liftDepth({ ...basin, ...change })).toMatchObject({ ok: false, refusal: { code, place } });
    expect(waterToLeave({ ...basin, ...change }, certain(0.1))).toMatchObject({ ok: false, refusal: { code, place } });
  });

  test("refuses water below the floor and a hole that the basin fills", () => {
    expect(liftDepth(basin, certain(-0.1))).toMatchObject({ refusal: { place: "basin/inside" } });
    expect(waterToLeave(basin, certain(Number.POSITIVE_INFINITY))).toMatchObject({ refusal: { place: "basin/outside" } });
    expect(roomBeforeLift(basin, certain(-1))).toMatchObject({ refusal: { place: "basin/outside" } });
    const rain = { depth: certain(0.05), catchArea: certain(5), holeArea: certain(1) };
    expect(rainInTheHole(rain, certain(1))).toMatchObject({ refusal: { place: "hole/areaBesideBasin" } });
    expect(floatOn("rain before backfill", basin, { rain })).toMatchObject({ refusal: { place: "hole/areaBesideBasin" } });
  });
});
