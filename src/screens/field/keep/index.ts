export type { Book } from "./book.ts";
export { type Photo, photoOf } from "./enter.ts";
export { Keep } from "./keep.ts";
export type { Progress } from "./passed.ts";
export type { Glance, GlanceLine, JobHead, KeptJob, OwnEntry, OwnPhoto } from "./shapes.ts";
export type { Entered, KeepState, Words } from "./state.ts";
export { KeepContext, useBook, useKeep } from "./use-keep.ts";
