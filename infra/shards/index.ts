export { type Shard, shards } from "./list.ts";
