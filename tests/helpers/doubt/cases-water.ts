import { product, type Uncertain } from "#core/doubt/index.ts";
import { gallonsPerMinute, pipeContents } from "#core/plumbing/index.ts";
import { CUBIC_METRES_PER_GALLON, METRES_PER_INCH } from "#core/units/index.ts";
import {
  basinWater,
  compareDrawDown,
  daysWithoutMakeUp,
  evaporationOfDay,
  expectedDrawDown,
  KILOGRAMS_PER_POUND,
  type LeakTest,
  leakTest,
  lipFlowRatio,
  ofFactor,
  planArea,
  reserve,
  sheetOverLip,
  usableWater,
  waterFactors,
  waterInTransit,
  waterToLeave,
} from "#core/water/index.ts";
import { type DoubtCase, doubtCase } from "./by-chance.ts";
import { down, feetGiven, given, inchesGiven, taken } from "./given.ts";

const gallon = 1 / CUBIC_METRES_PER_GALLON;
const inch = 1 / METRES_PER_INCH;

const basin = {
  length: inchesGiven("basin length", 60, 0.25),
  width: inchesGiven("basin width", 48, 0.25),
  depth: inchesGiven("basin depth", 24, 0.25),
  displaced: given("blocks", 0.05, 0.02),
};
const course = {
  streamLength: feetGiven("stream length", 9, 0.5),
  streamWidth: inchesGiven("stream width", 22, 1),
  streamDepth: inchesGiven("stream depth", 1.5, 0.25),
  poolArea: given("pool area", 2.2, 0.2),
  poolHead: inchesGiven("pool head", 0.6, 0.12),
  bore: inchesGiven("bore", 2.047, 0.026),
  pipe: feetGiven("pipe", 18, 0.25),
};
type Basin = Readonly<Record<keyof typeof basin, Uncertain>>;
type Course = Readonly<Record<keyof typeof course, Uncertain>>;

const areaOf = ({ length, width }: Basin): Uncertain => taken(planArea({ kind: "rectangle", length, width }));
const waterOf = (of: Basin) => taken(basinWater({ kind: "dimensions", area: areaOf(of), depth: of.depth, displacedShare: of.displaced }));
const transitOf = ({ streamLength, streamWidth, streamDepth, poolArea, poolHead, bore, pipe }: Course): Uncertain =>
  taken(
    waterInTransit({
      pieces: [{ length: streamLength, width: streamWidth, depth: streamDepth }],
      pools: [{ area: poolArea, head: poolHead }],
      pipe: { contents: taken(pipeContents(bore, pipe)), staysFull: false },
    }),
  ).whole;

const lossOf = (of: Record<"first" | "last" | "bucketFirst" | "bucketLast" | "perDepth" | "wet" | "clock", Uncertain>): Uncertain => {
  const test: LeakTest = {
    kind: "basin, pump off",
    level: { first: of.first, last: of.last },
    duration: of.clock,
    perDepth: of.perDepth,
    evaporatingArea: of.wet,
    evaporated: { by: "control bucket", level: { first: of.bucketFirst, last: of.bucketLast } },
    conditions: { makeUpShut: true, rain: false, pump: "off" },
  };
  const answer = taken(leakTest(test));
  if (answer.answer !== "counts") throw new Error("does not count");
  return answer.lossPerDay;
};

export const waterCases: readonly DoubtCase[] = [
  doubtCase({
    name: "expected draw-down, from falls, pool, pipe and basin by their sizes",
    unit: "in",
    per: inch,
    inputs: { ...basin, ...course },
    figure: (of) => taken(expectedDrawDown(transitOf(of), waterOf(of).perDepth)),
  }),
  doubtCase({
    name: "water that the draw-down does not explain, one tape for both readings",
    unit: "gal",
    per: gallon,
    inputs: { ...basin, ...course, rest: down("rest", 5), running: down("running", 8.25) },
    figure: (of) => taken(compareDrawDown(transitOf(of), waterOf(of).perDepth, of.rest, of.running)).unexplained,
  }),
  doubtCase({
    name: "reserve ratio",
    unit: "times",
    per: 1,
    inputs: { ...basin, ...course, intake: inchesGiven("intake", 3, 0.25), tilt: inchesGiven("tilt", 0.25, 0.1) },
    figure: (of) => {
      const usable = taken(usableWater(waterOf(of), { intakeHeight: of.intake, outOfLevel: of.tilt })).usable;
      return taken(reserve(usable, transitOf(of))).ratio;
    },
    bent: {
      mean: 0.1,
      u: 0.015,
      covers: 0.94,
      why: "the water in transit, known to 7 % (u), stands below the line: the mean of 1/x lies above 1/mean by about its square, 0.07² of the ratio, which is 7 % of u",
    },
  }),
  doubtCase({
    name: "water to leave inside a basin that stands in water",
    unit: "in",
    per: inch,
    inputs: {
      ...basin,
      mass: given("basin weight", 75 * KILOGRAMS_PER_POUND, 4),
      outside: inchesGiven("water outside", 8, 0.5),
      density: ofFactor(waterFactors.waterDensity),
    },
    figure: (of) => taken(waterToLeave({ mass: of.mass, area: areaOf(of), displacedShare: of.displaced }, of.outside)).inside,
    // the core's own density stands under the weight
    drawn: (of) => {
      const mass = { value: (of.mass.value * waterFactors.waterDensity.value) / of.density.value, parts: new Map() };
      return taken(waterToLeave({ mass, area: areaOf(of), displacedShare: of.displaced }, of.outside)).inside.value;
    },
  }),
  doubtCase({
    name: "head on the lip",
    unit: "in",
    per: inch,
    inputs: {
      flow: given("flow", gallonsPerMinute(37), gallonsPerMinute(4)),
      lip: inchesGiven("lip", 22, 0.25),
      estimate: ofFactor(waterFactors.lipHead),
    },
    figure: ({ flow, lip }) => taken(sheetOverLip(flow, lip)).head,
    drawn: ({ flow, lip, estimate }) => taken(sheetOverLip(flow, lip)).head.value * estimate.value,
  }),
  doubtCase({
    name: "flow at the low end of a lip over flow at its high end",
    unit: "times",
    per: 1,
    inputs: { head: inchesGiven("head", 0.68, 0.05), lip: inchesGiven("lip", 0.125, 0.03) },
    figure: ({ head, lip }) => {
      const flow = taken(lipFlowRatio(head, lip));
      if (flow.answer !== "runs all along") throw new Error("dry");
      return flow.ratio;
    },
    bent: { mean: 0.04, u: 0.012, covers: 0.94, why: "the 1.5th power of a quotient whose lower side is known to 5 % (u)" },
  }),
  doubtCase({
    name: "loss a day of a leak test with a control bucket, one tape for four readings",
    unit: "gal a day",
    per: gallon,
    inputs: {
      first: down("first", 3),
      last: down("last", 3.5),
      bucketFirst: down("bucket first", 2),
      bucketLast: down("bucket last", 2.25),
      perDepth: given("per depth", 1.8, 0.1),
      wet: given("wet area", 2.4, 0.4),
      clock: given("clock", 20 * 3600, 600),
    },
    figure: lossOf,
  }),
  doubtCase({
    name: "days without make-up water at a loss that is hardly known",
    unit: "days",
    per: 1,
    inputs: { left: given("left", 0.8, 0.06), loss: given("loss", 0.02, 0.01) },
    figure: ({ left, loss }) => {
      const days = taken(daysWithoutMakeUp(left, loss));
      if (days.answer !== "lasts") throw new Error(days.answer);
      return days.days;
    },
    bent: {
      mean: 0.35,
      u: 0.25,
      covers: 0.86,
      why: "a loss known to half of itself stands below the line. Over a rectangle from 1/2 to 3/2 the mean of 1/x is ln 3 = 1.099, a third of u above 1, and its standard deviation √(4/3 − 1.099²) = 0.356 where the slope has 0.289: U is too small by a fifth and holds 87 of 100, on the side of too few days",
    },
  }),
  doubtCase({
    name: "evaporation of a day from typed weather",
    unit: "mm",
    per: 1000,
    inputs: {
      highest: given("highest", 30, 1),
      lowest: given("lowest", 18, 1),
      humidity: given("humidity", 60, 8),
      wind: given("wind", 3, 0.8),
      sun: given("sun", 0.6, 0.1),
    },
    figure: ({ highest, lowest, humidity, wind, sun }) =>
      taken(
        evaporationOfDay({
          highest,
          lowest,
          humidity: { kind: "mean", mean: humidity },
          wind,
          windHeight: 10,
          sun: { kind: "share", share: sun },
          latitude: 40,
          elevation: 200,
          dayOfYear: 200,
        }),
      ).grass,
    slow: 5,
  }),
];

/** Of a figure that is no more than products, the middle of the draws is the product of the middles: a check of the drawing itself. */
export const productOfThree = doubtCase({
  name: "a product of three",
  unit: "1",
  per: 1,
  inputs: { x: given("x", 2, 0.2), y: given("y", 3, 0.2), z: given("z", 5, 0.2) },
  figure: ({ x, y, z }) => product(x, product(y, z)),
});
