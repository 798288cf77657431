import { existsSync } from "node:fs";
import { dirname } from "node:path";
import type { MiniflareOptions } from "miniflare";
import { assets, bindings, compatibility, queue, queueNames } from "../deploy/index.ts";
import { type Shard, shards } from "../shards/index.ts";

/** All that the process around workerd is told, handed to it as JSON in `EDGE_PLAN`. */
export interface EdgePlan {
  readonly port: number;
  /** The bundled worker, one file. */
  readonly worker: string;
  /** Where D1 lies on disk. */
  readonly persist: string;
  readonly migrations: string;
  /** How many databases are bound, of the list in infra/shards; one when absent. */
  readonly shards?: number;
  /** The built app; left out while there is none. */
  readonly app: string;
  /** How often the worker's `scheduled` is called, in milliseconds. */
  readonly sweepEvery: number;
  /** Where browsers find it, when something that speaks TLS stands before it; the worker then sees that address and no other. */
  readonly behind?: string;
  /** The worker's variables and secrets. */
  readonly bindings: Readonly<Record<string, string>>;
}

export const shardsOf = ({ shards: count = 1 }: Pick<EdgePlan, "shards">): readonly Shard[] => shards.slice(0, count);

const assetsOf = (app: string): object =>
  existsSync(app)
    ? {
        assets: {
          directory: app,
          binding: bindings.assets,
          assetConfig: { not_found_handling: assets.notFound },
          routerConfig: { has_user_worker: true, static_routing: { user_worker: [...assets.workerFirst] } },
        },
      }
    : {};

const { media, dead } = queueNames("");
const consumed = { maxBatchSize: queue.batch, maxBatchTimeout: queue.waits.local };

/** Miniflare's options. A queue without a consumer drops what it is sent, so the dead letters have their own. */
export const miniflareOptions = (plan: EdgePlan): MiniflareOptions =>
  ({
    name: "edge",
    modulesRoot: dirname(plan.worker),
    modules: [{ type: "ESModule", path: plan.worker }],
    host: "127.0.0.1",
    port: plan.port,
    cf: false,
    ...(plan.behind === undefined ? {} : { upstream: plan.behind }),
    telemetry: { enabled: false },
    defaultPersistRoot: plan.persist,
    compatibilityDate: compatibility.date,
    compatibilityFlags: [...compatibility.flags],
    bindings: { ...plan.bindings },
    d1Databases: Object.fromEntries(shardsOf(plan).map(({ binding, database }) => [binding, database])),
    queueProducers: { [bindings.queue]: { queueName: media } },
    queueConsumers: {
      [media]: { ...consumed, maxRetries: queue.retries, deadLetterQueue: dead },
      [dead]: consumed,
    },
    ...assetsOf(plan.app),
  }) as MiniflareOptions;
