export { type CardPlane, cardPlane, UNKNOWN_LENS } from "./card-plane.ts";
export type { CardCode, CardPicture, FourSpots, Lens, SeenCode, SeenCorner } from "./card-shape.ts";
export { fourthPlace } from "./fourth-place.ts";
export { EARTH_RADIUS, type EarthPoint, greatCircle, SPHERE_SHARE } from "./great-circle.ts";
export { type Homography, homographyFrom, mapSpot, type Spot, type SpotPair, turnedBack } from "./homography.ts";
export { lensFrom } from "./lens-from.ts";
export { lipOutOfLevel, movedSince, type OutOfLevel, outOfLevel, type RimShape, rimBelowFinishedGrade, waterLostToTilt } from "./level.ts";
export { OWN_PHOTO_DOUBTS, type PhotoDoubts, type PhotoLength, type PhotoSource, photoLength, photoSources } from "./photo-length.ts";
export { type Stand, type StandCode, standCodes, standFor } from "./photo-stand.ts";
export { COINCIDENT_WITHIN, COLLINEAR_BELOW, heightFromRod, type Place } from "./places.ts";
export { fitPlane, type Plane, type PlaneFit, planeAt, planeThrough, risesAcross } from "./plane.ts";
export { type Correction, correctionFor, type SetOut, type SetOutTarget, setOut } from "./set-out.ts";
export {
  type DesignHeights,
  heightsFromDesign,
  type SetOutDesign,
  type SetOutFigure,
  type SetOutHeight,
  type SetOutLimits,
  type SetOutPlace,
  setOutPlaces,
} from "./set-out-heights.ts";
export { IN_LINE_BELOW, type PlaceByTies, placeByTies, type TieConcern, type TiedPlace } from "./ties.ts";
export { CHI_SQUARE_95, type Consistency, MOST_TIES } from "./ties-chi-square.ts";
export { type Crossing, crossingAt, crossings, degreesBetween } from "./ties-crossing.ts";
export { type FurtherMark, type MarksNetwork, type MeasuredMarks, marksFromDistances } from "./ties-marks.ts";
export {
  ELLIPSE_95,
  type ErrorEllipse,
  errorEllipse,
  levelDistance,
  type Mark,
  type PlanPoint,
  planDistance,
  type Side,
  type SideSaid,
  type Tie,
  type Vector,
} from "./ties-plan.ts";
export { type DrawingScale, drawingScales, fitToSheet, onSheet, type SheetFit } from "./ties-to-scale.ts";
