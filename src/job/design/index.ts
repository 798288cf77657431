export { type CoveredSession, cureClockOf, cureTimes, type SessionTyped } from "./cure-times.ts";
export { designCheck } from "./design-check.ts";
export {
  type DesignLine,
  type DesignMessage,
  type DesignQuestion,
  type DesignState,
  designQuestions,
  designStates,
} from "./design-line.ts";
export { type Expectation, type ExpectationId, expectationIds, expectationKinds } from "./expectation.ts";
export { expectationOf, expectations } from "./expectations.ts";
export { type FigureUsed, figuresUsed } from "./figures-used.ts";
export type { Known } from "./known.ts";
export { type LineAtWork, lineAtWork } from "./line-at-work.ts";
export { type HeadOverFlow, type LineCurves, lineCurves } from "./line-curves.ts";
export { dropAlong } from "./power-figures.ts";
export { pumpPoints } from "./pump-points.ts";
export { designFigure, rodTargets, setOutHeights } from "./set-out-figures.ts";
export { type PlacedPoint, type PlaceOnPlan, type PointOnPlan, type SitePlan, sitePlan, type TiedPoint } from "./site-plan.ts";
export { stoneOnLid } from "./stone-figures.ts";
export { type DesignSwitches, designSwitches, switchesBySheetId } from "./switches.ts";
export { type DesignFigure, designFigures, type FigureKey, type Instead } from "./vocabulary.ts";
