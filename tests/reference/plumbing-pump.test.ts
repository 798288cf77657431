import { describe, expect, test } from "vitest";
import { certain, contributors, rectangular, standardUncertainty, type Uncertain, withSource } from "#core/doubt/index.ts";
import {
  gallonsPerMinute,
  type OperatingPoint,
  operatingPoint,
  type PumpPoint,
  pipeVelocity,
  pumpCurve,
  pumpHead,
  type SystemCurve,
  toGallonsPerMinute,
} from "#core/plumbing/index.ts";
import { feet, inches, metres, toInches } from "#core/units/index.ts";

const toFeet = (length: number): number => toInches(metres(length)) / 12;
const card = [0, 10, 20, 30, 40, 50, 60, 70, 77].map((q): PumpPoint => ({ flow: gallonsPerMinute(q), head: feet(24 - 0.004 * q * q) }));

function pointOn(points: readonly PumpPoint[], system: SystemCurve, tolerance = { head: 0, flow: 0 }): OperatingPoint {
  const curve = pumpCurve(points, tolerance);
  if (!curve.ok) throw new Error(curve.refusal.code);
  const found = operatingPoint(curve.value, system);
  if (!found.ok) throw new Error(found.refusal.code);
  if (found.value.kind !== "one point") throw new Error(found.value.kind);
  return found.value.point;
}

describe("operating point, pump H = 24 − 0.004 q² ft (worked out in closed form, no publication)", () => {
  test("system H = 6 + 0.001 q²: q = √((24 − 6)/0.005) = 60.0 gpm, H = 9.6 ft", () => {
    const { flow, head } = pointOn(card, {
      staticHead: certain(feet(6)),
      sections: [],
      knownLosses: [{ head: certain(feet(0.001 * 3600)), flow: gallonsPerMinute(60) }],
    });
    expect(toGallonsPerMinute(flow.value)).toBeCloseTo(60, 8);
    expect(toFeet(head.value)).toBeCloseTo(9.6, 8);
  });

  test("static head 6 ft and 60 ft of 2.067 in, C 150: 60.367 gpm, 9.4235 ft, 5.772 ft/s", () => {
    const bore = certain(inches(2.067));
    const { flow, head } = pointOn(card, {
      staticHead: certain(feet(6)),
      sections: [{ length: certain(feet(60)), bore, coefficient: certain(150) }],
    });
    expect(toGallonsPerMinute(flow.value)).toBeCloseTo(60.367, 3);
    expect(toFeet(head.value)).toBeCloseTo(9.4235, 4);
    const speed = pipeVelocity(flow, bore);
    expect(speed.ok && toFeet(speed.value.velocity.value)).toBeCloseTo(5.772, 3);
  });
});

/** Titration data of Fritsch and Carlson's paper of 1980 (from memory): a steep rise between two flats, turned over to fall. */
describe("monotone interpolation on Fritsch and Carlson's own data (from memory)", () => {
  const x = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20];
  const y = [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994];
  const curve = pumpCurve(x.map((flow, i) => ({ flow, head: 1 - (y[i] ?? 0) })));
  test("no dip and no bump anywhere, where a plain spline has both", () => {
    if (!curve.ok) throw new Error(curve.refusal.code);
    let before = 1;
    for (let i = 0; i <= 2000; i++) {
      const head = pumpHead(curve.value, i === 2000 ? 20 : 7.99 + ((20 - 7.99) * i) / 2000);
      if (!head.ok) throw new Error(head.refusal.code);
      expect(head.value.value).toBeLessThanOrEqual(before + 1e-15);
      expect(head.value.value).toBeGreaterThanOrEqual(0);
      before = head.value.value;
    }
  });
});

/** Chances that are the same every time: mulberry32, a public-domain generator of 32 bits. */
function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

describe("the operating point's doubt against Monte Carlo, after GUM Supplement 1 (JCGM 101)", () => {
  const halfWidths = { staticHead: feet(0.5), length: feet(6), bore: inches(0.026), coefficient: 10, head: 0.05, flow: 0.08 };
  const doubted = (value: number, source: string, halfWidth: number): Uncertain =>
    withSource(certain(value), source, rectangular(halfWidth));
  const first = pointOn(
    card,
    {
      staticHead: doubted(feet(8), "static head", halfWidths.staticHead),
      sections: [
        {
          length: doubted(feet(60), "length", halfWidths.length),
          bore: doubted(inches(2.047), "bore", halfWidths.bore),
          coefficient: doubted(150, "C", halfWidths.coefficient),
        },
      ],
    },
    { head: halfWidths.head, flow: halfWidths.flow },
  );

  const draws = 4000;
  const chance = chances(20_260_506);
  const anywhere = (value: number, halfWidth: number): Uncertain => certain(value + (2 * chance() - 1) * halfWidth);
  const share = (halfWidth: number): number => 1 + (2 * chance() - 1) * halfWidth;
  const drawn = Array.from({ length: draws }, () => {
    const [headShare, flowShare] = [share(halfWidths.head), share(halfWidths.flow)];
    const points = card.map(({ flow, head }) => ({ flow: flow * flowShare, head: head * headShare }));
    return pointOn(points, {
      staticHead: anywhere(feet(8), halfWidths.staticHead),
      sections: [
        {
          length: anywhere(feet(60), halfWidths.length),
          bore: anywhere(inches(2.047), halfWidths.bore),
          coefficient: anywhere(150, halfWidths.coefficient),
        },
      ],
    });
  });
  const spread = (values: readonly number[]) => {
    const middle = values.reduce((sum, v) => sum + v, 0) / values.length;
    return { middle, deviation: Math.sqrt(values.reduce((sum, v) => sum + (v - middle) ** 2, 0) / (values.length - 1)) };
  };

  test.each(["flow", "head"] as const)("%s: mean within 1 %%, standard deviation within 5 %% of the first-order figure", (what) => {
    const { middle, deviation } = spread(drawn.map((point) => point[what].value));
    expect(Math.abs(middle / first[what].value - 1)).toBeLessThan(0.01);
    expect(Math.abs(deviation / standardUncertainty(first[what]) - 1)).toBeLessThan(0.05);
  });

  test("value ± U holds 95 to 98.5 of 100 draws, as six sources together should", () => {
    const u = 2 * standardUncertainty(first.flow);
    const inside = drawn.filter(({ flow }) => Math.abs(flow.value - first.flow.value) <= u).length / draws;
    expect(inside).toBeGreaterThan(0.94);
    expect(inside).toBeLessThan(0.985);
  });

  test("names what brings most of it", () => {
    expect(contributors(first.flow).map(({ source }) => source)).toContain("pump-curve/flow");
  });
});
