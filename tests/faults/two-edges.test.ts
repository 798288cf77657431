import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Miniflare, type MiniflareOptions } from "miniflare";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bundleEdge } from "#infra/build/index.ts";
import { miniflareOptions } from "#infra/local/edge-plan.ts";
import { type Stack, startStack } from "#infra/local/index.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { batchOf, Client, type Company, newCompany, newJob, Phone, sha256 } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";
import { beginUpload } from "./raw-upload.ts";
import { limited, pause } from "./waiting.ts";

/** Two workers over one database and one store, as the platform runs them: neither sees the other's lanes. */
let stack: Stack;
let directory: string;
let miniflare: Miniflare;
let company: Company;
let first: { readonly crew: Client; readonly office: Client };
let second: typeof first;

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-two-"));
  // its store and its print serve both edges; its own edge has nothing to do
  stack = await startStack({ directory: join(directory, "stack"), demoLinks: false, instead: { app: join(directory, "no-app") } });
  const bindings = {
    STORE_ENDPOINT: stack.store,
    STORE_REGION: "auto",
    STORE_BUCKET: stack.bucket,
    STORE_ACCESS_KEY: stack.secrets.storeAccessKey,
    STORE_SECRET_KEY: stack.secrets.storeSecretKey,
    MEDIA_URL: stack.media,
    PRINT_URL: stack.print,
    SERVICE_SECRET: stack.secrets.serviceSecret,
    OPERATOR_KEY: stack.secrets.operatorKey,
    SEAL_SECRET: stack.secrets.sealSecret,
  };
  const worker = await bundleEdge("worker");
  const plan = { port: 0, worker, persist: join(directory, "two"), migrations: "", app: "", sweepEvery: 0, bindings };
  const { host, cf, telemetry, defaultPersistRoot, port, queueConsumers, ...one } = miniflareOptions(plan) as unknown as Record<
    string,
    unknown
  >;
  const socket = { unsafeDirectSockets: [{ host: "127.0.0.1", port: 0 }] };
  const workers = [
    { ...one, ...socket, name: "first", queueConsumers },
    { ...one, ...socket, name: "second" },
  ];
  miniflare = new Miniflare({ host, cf, telemetry, defaultPersistRoot, port, workers } as unknown as MiniflareOptions);
  await miniflare.ready;
  const migrations = fileURLToPath(new URL("../../infra/migrations", import.meta.url));
  await migrate((await miniflare.getD1Database("DB", "first")) as unknown as Database, migrations, "now");
  const urls = await Promise.all(
    ["first", "second"].map(async (name) => String(await miniflare.unsafeGetDirectURL(name)).replace(/\/$/, "")),
  );
  const [one1 = "", two = ""] = urls;
  company = await newCompany(one1, stack.secrets.operatorKey);
  first = company;
  const at = (client: Client): Client => Object.assign(new Client(two), { cookie: client.cookie });
  second = { crew: at(company.crew), office: at(company.office) };
});
afterAll(async () => {
  await miniflare?.dispose();
  await stack?.stop();
  await rm(directory, { recursive: true, force: true });
});

let count = 0;
/** Three megabytes that begin like a photo. */
const photoOf = (): Uint8Array => {
  count += 1;
  const bytes = new Uint8Array(3_000_000).map((_, i) => (i * 7919 + count) % 251);
  bytes.set([0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46]);
  return bytes;
};

test.each(["breaks off", "ends in other bytes"])(
  "an upload that %s takes nothing from the one that was acknowledged meanwhile",
  async (how) => {
    const bytes = photoOf();
    const path = `/api/photos/${sha256(bytes)}`;
    const half = how === "breaks off" ? bytes : new Uint8Array([...bytes.subarray(0, -1), 7]);
    const slow = await beginUpload(first.crew, path, half, 2_400_000);
    await pause(100);
    expect((await limited("the whole upload", second.crew.ask("PUT", path, { bytes }))).status).toBe(201);
    if (how === "breaks off") slow.end();
    else slow.finish();
    expect(await limited("the end of the slow upload", slow.status)).toBe(how === "breaks off" ? undefined : 422);
    await pause(500);
    const back = await limited("the original", second.office.get(`${path}/original`));
    expect([back.status, sha256(back.bytes)]).toEqual([200, sha256(bytes)]);
  },
);

test("a record issued at both at once: what is acknowledged keeps its bytes", async () => {
  const { job } = await newJob(company);
  const asked = [first, second].map(({ office }) => office.post(`/api/jobs/${job}/records`, { edition: "customer" }));
  const answers = await Promise.all(asked.map((one) => limited("issuing", one, 50_000)));
  const issued = answers.filter(({ status }) => status === 201).map(({ body }) => body);
  expect(issued.length).toBeGreaterThan(0);
  for (const { status, body } of answers) if (status !== 201) expect(body).toMatchObject({ code: "database-busy" });
  expect(new Set(issued.map(({ version }) => version)).size).toBe(issued.length);
  for (const { record, sha256: digest } of issued) {
    expect(sha256((await first.office.get(`/api/records/${record}/pdf`)).bytes)).toBe(digest);
    const model = (await second.office.get(`/api/records/${record}/model`)).body;
    expect(model.proof.head).toBe((await first.office.get(`/api/records/${record}/ledger`)).body.head.hash);
  }
});

test("appends at both at once get numbers without a gap, and the chain verifies", async () => {
  const { job } = await newJob(company);
  const answers = await Promise.all(
    Array.from({ length: 16 }, async (_, i) => {
      const entry = await new Phone().entry(job, company.people.crew, "note-for-record", { text: `note ${i}` });
      return (i % 2 === 0 ? first : second).crew.post(`/api/jobs/${job}/entries`, batchOf(entry));
    }),
  );
  const numbers = answers.map(({ body }) => body.answers[0].number as number).sort((a, b) => a - b);
  expect(numbers).toEqual(Array.from({ length: 16 }, (_, i) => i + 3));
  const ledger = await second.office.get(`/api/jobs/${job}/ledger`);
  expect(verifyLedger(new TextDecoder().decode(ledger.bytes))).toMatchObject({ ok: true, faults: [] });
});
