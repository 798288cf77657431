import "../node-version.mjs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { Client } from "../demo/index.ts";
import type { DemoSummary } from "./demo-result.ts";

/**
 * `npm run rebuild`: computes the findings of every job of a company again from its ledger, on a stack that is running, with the rows
 * of the register of warranties and of the owner's questions, compares them with those that are stored, and writes anew what differs.
 * Exit 1 where one differed; `--compare` writes nothing. `--link` signs in; without it the demo's company owner does.
 */
const { link, compare = false } = (() => {
  try {
    return parseArgs({ options: { link: { type: "string" }, compare: { type: "boolean" } } }).values;
  } catch (error) {
    console.error(`${(error as Error).message}\nnpm run rebuild -- [--link LINK] [--compare]`);
    process.exit(2);
  }
})();

async function ownersLink(): Promise<string> {
  const directory = process.env.ASBURIED_DATA ?? fileURLToPath(new URL("../../data", import.meta.url));
  const { links } = JSON.parse(await readFile(join(directory, "demo.json"), "utf8")) as DemoSummary;
  return links.owner ?? "";
}

/** Places of one job that are named; the others are counted. */
const MOST_PLACES = 8;

interface Rebuilt {
  readonly same: boolean;
  readonly differences: readonly { readonly place: string }[];
}

try {
  const whole = link ?? (await ownersLink());
  const client = await new Client(new URL(whole).origin).signIn(whole);
  const { jobs } = await client.get<{ jobs: readonly { job: string; title: string }[] }>("/api/jobs");
  const kinds = { findings: 0, afterWork: 0, observed: 0 };
  let different = 0;
  for (const { job, title } of jobs) {
    const path = `/api/rebuild/${job}`;
    const { same, differences } = compare ? await client.get<Rebuilt>(path) : await client.send<Rebuilt>("POST", path);
    if (!same) different += 1;
    for (const kind of new Set(differences.map(({ place }) => place.split("/")[0]))) kinds[kind as keyof typeof kinds] += 1;
    const places = differences.slice(0, MOST_PLACES).map(({ place }) => place);
    const more = differences.length > places.length ? ` and ${differences.length - places.length} more` : "";
    console.log(`${title}: ${same ? "the same again" : `differed at ${places.join(", ")}${more}`}`);
  }
  const done = compare ? "" : "; what differed is written anew";
  console.log(
    `${jobs.length - different} of ${jobs.length} jobs give the same again; differed: findings of ${kinds.findings}, rows of the register of ${kinds.afterWork}, rows of the owner's questions of ${kinds.observed}${different === 0 ? "" : done}`,
  );
  process.exitCode = different === 0 ? 0 : 1;
} catch (error) {
  console.error(`Not rebuilt: ${(error as Error).message}. The stack must be running (npm start).`);
  process.exitCode = 1;
}
