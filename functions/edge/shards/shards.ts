import type { Environment } from "../environment.ts";

/** The name of a shard's binding: `DB`, which is also the directory, then `DB_2`, `DB_3` and so on. */
export type ShardName = "DB" | `DB_${number}`;
export const FIRST: ShardName = "DB";

const isShardName = (name: string): name is ShardName => /^DB(_\d{1,3})?$/.test(name);

/** Those that are bound, in the order of their numbers. */
export const boundIn = (environment: Environment): readonly ShardName[] =>
  Object.keys(environment)
    .filter(isShardName)
    .sort((a, b) => a.length - b.length || (a < b ? -1 : 1));

/** @throws where no such shard is bound: a company lies in a database that this edge was not given */
export function shardIn(environment: Environment, name: string): ShardName {
  if (!isShardName(name) || environment[name] === undefined) throw new Error("a shard is not bound");
  return name;
}

export function databaseOf(environment: Environment, name: ShardName): D1Database {
  const database = environment[name];
  if (database === undefined) throw new Error("a shard is not bound");
  return database;
}

export const databasesOf = (environment: Environment): readonly D1Database[] =>
  boundIn(environment).map((name) => databaseOf(environment, name));
