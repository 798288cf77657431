export { type RecordSurroundings, recordPage, recordTitle } from "./page.ts";
export type { PrintedPhoto } from "./pictures.ts";
