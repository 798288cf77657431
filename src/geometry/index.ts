export { fourthPlace } from "./fourth-place.ts";
export { lipOutOfLevel, movedSince, type OutOfLevel, outOfLevel, type RimShape, rimBelowFinishedGrade, waterLostToTilt } from "./level.ts";
export { COINCIDENT_WITHIN, COLLINEAR_BELOW, heightFromRod, type Place } from "./places.ts";
export { fitPlane, type Plane, type PlaneFit, planeAt, risesAcross } from "./plane.ts";
