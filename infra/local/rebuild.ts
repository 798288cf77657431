import "../node-version.mjs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { Client } from "../demo/index.ts";
import type { DemoSummary } from "./demo-result.ts";

/**
 * `npm run rebuild`: computes the findings of every job of a company again from its ledger, on a stack that is running, and
 * compares them with those that are stored. Exit 1 where one differs. `--link` signs in; without it the demo's company owner does.
 */
const { link } = parseArgs({ options: { link: { type: "string" } } }).values;

async function ownersLink(): Promise<string> {
  const directory = process.env.ASBURIED_DATA ?? fileURLToPath(new URL("../../data", import.meta.url));
  const { links } = JSON.parse(await readFile(join(directory, "demo.json"), "utf8")) as DemoSummary;
  return links.owner ?? "";
}

interface Rebuilt {
  readonly same: boolean;
  readonly differences: readonly { readonly place: string }[];
}

try {
  const whole = link ?? (await ownersLink());
  const client = await new Client(new URL(whole).origin).signIn(whole);
  const { jobs } = await client.get<{ jobs: readonly { job: string; title: string }[] }>("/api/jobs");
  let different = 0;
  for (const { job, title } of jobs) {
    const { same, differences } = await client.get<Rebuilt>(`/api/rebuild/${job}`);
    if (!same) different += 1;
    console.log(`${title}: ${same ? "the same findings again" : `differs at ${differences.map(({ place }) => place).join(", ")}`}`);
  }
  console.log(`${jobs.length - different} of ${jobs.length} jobs give the same findings again`);
  process.exitCode = different === 0 ? 0 : 1;
} catch (error) {
  console.error(`Not rebuilt: ${(error as Error).message}. The stack must be running (npm start).`);
  process.exitCode = 1;
}
