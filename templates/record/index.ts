export { type Pages, ROOM_FOR_PAGE } from "./contents.ts";
export type { BoundPaper } from "./enclosures.ts";
export { type RecordSurroundings, recordPage, recordTitle } from "./page.ts";
export { boundArea } from "./paper.ts";
export type { PrintedPhoto } from "./pictures.ts";
export { type ReleasedSurroundings, releasedPage } from "./released.ts";
