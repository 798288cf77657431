export { ALIKE_AT_MOST, alike, nearness } from "./alike.ts";
export { type Bands, bandsApart, bandsOf, type LookUp, lookUp, nearestOf } from "./bands.ts";
export { CARD_MODULES, cardDecoding, greyFile, WHOLE_CARD } from "./card-decoding.ts";
export {
  CARD_VERSION,
  type CardPaper,
  type CardPlace,
  type CardSigns,
  cardCodeSigns,
  cardSigns,
  NO_STEP,
  partSigns,
  signsOf,
} from "./card-signs.ts";
export { codeCorners, type FourCorners, LEAST_CORNER_DOUBT, type RefinedCorner } from "./code-corners.ts";
export { type CrossedEdge, edgeAcross, LEAST_EDGE_DOUBT } from "./edge-across.ts";
export type { PicturePoint } from "./edge-line.ts";
export type { CardCodeSeen, PhotoFacts, PhotoNote, PhotoType, Position, Rendition, Taken, Unreadable } from "./facts.ts";
export { type Exposure, exposure, GREY_LONG_EDGE, type Grey, greyFromRgba, sharpness } from "./grey.ts";
export { type JudgedFacts, judgePhoto, ownPhotoLimits, type PhotoJudgement, type PhotoLimits, type PhotoReason } from "./judge.ts";
export { type Abstained, LIKENESS_BITS, type Likeness, likeness } from "./likeness.ts";
export { type GreyMeasures, measureGrey } from "./measure.ts";
export { isRegion, MOST_REGIONS, pixelsOf, type Region } from "./regions.ts";
export { screenshotLook } from "./screenshot.ts";
export { type PhotoUse, type SeenHow, weightOf } from "./seen-before.ts";
export { type Stretched, stretched, stretches } from "./stretched.ts";
export { momentAt, momentOf, type TakenMoment, whyNoPosition, whyNoTime } from "./taken.ts";
export { distance, type Nearest, nearest, type Turn, turned, turns, undone } from "./turns.ts";
