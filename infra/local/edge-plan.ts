import { existsSync } from "node:fs";
import { dirname } from "node:path";
import type { MiniflareOptions } from "miniflare";

/** All that the process around workerd is told, handed to it as JSON in `EDGE_PLAN`. */
export interface EdgePlan {
  readonly port: number;
  /** The bundled worker, one file. */
  readonly worker: string;
  /** Where D1 lies on disk. */
  readonly persist: string;
  readonly migrations: string;
  /** The built app; left out while there is none. */
  readonly app: string;
  /** How often the worker's `scheduled` is called, in milliseconds. */
  readonly sweepEvery: number;
  /** The worker's variables and secrets. */
  readonly bindings: Readonly<Record<string, string>>;
}

const assetsOf = (app: string): object =>
  existsSync(app)
    ? {
        assets: {
          directory: app,
          binding: "ASSETS",
          assetConfig: { not_found_handling: "single-page-application" },
          routerConfig: { has_user_worker: true, static_routing: { user_worker: ["/api/*", "/in/*", "/released/*"] } },
        },
      }
    : {};

/** Miniflare's options. A queue without a consumer drops what it is sent, so the dead letters have their own. */
export const miniflareOptions = (plan: EdgePlan): MiniflareOptions =>
  ({
    name: "edge",
    modulesRoot: dirname(plan.worker),
    modules: [{ type: "ESModule", path: plan.worker }],
    host: "127.0.0.1",
    port: plan.port,
    cf: false,
    telemetry: { enabled: false },
    defaultPersistRoot: plan.persist,
    compatibilityDate: "2026-07-01",
    compatibilityFlags: ["nodejs_compat"],
    bindings: { ...plan.bindings },
    d1Databases: { DB: "asburied" },
    queueProducers: { MEDIA_QUEUE: { queueName: "media" } },
    queueConsumers: {
      media: { maxBatchSize: 5, maxBatchTimeout: 0.2, maxRetries: 2, deadLetterQueue: "media-dead" },
      "media-dead": { maxBatchSize: 5, maxBatchTimeout: 0.2 },
    },
    ...assetsOf(plan.app),
  }) as MiniflareOptions;
