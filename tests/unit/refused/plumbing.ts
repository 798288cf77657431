import * as plumbing from "#core/plumbing/index.ts";
import { metres } from "#core/units/index.ts";
import { carries, certain, exempt, type Figure, positive, type Rows, refuses, under } from "./rows.ts";

const card: readonly plumbing.PumpPoint[] = [
  { flow: 0, head: 5 },
  { flow: 0.002, head: 3 },
  { flow: 0.004, head: 0 },
];
const curveOf = (points: readonly plumbing.PumpPoint[]): plumbing.PumpCurve => {
  const made = plumbing.pumpCurve(points);
  if (!made.ok) throw new Error(made.refusal.code);
  return made.value;
};
const curve = curveOf(card);

const section = { length: [12, "not negative"], bore: [0.04, "positive"], coefficient: [150, "positive"] } as const;
const lineSystem: Record<"staticHead" | "length" | "bore" | "coefficient" | "lossHead" | "lossFlow", Figure> = {
  ...under("system", { staticHead: [1, "not negative"] }),
  ...under("system/sections/0", section),
  lossHead: { value: 0.2, wanted: "not negative", place: "system/knownLosses/0/head" },
  lossFlow: positive(0.002, "system/knownLosses/0/flow"),
};
type OfLine = Readonly<Record<keyof typeof lineSystem, ReturnType<typeof certain>>>;
const systemOf = (of: OfLine, lossFlow: number): plumbing.SystemCurve => ({
  staticHead: of.staticHead,
  sections: [{ length: of.length, bore: of.bore, coefficient: of.coefficient }],
  knownLosses: [{ head: of.lossHead, flow: lossFlow }],
});

export const plumbingRows: Rows = {
  boreAsMeasured: carries((odd) => [
    plumbing.boreAsMeasured(metres(odd), metres(0.001)),
    plumbing.boreAsMeasured(metres(0.05), metres(odd)),
  ]),
  pipeBore: exempt("takes the name of a size, no number"),
  pipeCoefficient: refuses({ typed: positive(140, "pipe/coefficient") }, (_, { typed }) => plumbing.pipeCoefficient("rigid PVC", typed)),
  pipeContents: refuses(under("contents", { bore: [0.05, "positive"], length: [6, "not negative"] }), (of) =>
    plumbing.pipeContents(of.bore, of.length),
  ),
  drainBack: refuses(
    {
      ...under("drainBack", { length: [6, "positive"], belowWater: [0.5, "not negative"], toCheckValve: [1, "not negative"] }),
      ...under("contents", { bore: [0.05, "positive"] }),
    },
    (of) => plumbing.drainBack(of),
  ),
  cureClock: refuses(
    {
      lastJointAt: { value: 1_700_000_000_000, wanted: "not negative", place: "cure/lastJoint/instant" },
      ...under("cure", { set: [60_000, "not negative"], cure: [120_000, "not negative"] }),
    },
    (_, { lastJointAt, set, cure }) => plumbing.cureClock(lastJointAt, { set, cure }),
  ),
  labelClock: refuses(
    {
      appliedAt: { value: 1_700_000_000_000, wanted: "not negative", place: "cure/foam/instant" },
      label: positive(60_000, "cure/foam/label"),
    },
    (_, { appliedAt, label }) => plumbing.labelClock("foam", appliedAt, label),
  ),
  jointTimes: refuses(
    {
      ...under("cure", { coldest: [15, "finite"], humidity: [0.5, "not negative"], pressure: [20_000, "not negative"] }),
      ...under("cure/can", { set: [60_000, "positive"], cure: [120_000, "positive"] }),
    },
    ({ coldest }, { humidity, pressure, set, cure }) => {
      const session = { kind: "rigid PVC", size: "1-1/2", humidity, pressure } as const;
      // only what is no number: a table does not reach as low as any finite temperature
      const table = plumbing.jointTimes({ ...session, coldest: Number.isFinite(coldest.value) ? { ...coldest, value: 15 } : coldest });
      return table.ok ? plumbing.jointTimes({ ...session, coldest, can: { set, cure } }) : table;
    },
  ),
  frictionFactor: refuses(
    under("friction", { reynolds: [100_000, "positive"], relativeRoughness: [1e-4, "not negative"] }),
    (_, { reynolds, relativeRoughness }) => plumbing.frictionFactor(reynolds, relativeRoughness),
  ),
  darcyLoss: refuses(
    under("friction", {
      flow: [0.002, "positive"],
      bore: [0.05, "positive"],
      viscosity: [1e-6, "positive"],
      length: [10, "not negative"],
      roughness: [1e-6, "not negative"],
    }),
    ({ flow, bore, length }, { viscosity, roughness }) => plumbing.darcyLoss(flow, { bore, length, viscosity, roughness }),
  ),
  frictionLoss: refuses(under("friction", { flow: [0.002, "not negative"], ...section }), ({ flow, ...of }) =>
    plumbing.frictionLoss(flow, of),
  ),
  frictionInSeries: refuses(under("friction", { flow: [0.002, "not negative"], ...section }), ({ flow, ...of }) =>
    plumbing.frictionInSeries(flow, [of]),
  ),
  pipeVelocity: refuses(under("velocity", { flow: [0.002, "not negative"], bore: [0.05, "positive"] }), (of) =>
    plumbing.pipeVelocity(of.flow, of.bore),
  ),
  equivalentLength: exempt("takes names of fitting and size, no number"),
  publishedLengths: exempt("takes names of fitting and size, no number"),
  equivalentRun: refuses(
    {
      pipe: { value: 10, wanted: "not negative", place: "fittings/pipe" },
      count: { value: 2, wanted: "not negative", place: "fittings/90 ell" },
    },
    ({ pipe }, { count }) => plumbing.equivalentRun(pipe, [{ kind: "90 ell", count }], "2"),
  ),
  compareFlow: refuses(under("flow", { expected: [0.002, "positive"], measured: [0.0019, "positive"] }), (of) =>
    plumbing.compareFlow(of.expected, of.measured),
  ),
  explainFlow: refuses(
    { ...under("flow", { expected: [0.002, "positive"], measured: [0.0019, "positive"] }), ...lineSystem },
    (of, { lossFlow }) =>
      plumbing.explainFlow(curve, systemOf(of, lossFlow), { flow: of.expected, head: certain(3), stable: true }, of.measured),
  ),
  timeByHand: carries((odd) => [plumbing.timeByHand(odd), plumbing.timeByHand(20, odd)]),
  binVolume: carries((odd) => [plumbing.binVolume(odd), plumbing.binVolume(0.02, odd)]),
  flowFromBin: refuses(under("flow/bin", { volume: [0.05, "positive"], time: [25, "positive"] }), (of) =>
    plumbing.flowFromBin(of.volume, of.time),
  ),
  binFillTime: refuses(under("flow/bin", { volume: [0.05, "positive"], expected: [0.002, "positive"] }), (_, { volume, expected }) =>
    plumbing.binFillTime(volume, expected),
  ),
  flowFromDrawDown: refuses(
    under("flow/drawDown", { waterArea: [1.8, "positive"], drop: [0.05, "positive"], time: [40, "positive"] }),
    (of) => plumbing.flowFromDrawDown(of.waterArea, of.drop, of.time),
  ),
  flowByMeter: refuses(under("flow/meter", { shown: [0.002, "positive"], share: [0.05, "not negative"] }), ({ shown }, { share }) =>
    plumbing.flowByMeter(shown, share),
  ),
  flowByCounter: refuses(
    {
      before: { value: 1, wanted: "finite", place: "flow/meter/counted" },
      after: { value: 2, wanted: "positive", place: "flow/meter/counted" },
      ...under("flow/meter", { time: [600, "positive"], share: [0.05, "not negative"] }),
    },
    ({ before, after, time }, { share }) => plumbing.flowByCounter(before, after, time, share),
  ),
  gallonsPerMinute: carries((odd) => [plumbing.gallonsPerMinute(odd)]),
  toGallonsPerMinute: carries((odd) => [plumbing.toGallonsPerMinute(odd)]),
  gallonsPerHour: carries((odd) => [plumbing.gallonsPerHour(odd)]),
  toGallonsPerHour: carries((odd) => [plumbing.toGallonsPerHour(odd)]),
  litresPerMinute: carries((odd) => [plumbing.litresPerMinute(odd)]),
  pumpCurve: refuses(
    {
      ...under("pumpCurve/1", { flow: [0.002, "not negative"], head: [3, "not negative"] }),
      toleranceHead: { value: 0.05, wanted: "not negative", place: "pumpCurve/tolerance/head" },
      toleranceFlow: { value: 0.08, wanted: "not negative", place: "pumpCurve/tolerance/flow" },
    },
    (_, { flow, head, toleranceHead, toleranceFlow }) =>
      plumbing.pumpCurve(
        [card[0], { flow, head }, card[2]].flatMap((one) => one ?? []),
        { head: toleranceHead, flow: toleranceFlow },
      ),
  ),
  pumpHead: refuses(under("pumpCurve", { flow: [0.002, "not negative"] }), (_, { flow }) => plumbing.pumpHead(curve, flow)),
  operatingPoint: refuses(lineSystem, (of, { lossFlow }) => plumbing.operatingPoint(curve, systemOf(of, lossFlow))),
  systemAt: exempt("for solving: the sum alone; operatingPoint and explainFlow look at every figure of the system before"),
  curveAt: exempt("for solving: a curve is made by pumpCurve, which looks at every point"),
  pipeSizeOf: refuses({ nominal: positive(0.0381, "pipe/size") }, (_, { nominal }) => plumbing.pipeSizeOf(nominal)),
  nextPipeSize: exempt("takes the name of a size, no number"),
  witnessMark: refuses({ depth: positive(0.03, "socket/depth") }, ({ depth }) => plumbing.witnessMark(depth)),
  insertion: refuses(
    {
      depth: positive(0.03, "socket/depth"),
      markToSocket: { value: 0.05, wanted: "not negative", place: "socket/markToSocket" },
      markAt: positive(0.08, "socket/markAt"),
    },
    (of) => plumbing.insertion(of.depth, of.markToSocket, of.markAt),
  ),
  socketStandards: refuses({ depth: positive(0.03, "socket/depth") }, ({ depth }) => plumbing.socketStandards("2", depth)),
};
