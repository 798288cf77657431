import { mkdtemp, rm } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Miniflare } from "miniflare";
import { afterAll, beforeAll, expect, it } from "vitest";
import { bundleEntry } from "#infra/build/index.ts";
import { miniflareOptions } from "#infra/local/edge-plan.ts";
import { type Database, migrate } from "#infra/local/migrations.ts";
import { blank } from "../../functions/media/look.ts";
import { Client, type Company, newCompany, sha256, until } from "../helpers/edge.ts";

// The edge alone with a clock that is moved and a media of the test's own: what fails again and again over hours is seen in a moment.
const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const photo = sha256(new TextEncoder().encode("a photo that nobody can read"));
const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;

let miniflare: Miniflare;
let directory: string;
let media: Server;
let mediaReads = false;
let askedLast = 0;
let url: string;
let ours: Company;
let theirs: Company;

const clock = async (ahead: number): Promise<void> => {
  expect((await new Client(url).ask("POST", "/faults-ordered", { json: { clock: ahead } })).status).toBe(200);
};
const sweep = async (): Promise<void> => {
  const worker = (await miniflare.getWorker("edge")) as unknown as { scheduled(event: { cron: string }): Promise<unknown> };
  await worker.scheduled({ cron: "* * * * *" });
};
type Row = { readonly due: number; readonly tries: number };
interface Bare {
  prepare(text: string): { bind(...values: readonly unknown[]): { first(): Promise<Row | null> } };
}
/** Asks the database past the edge; the first row. */
const sql = async (text: string, ...values: readonly unknown[]): Promise<Row | null> =>
  ((await miniflare.getD1Database("DB", "edge")) as unknown as Bare)
    .prepare(text)
    .bind(...values)
    .first();
const row = (company: Company): Promise<Row | null> =>
  sql("SELECT due, tries FROM owed WHERE company = ?1 AND kind = 'read'", company.company);
const listed = async (company: Company) => (await company.office.get("/api/laid-aside")).body;

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-aside-"));
  media = createServer((request, response) => {
    const blocks: Buffer[] = [];
    request.on("data", (block: Buffer) => blocks.push(block));
    request.on("end", () => {
      askedLast = Date.now();
      if (!mediaReads) return response.writeHead(503).end();
      const { sha } = JSON.parse(Buffer.concat(blocks).toString());
      const says = { code: "photo-unreadable", figures: {}, says: "no picture" };
      response.setHeader("content-type", "application/json");
      return response.end(JSON.stringify({ ...blank(sha, 5), unreadable: says }));
    });
  });
  await new Promise<void>((resolve) => media.listen(0, "127.0.0.1", resolve));
  const worker = await bundleEntry(here("../../functions/edge/local/faulty-edge.ts"), join(directory, "faulty.js"));
  const nowhere = "http://127.0.0.1:9";
  const bindings = {
    STORE_ENDPOINT: nowhere,
    STORE_REGION: "auto",
    STORE_BUCKET: "b",
    STORE_ACCESS_KEY: "a",
    STORE_SECRET_KEY: "s",
    MEDIA_URL: `http://127.0.0.1:${(media.address() as AddressInfo).port}`,
    PRINT_URL: nowhere,
    SERVICE_SECRET: "secret",
    OPERATOR_KEY: "key",
  };
  miniflare = new Miniflare(miniflareOptions({ port: 0, worker, persist: directory, migrations: "", app: "", sweepEvery: 0, bindings }));
  url = String(await miniflare.ready).replace(/\/$/, "");
  await migrate((await miniflare.getD1Database("DB", "edge")) as unknown as Database, here("../../infra/migrations"), "now");
  [ours, theirs] = [await newCompany(url, "key"), await newCompany(url, "key")];
  for (const { company } of [ours, theirs]) {
    const stored = "INSERT INTO photo (company, sha256, bytes, type, state, stored) VALUES (?1, ?2, 5, 'image/jpeg', 'stored', 1)";
    await sql(stored, company, photo);
    await sql("INSERT INTO owed (kind, company, ref, due) VALUES ('read', ?1, ?2, 1)", company, photo);
  }
});
afterAll(async () => {
  await miniflare?.dispose();
  media?.close();
  await rm(directory, { recursive: true, force: true });
});

it("a photo that nobody reads is shown after three tries, laid aside after ten, and then tried once a day", async () => {
  // pauses of 30 s doubled up to 128 times that, worked out by hand; the tenth try is followed by a day
  const pauses = [0.5, 1, 2, 4, 8, 16, 32, 64, 64, 24 * 60];
  let ahead = 0;
  for (const [i, pause] of pauses.entries()) {
    await clock(ahead);
    const { work } = await listed(ours);
    expect([i, work.length]).toEqual([i, i < 3 ? 0 : 1]);
    const before = Date.now() + ahead;
    await sweep();
    const { due, tries } = (await row(ours)) as Row;
    expect([tries, Math.round((due - before) / (MINUTE_MS / 2))]).toEqual([i + 1, pause * 2]);
    // by a second more than the pause, so that it is due
    ahead += pause * MINUTE_MS + 1_000;
    await sweep();
    expect((await row(ours))?.tries).toBe(i + 1);
  }
  await clock(0);
  const known = async () => (await listed(ours)).work;
  const [work] = await until(known, ([one]) => one?.why === "media-unavailable");
  expect(work).toMatchObject({ kind: "read", photo, tries: 10, why: "media-unavailable", laidAside: true });
  expect(work.job).toBeUndefined();
});

it("is another company's own affair", async () => {
  const before = await row(theirs);
  expect((await ours.office.post("/api/laid-aside/again", { work: [{ kind: "read", photo: "0".repeat(64) }] })).body).toEqual({ again: 0 });
  expect(await row(theirs)).toEqual(before);
  expect((await ours.crew.get("/api/laid-aside")).status).toBe(403);
});

it("a due time that a clock running ahead gave is not waited for", async () => {
  await clock(3 * HOUR_MS);
  const others = await row(theirs);
  expect((await ours.owner.post("/api/laid-aside/again", {})).body).toEqual({ again: 1 });
  expect(await row(theirs)).toEqual(others);
  await sweep();
  await clock(0);
  const far = (await row(ours)) as Row;
  expect(far.due - Date.now()).toBeGreaterThan(2 * HOUR_MS);
  await sweep();
  const near = (await row(ours)) as Row;
  expect(near.tries).toBe(far.tries + 1);
  expect(near.due - Date.now()).toBeLessThan(2 * MINUTE_MS);
  // a day's pause of what is laid aside is no such time
  await sql("UPDATE owed SET tries = 10, due = ?1", Date.now() + DAY_MS);
  await sweep();
  expect((await row(ours))?.tries).toBe(10);
});

it("is tried at once when the office says so, and leaves the list when it goes through", async () => {
  expect((await listed(ours)).work).toHaveLength(1);
  // what the queue still tries by itself is over first
  await until(
    async () => Date.now() - askedLast,
    (quiet) => quiet > 2_500,
    40_000,
  );
  mediaReads = true;
  expect((await ours.office.post("/api/laid-aside/again", { work: [{ kind: "read", photo }] })).body).toEqual({ again: 1 });
  await until(
    async () => (await ours.office.get(`/api/photos/${photo}`)).body.state,
    (state) => state === "unreadable",
  );
  expect(await listed(ours)).toEqual({ work: [], more: 0 });
});
