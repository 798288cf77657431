/** A database of the installation, by the name of its binding and its own. */
export interface Shard {
  readonly binding: string;
  readonly database: string;
}

/**
 * The databases that an installation may have, in their order. The first is the directory of all and is always there; each of the
 * others is bound when it is needed, and stays bound while a company lies in it. All are built by the same migrations.
 */
export const shards: readonly [Shard, ...Shard[]] = [
  { binding: "DB", database: "asburied" },
  { binding: "DB_2", database: "asburied-2" },
  { binding: "DB_3", database: "asburied-3" },
  { binding: "DB_4", database: "asburied-4" },
];
