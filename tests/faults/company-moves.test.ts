import { type ChildProcess, spawn } from "node:child_process";
import { readdirSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Stack, startStack } from "#infra/local/index.ts";
import { batchOf, type Company, type Loose, newCompany, newJob, Phone, sha256, until } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";
import { PhoneThatKeeps } from "./phone-that-keeps.ts";
import { limited, pause, seen } from "./waiting.ts";

/** A stack of two databases; companies move from one to the other and back while their phones send. */
let directory: string;
let stack: Stack;
let scene: Uint8Array;
const said: string[] = [];

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-moves-"));
  scene = new Uint8Array(
    await sharp({ create: { width: 120, height: 90, channels: 3, background: "#765" } })
      .jpeg()
      .toBuffer(),
  );
  const instead = { app: join(directory, "no-app") };
  stack = await startStack({ directory: join(directory, "stack"), demoLinks: false, shards: 2, sweepEvery: 1_000, instead });
});
afterAll(async () => {
  await stack?.stop();
  await rm(directory, { recursive: true, force: true });
  console.log(`Moves between two databases:\n${said.map((line) => `  ${line}`).join("\n")}`);
});

const main = fileURLToPath(new URL("../../infra/shards/main.ts", import.meta.url));
interface Command {
  readonly child: ChildProcess;
  readonly lines: string[];
  readonly ended: Promise<string>;
}
/** The command as somebody types it. */
function command(company: string, to: string, ...more: readonly string[]): Command {
  const child = spawn(process.execPath, [main, "--company", company, "--to", to, ...more], {
    env: { ...process.env, ASBURIED_DATA: stack.directory },
  });
  const lines: string[] = [];
  const heard = (bytes: Buffer): void => {
    lines.push(...bytes.toString("utf8").split("\n").filter(Boolean));
  };
  child.stdout?.on("data", heard);
  child.stderr?.on("data", heard);
  const ended = new Promise<string>((resolve) => child.on("close", (code, signal) => resolve(signal ?? `exit ${code}`)));
  return { child, lines, ended };
}
async function done(company: string, to: string, ...more: readonly string[]): Promise<string> {
  const { lines, ended } = command(company, to, ...more);
  expect([await limited("the command", ended, 40_000), lines]).toEqual(["exit 0", expect.anything()]);
  return lines.at(-1) ?? "";
}

/** What each database has of a company, on the disk: rows of every table that names it. */
function rowsBeside(company: string): readonly number[] {
  const d1 = join(stack.directory, "edge", "d1");
  const files = readdirSync(d1, { recursive: true, encoding: "utf8" }).filter((name) => /[0-9a-f]{64}\.sqlite$/.test(name));
  return files
    .map((name) => {
      const database = new DatabaseSync(join(d1, name), { readOnly: true, timeout: 5_000 });
      try {
        const own = ["placed", "door", "moving", "closed", "changed"];
        const tables = database
          .prepare("SELECT m.name FROM sqlite_master AS m JOIN pragma_table_info(m.name) AS c ON c.name = 'company' WHERE m.type = 'table'")
          .all()
          .map((row) => String(row.name))
          .filter((table) => !own.includes(table));
        const counts = tables.map((table) =>
          Number(database.prepare(`SELECT count(*) AS n FROM "${table}" WHERE company = ?`).get(company)?.n),
        );
        return counts.reduce((sum, one) => sum + one, 0);
      } finally {
        database.close();
      }
    })
    .sort((a, b) => a - b);
}

/** Everything acknowledged is in its ledger once, under its number, with its hash; the chain verifies, and the findings come out the same. */
async function whole(company: Company, phones: readonly PhoneThatKeeps[], jobs: readonly string[]): Promise<number> {
  let count = 0;
  for (const job of jobs) {
    const ledger = await company.office.get(`/api/jobs/${job}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes))).toMatchObject({ ok: true });
    const ids = ledger.body.entries.map((entry: Loose) => entry.envelope.id) as string[];
    expect(new Set(ids).size).toBe(ids.length);
    for (const { acknowledged } of phones)
      for (const { job: of, number, entry } of acknowledged.entries)
        if (of === job) {
          expect(ids[number - 1]).toBe(entry.sealed.id);
          count += 1;
        }
    const again = await company.office.get(`/api/rebuild/${job}`);
    expect([job, again.status, again.body.same, again.body.differences]).toEqual([job, 200, true, []]);
  }
  for (const { acknowledged } of phones)
    for (const sha of acknowledged.photos.keys()) {
      const read = await until(
        async () => (await company.office.get(`/api/photos/${sha}`)).body,
        (photo) => photo.state === "read",
      );
      expect(read.bytes).toBe(acknowledged.photos.get(sha)?.length);
      expect(sha256((await company.office.get(`/api/photos/${sha}/original`)).bytes)).toBe(sha);
    }
  return count;
}

const PHONES = 6;
let photo = 0;
/** Phones that enter and send photos until they are told to stop. */
function sending(company: Company, jobs: readonly string[]): { readonly phones: readonly PhoneThatKeeps[]; stop(): Promise<void> } {
  const phones = Array.from({ length: PHONES }, () => new PhoneThatKeeps(company));
  let isOn = true;
  const all = phones.map(async (keeps, n) => {
    const phone = new Phone();
    const job = jobs[n % jobs.length] ?? "";
    for (let i = 0; isOn; i += 1) {
      await keeps.enter(job, phone, "note-for-record", { text: `phone ${n}, note ${i}` });
      if (i % 12 === 3 && keeps.acknowledged.photos.size < 2) {
        photo += 1;
        const bytes = new Uint8Array([...scene, ...new TextEncoder().encode(`picture ${photo}`)]);
        await keeps.picture(job, phone, bytes);
        await keeps.upload(bytes);
      }
      await pause(15);
    }
  });
  return {
    phones,
    async stop() {
      isOn = false;
      await Promise.all(all);
    },
  };
}

test("six phones send while their company moves there and back: nothing is lost, and what it left answers nobody", async () => {
  const company = await newCompany(stack.edge, stack.secrets.operatorKey);
  const jobs = [(await newJob(company)).job, (await newJob(company)).job];
  const { phones, stop } = sending(company, jobs);
  await pause(800);
  const there = await done(company.company, "DB_2");
  const [, held = 0] = rowsBeside(company.company);
  expect(held).toBeGreaterThan(50);
  await pause(800);
  const back = await done(company.company, "DB");
  await pause(300);
  await stop();
  expect(await done(company.company, "DB", "--remove")).toContain("nothing of it elsewhere");
  expect(rowsBeside(company.company)[0]).toBe(0);
  const count = await whole(company, phones, jobs);
  expect(count).toBeGreaterThan(60);
  const repeated = phones.reduce((sum, { unanswered }) => sum + unanswered, 0);
  const taken = phones.reduce((sum, { thereAlready }) => sum + thereAlready, 0);
  const shut = [there, back].map((line) => /(\d+ ms)/.exec(line)?.[1]);
  said.push(`${count} entries and ${photo} photos acknowledged while their company moved there and back, all there once;`);
  said.push(`closed for ${shut.join(" and ")}; asked again ${repeated} times, of which ${taken} had been taken already.`);
  // the sessions, links and people went along
  expect((await company.owner.get("/api/people")).body.people.length).toBe(3);
}, 120_000);

test("the command killed in the middle, then the edge's process, then run again: the company has moved and is whole", async () => {
  const company = await newCompany(stack.edge, stack.secrets.operatorKey);
  const jobs = [(await newJob(company)).job];
  const { phones, stop } = sending(company, jobs);
  await pause(700);
  const killed = command(company.company, "DB_2");
  await seen("the first step", () => (killed.lines.length > 0 ? true : undefined));
  killed.child.kill("SIGKILL");
  expect([await killed.ended, killed.lines[0]]).toEqual(["SIGKILL", expect.stringContaining("copying")]);
  const back = command(company.company, "DB_2");
  await seen("its first step", () => (back.lines.length > 0 ? true : undefined));
  expect(stack.kill("workerd")).toBe(true);
  expect([await limited("the command", back.ended, 30_000), back.lines.at(-1)]).toEqual([
    "exit 0",
    expect.stringContaining("lies in DB_2"),
  ]);
  await pause(300);
  await stop();
  expect(await whole(company, phones, jobs)).toBeGreaterThan(30);
}, 120_000);

test("companies with the same job ids answer with their own rows alone, in one database and in two", async () => {
  const companies: Company[] = [];
  for (const jobs of [1, 2, 3]) {
    const company = await newCompany(stack.edge, stack.secrets.operatorKey);
    for (let n = 1; n <= jobs; n += 1) {
      const { job, phone } = await newJob(company, `planted-${n}`);
      const note = await phone.entry(job, company.people.crew, "note-for-record", { text: `of the company with ${jobs}` });
      expect((await company.crew.post(`/api/jobs/${job}/entries`, batchOf(note))).status).toBe(200);
    }
    companies.push(company);
  }
  const [, , last] = companies;
  const look = async (): Promise<void> => {
    for (const [n, { owner }] of companies.entries()) {
      const wanted = Array.from({ length: n + 1 }, (_, i) => `planted-${i + 1}`);
      const { jobs } = (await owner.get("/api/jobs")).body;
      expect(jobs.map(({ job }: Loose) => job).sort()).toEqual(wanted);
      const { questions } = (await owner.get("/api/questions")).body;
      for (const { id } of questions) {
        const answer = (await owner.get(`/api/questions/${id}`)).body;
        expect([id, answer.jobs, answer.behind]).toEqual([id, n + 1, 0]);
      }
      const ledger = new TextDecoder().decode((await owner.get("/api/jobs/planted-1/ledger")).bytes);
      expect(ledger.match(/of the company with \d/g)).toEqual([`of the company with ${n + 1}`]);
      const beyond = await owner.get(`/api/jobs/planted-${n + 2}/ledger`);
      expect([beyond.status, beyond.body.code]).toEqual([404, "job-unknown"]);
    }
  };
  await look();
  await done(last?.company ?? "", "DB_2");
  await look();
});
