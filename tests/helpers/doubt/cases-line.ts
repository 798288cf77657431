import { certain, rectangular, type Uncertain, withSource } from "#core/doubt/index.ts";
import {
  CARD_TOLERANCE,
  equivalentRun,
  gallonsPerMinute,
  type OperatingPoint,
  operatingPoint,
  type PumpPoint,
  pipeBore,
  pipeCoefficient,
  pipeVelocity,
  pumpCurve,
  toGallonsPerMinute,
} from "#core/plumbing/index.ts";
import { voltageDrop } from "#core/power/index.ts";
import { feet, METRES_PER_INCH } from "#core/units/index.ts";
import { type DoubtCase, doubtCase } from "./by-chance.ts";
import { feetGiven, given, taken } from "./given.ts";

const card: readonly PumpPoint[] = [
  [0, 16],
  [20, 13],
  [45, 5.84],
  [58, 0],
].map(([flow = 0, head = 0]) => ({ flow: gallonsPerMinute(flow), head: feet(head) }));

/** The card's tolerance, head and flow, as two factors about 1 under the names that the core gives them. */
const one = (source: string, share: number): Uncertain => withSource(certain(1), source, rectangular(share));
const line = {
  staticHead: feetGiven("static head", 4, 0.25),
  run: taken(
    equivalentRun(
      feetGiven("pipe", 40, 0.5),
      [
        { kind: "90 ell", count: 2 },
        { kind: "swing check valve", count: 1 },
      ],
      "1-1/2",
    ),
  ),
  bore: taken(pipeBore("1-1/2")),
  coefficient: taken(pipeCoefficient("rigid PVC")),
  cardHead: one("pump-curve/head", CARD_TOLERANCE.head),
  cardFlow: one("pump-curve/flow", CARD_TOLERANCE.flow),
};
type Line = Readonly<Record<keyof typeof line, Uncertain>>;

function pointOf(of: Line, points: readonly PumpPoint[], tolerance = CARD_TOLERANCE): OperatingPoint {
  const sections = [{ length: of.run, bore: of.bore, coefficient: of.coefficient }];
  const found = taken(operatingPoint(taken(pumpCurve(points, tolerance)), { staticHead: of.staticHead, sections }));
  if (found.kind !== "one point") throw new Error(found.kind);
  return found.point;
}

const exact = { head: 0, flow: 0 };
const drawnPoint = (of: Line): OperatingPoint =>
  pointOf(
    of,
    card.map(({ flow, head }) => ({ flow: flow * of.cardFlow.value, head: head * of.cardHead.value })),
    exact,
  );

const why = "both curves bend down at the crossing, the pump's and that of friction over flow: the draws lie a twentieth of u below";

export const lineCases: readonly DoubtCase[] = [
  doubtCase({
    name: "flow at the operating point, from card, static head, run with fittings, bore and C",
    unit: "gpm",
    per: toGallonsPerMinute(1),
    inputs: line,
    figure: (of) => pointOf(of, card).flow,
    drawn: (of) => drawnPoint(of).flow.value,
    bent: { mean: 0.055, u: 0.01, covers: 0.94, why },
    slow: 5,
  }),
  doubtCase({
    name: "head at the operating point",
    unit: "ft",
    per: 1 / (12 * METRES_PER_INCH),
    inputs: line,
    figure: (of) => pointOf(of, card).head,
    drawn: (of) => drawnPoint(of).head.value,
    slow: 5,
  }),
  doubtCase({
    name: "velocity in the pipe at that flow, whose doubt shares the bore",
    unit: "ft/s",
    per: 1 / (12 * METRES_PER_INCH),
    inputs: line,
    figure: (of) => taken(pipeVelocity(pointOf(of, card).flow, of.bore)).velocity,
    drawn: (of) => taken(pipeVelocity(drawnPoint(of).flow, of.bore)).velocity.value,
    bent: { mean: 0.055, u: 0.012, covers: 0.94, why },
    slow: 5,
  }),
  doubtCase({
    name: "volts lost, as a share of the nominal",
    unit: "%",
    per: 100,
    inputs: { current: given("current", 8, 0.8), oneWay: feetGiven("run", 100, 5), nominal: given("nominal", 120, 5) },
    figure: (of) => taken(voltageDrop({ ...of, wire: "12" })).share,
  }),
];
