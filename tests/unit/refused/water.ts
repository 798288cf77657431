import { feet } from "#core/units/index.ts";
import * as water from "#core/water/index.ts";
import { carries, certain, exempt, positive, type Rows, refuses, under, within } from "./rows.ts";

const basin = { volume: [0.8, "positive"], depth: [0.6, "positive"] } as const;
const weather = {
  highest: [30, [-40, 60]],
  lowest: [18, [-40, 60]],
  humidity: [60, [0, 100]],
  wind: [3, "not negative"],
  sun: [0.6, [0, 1]],
} as const;
const days = {
  windHeight: [10, [0.1, 200]],
  latitude: [40, [-66, 66]],
  elevation: [200, [-450, 6000]],
  dayOfYear: [200, [1, 366]],
  soilHeat: [0.5, "finite"],
} as const;

export const waterRows: Rows = {
  basinWater: refuses(
    under("basin", { ...basin, area: [1.8, "positive"], displacedShare: [0.05, "not negative"] }),
    ({ volume, depth, area, displacedShare }) => {
      const rated = water.basinWater({ kind: "rating", volume, depth });
      return rated.ok ? water.basinWater({ kind: "dimensions", area, depth, displacedShare }) : rated;
    },
  ),
  usableWater: refuses(
    under("basin", {
      gross: [0.8, "positive"],
      perDepth: [1.8, "positive"],
      intakeHeight: [0.07, "not negative"],
      outOfLevel: [0.01, "not negative"],
    }),
    ({ gross, perDepth, intakeHeight, outOfLevel }) => water.usableWater({ gross, perDepth }, { intakeHeight, outOfLevel }),
  ),
  waterOverDepth: refuses(under("basin", { perDepth: [1.8, "positive"], depth: [0.0254, "not negative"] }), ({ perDepth }, plain) =>
    water.waterOverDepth(perDepth, plain.depth as Parameters<typeof water.waterOverDepth>[1]),
  ),
  freeShare: carries((odd) => [water.freeShare(certain(odd))]),
  broadCrestedCoefficient: refuses(
    { head: within(0.08, "lip/head", feet(0.2), feet(0.4)), breadth: within(0.3, "lip/breadth", feet(0.5), feet(3)) },
    (_, { head, breadth }) => water.broadCrestedCoefficient(head, breadth),
  ),
  compareDrawDown: refuses(
    {
      ...under("basin", { inTransit: [0.1, "not negative"], perDepth: [1.8, "positive"] }),
      ...under("drawDown", { atRest: [0.1, "finite"], running: [0.2, "finite"] }),
    },
    ({ inTransit, perDepth, atRest, running }) => water.compareDrawDown(inTransit, perDepth, atRest, running),
  ),
  expectedDrawDown: refuses(under("basin", { inTransit: [0.1, "not negative"], perDepth: [1.8, "positive"] }), (of) =>
    water.expectedDrawDown(of.inTransit, of.perDepth),
  ),
  measuredDrawDown: refuses(under("drawDown", { atRest: [0.1, "finite"], running: [0.2, "finite"] }), (of) =>
    water.measuredDrawDown(of.atRest, of.running),
  ),
  figure: carries((odd) => [water.figure("x", odd), water.figure("x", 1, odd)]),
  ofFactor: carries((odd) => [water.ofFactor({ name: "x", value: odd, halfWidth: 1, unit: "1", source: "own" })]),
  liftDepth: refuses(
    under("basin", {
      mass: [34, "positive"],
      area: [1.3, "positive"],
      displacedShare: [0.05, "not negative"],
      rimHeight: [0.6, "positive"],
      inside: [0.1, "not negative"],
    }),
    ({ inside, ...of }) => water.liftDepth(of, inside),
  ),
  roomBeforeLift: refuses(
    under("basin", { mass: [34, "positive"], area: [1.3, "positive"], outside: [0.2, "not negative"], inside: [0.1, "not negative"] }),
    ({ outside, inside, ...of }) => water.roomBeforeLift(of, outside, inside),
  ),
  waterToLeave: refuses(
    under("basin", { mass: [34, "positive"], area: [1.3, "positive"], rimHeight: [0.6, "positive"], outside: [0.2, "not negative"] }),
    ({ outside, ...of }) => water.waterToLeave(of, outside),
  ),
  floatOn: refuses(
    under("basin", { mass: [34, "positive"], area: [1.3, "positive"], rimHeight: [0.6, "positive"], outside: [0.2, "not negative"] }),
    ({ outside, ...of }) => water.floatOn("washing in", of, { layerTop: outside }),
  ),
  rainInTheHole: refuses(
    under("hole", {
      rain: [0.05, "not negative"],
      catchArea: [5, "positive"],
      holeArea: [4, "positive"],
      basinArea: [1.3, "positive"],
    }),
    ({ rain, catchArea, holeArea, basinArea }) => water.rainInTheHole({ depth: rain, catchArea, holeArea }, basinArea),
  ),
  leakTest: refuses(
    {
      ...under("leakTest", {
        first: [0.07, "finite"],
        last: [0.08, "finite"],
        duration: [86_400, "positive"],
        perDepth: [1.8, "positive"],
        evaporatingArea: [2.4, "not negative"],
      }),
      bucketFirst: { value: 0.05, wanted: "finite", place: "bucket/first" },
      bucketLast: { value: 0.06, wanted: "finite", place: "bucket/last" },
      depthPerDay: { value: 0.005, wanted: "finite", place: "weather/evaporationPerDay" },
    },
    ({ first, last, duration, perDepth, evaporatingArea, bucketFirst, bucketLast, depthPerDay }) => {
      const test = {
        kind: "basin, pump off",
        level: { first, last },
        duration,
        perDepth,
        evaporatingArea,
        conditions: { makeUpShut: true, rain: false, pump: "off" },
      } as const;
      const bucket = water.leakTest({ ...test, evaporated: { by: "control bucket", level: { first: bucketFirst, last: bucketLast } } });
      return bucket.ok ? water.leakTest({ ...test, evaporated: { by: "weather", depthPerDay } }) : bucket;
    },
  ),
  leakTestFaults: exempt("takes answers, no number"),
  leakSettling: refuses(
    under("leakTest", { lossPerDay: [0.01, "finite"], seconds: [86_400, "positive"], limitPerDay: [0.02, "not negative"] }),
    ({ lossPerDay }, { seconds, limitPerDay }) =>
      water.leakSettling(
        { answer: "counts", kind: "running", lossPerDay, evaporatedPerDay: certain(0), seconds, fading: certain(0) },
        limitPerDay,
      ),
  ),
  lostByFallsAndEdges: carries((odd) => {
    const loss = (value: number): water.LeakLoss => ({
      answer: "counts",
      kind: "running",
      lossPerDay: certain(value),
      evaporatedPerDay: certain(0),
      seconds: 1,
      fading: certain(0),
    });
    return [water.lostByFallsAndEdges(loss(odd), loss(1)), water.lostByFallsAndEdges(loss(1), loss(odd))];
  }),
  lipFlowRatio: refuses(under("lip", { head: [0.02, "positive"], outOfLevel: [0.003, "finite"] }), (of) =>
    water.lipFlowRatio(of.head, of.outOfLevel),
  ),
  outOfLevelForRatio: refuses(
    { head: positive(0.02, "lip/head"), ratio: { value: 1.3, wanted: "finite", place: "lip/ratio" } },
    ({ head }, { ratio }) => water.outOfLevelForRatio(head, ratio),
  ),
  overflow: refuses(
    under("overflow", {
      perDepth: [1.8, "positive"],
      freeboard: [0.1, "not negative"],
      linedArea: [8, "positive"],
      comesBack: [0.05, "not negative"],
    }),
    (of) => water.overflow(of),
  ),
  daysToOverflow: refuses(
    under("overflow", {
      room: [0.1, "not negative"],
      linedArea: [8, "positive"],
      rainPerDay: [0.02, "not negative"],
      lossPerDay: [0.01, "not negative"],
    }),
    (of) => water.daysToOverflow(of.room, of.linedArea, of.rainPerDay, of.lossPerDay),
  ),
  planArea: refuses(
    under("plan", { length: [1.5, "positive"], width: [1.2, "positive"], diameter: [1.3, "positive"] }),
    ({ length, width, diameter }) => {
      const rectangle = water.planArea({ kind: "rectangle", length, width });
      return rectangle.ok ? water.planArea({ kind: "round", diameter }) : rectangle;
    },
  ),
  poolEvaporation: refuses(
    under("weather", { water: [24, [0, 60]], air: [26, [-40, 60]], humidity: [50, [0, 100]], wind: [1, "not negative"] }),
    (of) => water.poolEvaporation(of),
  ),
  evaporationOfDay: refuses(under("weather", { ...weather, ...days }), ({ highest, lowest, humidity, wind, sun }, plain) =>
    water.evaporationOfDay({
      highest,
      lowest,
      humidity: { kind: "mean", mean: humidity },
      wind,
      sun: { kind: "share", share: sun },
      windHeight: plain.windHeight,
      latitude: plain.latitude,
      elevation: plain.elevation,
      dayOfYear: plain.dayOfYear,
      soilHeat: plain.soilHeat,
    }),
  ),
  reserve: refuses(under("basin", { usable: [0.8, "positive"], inTransit: [0.1, "positive"] }), (of) =>
    water.reserve(of.usable, of.inTransit),
  ),
  timeUntilAir: refuses(
    under("basin", { available: [0.8, "finite"], flow: [0.002, "positive"], comesBack: [0.001, "not negative"] }),
    (of) => water.timeUntilAir(of.available, of.flow, of.comesBack),
  ),
  timeToFill: refuses(under("basin", { inTransit: [0.1, "not negative"], flow: [0.002, "positive"] }), (of) =>
    water.timeToFill(of.inTransit, of.flow),
  ),
  daysWithoutMakeUp: refuses(under("basin", { left: [0.8, "finite"], lossPerDay: [0.02, "finite"] }), (of) =>
    water.daysWithoutMakeUp(of.left, of.lossPerDay),
  ),
  flowPerLip: refuses(under("spillway", { flow: [0.002, "positive"], lipLength: [0.6, "positive"] }), (of) =>
    water.flowPerLip(of.flow, of.lipLength),
  ),
  flowForLip: refuses(under("spillway", { wantedPerLip: [0.004, "positive"], lipLength: [0.6, "positive"] }), (of) =>
    water.flowForLip(of.wantedPerLip, of.lipLength),
  ),
  flowOfLips: refuses(under("spillway", { wantedPerLip: [0.004, "positive"], lipLength: [0.6, "positive"] }), (of) =>
    water.flowOfLips([
      { wantedPerLip: certain(0.004), length: certain(1) },
      { wantedPerLip: of.wantedPerLip, length: of.lipLength },
    ]),
  ),
  gallonsPerHourPerInch: carries((odd) => [water.gallonsPerHourPerInch(odd)]),
  toGallonsPerHourPerInch: carries((odd) => [water.toGallonsPerHourPerInch(odd)]),
  sheetOverLip: refuses(under("spillway", { flow: [0.002, "positive"], lipLength: [0.6, "positive"] }), (of) =>
    water.sheetOverLip(of.flow, of.lipLength),
  ),
  headsByFormula: refuses(
    under("lip", { length: [0.6, "positive"], crestHeight: [0.3, "positive"], flow: [0.01, "positive"] }),
    (_, { flow, ...lip }) => water.headsByFormula(lip, flow),
  ),
  weirFlow: refuses(
    under("lip", { length: [0.6, "positive"], crestHeight: [0.3, "positive"], channelWidth: [1, "positive"], head: [0.05, "positive"] }),
    (_, { head, ...lip }) => water.weirFlow("Rehbock", lip, head),
  ),
  weirHead: refuses(
    under("lip", { length: [0.6, "positive"], crestHeight: [0.3, "positive"], channelWidth: [1, "positive"], flow: [0.01, "positive"] }),
    (_, { flow, ...lip }) => water.weirHead("Rehbock", lip, flow),
  ),
  outsideRange: exempt("names what lies outside: what is no number does, as its own test has it"),
  layerWeight: refuses(under("layer", { depth: [0.1, "not negative"], area: [1.3, "positive"] }), (of) => water.layerWeight(of)),
  boulderWeight: refuses(under("boulder", { length: [0.5, "positive"], width: [0.4, "positive"], height: [0.3, "positive"] }), (of) =>
    water.boulderWeight(of),
  ),
  stoneWeight: refuses(
    {
      ...under("layer", { depth: [0.1, "not negative"], area: [1.3, "positive"] }),
      ...under("boulder", { length: [0.5, "positive"], width: [0.4, "positive"], height: [0.3, "positive"] }),
    },
    ({ depth, area, ...boulder }) => water.stoneWeight({ layers: [{ depth, area }], boulders: [boulder] }),
  ),
  stoneAgainstLoad: refuses(
    {
      ...under("layer", { depth: [0.1, "not negative"], area: [1.3, "positive"] }),
      ...under("load", { mass: [200, "positive"], massPerArea: [300, "positive"], lidArea: [1.3, "positive"] }),
    },
    ({ depth, area, mass, massPerArea, lidArea }) => {
      const stone = { layers: [{ depth, area }], boulders: [] };
      const whole = water.stoneAgainstLoad(stone, { kind: "in all", mass });
      return whole.ok ? water.stoneAgainstLoad(stone, { kind: "per area", massPerArea, lidArea }) : whole;
    },
  ),
  waterInTransit: refuses(
    {
      ...under("stream/0", { length: [3, "positive"], width: [0.5, "positive"], depth: [0.03, "not negative"] }),
      ...under("pool/0", { area: [2, "positive"], head: [0.02, "not negative"] }),
      ...under("pipe", { contents: [0.02, "not negative"] }),
    },
    ({ length, width, depth, area, head, contents }) =>
      water.waterInTransit({ pieces: [{ length, width, depth }], pools: [{ area, head }], pipe: { contents, staysFull: true } }),
  ),
};
