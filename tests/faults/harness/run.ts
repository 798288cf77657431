import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { bundleEntry } from "#infra/build/index.ts";
import { type Stack, startStack } from "#infra/local/index.ts";
import { Client, type Company, newCompany } from "../../helpers/edge.ts";
import { originalsOnDisk } from "../comparison.ts";
import type { KeptRecord } from "../phone-that-keeps.ts";
import { limited } from "../waiting.ts";
import type { Broke } from "./breaking.ts";
import { rowFaults } from "./checks.ts";
import { roundOf } from "./draws.ts";
import { type Ground, layGround } from "./ground.ts";
import { Harness, ROUND_LIMIT_MS } from "./harness.ts";
import type { Told } from "./phone.ts";
import { StoreBetween } from "./store-between.ts";

export interface FaultPlan {
  readonly seed: number;
  /** Which rounds, from 1. */
  readonly rounds: readonly number[];
  readonly log: (line: string) => void;
}

export interface FaultOutcome {
  readonly broke: readonly Broke[];
  readonly told: Told;
  readonly records: readonly KeptRecord[];
  readonly jobs: number;
  readonly originals: number;
  /** Seconds of each round. */
  readonly took: readonly { readonly number: number; readonly seconds: number }[];
  /** What is lost, twice there, not verified or not done; nothing when all is well. */
  readonly wrong: readonly string[];
}

const PHONES = 20;
const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

async function signedIn(company: Company, edge: string): Promise<readonly Omit<Ground, "hung">[]> {
  const grounds: Omit<Ground, "hung">[] = [];
  for (let i = 0; i < PHONES; i += 1) {
    const { link } = (await company.owner.post(`/api/people/${company.people.crew}/links`)).body;
    const { cookie } = await new Client(edge).signIn(link);
    grounds.push({ edge, cookie, clockAhead: 0, sending: false });
  }
  return grounds;
}

/** Runs the rounds on a stack of their own, and compares afterwards. Throws only where it cannot run at all. */
export async function runFaults({ seed, rounds, log }: FaultPlan): Promise<FaultOutcome> {
  const directory = await mkdtemp(join(tmpdir(), "asburied-faults-"));
  const liftGround = layGround();
  const between = await new StoreBetween().open();
  let stack: Stack | undefined;
  try {
    const worker = await bundleEntry(here("../../../functions/edge/local/faulty-edge.ts"), join(directory, "faulty-edge.js"));
    const instead = { worker, app: join(directory, "no-app") };
    stack = await startStack({ directory, demoLinks: false, sweepEvery: 300, storeAt: between.address, instead });
    between.target = stack.store;
    const company = await newCompany(stack.edge, stack.secrets.operatorKey);
    const harness = new Harness(seed, stack, between, company, await signedIn(company, stack.edge));
    const took: { number: number; seconds: number }[] = [];
    const wrong: string[] = [];
    const working = harness.work();
    for (const [i, number] of rounds.entries()) {
      const began = performance.now();
      const words = await harness.round(roundOf(seed, number, PHONES), i === 0).catch((thrown: Error) => thrown);
      const seconds = (performance.now() - began) / 1000;
      took.push({ number, seconds });
      log(`round ${number}: ${words instanceof Error ? words.message : words}; ${seconds.toFixed(1)} s`);
      if (words instanceof Error) {
        wrong.push(`round ${number}: ${words.message}`);
        break;
      }
    }
    harness.stop();
    await limited("the phones' end", working, ROUND_LIMIT_MS).catch((thrown: Error) => wrong.push(thrown.message));
    wrong.push(...(await harness.compare().catch((thrown: Error) => [`not compared: ${thrown.message}`])));
    await stack.stop();
    wrong.push(...rowFaults(directory, harness.told));
    const { whole, half, parts } = await originalsOnDisk(join(directory, "store"));
    if (half.length > 0) wrong.push(`${half.length} originals on the disk are not what their names say`);
    if (parts > 0) wrong.push(`${parts} parts of files are left on the disk`);
    const { told, records, jobs, broke } = harness;
    return { broke, told, records, jobs: jobs.length, originals: whole, took, wrong: [...told.problems, ...wrong] };
  } finally {
    await stack?.stop();
    await between.close();
    liftGround();
    await rm(directory, { recursive: true, force: true });
  }
}
