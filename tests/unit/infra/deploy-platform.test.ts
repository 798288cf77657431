import { randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";
import { describe, expect, test } from "vitest";
import { entered, names } from "#infra/deploy/checks.ts";
import { configurationFaults } from "#infra/deploy/configuration-rules.ts";
import { type Environments, environmentsShape, readEnvironments } from "#infra/deploy/environments.ts";
import { edgeNameFaults, machineNameFaults, readByEdge, readByMachines } from "#infra/deploy/names.ts";
import { secrets } from "#infra/deploy/platform.ts";
import { sizeOf } from "#infra/deploy/platform-checks.ts";
import { startOf, workIn } from "#infra/deploy/start-up.ts";
import { wranglerConfiguration } from "#infra/deploy/wrangler.ts";
import { miniflareOptions } from "#infra/local/edge-plan.ts";
import { project } from "../../architecture/project.ts";

const environments = await readEnvironments(`${project}/infra/deploy`);
const edge = await readFile(`${project}/functions/edge/edge.ts`, "utf8");
// biome-ignore lint/suspicious/noExplicitAny: a configuration is looked into at places that its type does not name
type Loose = any;
const configured = (): Loose => structuredClone(wranglerConfiguration(environments, "/project", "/project/out/deploy"));
const faults = (configuration: object): readonly string[] => configurationFaults(configuration, edge, Object.keys(secrets));

describe("the deployed configuration", () => {
  test("is without fault, its paths from where it lies", () => {
    expect(faults(configured())).toEqual([]);
    expect(configured().main).toBe("../../functions/edge/worker.ts");
    expect(configured().env.production.d1_databases[0].migrations_dir).toBe("../../infra/migrations");
  });

  test("asks of the platform what the local stack does", () => {
    const plan = { port: 1, worker: "/w.js", persist: "/p", migrations: "/m", app: project, sweepEvery: 1, bindings: {} };
    const local = miniflareOptions(plan) as Loose;
    const { compatibility_date, compatibility_flags, env } = configured();
    const { queues, assets, d1_databases } = env.production;
    expect([local.compatibilityDate, local.compatibilityFlags]).toEqual([compatibility_date, compatibility_flags]);
    expect(Object.keys(local.queueProducers)).toEqual(queues.producers.map((one: Loose) => one.binding));
    expect(Object.keys(local.d1Databases)).toEqual(d1_databases.map((one: Loose) => one.binding));
    const [media, dead] = queues.consumers;
    expect(`asburied-${local.queueConsumers.media.deadLetterQueue}`).toBe(media.dead_letter_queue);
    expect([local.queueConsumers.media.maxBatchSize, local.queueConsumers.media.maxRetries]).toEqual([
      media.max_batch_size,
      media.max_retries,
    ]);
    expect(dead.queue).toBe(media.dead_letter_queue);
    expect(local.assets.binding).toBe(assets.binding);
    expect(local.assets.assetConfig.not_found_handling).toBe(assets.not_found_handling);
    expect(local.assets.routerConfig.static_routing.user_worker).toEqual(assets.run_worker_first);
  });

  const planted: readonly (readonly [string, (c: Loose) => void, string])[] = [
    [
      "a second address",
      (c) => {
        c.workers_dev = true;
      },
      "a second address",
    ],
    [
      "an address for each version",
      (c) => {
        c.preview_urls = true;
      },
      "a second address",
    ],
    [
      "addresses in the platform's log",
      (c) => {
        c.observability.logs.invocation_logs = true;
      },
      "a link's token",
    ],
    [
      "a queue without dead letters",
      (c) => {
        delete c.env.staging.queues.consumers[0].dead_letter_queue;
      },
      "has no dead letters",
    ],
    [
      "dead letters that nobody reads",
      (c) => {
        c.env.staging.queues.consumers.pop();
      },
      "is dropped",
    ],
    [
      "no trigger",
      (c) => {
        c.env.production.triggers.crons = [];
      },
      "nothing calls the sweep",
    ],
    [
      "a secret among the variables",
      (c) => {
        c.env.production.vars.SEAL_SECRET = "x";
      },
      "SEAL_SECRET stands among the variables",
    ],
    [
      "a secret that is not asked for",
      (c) => {
        c.env.production.secrets.required.pop();
      },
      "SEAL_SECRET is not asked for",
    ],
  ];
  test.each(planted)("with %s is found", (_, plant, says) => {
    const configuration = configured();
    plant(configuration);
    expect(faults(configuration).join("; ")).toContain(says);
  });
  test("dead letters that the worker would not know as such are found", () => {
    expect(configurationFaults(configured(), 'const DEAD_LETTERS = "buried";', []).join()).toContain("does not know asburied-media-dead");
  });
});

describe("names of the environment", () => {
  test("every one that code reads is listed, and none is listed in vain", async () => {
    expect((await names(project)).filter(({ good }) => !good)).toEqual([]);
  });
  test("a new one in the code, and one that is read no more, are found", () => {
    const read = readByEdge({ "functions/edge/environment.ts": "  readonly NEW_SECRET: string;\n  readonly DB: D1Database;\n" });
    expect(edgeNameFaults(read)).toContain("NEW_SECRET is read by the worker and in no list");
    expect(edgeNameFaults(read)).toContain("SEAL_SECRET is in a list, and the worker reads no such name");
    expect([...readByEdge({ "functions/edge/x.ts": "services.environment.OTHER_KEY" })]).toEqual(["OTHER_KEY"]);
    expect(machineNameFaults(readByMachines({ "a.ts": 'const common = ["STORE_SECOND_KEY"] as const;' }))).toContain(
      "STORE_SECOND_KEY is read by a container and in no list",
    );
  });
});

describe("environments", () => {
  const changed = (plant: (of: Loose) => void): Environments => {
    const of: Loose = structuredClone(environments);
    plant(of);
    return of;
  };
  const wrong: readonly (readonly [string, (of: Loose) => void])[] = [
    [
      "that share a bucket",
      (of) => {
        of.staging.store.bucket = of.production.store.bucket;
      },
    ],
    [
      "with an address without TLS",
      (of) => {
        of.production.media.url = "http://media.asburied.example";
      },
    ],
    [
      "with an address that ends in a slash",
      (of) => {
        of.production.origin = "https://asburied.example/";
      },
    ],
    [
      "whose first database is a shard",
      (of) => {
        of.production.databases[0].binding = "DB_2";
      },
    ],
    [
      "with a secret in them",
      (of) => {
        of.production.optional.SERVICE_SECRET = "x";
      },
    ],
  ];
  test("as they come are of their shape", () => expect(environmentsShape.safeParse(environments).success).toBe(true));
  test.each(wrong)("%s are refused", (_, plant) => expect(environmentsShape.safeParse(changed(plant)).success).toBe(false));

  test("what is still to be entered is a fault of the one that is about to be deployed, and of no other", () => {
    expect(entered(environments, "production").map(({ good }) => good)).toEqual([true, false]);
    const done = changed((of) => {
      of.production = JSON.parse(
        JSON.stringify(of.production).replaceAll(".example", ".test").replaceAll("00000000", "12345678").replaceAll(":0000", ":1234"),
      );
    });
    expect(entered(done, "production").map(({ good }) => good)).toEqual([true, true]);
  });
});

describe("figures with a limit", () => {
  test("a bundle is measured as it is sent: what cannot be compressed counts whole", () => {
    expect(sizeOf(randomBytes(999_000)).good).toBe(true);
    expect(sizeOf(randomBytes(1_000_000)).good).toBe(false);
    expect(sizeOf(new Uint8Array(5_000_000)).good).toBe(true);
  });
  test("of a start's profile waiting does not count, and of a late sample no more than a usual one", () => {
    const nodes = ["(root)", "(idle)", "(garbage collector)", "main"].map((functionName, i) => ({
      id: i + 1,
      callFrame: { functionName },
    }));
    // 1 ms of main, 5 ms of waiting, 0.5 ms of collecting, 30 ms of main of which others had all but 1.25
    expect(workIn({ nodes, samples: [4, 2, 3, 4], timeDeltas: [1_000, 5_000, 500, 30_000] })).toBe(2.75);
  });
  test("a start counts by its quickest, and one without a figure is not good", () => {
    expect(startOf([70, 49.9]).good).toBe(true);
    expect(startOf([50, 70]).good).toBe(false);
    expect(startOf([]).good).toBe(false);
  });
});
