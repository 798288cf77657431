import "../node-version.mjs";
import { chmodSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { Miniflare } from "miniflare";
import { cron } from "../deploy/index.ts";
import { type EdgePlan, miniflareOptions, shardsOf } from "./edge-plan.ts";
import { type Database, migrate } from "./migrations.ts";
import { wipeErased } from "./wiped.ts";

/** The process around workerd: reads `EDGE_PLAN`, builds the databases up, calls the worker's `scheduled`. */
const plan = JSON.parse(process.env.EDGE_PLAN ?? "null") as EdgePlan | null;
if (plan === null) throw new Error("EDGE_PLAN is missing: this file is started by the local stack.");

const script = fileURLToPath(new URL("./workerd.sh", import.meta.url));
if ((statSync(script).mode & 0o111) === 0) chmodSync(script, 0o755);
process.env.MINIFLARE_WORKERD_PATH = script;
process.env.WORKERD_COMMAND = (createRequire(import.meta.url)("workerd") as { default: string }).default;
delete process.env.EDGE_PLAN;

wipeErased(plan.persist);
const miniflare = new Miniflare(miniflareOptions(plan));
await miniflare.ready;
for (const { binding } of shardsOf(plan))
  await migrate((await miniflare.getD1Database(binding, "edge")) as unknown as Database, plan.migrations, new Date().toISOString());

let stopping = false;
const stop = async (): Promise<void> => {
  if (stopping) return;
  stopping = true;
  clearInterval(sweeping);
  await miniflare.dispose().catch(() => {});
  process.exit(0);
};
for (const signal of ["SIGTERM", "SIGINT"]) {
  // Miniflare's own hook would leave before the database is closed
  process.removeAllListeners(signal);
  process.on(signal, () => void stop());
}

let busy = false;
const sweep = async (): Promise<void> => {
  if (busy || stopping) return;
  busy = true;
  try {
    // asked for anew each time: when workerd dies, Miniflare starts another and the old handle is dead
    const worker = await miniflare.getWorker("edge");
    await worker.scheduled({ cron });
  } catch (error) {
    if (!stopping) console.error(`scheduled: ${(error as Error).message}`);
  } finally {
    busy = false;
  }
};
const sweeping = setInterval(() => void sweep(), plan.sweepEvery);

console.log(JSON.stringify({ ready: true, port: plan.port }));
