import type { Ready } from "#core/wire/index.ts";
import type { Environment } from "./environment.ts";
import type { Services } from "./services.ts";
import { boundIn, databasesOf } from "./shards/index.ts";

const part = (why: string | undefined) => (why === undefined ? { up: true } : { up: false, why });

/** Every shard answers, and none lacks in which a company lies. */
async function databaseDown(environment: Environment): Promise<string | undefined> {
  await Promise.all(databasesOf(environment).map((shard) => shard.prepare("SELECT 1 FROM company LIMIT 1").all()));
  const { results } = await environment.DB.prepare("SELECT DISTINCT shard FROM placed").all<{ shard: string }>();
  const shards: readonly string[] = boundIn(environment);
  return results.every(({ shard }) => shards.includes(shard)) ? undefined : "a shard is not bound";
}

/** Asks each part that the edge needs. */
export async function readiness({ environment, store, machines }: Services): Promise<Ready> {
  const [database, stored, media, print] = await Promise.all([
    databaseDown(environment).catch((thrown: Error) => thrown.message.slice(0, 120)),
    // An object that is not there is a good answer too.
    store
      .head("ready/originals/none")
      .then((head) => (head.ok || head.refusal.code === "photo-unknown" ? undefined : String(head.refusal.figures.why))),
    machines.down("media"),
    machines.down("print"),
  ]);
  const parts = { database: part(database), store: part(stored), media: part(media), print: part(print) };
  return { ready: Object.values(parts).every(({ up }) => up), parts };
}
