import { existsSync } from "node:fs";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { validate } from "dockerfile-utils";
import { settings } from "#core/wire/index.ts";
import { copiedFrom, dockerfileFaults, isIgnored } from "./dockerfile.ts";
import { type Environments, environmentNames, toBeEntered } from "./environments.ts";
import { carriedOut } from "./image.ts";
import { type Surroundings, surroundings } from "./image-work.ts";
import { edgeNameFaults, machineNameFaults, readByEdge, readByMachines, textsOf } from "./names.ts";
import { type MachineName, machineNames } from "./platform.ts";
import { type Checked, from } from "./platform-checks.ts";
import { startImage } from "./start-image.ts";
import { readStoreTexts, storeSetOf } from "./store-files.ts";
import { doorFaults, keepingFaults, lockDays, policyFaults } from "./store-rules.ts";

/** What is left to be entered is said; it is a fault only of the environment that is about to be deployed. */
export const entered = (environments: Environments, about: string | undefined): readonly Checked[] =>
  environmentNames.map((name) => {
    const open = toBeEntered(environments[name]);
    const says = open.length === 0 ? "entered" : `still as they came: ${open.join(", ")}`;
    return { what: `${name}: names and addresses`, good: open.length === 0 || about !== name, says };
  });

/** Every name that code reads of its environment, against the lists of `platform.ts`. */
export async function names(project: string): Promise<readonly Checked[]> {
  const edge = readByEdge(await textsOf(project, ["functions/edge/**/*.ts"]));
  const containers = readByMachines(await textsOf(project, ["functions/{media,print,shared}/**/*.ts"]));
  return [
    from("secrets and variables of the worker", edgeNameFaults(edge), `${edge.size} names read, every one listed`),
    from("secrets and variables of the containers", machineNameFaults(containers), `${containers.size} names read, every one listed`),
  ];
}

/** Days of the shortest period that a company can set for what it keeps: its months, each as short as one can be. */
export function shortestPeriod(): number {
  const company = { name: "Stillwater Yard Works", zone: "America/New_York", units: "inch", language: "en" };
  const months = Array.from({ length: 1200 }, (_, i) => i + 1).find(
    (pictures) => settings.safeParse({ ...company, periods: { pictures } }).success,
  );
  if (months === undefined) throw new Error("no period is a company's setting any more");
  return months * 28;
}

export async function store(folder: string, environments: Environments): Promise<readonly Checked[]> {
  const texts = await readStoreTexts(folder);
  const shortest = shortestPeriod();
  return environmentNames.flatMap((name): readonly Checked[] => {
    try {
      const set = storeSetOf(texts, environments[name]);
      return [
        from(`${name}: bucket policy`, policyFaults(set, environments[name]), `${set.policy.Statement.length} statements, two principals`),
        from(`${name}: lock and lifecycle`, keepingFaults(set, shortest), `locked for ${lockDays(set)} days, at most ${shortest}`),
        from(`${name}: who may ask the bucket from a page`, doorFaults(set), "nobody; everything goes through the edge"),
      ];
    } catch (error) {
      return [{ what: `${name}: the store's files`, good: false, says: (error as Error).message }];
    }
  });
}

/** The linter's faults, with their lines, then this project's own. */
export function lint(text: string, node: string): readonly string[] {
  return [...validate(text).map(({ message, range }) => `line ${range.start.line + 1}: ${message}`), ...dockerfileFaults(text, node)];
}

export async function dockerfiles(project: string): Promise<readonly Checked[]> {
  const { dependencies } = JSON.parse(await readFile(join(project, "package.json"), "utf8")) as { dependencies: { node: string } };
  const ignore = await readFile(join(project, ".dockerignore"), "utf8");
  return Promise.all(
    machineNames.map(async (name) => {
      const text = await readFile(join(project, `functions/${name}/Dockerfile`), "utf8");
      const sources = copiedFrom(text);
      const missing = sources.filter((one) => !existsSync(join(project, one))).map((one) => `COPY ${one}: it is not there`);
      const kept = sources.filter((one) => isIgnored(ignore, one)).map((one) => `COPY ${one}: .dockerignore keeps it out`);
      return from(
        `${name}: Dockerfile`,
        [...lint(text, dependencies.node), ...missing, ...kept],
        `${sources.length} sources there, runs as a number above 0`,
      );
    }),
  );
}

/** Carries a Dockerfile out, starts what it starts, and has it do one piece of its real work. */
async function tried(name: MachineName, project: string, to: string, around: Surroundings): Promise<Checked> {
  const what = `${name}: starts from what its Dockerfile copies`;
  const text = await readFile(join(project, `functions/${name}/Dockerfile`), "utf8");
  try {
    const image = await carriedOut(text, { project, ignore: await readFile(join(project, ".dockerignore"), "utf8"), to: join(to, name) });
    const started = await startImage(image, around.handed);
    let work = "";
    try {
      const health = await fetch(`http://127.0.0.1:${started.port}/health`);
      if (!health.ok) throw new Error(`it answers that it is not healthy: ${health.status}`);
      work = await around.work(name, started.port);
    } finally {
      const how = await started.stop();
      if (how !== "exit 0" && work !== "") work = `, but SIGTERM ended it with ${how}`;
    }
    const how = started.isApart ? `read-only, as ${image.user}` : "not apart from this machine: that needs root and Linux";
    return { what, good: !work.startsWith(", but"), says: `${Math.round(started.took)} ms to listen, ${work}, SIGTERM obeyed; ${how}` };
  } catch (error) {
    return { what, good: false, says: (error as Error).message };
  }
}

export async function containers(project: string, out: string): Promise<readonly Checked[]> {
  const to = await mkdtemp(join(out, "containers-"));
  const around = await surroundings(project, join(to, "store"));
  try {
    const found: Checked[] = [];
    for (const name of machineNames) found.push(await tried(name, project, to, around));
    return found;
  } finally {
    await around.close();
    await rm(to, { recursive: true, force: true });
  }
}
