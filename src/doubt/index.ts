export {
  type DoubtFigures,
  ownFigures,
  type Placing,
  placingHalfWidths,
  type Receiver,
} from "./figures.ts";
export { type Asked, faultIn, refused, unfit, unfitAt, type Wanted } from "./fit.ts";
export { firstOrder, product, quotient, throughSteps } from "./propagation.ts";
export { type LevelLine, type ReadingCircumstances, readingUncertainty } from "./reading.ts";
export { type Agreement, agreeWithinDoubt, type Repeated, repeated, setUpCloses } from "./repeated.ts";
export {
  type Contributor,
  contributingRoles,
  contributors,
  ofReading,
  ofSetUp,
  roleOfSource,
  type SourceRole,
  sourceRoles,
} from "./sources.ts";
export { handbook44Tapes, type TapeClass, tapePermittedError } from "./tapes.ts";
export {
  add,
  COVERAGE_FACTOR,
  certain,
  combine,
  expanded,
  magnitude,
  mean,
  type NonEmpty,
  rectangular,
  resolutionUncertainty,
  scale,
  standardUncertainty,
  subtract,
  type Term,
  total,
  type Uncertain,
  uncertaintyOfDifference,
  withSource,
} from "./uncertain.ts";
