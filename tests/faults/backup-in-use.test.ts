import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import sharp from "sharp";
import { afterAll, beforeAll, expect, test } from "vitest";
import { restoreBackup, type Taken, takeBackup } from "#infra/backup/index.ts";
import { type Stack, startStack } from "#infra/local/index.ts";
import { batchOf, Client, type Company, type Loose, newCompany, newJob, sha256, until } from "../helpers/edge.ts";
import { migrations } from "../helpers/stack-folder.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let root: string;
let stack: Stack;
let second: Stack | undefined;
let company: Company;
let taken: Taken;
let record: { readonly record: string; readonly pdf: string };
const jobs: string[] = [];
/** Entries that were acknowledged, by job, with the moment of the answer. */
const acknowledged = new Map<string, { readonly id: string; readonly at: number }[]>();
const photos: string[] = [];
let began = 0;
let ended = 0;

const project = fileURLToPath(new URL("../../", import.meta.url));
const run = promisify(execFile);

/** A phone that enters and sends pictures as fast as it is answered, until it is told to stop. */
async function phoneAtWork(job: string, phone: Loose, picture: Uint8Array, isOver: () => boolean): Promise<void> {
  for (let i = 0; !isOver(); i += 1) {
    const bytes = new Uint8Array([...picture, ...new TextEncoder().encode(`${job} ${i}`)]);
    const sha = sha256(bytes);
    expect((await company.crew.ask("PUT", `/api/photos/${sha}`, { bytes })).status).toBe(201);
    photos.push(sha);
    const taken_ = { item: "footing-seen", photo: sha, bytes: bytes.length, type: "image/jpeg" };
    const entries = [
      await phone.entry(job, company.people.crew, "picture-taken", taken_),
      await phone.entry(job, company.people.crew, "note-for-record", { text: `Note ${i}` }),
    ];
    const answer = await company.crew.post(`/api/jobs/${job}/entries`, batchOf(...entries));
    for (const one of answer.body.answers) {
      expect(one.outcome).toBe("taken");
      acknowledged.set(job, [...(acknowledged.get(job) ?? []), { id: one.id, at: Date.now() }]);
    }
  }
}

const ledgerIn = async ({ edge }: { edge: string }, client: Client, job: string) => {
  const there = new Client(edge);
  there.cookie = client.cookie;
  return there.get(`/api/jobs/${job}/ledger`);
};

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), "asburied-backup-in-use-"));
  stack = await startStack({ directory: join(root, "first"), demoLinks: false, sweepEvery: 500 });
  company = await newCompany(stack.edge, stack.secrets.operatorKey);
  const opened = await Promise.all([newJob(company), newJob(company)]);
  jobs.push(...opened.map(({ job }) => job));
  const picture = new Uint8Array(
    await sharp({ create: { width: 320, height: 240, channels: 3, background: "#777" } })
      .jpeg()
      .toBuffer(),
  );
  record = (await company.office.post(`/api/jobs/${jobs[0]}/records`, { edition: "customer" })).body;

  let over = false;
  const phones = opened.map(({ job, phone }) => phoneAtWork(job, phone, picture, () => over));
  const busy = () => [...acknowledged.values()].reduce((sum, list) => sum + list.length, 0);
  await until(
    async () => busy(),
    (count) => count >= 12,
  );
  began = Date.now();
  taken = await takeBackup({
    directory: stack.directory,
    out: join(root, "backups"),
    clock: () => Date.now(),
    log: () => {},
    // the phones go on between the rows and the objects
    rowsTaken: async () => {
      const from = busy();
      await until(
        async () => busy(),
        (count) => count >= from + 6,
      );
    },
  });
  ended = Date.now();
  await new Promise((go) => setTimeout(go, 500));
  over = true;
  await Promise.all(phones);
  const { sealSecret: secret } = stack.secrets;
  const directory = join(root, "second");
  await restoreBackup({ from: join(root, "backups"), directory, secret, migrations, clock: () => Date.now(), log: () => {} });
  second = await startStack({ directory, demoLinks: false, sweepEvery: 500 });
}, 180_000);
afterAll(async () => {
  await second?.stop();
  await stack?.stop();
  await rm(root, { recursive: true, force: true });
});

test("restored ledgers are exact prefixes: all that was acknowledged before the backup, nothing that came after it", async () => {
  if (second === undefined) throw new Error("no second stack");
  for (const job of jobs) {
    const [whole, part] = [await ledgerIn(stack, company.office, job), await ledgerIn(second, company.office, job)];
    const count = part.body.entries.length;
    expect(part.body.entries).toEqual(whole.body.entries.slice(0, count));
    expect(verifyLedger(new TextDecoder().decode(part.bytes)).faults).toEqual([]);
    const said = taken.list.ledgers.find((one) => one.job === job);
    expect(part.body.head).toEqual({ number: said?.number, hash: said?.hash });
    const there = new Set(part.body.entries.map((one: Loose) => one.envelope.id));
    const list = acknowledged.get(job) ?? [];
    const [before, after] = [list.filter(({ at }) => at < began), list.filter(({ at }) => at > ended)];
    expect([before.length > 0, before.every(({ id }) => there.has(id))]).toEqual([true, true]);
    expect([after.length > 0, after.some(({ id }) => there.has(id))]).toEqual([true, false]);
    // the phones went on while it was taken
    expect(whole.body.entries.length).toBeGreaterThan(count);
  }
});

test("every photo whose row came along is there byte for byte, and the office's session goes on", async () => {
  if (second === undefined) throw new Error("no second stack");
  const originals = taken.list.objects.filter(({ key }) => key.includes("/originals/"));
  expect(originals.length).toBeGreaterThan(5);
  expect(originals.length).toBeLessThan(photos.length);
  const office = new Client(second.edge);
  office.cookie = company.office.cookie;
  for (const { sha256: sha } of originals) {
    const answer = await office.get(`/api/photos/${sha}/original`);
    expect([answer.status, sha256(answer.bytes)]).toEqual([200, sha]);
  }
});

test("its record is the same file, and npm run verify finds it unchanged and the company's", async () => {
  if (second === undefined) throw new Error("no second stack");
  const office = new Client(second.edge);
  office.cookie = company.office.cookie;
  const [pdf, before] = [await office.get(record.pdf), await company.office.get(record.pdf)];
  expect(Buffer.compare(pdf.bytes, before.bytes)).toBe(0);
  await writeFile(join(root, "record.pdf"), pdf.bytes);
  await writeFile(join(root, "keys.json"), (await office.get(`/api/companies/${company.company}/keys`)).bytes);
  const args = ["infra/verify/main.ts", join(root, "record.pdf"), "--keys", join(root, "keys.json")];
  const { stdout } = await run(process.execPath, args, { cwd: project });
  expect(stdout).toContain("= ");
  // the key that was wrapped by the secret carried beside seals on
  const next = await office.post(`/api/jobs/${jobs[0]}/records`, { edition: "customer" });
  expect(next).toMatchObject({ status: 201, body: { version: 2 } });
});
