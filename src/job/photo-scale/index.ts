export { type CannotTell, type ComparedLength, disagreeingOn, type PhotoComparison, photoComparisons } from "./photo-comparison.ts";
export { type PhotoMeasured, type PrintScale, photoMeasured, printScale } from "./photo-measured.ts";
export { isMeasurable, photoNeeds, photoPlacing } from "./photo-needs.ts";
