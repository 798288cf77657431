import "../node-version.mjs";
import { readFile, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { costsShape, readEnvironments } from "../deploy/index.ts";
import { driven } from "./driven.ts";
import { optionsFrom, usage } from "./options.ts";
import { readPlatform } from "./platform.ts";
import { report } from "./report.ts";
import { simulated } from "./simulation.ts";

/**
 * `npm run simulate -- --crews 5000`: crews' days through the real edge code, then as many as are asked for through modelled databases and
 * containers; says what breaks first, and what it costs. Exit 0: done; 1: a request was refused, so that its figures count for nothing;
 * 2: not understood.
 */
const deploy = new URL("../deploy/", import.meta.url);
const { production } = await readEnvironments(fileURLToPath(deploy));
const usual = {
  crews: 0,
  shards: production.databases.length,
  media: production.media.instances,
  print: production.print.instances,
  days: 1,
  driven: 200,
  seed: 1,
};
const options = optionsFrom(process.argv.slice(2), usual);
if (typeof options === "string" || options.crews === 0) {
  if (typeof options === "string") console.error(options);
  console.error(usage);
  process.exit(2);
}
const began = performance.now();
const log = (line: string): void => console.error(`${((performance.now() - began) / 1000).toFixed(0).padStart(4)} s  ${line}`);
const platform = await readPlatform();
const inputs = costsShape.parse(JSON.parse(await readFile(new URL("prices.json", deploy), "utf8")));
log(`driving ${options.driven} crew-days through the edge`);
const counted = await driven(options.driven, options.seed, platform);
log(`${counted.crewDays} crew-days driven, ${counted.requests} requests`);
const outcome = simulated(options, counted, platform, inputs, log);
log(`at most ${Math.round(process.resourceUsage().maxRSS / 1000)} MB`);
console.log(report({ options, driven: counted, outcome, platform, inputs }));
if (options.json !== undefined) {
  const { traces, ...about } = counted;
  await writeFile(options.json, `${JSON.stringify({ options, driven: about, outcome, platform }, undefined, 2)}\n`);
}
process.exitCode = Object.keys(counted.refused).length === 0 ? 0 : 1;
