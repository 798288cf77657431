import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Miniflare } from "miniflare";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bundleEdge } from "#infra/build/index.ts";
import { type Environment, readEnvironments } from "#infra/deploy/environments.ts";
import { cron, secrets } from "#infra/deploy/platform.ts";
import { variablesOf } from "#infra/deploy/wrangler.ts";
import { miniflareOptions } from "#infra/local/edge-plan.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { project } from "../architecture/project.ts";

/** The worker as it is deployed, with exactly the names that the deployed configuration hands it, behind something that speaks TLS. */
let miniflare: Miniflare;
let directory: string;
let production: Environment;
let edge: string;

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-deployed-"));
  production = (await readEnvironments(join(project, "infra/deploy"))).production;
  const made = Object.fromEntries(Object.keys(secrets).map((name) => [name, `of-a-test-${name}`]));
  const plan = {
    port: 0,
    worker: await bundleEdge("worker"),
    persist: directory,
    migrations: "",
    app: "",
    sweepEvery: 0,
    behind: production.origin,
    bindings: { ...variablesOf(production), ...made },
  };
  miniflare = new Miniflare(miniflareOptions(plan));
  edge = String(await miniflare.ready).replace(/\/$/, "");
  const database = (await miniflare.getD1Database("DB", "edge")) as unknown as Database;
  await migrate(database, join(project, "infra/migrations"), "now");
});

afterAll(async () => {
  await miniflare?.dispose();
  await rm(directory, { recursive: true, force: true });
});

const founded = async (): Promise<{ readonly company: string; readonly ownerLink: string }> => {
  const answer = await fetch(`${edge}/api/companies`, {
    method: "POST",
    headers: {
      connection: "close",
      "content-type": "application/json",
      "x-asburied": "1",
      authorization: "Operator of-a-test-OPERATOR_KEY",
    },
    body: JSON.stringify({
      name: "Stillwater Yard Works",
      zone: "America/New_York",
      units: "inch",
      language: "en",
      owner: { name: "Robin Vale" },
    }),
  });
  expect(answer.status).toBe(201);
  return (await answer.json()) as { company: string; ownerLink: string };
};

test("behind a proxy that speaks TLS a session is a secure cookie of the whole host, though the proxy itself asks without TLS", async () => {
  const { ownerLink } = await founded();
  const { pathname } = new URL(ownerLink, production.origin);
  const answer = await fetch(`${edge}${pathname}`, { redirect: "manual", headers: { connection: "close" } });
  const cookie = answer.headers.get("set-cookie") ?? "";
  expect(answer.status).toBe(303);
  expect(cookie).toMatch(/^__Host-/);
  expect(cookie).toMatch(/; Secure/);
  expect(answer.headers.get("strict-transport-security")).toBe("max-age=31536000");
});

test("the deployed trigger looks at each company's periods, once a day", async () => {
  const { company } = await founded();
  const database = await miniflare.getD1Database("DB", "edge");
  const day = (): Promise<unknown> => database.prepare("SELECT day FROM period_day WHERE company = ?").bind(company).first("day");
  expect(await day()).toBeNull();
  const worker = await miniflare.getWorker("edge");
  expect(await worker.scheduled({ cron })).toMatchObject({ outcome: "ok" });
  const today = new Intl.DateTimeFormat("en-CA", { timeZone: "America/New_York" }).format(new Date());
  expect(await day()).toBe(today);
});
