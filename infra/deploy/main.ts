import "../node-version.mjs";
import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { buildApp, project } from "../build/index.ts";
import { containers, dockerfiles, entered, names, store } from "./checks.ts";
import { configurationFaults } from "./configuration-rules.ts";
import { environmentNames, readEnvironments } from "./environments.ts";
import { bindings, queueNames, secrets } from "./platform.ts";
import { type Checked, dryRun, from, migrations, sizeOf } from "./platform-checks.ts";
import { startUp } from "./start-up.ts";
import { readStoreTexts, storeFiles, storeSetOf } from "./store-files.ts";
import { variablesOf, wranglerConfiguration } from "./wrangler.ts";

/**
 * `npm run deploy:check`: everything that can be known of a deployment without an account, one line each; `out/deploy` then holds what is
 * typed with. `-- --for production`: what is still to be entered counts as well. `-- --quick`: without starting the containers.
 */
const { values } = parseArgs({ options: { for: { type: "string" }, quick: { type: "boolean" } } });
if (values.for !== undefined && !(environmentNames as readonly string[]).includes(values.for)) {
  console.error(`Say for which: --for ${environmentNames.join(" or --for ")}`);
  process.exit(2);
}

const folder = fileURLToPath(new URL("./", import.meta.url));
const out = join(project, "out/deploy");
const counts = { good: 0, bad: 0 };
const say = ({ what, good, says }: Checked): void => {
  counts[good ? "good" : "bad"] += 1;
  console.log(`${good ? "good    " : "NOT GOOD"}  ${what}: ${says}`);
};
/** What breaks is a fault of what was looked at, and the rest is still looked at. */
const tell = async (what: string, looking: Promise<readonly Checked[]>): Promise<void> => {
  const found = await looking.catch((error: Error): readonly Checked[] => [{ what, good: false, says: error.message }]);
  for (const one of found) say(one);
};

await mkdir(out, { recursive: true });
const environments = await readEnvironments(folder);
for (const one of entered(environments, values.for)) say(one);
const configuration = wranglerConfiguration(environments, project, out);
const file = join(out, "wrangler.json");
await writeFile(file, `${JSON.stringify(configuration, undefined, 2)}\n`);
const texts = await readStoreTexts(folder);
await tell("the store's files", store(folder, environments));
for (const name of environmentNames) {
  const set = storeSetOf(texts, environments[name]);
  await mkdir(join(out, name, "store"), { recursive: true });
  for (const one of storeFiles) await writeFile(join(out, name, "store", `${one}.json`), `${JSON.stringify(set[one], undefined, 2)}\n`);
}
const edge = await readFile(join(project, "functions/edge/edge.ts"), "utf8");
say(
  from(
    "one address, no address in the log, queues, trigger, secrets",
    configurationFaults(configuration, edge, Object.keys(secrets)),
    "as they must be",
  ),
);
await tell("names", names(project));
await tell("Dockerfiles", dockerfiles(project));

await buildApp();
for (const name of environmentNames) {
  const environment = environments[name];
  const { media } = queueNames(`${environment.worker}-`);
  const bound = [
    media,
    ...environment.databases.map((one) => one.binding),
    bindings.assets,
    bindings.queue,
    ...Object.keys(variablesOf(environment)),
  ];
  const { checked, left } = await dryRun(file, name, out, bound);
  say(checked);
  if (name !== "production" || !checked.good) continue;
  say(sizeOf(await readFile(left.script)));
  await tell(
    "edge start-up",
    startUp(file, left, out).then((one) => [one]),
  );
}
await tell(
  "migrations",
  migrations(file, join(project, "infra/migrations"), out).then((one) => [one]),
);
if (values.quick) console.log("The containers were not started: --quick");
else await tell("containers", containers(project, out));
await rm(join(out, "logs"), { recursive: true, force: true });
console.log(`${counts.good} good, ${counts.bad} not good`);
process.exitCode = counts.bad === 0 ? 0 : 1;
