import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, expanded } from "#core/doubt/index.ts";
import {
  gallonsPerMinute,
  type OperatingOutcome,
  type OperatingPoint,
  operatingPoint,
  type PumpPoint,
  pumpCurve,
  pumpHead,
  toGallonsPerMinute,
} from "#core/plumbing/index.ts";
import { feet } from "#core/units/index.ts";
import { answer, asGpm, codeOf, doubted, gpm, NOT_NUMBERS, parabola, points, section, system, toFeet } from "./assumed.ts";

const exact = { head: 0, flow: 0 };
const curve = (list: readonly PumpPoint[]) => answer(pumpCurve(list, exact));
const onePoint = (outcome: OperatingOutcome): OperatingPoint => {
  if (outcome.kind !== "one point") throw new Error(outcome.kind);
  return outcome.point;
};
const headAt = (list: readonly PumpPoint[], q: number): number => toFeet(answer(pumpHead(curve(list), gallonsPerMinute(q))).value);

describe("a pump's curve from its card's points", () => {
  const card = fc.uniqueArray(fc.integer({ min: 0, max: 100 }), { minLength: 2, maxLength: 8 }).chain((flows) =>
    fc.uniqueArray(fc.integer({ min: 0, max: 400 }), { minLength: flows.length, maxLength: flows.length }).map((heads) => {
      const [q, h] = [[...flows].sort((a, b) => a - b), [...heads].sort((a, b) => b - a)];
      return q.map((flow, i) => ({ flow: gallonsPerMinute(flow), head: feet((h[i] ?? 0) / 10) }));
    }),
  );

  test("goes through every point, in whatever order they came", () => {
    fc.assert(
      fc.property(card, (list) => {
        const given = curve([...list].reverse());
        for (const { flow, head } of list) expect(answer(pumpHead(given, flow)).value).toBeCloseTo(head, 9);
      }),
    );
  });

  test("falls between falling points, never outside the two it lies between", () => {
    fc.assert(
      fc.property(card, (list) => {
        const given = curve(list);
        const heads = Array.from({ length: 201 }, (_, i) => {
          const [from, to] = [list[0]?.flow ?? 0, list[list.length - 1]?.flow ?? 0];
          return answer(pumpHead(given, i === 200 ? to : from + ((to - from) * i) / 200)).value;
        });
        for (const [i, head] of heads.entries()) if (i > 0) expect(head).toBeLessThanOrEqual((heads[i - 1] ?? 0) + 1e-12);
      }),
    );
  });

  test("a parabola's points give the parabola back", () => {
    for (const q of [3, 17, 42.5, 58]) expect(headAt(parabola(24, 0.004), q)).toBeCloseTo(24 - 0.004 * q * q, 9);
  });

  test("a hump near shut-off stays where the card has it, and no higher", () => {
    const humped = points([0, 18], [10, 20], [20, 19], [40, 8]);
    expect(headAt(humped, 10)).toBeCloseTo(20, 12);
    for (let q = 0; q <= 40; q += 0.5) expect(headAt(humped, q)).toBeLessThanOrEqual(20 + 1e-12);
  });

  test("nothing is known beyond the first and the last point", () => {
    const given = curve(points([10, 20], [40, 8]));
    expect(codeOf(pumpHead(given, gallonsPerMinute(41)))).toBe("pump-beyond-curve");
    expect(codeOf(pumpHead(given, gallonsPerMinute(9)))).toBe("pump-beyond-curve");
    expect(given.shutOff).toBeUndefined();
    expect(toFeet(curve(points([0, 24], [40, 8])).shutOff ?? Number.NaN)).toBeCloseTo(24, 12);
  });

  test("the card's tolerance is the doubt: 5 % of the head, 8 % of the flow by the slope", () => {
    const doubtedCurve = answer(pumpCurve(points([0, 20], [40, 0])));
    const head = answer(pumpHead(doubtedCurve, gallonsPerMinute(20)));
    expect(toFeet(expanded(head))).toBeCloseTo((2 / Math.sqrt(3)) * Math.hypot(0.05 * 10, 0.08 * 20 * 0.5), 9);
  });

  test("refuses what is no curve, by name", () => {
    const refused = (list: readonly PumpPoint[]) => codeOf(pumpCurve(list));
    expect(refused([])).toBe("pump-curve-too-few");
    expect(refused(points([0, 20]))).toBe("pump-curve-too-few");
    expect(refused(points([0, 20], [10, 15], [10, 15]))).toBe("pump-curve-point-twice");
    expect(refused(points([0, 0], [10, 15]))).toBe("pump-curve-rises");
    expect(refused(points([0, 20], [-1, 15]))).toBe("number-not-positive");
    for (const odd of NOT_NUMBERS) expect(refused(points([0, 20], [odd, 15]))).toBe("number-not-finite");
    expect(codeOf(pumpCurve(points([0, 20], [10, 5]), { head: -0.1, flow: 0 }))).toBe("number-not-positive");
  });
});

describe("where the pump works", () => {
  const pump = curve(parabola(24, 0.004));
  const flowOn = (staticFeet: number, length: number, bore = 2.067, c = 150): number =>
    asGpm(onePoint(answer(operatingPoint(pump, system(staticFeet, section(length, bore, c))))).flow);

  test("less flow with more static head and longer pipe, more with wider and smoother pipe", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 20, noNaN: true }), fc.double({ min: 20, max: 300, noNaN: true }), (head, length) => {
        const here = flowOn(head, length);
        expect(flowOn(head + 0.1, length)).toBeLessThan(here);
        expect(flowOn(head, length + 1)).toBeLessThan(here);
        expect(flowOn(head, length, 2.2)).toBeGreaterThan(here);
        expect(flowOn(head, length, 2.067, 155)).toBeGreaterThan(here);
      }),
    );
  });

  test("a card in litres a minute and metres gives the same as one in gallons and feet", () => {
    const metric = curve(
      [0, 10, 20, 30, 40, 50, 60, 70].map((q) => ({ flow: (q * 3.785411784) / 60_000, head: (24 - 0.004 * q * q) * 0.3048 })),
    );
    const inMetres = { length: certain(18.288), bore: certain(0.0525018), coefficient: certain(150) };
    const found = onePoint(answer(operatingPoint(metric, { staticHead: certain(1.8288), sections: [inMetres] })));
    expect(asGpm(found.flow)).toBeCloseTo(flowOn(6, 60), 9);
  });

  test("at it both curves have the head that it names", () => {
    const point = onePoint(answer(operatingPoint(pump, system(6, section(60, 2.067)))));
    expect(answer(pumpHead(pump, point.flow.value)).value).toBeCloseTo(point.head.value, 9);
    expect(point.stable).toBe(true);
  });

  test("curve below static head: what is missing, with its doubt", () => {
    const outcome = answer(
      operatingPoint(pump, { ...system(26, section(60, 2.067)), staticHead: doubted(feet(26), "static head", feet(1)) }),
    );
    if (outcome.kind !== "curve below static head") throw new Error(outcome.kind);
    expect(toFeet(outcome.lacks.value)).toBeCloseTo(2, 9);
    expect(toFeet(expanded(outcome.lacks))).toBeCloseTo(2 / Math.sqrt(3), 9);
    expect(answer(operatingPoint(pump, system(24, section(60, 2.067)))).kind).toBe("curve below static head");
  });

  test("beyond the last point: at least its flow, and no guess", () => {
    const outcome = answer(operatingPoint(curve(points([0, 24], [40, 17.6])), system(2, section(10, 3.068))));
    if (outcome.kind !== "beyond the last point") throw new Error(outcome.kind);
    expect(toGallonsPerMinute(outcome.atLeast)).toBeCloseTo(40, 9);
  });

  test("before the first point: at most its flow, perhaps none", () => {
    const outcome = answer(operatingPoint(curve(points([20, 15], [40, 8])), system(18, section(60, 2.067))));
    if (outcome.kind !== "before the first point") throw new Error(outcome.kind);
    expect(toGallonsPerMinute(outcome.atMost)).toBeCloseTo(20, 9);
  });

  test("a humped curve crosses twice: the near one unstable, and from rest neither is reached", () => {
    const humped = curve(points([0, 15], [10, 20], [20, 19], [40, 8], [50, 0]));
    const outcome = answer(operatingPoint(humped, system(17, section(20, 2.067))));
    if (outcome.kind !== "several crossings") throw new Error(outcome.kind);
    expect(outcome.points.map(({ stable }) => stable)).toEqual([false, true]);
    expect(outcome.reachedFromRest).toBe(false);
    for (const { flow, head } of outcome.points) expect(answer(pumpHead(humped, flow.value)).value).toBeCloseTo(head.value, 9);
  });

  test("on a vertical piece the flow is the piece's, whatever the static head within it", () => {
    const limited = curve(points([0, 24], [30, 20], [30, 8], [40, 0]));
    for (const staticFeet of [9, 12, 16]) {
      const outcome = answer(operatingPoint(limited, { ...system(staticFeet, section(20, 2.067)) }));
      if (outcome.kind !== "on a vertical piece") throw new Error(outcome.kind);
      expect(toGallonsPerMinute(outcome.piece.flow)).toBeCloseTo(30, 9);
      expect(toFeet(outcome.head.value)).toBeGreaterThan(staticFeet);
    }
    expect(asGpm(onePoint(answer(operatingPoint(limited, system(2, section(20, 2.067))))).flow)).toBeGreaterThan(30);
    expect(asGpm(onePoint(answer(operatingPoint(limited, system(21, section(20, 2.067))))).flow)).toBeLessThan(30);
    expect(toFeet(answer(pumpHead(limited, gallonsPerMinute(30))).value)).toBeCloseTo(14, 9);
  });

  test("a part of known loss takes its share with the square of the flow", () => {
    const bare = flowOn(6, 60);
    const withStrainer = answer(
      operatingPoint(pump, { ...system(6, section(60, 2.067)), knownLosses: [{ head: certain(feet(1)), flow: gallonsPerMinute(50) }] }),
    );
    expect(asGpm(onePoint(withStrainer).flow)).toBeLessThan(bare);
  });

  test("refuses a system of senseless figures", () => {
    expect(codeOf(operatingPoint(pump, system(-1, section(60, 2))))).toBe("number-not-positive");
    expect(codeOf(operatingPoint(pump, system(6, section(60, 0))))).toBe("number-not-positive");
    expect(codeOf(operatingPoint(pump, system(6, section(-60, 2))))).toBe("number-not-positive");
    expect(codeOf(operatingPoint(pump, { ...system(6), knownLosses: [{ head: gpm(1), flow: 0 }] }))).toBe("number-not-positive");
    for (const odd of NOT_NUMBERS) expect(codeOf(operatingPoint(pump, system(odd, section(60, 2))))).toBe("number-not-finite");
  });
});
