export { isClosed } from "./fence.ts";
export { moveOn, openLate } from "./move.ts";
export { at, behind, behindRemembered, onShard, whereFounded } from "./reach.ts";
export { boundIn, databasesOf } from "./shards.ts";
