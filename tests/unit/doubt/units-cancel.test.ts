import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { certain, standardUncertainty, type Uncertain, withSource } from "#core/doubt/index.ts";
import { fitPlane, fourthPlace, levelDistance, outOfLevel, placeByTies, setOut, waterLostToTilt } from "#core/geometry/index.ts";
import { flowFromDrawDown, pipeContents, pipeVelocity } from "#core/plumbing/index.ts";
import {
  basinWater,
  expectedDrawDown,
  flowPerLip,
  lipFlowRatio,
  overflow,
  planArea,
  rainInTheHole,
  reserve,
  timeToFill,
  timeUntilAir,
  usableWater,
  waterInTransit,
} from "#core/water/index.ts";
import { taken } from "../../helpers/doubt/given.ts";

/** A figure that comes out, and how often the units of length and of time are in it. */
type Out = readonly [figure: Uncertain, lengths: number, times: number];
/** Makes a figure of so many lengths and times, each with a doubt of its own, in the units of the run. */
type Make = (value: number, lengths: number, times?: number) => Uncertain;

const corners = [
  [0, 0],
  [1.5, 0],
  [1.5, 1.2],
  [0, 1.2],
] as const;

/** Sizes between 0.5 and 1 come in; every figure that is worked out from them without a constant that has a unit goes out. */
function worked(make: Make, [a, b, c, d]: readonly [number, number, number, number], long: number): readonly Out[] {
  const area = taken(planArea({ kind: "rectangle", length: make(2 * a, 1), width: make(2 * b, 1) }));
  const water = taken(basinWater({ kind: "dimensions", area, depth: make(c, 1), displacedShare: make(0.2 * d, 0) }));
  const { usable } = taken(usableWater(water, { intakeHeight: make(0.1 * a, 1), outOfLevel: make(0.01 * b, 1) }));
  const contents = taken(pipeContents(make(0.05 * a, 1), make(6 * b, 1)));
  const transit = taken(
    waterInTransit({
      pieces: [{ length: make(3 * a, 1), width: make(0.5 * b, 1), depth: make(0.03 * c, 1) }],
      pools: [{ area: make(d, 2), head: make(0.02 * a, 1) }],
      pipe: { contents, staysFull: false },
    }),
  ).whole;
  const flow = taken(flowFromDrawDown(area, make(0.05 * a, 1), make(30 * b, 0, 1)));
  const left = taken(reserve(usable, transit));
  const air = taken(timeUntilAir(usable, flow, make(0, 3, -1)));
  const rain = taken(overflow({ perDepth: water.perDepth, freeboard: make(0.2 * b, 1), linedArea: make(8 * c, 2) }));
  const lip = taken(lipFlowRatio(make(0.02 * a, 1), make(0.003 * b, 1)));
  if (air.answer !== "draws air after" || rain.answer !== "room for rain" || lip.answer !== "runs all along") throw new Error("no figure");

  const heights = [a, b, c, d].map((height) => make(0.1 * height, 1));
  const places = corners.map(([x, y], i) => ({ x: x * long, y: y * long, height: heights[i] as Uncertain }));
  const level = taken(outOfLevel(taken(fitPlane(places)).plane, 1.5 * long, 1.2 * long));
  const marks = [
    ["A", 0, 0],
    ["B", 6, 0],
    ["C", 2, 5],
  ].map(([name, x, y]) => ({ name: String(name), x: certain(Number(x) * long), y: certain(Number(y) * long) }));
  const [x, y] = [2 + a, 1 + b];
  const ties = marks.map(({ name, x: mx, y: my }) => ({
    mark: name,
    distance: make(Math.hypot(x - mx.value / long, y - my.value / long), 1),
  }));
  const tied = taken(placeByTies(marks, ties, { from: "A", to: "B", side: "left" }));
  if (tied.kind !== "placed") throw new Error(tied.kind);
  const [target] = taken(setOut([{ place: "rim", over: "height mark", aim: -0.3 * long }], make(a, 1))).targets;
  if (!target) throw new Error("no target");
  return [
    [water.gross, 3, 0],
    [usable, 3, 0],
    [transit, 3, 0],
    [left.ratio, 0, 0],
    [taken(expectedDrawDown(transit, water.perDepth)), 1, 0],
    [taken(timeToFill(transit, flow)), 0, 1],
    [air.seconds, 0, 1],
    [taken(pipeVelocity(flow, make(0.05 * a, 1))).velocity, 1, -1],
    [taken(flowPerLip(flow, make(0.6 * c, 1))), 2, -1],
    [rain.rainToOverflow, 1, 0],
    [taken(rainInTheHole({ depth: make(0.05 * a, 1), catchArea: make(5 * b, 2), holeArea: make(9, 2) }, make(d, 2))), 1, 0],
    [lip.ratio, 0, 0],
    [level.total, 1, 0],
    [taken(waterLostToTilt(1.8 * long * long, level)), 3, 0],
    [taken(fourthPlace(places)), 1, 0],
    [taken(levelDistance(make(3 * a, 1), make(0.5 * b, 1))), 1, 0],
    [tied.point.x, 1, 0],
    [tied.point.y, 1, 0],
    [target.aim, 1, 0],
  ];
}

function inUnits(long: number, slow: number): Make {
  let made = 0;
  return (value, lengths, times = 0) => {
    const unit = long ** lengths * slow ** times;
    made++;
    return withSource(certain(value * unit), `input ${made}`, 0.02 * Math.max(value, 0.01) * unit);
  };
}

/** A rim that is level one way may be called low on either side of it by the last digit, and its doubt with it. */
const isTilted = ([a, b, c, d]: readonly [number, number, number, number]): boolean =>
  Math.abs(b + c - a - d) > 1e-6 && Math.abs(c + d - a - b) > 1e-6;

const size = fc.double({ min: 0.5, max: 1, noNaN: true });
const sizes = fc.tuple(size, size, size, size);
const power = fc.integer({ min: -2, max: 2 });

describe("units cancel", () => {
  test("in feet or metres, minutes or seconds: every figure and its doubt go by the units that are in it, ratios stay", () => {
    fc.assert(
      fc.property(
        sizes,
        fc.double({ min: 0.3, max: 3.5, noNaN: true }),
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        (of, long, slow) => {
          fc.pre(isTilted(of));
          const [one, other] = [worked(inUnits(1, 1), of, 1), worked(inUnits(long, slow), of, long)];
          for (const [i, [figure, lengths, times]] of one.entries()) {
            const [changed] = other[i] as Out;
            const unit = long ** lengths * slow ** times;
            // the fit of ties weighs with a least doubt of its own, a tenth of a millimetre, which has a unit
            const near = 1e-3 * standardUncertainty(figure) + 1e-9 * Math.abs(figure.value);
            expect(Math.abs(changed.value / unit - figure.value), `value ${i}`).toBeLessThanOrEqual(near);
            expect(Math.abs(standardUncertainty(changed) / unit / standardUncertainty(figure) - 1), `doubt ${i}`).toBeLessThan(1e-3);
          }
        },
      ),
    );
  });

  test("by a power of two to the last bit, where nothing is fitted and no root is drawn", () => {
    fc.assert(
      fc.property(sizes, power, power, (of, lengthPower, timePower) => {
        const [long, slow] = [2 ** lengthPower, 2 ** timePower];
        const [one, other] = [worked(inUnits(1, 1), of, 1), worked(inUnits(long, slow), of, long)];
        for (const i of [0, 1, 2, 3, 4, 5, 6, 9, 10, 18]) {
          const [[figure, lengths, times], [changed]] = [one[i] as Out, other[i] as Out];
          expect(changed.value, `figure ${i}`).toBe(figure.value * long ** lengths * slow ** times);
        }
      }),
    );
  });
});
