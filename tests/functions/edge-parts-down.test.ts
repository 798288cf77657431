import { readFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Stack, startStack } from "#infra/local/index.ts";
import { batchOf, Client, type Company, type Loose, newCompany, newJob, sha256, until } from "../helpers/edge.ts";

const sample = new Uint8Array(readFileSync(new URL("../samples/photos/camera-640.jpg", import.meta.url)));

/** A stack of its own, since its parts are taken down; the edge is the one that is deployed. */
let stack: Stack;
let directory: string;
let company: Company;
beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-down-"));
  stack = await startStack({ directory, demoLinks: false, sweepEvery: 500 });
  company = await newCompany(stack.edge, stack.secrets.operatorKey);
});
afterAll(async () => {
  await stack?.stop();
  await rm(directory, { recursive: true, force: true });
});

describe("with parts down", () => {
  it("the deployed edge makes no links for anybody's demo", async () => {
    const headers = { authorization: `Operator ${stack.secrets.operatorKey}` };
    expect(await new Client(stack.edge).ask("POST", "/api/demo/links", { headers })).toMatchObject({
      status: 404,
      body: { code: "route-unknown" },
    });
  });

  it("media: the upload is kept, owed, marked, and read when media is back", async () => {
    const job = await newJob(company);
    await stack.down("media");
    const put = await company.crew.ask("PUT", `/api/photos/${sha256(sample)}`, { bytes: sample });
    expect(put.status).toBe(201);
    const what = { item: "footing-seen", photo: sha256(sample), bytes: sample.length, type: "image/jpeg" };
    await company.crew.post(
      `/api/jobs/${job.job}/entries`,
      batchOf(await job.phone.entry(job.job, company.people.crew, "picture-taken", what)),
    );
    const state = async () => (await company.crew.get(`/api/photos/${sha256(sample)}`)).body;
    expect((await until(state, ({ givenUp }) => givenUp !== undefined)).state).toBe("stored");
    expect(await company.crew.get(`/api/photos/${sha256(sample)}/screen`)).toMatchObject({
      status: 409,
      body: { code: "photo-not-read-yet" },
    });
    const ready = await new Client(stack.edge).get("/api/ready");
    expect(ready).toMatchObject({
      status: 503,
      body: { ready: false, parts: { database: { up: true }, store: { up: true }, media: { up: false } } },
    });
    await stack.up("media");
    const read = await until(state, ({ state: s }) => s === "read", 60_000);
    expect(read.givenUp).toBeUndefined();
    await until(
      async () => (await company.office.get(`/api/jobs/${job.job}/ledger`)).body.entries.map((e: Loose) => e.envelope.kind),
      (kinds) => kinds.includes("picture-read"),
    );
  }, 90_000);

  it("print: issuing says what is down, and nothing is written; afterwards it is version 1", async () => {
    const { job } = await newJob(company);
    await stack.down("print");
    const head = (await company.office.get(`/api/jobs/${job}`)).body.head;
    const refused = await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" });
    expect(refused).toMatchObject({ status: 503, body: { code: "print-unavailable" } });
    expect(refused.body.detail.length).toBeGreaterThan(20);
    expect(await company.office.get(`/api/jobs/${job}/design/pdf`)).toMatchObject({ status: 503, body: { code: "print-unavailable" } });
    expect((await company.office.get(`/api/jobs/${job}/records`)).body.records).toEqual([]);
    expect((await company.office.get(`/api/jobs/${job}`)).body.head).toEqual(head);
    await stack.up("print");
    expect((await company.office.get(`/api/jobs/${job}/design/pdf`)).status).toBe(200);
    expect((await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).body.version).toBe(1);
  }, 90_000);

  it("store: the photo is refused as such, entries are still taken, and the photo is stored when it is back", async () => {
    const { job, phone } = await newJob(company);
    await stack.down("store");
    const bytes = new Uint8Array([...sample, 1, 2, 3]);
    const path = `/api/photos/${sha256(bytes)}`;
    expect(await company.crew.ask("PUT", path, { bytes })).toMatchObject({ status: 503, body: { code: "store-unavailable" } });
    const large = new Uint8Array(6_000_000);
    large.set(sample.subarray(0, 64));
    expect((await company.crew.ask("PUT", `/api/photos/${sha256(large)}`, { bytes: large })).body.code).toBe("store-unavailable");
    const entry = await phone.entry(job, company.people.crew, "note-for-record", { text: "no store" });
    expect((await company.crew.post(`/api/jobs/${job}/entries`, batchOf(entry))).body.answers[0].outcome).toBe("taken");
    await stack.up("store");
    expect((await company.crew.ask("PUT", path, { bytes })).status).toBe(201);
    expect((await new Client(stack.edge).get("/api/ready")).body.parts.store.up).toBe(true);
  }, 90_000);
});
