import { Worker } from "node:worker_threads";
import { bundleEdge } from "../build/index.ts";
import type { Driven, DrivePlan } from "./drive.ts";
import type { Platform } from "./platform.ts";
import type { ThreadPlan } from "./thread.ts";

/** Heap of one thread. */
const MEGABYTES = 700;

const inThread = (workerData: ThreadPlan): Promise<Driven> =>
  new Promise((resolve, reject) => {
    const thread = new Worker(new URL("./thread.ts", import.meta.url), {
      workerData,
      resourceLimits: { maxOldGenerationSizeMb: MEGABYTES },
    });
    thread.once("message", resolve).once("error", reject);
    thread.once("exit", (code) => reject(new Error(`a thread of the simulation ended with ${code}`)));
  });

/**
 * Two companies that work at the same time, each with an edge and a database of its own: a young one, and one with finished jobs behind it,
 * so that what grows with a company's past is seen to grow.
 */
export async function driven(crewDays: number, seed: number, platform: Platform): Promise<Driven> {
  const { crewsPerCompany: crews, daysPerJob } = platform.day;
  const days = daysPerJob * Math.max(2, Math.round(crewDays / 2 / crews / daysPerJob));
  const worker = await bundleEdge("worker");
  const plans: readonly DrivePlan[] = [
    { crews, days, history: 0, seed },
    { crews, days, history: HISTORY, seed: seed + 1 },
  ];
  const all = await Promise.all(plans.map((plan) => inThread({ worker, plan, platform })));
  const [first] = all as [Driven, ...Driven[]];
  const sum = (of: (one: Driven) => number): number => all.reduce((total, one) => total + of(one), 0);
  return {
    traces: all.flatMap(({ traces }) => traces),
    crewDays: sum((one) => one.crewDays),
    requests: sum((one) => one.requests),
    refused: Object.assign({}, ...all.map(({ refused }) => refused)),
    bytesPerJob: sum((one) => one.bytesPerJob) / all.length,
    perJob: first.perJob,
  };
}

/** Finished jobs of the older company. */
export const HISTORY = 100;
