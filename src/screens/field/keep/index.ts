export { type Book, bookOf, clearancesOf } from "./book.ts";
export { type Photo, photoOf } from "./enter.ts";
export { type Entered, Keep, type KeepState, type Words } from "./keep.ts";
export type { Progress } from "./send.ts";
export type { KeptJob, OwnEntry, OwnPhoto } from "./shapes.ts";
export { KeepContext, useBook, useKeep } from "./use-keep.ts";
