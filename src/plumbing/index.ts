export {
  type BoreTable,
  type BoreTableName,
  boreAsMeasured,
  boreTables,
  DEFAULT_BORE_TABLE,
  pipeBore,
  type Seen,
  schedule40,
} from "./bores.ts";
export {
  type CementTable,
  type CementTableName,
  type CureBlock,
  cementTables,
  DEFAULT_CEMENT_TABLE,
  type SizeRange,
} from "./cement-tables.ts";
export { hazenWilliamsCoefficients, type PipeLining, pipeCoefficient } from "./coefficients.ts";
export { type DrainBack, type DrainingLine, drainBack, pipeContents } from "./contents.ts";
export { type CureClock, cureClock, type LabelClock, type LabelledProduct, labelClock, released } from "./cure-clock.ts";
export {
  type DarcyLoss,
  type DarcyPipe,
  darcyLoss,
  type FlowRegime,
  frictionFactor,
  SMOOTH_PLASTIC_ROUGHNESS,
  WATER_VISCOSITY_20C,
} from "./darcy-weisbach.ts";
export {
  equivalentLength,
  equivalentRun,
  type FittingCount,
  type FittingKind,
  type FittingTable,
  fittingKinds,
  fittingTables,
  type PublishedLength,
  publishedLengths,
} from "./fittings.ts";
export { compareFlow, type Explanation, explainFlow, type FlowCause, type FlowComparison } from "./flow-difference.ts";
export {
  BIN_LEAST_SECONDS,
  BIN_MARK_SHARE,
  binFillTime,
  binVolume,
  flowByCounter,
  flowByMeter,
  flowFromBin,
  flowFromDrawDown,
  METER_SHARE,
  timeByHand,
  WATCH_HALF_WIDTH,
} from "./flow-measured.ts";
export { gallonsPerHour, gallonsPerMinute, litresPerMinute, toGallonsPerHour, toGallonsPerMinute } from "./flow-units.ts";
export { frictionInSeries, frictionLoss, type PipeSection } from "./friction.ts";
export { type CanTimes, type GlueSession, type Humidity, type JointKind, type JointTimes, jointTimes } from "./joint-times.ts";
export { curveAt } from "./monotone.ts";
export { type OperatingOutcome, type OperatingPoint, operatingPoint } from "./operating-point.ts";
export { nextPipeSize, nominalInches, type PipeSize, pipeSizeOf, pipeSizes } from "./pipe-sizes.ts";
export {
  CARD_TOLERANCE,
  type CurveTolerance,
  type PumpCurve,
  type PumpPoint,
  pumpCurve,
  pumpHead,
  type VerticalPiece,
} from "./pump-curve.ts";
export {
  type Insertion,
  insertion,
  type SocketDimensions,
  type SocketStandard,
  socketDimensions,
  socketStandards,
  WITNESS_MARK_BEYOND,
  witnessMark,
} from "./sockets.ts";
export { type KnownLoss, type SystemCurve, systemAt } from "./system-curve.ts";
export { type PipeVelocity, pipeVelocity, VELOCITY_GUIDANCE } from "./velocity.ts";
