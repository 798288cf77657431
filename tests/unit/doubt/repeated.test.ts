import { describe, expect, test } from "vitest";
import {
  agreeWithinDoubt,
  type LevelLine,
  ofReading,
  readingUncertainty,
  repeated,
  setUpCloses,
  standardUncertainty,
  subtract,
  type Uncertain,
} from "#core/doubt/index.ts";
import { inches } from "#core/units/index.ts";

const sixteenth = inches(1 / 16);

function rod(reading: string, value: number, line: LevelLine = { kind: "laser", receiver: "fine" }, setUp = "s1"): Uncertain {
  const taken = readingUncertainty({ reading, setUp, value, resolution: sixteenth, placingHalfWidth: sixteenth, line });
  if (!taken.ok) throw new Error(taken.refusal.code);
  return taken.value;
}

describe("a set-up closes on its height mark (own figures)", () => {
  const first = rod("first", inches(48));
  test.each([
    ["fine", 3 / 16, true],
    ["fine", -3 / 16, true],
    ["fine", 1 / 4, false],
    ["coarse", 1 / 4, true],
    ["coarse", -5 / 16, false],
  ] as const)("receiver on %s, last reading %f in off: %s", (receiver, off, closes) => {
    expect(setUpCloses(first, rod("last", inches(48 + off)), receiver).agrees).toBe(closes);
  });

  test("the figures of the comparison are whole micrometres", () => {
    expect(setUpCloses(first, rod("last", inches(48.25)), "coarse")).toEqual({ agrees: true, difference: 6350, allowed: 6350 });
  });

  test("a string closes within the doubt of its difference", () => {
    const line: LevelLine = { kind: "string with line level", distance: 3 };
    const doubt = setUpCloses(rod("a", 1, line), rod("b", 1, line)).allowed / 1e6;
    expect(setUpCloses(rod("a", 1, line), rod("b", 1 + doubt * 0.99, line)).agrees).toBe(true);
    expect(setUpCloses(rod("a", 1, line), rod("b", 1 + doubt * 1.01, line)).agrees).toBe(false);
  });
});

describe("several readings of one point", () => {
  test("resolution and placing go down with √n, the rest stays whole", () => {
    const one = repeated([rod("a", 0.9)]).mean;
    expect(one).toEqual(rod("a", 0.9));
    const square = (x: Uncertain, ...roles: string[]): number =>
      [...x.parts].reduce((sum, [source, part]) => sum + (roles.some((role) => source.endsWith(`/${role}`)) ? part * part : 0), 0);
    const four = repeated([rod("a", 0.9), rod("b", 0.901), rod("c", 0.901), rod("d", 0.902)]).mean;
    expect(four.value).toBeCloseTo(0.901, 12);
    expect(square(four, "resolution", "placing")).toBeCloseTo(square(one, "resolution", "placing") / 4, 14);
    for (const role of ["receiver", "slope", "line", "permitted-error"]) expect(square(four, role)).toBeCloseTo(square(one, role), 14);
  });

  test("what stays whole is another point's stranger and this set-up's own", () => {
    const here = repeated([rod("b", 1), rod("a", 1.001)]).mean;
    const there = repeated([rod("c", 1), rod("d", 1.001)]).mean;
    expect(here.parts.has(ofReading("a", "receiver"))).toBe(true);
    expect(here.parts.has(ofReading("b", "receiver"))).toBe(false);
    // u² in mm²: resolution and placing halved, receiver and slope whole, at two points.
    expect(standardUncertainty(subtract(there, here)) * 1000).toBeCloseTo(Math.sqrt(2 * (1.05 / 2 + 1.05)), 3);
  });

  test("heights over one reading of the mark share that reading whole", () => {
    const mark = rod("mark", 1.5);
    const heights = [subtract(mark, rod("a", 1)), subtract(mark, rod("b", 1))] as const;
    const both = repeated(heights).mean;
    expect(both.parts.get(ofReading("mark", "placing"))).toBe(mark.parts.get(ofReading("mark", "placing")));
    expect(both.parts.get(ofReading("mark", "receiver"))).toBe(mark.parts.get(ofReading("mark", "receiver")));
  });

  test("two that differ by more than the doubt of their difference ask for a third", () => {
    const U = agreeWithinDoubt(rod("a", 1), rod("b", 1)).allowed / 1e6;
    expect(U * 1000).toBeCloseTo(2 * Math.sqrt(2 * 2.1), 2);
    expect(repeated([rod("a", 1), rod("b", 1 + U)])).toMatchObject({ asksForThird: false });
    expect(repeated([rod("a", 1), rod("b", 1.0001 + U)])).toMatchObject({ asksForThird: true });
    const three = repeated([rod("a", 1), rod("b", 1.01), rod("c", 1.0095)]);
    expect(three).toMatchObject({ asksForThird: false });
    expect(three.mean.value).toBeCloseTo((1 + 1.01 + 1.0095) / 3, 12);
  });

  test("the order of the readings changes nothing", () => {
    const list = [rod("a", 1), rod("b", 1.0013), rod("c", 1.0021)] as const;
    const [one, other] = [repeated([list[0], list[1], list[2]]), repeated([list[2], list[0], list[1]])];
    expect(other.mean.value).toBe(one.mean.value);
    expect(new Map([...other.mean.parts].sort())).toEqual(new Map([...one.mean.parts].sort()));
  });
});
