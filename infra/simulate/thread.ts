import { parentPort, workerData } from "node:worker_threads";
import { type DrivePlan, drive } from "./drive.ts";
import { edgeInNode, workerFrom } from "./edge-in-node.ts";
import type { Platform } from "./platform.ts";

/** What a thread is handed. */
export interface ThreadPlan {
  readonly worker: string;
  readonly plan: DrivePlan;
  readonly platform: Platform;
}

const { worker, plan, platform } = workerData as ThreadPlan;
const edge = await edgeInNode(await workerFrom(worker));
try {
  parentPort?.postMessage(await drive(edge, plan, platform));
} finally {
  edge.stop();
}
