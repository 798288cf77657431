export {
  type BasinLosses,
  type BasinSize,
  type BasinWater,
  basinWater,
  freeShare,
  type UsableWater,
  usableWater,
  waterOverDepth,
} from "./basin.ts";
export { broadCrestedCoefficient } from "./broad-crest.ts";
export { compareDrawDown, type DrawDownCompared, expectedDrawDown, measuredDrawDown } from "./draw-down.ts";
export { type Factor, figure, KILOGRAMS_PER_POUND, ofFactor, SECONDS_PER_DAY, STANDARD_GRAVITY, waterFactors } from "./factors.ts";
export { fao56 } from "./fao56.ts";
export { type FloatingBasin, type Lift, liftDepth, roomBeforeLift, type WaterToLeave, waterToLeave } from "./float.ts";
export { type FloatOccasion, floatOccasions, floatOn, type OccasionAnswer, type OutsideFacts, rainInTheHole } from "./float-occasions.ts";
export { leakSettling, type Settling } from "./leak-settling.ts";
export {
  type Evaporated,
  type LeakConditions,
  type LeakLoss,
  type LeakTest,
  type LeakTestAnswer,
  type LeakTestFault,
  type LeakTestKind,
  type LevelReadings,
  leakTest,
  leakTestFaults,
  lostByFallsAndEdges,
} from "./leak-test.ts";
export { type LipFlow, lipFlowRatio, outOfLevelForRatio } from "./lip-level.ts";
export { type DaysToOverflow, daysToOverflow, type Overflow, type OverflowFacts, overflow } from "./overflow.ts";
export type { DaySteps } from "./penman-monteith.ts";
export { type Plan, planArea } from "./plan-area.ts";
export { type PoolAir, type PoolEvaporation, poolEvaporation } from "./pool-evaporation.ts";
export {
  type DaysWithoutMakeUp,
  daysWithoutMakeUp,
  type Reserve,
  reserve,
  type TimeUntilAir,
  timeToFill,
  timeUntilAir,
} from "./reserve.ts";
export {
  flowForLip,
  flowOfLips,
  flowPerLip,
  gallonsPerHourPerInch,
  type HeadByFormula,
  headsByFormula,
  LEAST_HEAD_OF_FORMULAS,
  type Sheet,
  sheetOverLip,
  toGallonsPerHourPerInch,
} from "./spillway.ts";
export {
  type Boulder,
  boulderWeight,
  layerWeight,
  type StatedLoad,
  type StoneAgainstLoad,
  type StoneLayer,
  type StoneOnLid,
  type StoneWeight,
  stoneAgainstLoad,
  stoneWeight,
} from "./stone.ts";
export { type InTransit, type PipeWater, type PoolBehindLip, type StreamPiece, type Watercourse, waterInTransit } from "./transit.ts";
export { type EvaporationOfDay, evaporationOfDay, type Weather } from "./weather.ts";
export { kindsvaterCarterTable } from "./weir-coefficients.ts";
export { type Lip, type OutsideRange, outsideRange, type WeirFormula, weirFlow, weirFormulas, weirHead } from "./weir-formulas.ts";
