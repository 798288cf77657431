import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Miniflare, type MiniflareOptions } from "miniflare";
import { bundleEntry } from "#infra/build/index.ts";
import { miniflareOptions } from "#infra/local/edge-plan.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";

/** Two workers over one database, as the platform runs them; each request says by how much their clock is ahead. */
export interface TwoEdges {
  readonly urls: readonly [string, string];
  readonly origin: string;
  readonly operatorKey: string;
  /** Every row of a table, past the edges. */
  rows(table: string): Promise<readonly Readonly<Record<string, unknown>>[]>;
  stop(): Promise<void>;
}

/** Milliseconds, by this header. */
export const AHEAD = "x-test-ahead";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

const entry = `import { edgeOf } from ${JSON.stringify(here("../../functions/edge/edge.ts"))};
import { routes } from ${JSON.stringify(here("../../functions/edge/routes/index.ts"))};
let ahead = 0;
const edge = edgeOf(routes, () => Date.now() + ahead);
export default {
  ...edge,
  fetch(request, environment, context) {
    ahead = Number(request.headers.get("${AHEAD}") ?? 0);
    return edge.fetch(request, environment, context);
  },
};`;

export async function startTwoEdges(): Promise<TwoEdges> {
  const directory = await mkdtemp(join(tmpdir(), "asburied-two-edges-"));
  const source = join(directory, "worker.ts");
  await writeFile(source, entry);
  const worker = await bundleEntry(source, join(directory, "two.js"));
  const nowhere = "http://127.0.0.1:9";
  const [origin, operatorKey] = ["https://records.example.net", "key"];
  const bindings = {
    STORE_ENDPOINT: nowhere,
    STORE_REGION: "auto",
    STORE_BUCKET: "b",
    STORE_ACCESS_KEY: "a",
    STORE_SECRET_KEY: "s",
    MEDIA_URL: nowhere,
    PRINT_URL: nowhere,
    SERVICE_SECRET: "secret",
    OPERATOR_KEY: operatorKey,
    ORIGIN: origin,
  };
  const plan = { port: 0, worker, persist: directory, migrations: "", app: "", sweepEvery: 0, bindings };
  const { host, cf, telemetry, defaultPersistRoot, port, queueConsumers, ...one } = miniflareOptions(plan) as unknown as Record<
    string,
    unknown
  >;
  const socket = { unsafeDirectSockets: [{ host: "127.0.0.1", port: 0 }] };
  const workers = [
    { ...one, ...socket, name: "first", queueConsumers },
    { ...one, ...socket, name: "second" },
  ];
  const miniflare = new Miniflare({ host, cf, telemetry, defaultPersistRoot, port, workers } as unknown as MiniflareOptions);
  await miniflare.ready;
  const database = await miniflare.getD1Database("DB", "first");
  await migrate(database as unknown as Database, here("../../infra/migrations"), "now");
  const url = async (name: string): Promise<string> => String(await miniflare.unsafeGetDirectURL(name)).replace(/\/$/, "");
  return {
    urls: [await url("first"), await url("second")],
    origin,
    operatorKey,
    rows: async (table) => (await database.prepare(`SELECT * FROM ${table}`).all()).results,
    async stop() {
      await miniflare.dispose();
      await rm(directory, { recursive: true, force: true });
    },
  };
}
