export type { PhotoFacts, PhotoNote, PhotoType, Position, Rendition, Taken, Unreadable } from "./facts.ts";
export { type Exposure, exposure, GREY_LONG_EDGE, type Grey, type GreyMeasures, measureGrey, sharpness } from "./grey.ts";
export { type JudgedFacts, judgePhoto, ownPhotoLimits, type PhotoJudgement, type PhotoLimits, type PhotoReason } from "./judge.ts";
export { type Abstained, LIKENESS_BITS, type Likeness, likeness } from "./likeness.ts";
export { distance, nearest, type Turn, turned, turns } from "./turns.ts";
