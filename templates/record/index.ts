export { type RecordSurroundings, recordPage, recordTitle } from "./page.ts";
export type { PrintedPhoto } from "./pictures.ts";
export { type RecordWord, recordWordKeys } from "./words.ts";
