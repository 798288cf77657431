import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Miniflare } from "miniflare";
import { afterAll, beforeAll, expect, it } from "vitest";
import { bundleEdge, bundleEntry } from "#infra/build/index.ts";
import { type EdgePlan, miniflareOptions } from "#infra/local/edge-plan.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { batchOf, type Company, type Loose, newCompany, newJob, Phone } from "../helpers/edge.ts";

/** Noon of 4 May 2026, UTC. */
const FROZEN_MS = 1_777_896_000_000;
const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

let miniflare: Miniflare;
let directory: string;
let company: Company;
beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-clock-"));
  const source = join(directory, "worker.ts");
  const edge = here("../../functions/edge");
  const entry = [
    `import { edgeOf } from ${JSON.stringify(`${edge}/edge.ts`)};`,
    `import { routes } from ${JSON.stringify(`${edge}/routes/index.ts`)};`,
    `export default edgeOf(routes, () => ${FROZEN_MS});`,
  ];
  await writeFile(source, entry.join("\n"));
  const worker = await bundleEntry(source, join(directory, "frozen.js"));
  const nowhere = "http://127.0.0.1:9";
  const bindings = {
    STORE_ENDPOINT: nowhere,
    STORE_REGION: "auto",
    STORE_BUCKET: "b",
    STORE_ACCESS_KEY: "a",
    STORE_SECRET_KEY: "s",
    MEDIA_URL: nowhere,
    PRINT_URL: nowhere,
    SERVICE_SECRET: "secret",
    OPERATOR_KEY: "key",
  };
  const plan: EdgePlan = { port: 0, worker, persist: directory, migrations: "", app: "", sweepEvery: 0, bindings };
  miniflare = new Miniflare(miniflareOptions(plan));
  const url = String(await miniflare.ready).replace(/\/$/, "");
  await migrate((await miniflare.getD1Database("DB", "edge")) as unknown as Database, here("../../infra/migrations"), "now");
  company = await newCompany(url, "key");
});
afterAll(async () => {
  await miniflare?.dispose();
  await rm(directory, { recursive: true, force: true });
});

it("receives every entry of a minute that stands still in order, by its own clock", async () => {
  const { job } = await newJob(company);
  const phones = [new Phone(), new Phone(), new Phone()];
  const answers = await Promise.all(
    phones.map(async (phone) =>
      company.crew.post(`/api/jobs/${job}/entries`, batchOf(await phone.entry(job, company.people.crew, "note-for-record", { text: "t" }))),
    ),
  );
  expect(answers.map(({ body }) => body.received)).toEqual([FROZEN_MS, FROZEN_MS, FROZEN_MS]);
  const { entries } = (await company.crew.get(`/api/jobs/${job}/ledger`)).body;
  expect(entries.map((e: Loose) => [e.envelope.number, e.envelope.received])).toEqual([1, 2, 3, 4, 5].map((n) => [n, FROZEN_MS]));
  expect((await company.crew.get(`/api/jobs/${job}`)).body.now).toBe(FROZEN_MS);
});

it("the bundle that is deployed has no path to the demo's links; the local one has", async () => {
  const deployed = await readFile(await bundleEdge("worker"), "utf8");
  const local = await readFile(await bundleEdge("local"), "utf8");
  expect(deployed).toContain("/api/jobs");
  expect(local).toContain("/api/demo/links");
  for (const trace of ["/api/demo", "demo-", "Demo "]) expect(deployed).not.toContain(trace);
  // what the fault harness breaks, only its own entry can break
  const faulty = here("../../functions/edge/local/faulty-edge.ts");
  const broken = await readFile(await bundleEntry(faulty, join(directory, "faulty.js")), "utf8");
  for (const trace of ["faults-ordered", "disk is full"]) {
    expect(broken).toContain(trace);
    expect([deployed.includes(trace), local.includes(trace)]).toEqual([false, false]);
  }
});
