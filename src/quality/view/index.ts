export type * from "./answer-view.ts";
export { answerView, SHOWN_ROWS, tableLines } from "./build.ts";
export { lengthText } from "./cells.ts";
export { qualitySpeaking } from "./make-speaking.ts";
export { type NamesKnown, namer } from "./names.ts";
export type { QualitySpeaking } from "./speaking.ts";
