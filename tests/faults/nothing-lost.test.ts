import { readdirSync, readFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ProcessName, type Stack, startStack } from "#infra/local/index.ts";
import { Client, type Company, newCompany, newJob, sha256 } from "../helpers/edge.ts";
import { compare, originalsOnDisk, settled } from "./comparison.ts";
import { PhoneThatKeeps } from "./phone-that-keeps.ts";
import { descendantsOf, isAlive, ticksOf } from "./processes.ts";
import { beginUpload } from "./raw-upload.ts";
import { seeded } from "./seeded.ts";
import { limited, pause, seen } from "./waiting.ts";

// What the harness beside this (`harness.test.ts`) does not reach: large photos cut in the middle, a decoder's thread, print's browser, and
// a second stack in the first one's place.
const SEED = Number(process.env.ASBURIED_SEED ?? 2026);
const chance = seeded(SEED);
const MOMENTS = ["before", "during"] as const;
const MEGABYTE = 1 << 20;

let directory: string;
let stack: Stack;
let company: Company;
let phone: PhoneThatKeeps;
const jobs: string[] = [];
let job: Awaited<ReturnType<typeof newJob>>;
let scene: Uint8Array;
const lines: string[] = [];

let count = 0;
/** A picture of 24 million pixels and some 4 MB, so that there is time to be killed in; each with bytes of its own at its end. */
const photoOf = (of = scene): Uint8Array => {
  count += 1;
  return new Uint8Array([...of, ...new TextEncoder().encode(`asburied ${SEED} ${count}`)]);
};

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-faults-"));
  const noise = { type: "gaussian", mean: 128, sigma: 20 } as const;
  const base = await sharp({ create: { width: 1500, height: 1000, channels: 3, background: "#777", noise } })
    .png()
    .toBuffer();
  const drawn = sharp(base).resize({ width: 6000, height: 4000, kernel: "nearest" }).jpeg({ quality: 75, progressive: true });
  scene = new Uint8Array(await drawn.toBuffer());
  expect(scene.length).toBeGreaterThan(3 * MEGABYTE);
  stack = await startStack({ directory, demoLinks: false, sweepEvery: 500, instead: { app: join(directory, "no-app") } });
  company = await newCompany(stack.edge, stack.secrets.operatorKey);
  phone = new PhoneThatKeeps(company);
  job = await newJob(company);
  jobs.push(job.job);
});
afterAll(async () => {
  await stack?.stop();
  await rm(directory, { recursive: true, force: true });
  console.log(`kill -9, seed ${SEED}:\n${lines.map((line) => `  ${line}`).join("\n")}`);
});

const pidOf = (name: ProcessName): number => {
  const pid = stack.processes.find((one) => one.name === name)?.pid;
  if (pid === undefined) throw new Error(`${name} does not run`);
  return pid;
};
const kill = (name: ProcessName): void => {
  expect(stack.kill(name)).toBe(true);
};
/** Until the part that was killed runs again, with another process id. */
const back = async (name: ProcessName, before: number): Promise<void> => {
  await limited(`${name} to come back`, stack.ready(name));
  await seen(`another ${name}`, () => stack.processes.find((one) => one.name === name && one.pid !== before));
  const nobody = new Client(stack.edge);
  await seen("the edge's answer", async () =>
    (await nobody.get("/api/health").catch(() => undefined))?.status === 200 ? true : undefined,
  );
};
/** Until a process has worked for so many ticks of processor time; where the system does not tell, for as many times 10 ms. */
const worksFor = async (what: string, pid: number, ticks: number): Promise<void> => {
  const from = ticksOf(pid);
  if (from === undefined) return pause(ticks * 10);
  await seen(`${what} at work`, () => ((ticksOf(pid) ?? 0) - from >= ticks ? true : undefined));
};
const filesIn = (folder: string): readonly string[] => {
  try {
    return readdirSync(join(directory, "store", stack.bucket, company.company, folder));
  } catch {
    return [];
  }
};
const stateOf = async (bytes: Uint8Array): Promise<string | undefined> => {
  const { status, body } = await limited("a photo's state", company.crew.get(`/api/photos/${sha256(bytes)}`));
  return status === 404 ? undefined : body.state;
};
/** Of a photo that was not acknowledged: all of it is there, or nothing. */
const wholeOrNothing = async (bytes: Uint8Array): Promise<string> => {
  if ((await stateOf(bytes)) === undefined) return "not there";
  const original = await limited("an original", company.office.get(`/api/photos/${sha256(bytes)}/original`));
  expect(sha256(original.bytes)).toBe(sha256(bytes));
  return "there, whole";
};

/** One kill: what was done, and what had been acknowledged, for the lines that are printed at the end. */
const trial = async (name: ProcessName, moment: (typeof MOMENTS)[number], act: (before: number) => Promise<string>): Promise<void> => {
  const { entries, photos, records } = phone.acknowledged;
  const from = [entries.length, photos.size, records.length] as const;
  const [unanswered, there, began] = [phone.unanswered + phone.recordsUnanswered, phone.thereAlready, Date.now()];
  const before = pidOf(name);
  const found = await act(before);
  await back(name, before);
  const more = [entries.length - from[0], photos.size - from[1], records.length - from[2]];
  lines.push(
    `${name} ${moment}: ${found}; acknowledged ${more[0]} entries, ${more[1]} photos, ${more[2]} records; ` +
      `${phone.unanswered + phone.recordsUnanswered - unanswered} tries unanswered, ${phone.thereAlready - there} entries there without an answer; ` +
      `${((Date.now() - began) / 1000).toFixed(1)} s`,
  );
};
/** While a part that appends do without is down, every append is answered the first time. */
const appendsGoOn = async (): Promise<void> => {
  const before = phone.unanswered;
  await phone.enterMany(job.job, 2, 3);
  expect(phone.unanswered).toBe(before);
};

describe("media", () => {
  test("before: the photo is taken while it is down, and so is one that nobody can read", () =>
    trial("media", "before", async () => {
      kill("media");
      const good = photoOf();
      const cut = photoOf(
        new Uint8Array(readFileSync(new URL("../samples/photos/park-cut-off.heic", import.meta.url))).subarray(0, 30_000),
      );
      await Promise.all([phone.upload(good), phone.upload(cut)]);
      for (const bytes of [cut, good]) await phone.picture(job.job, job.phone, bytes);
      await appendsGoOn();
      await settled(company.office, jobs, phone.acknowledged, 45_000);
      // the thread that decoded the HEIC must not take the process with it, which waits up to 2 s for what is in work
      const reader = pidOf("media");
      await pause(3_000);
      expect(pidOf("media")).toBe(reader);
      return "2 photos sent while it was down, read later";
    }));
});

describe("print", () => {
  /** Issues, and kills when the request has reached print and print works on it. */
  const whilePrinting = async (act: () => void): Promise<boolean> => {
    const folder = `records/${job.job}`;
    const before = filesIn(folder).length;
    const print = pidOf("print");
    const issuing = phone.issueOnce(job.job);
    await seen("the record's files in the store", () => (filesIn(folder).length > before ? true : undefined));
    await worksFor("print", print, chance.whole(1, 4));
    act();
    return issuing;
  };

  test("during: while it prints; its browser goes with it, and what was not acknowledged is no record", () =>
    trial("print", "during", async () => {
      await settled(company.office, jobs, phone.acknowledged, 45_000);
      const list = async () => (await company.office.get(`/api/jobs/${job.job}/records`)).body.records.length;
      for (let tried = 1; ; tried += 1) {
        const print = pidOf("print");
        const browser = descendantsOf(print);
        const before = await list();
        const issued = await whilePrinting(() => kill("print"));
        await appendsGoOn();
        await back("print", print);
        await seen("the end of its browser", () => (browser.some(isAlive) ? undefined : true));
        if (issued && tried < 4) continue;
        expect(issued).toBe(false);
        expect(await list()).toBe(before);
        await phone.issue(job.job);
        return `killed in its ${tried}. print, ${browser.length} browser processes gone with it`;
      }
    }));
});

describe("the store", () => {
  test("during: half a photo on its way into the store", () =>
    trial("store", "during", async () => {
      await settled(company.office, jobs, phone.acknowledged, 45_000);
      const bytes = photoOf();
      await phone.picture(job.job, job.phone, bytes);
      const upload = await beginUpload(
        company.crew,
        `/api/photos/${sha256(bytes)}`,
        bytes,
        Math.floor(bytes.length * chance.share(0.7, 0.95)),
      );
      const part = await seen("half a photo in the store", () => filesIn("originals").find((name) => name.includes(".part-")));
      expect(part).toContain(sha256(bytes));
      kill("store");
      upload.finish();
      expect(await limited("the answer to the half photo", upload.status)).toBe(503);
      const found = await wholeOrNothing(bytes);
      expect(found).toBe("not there");
      await appendsGoOn();
      await phone.upload(bytes);
      return `half a photo in it, refused, then ${found}, then taken`;
    }));
});

describe("workerd", () => {
  const name = "workerd";
  beforeAll(async () => {
    job = await newJob(company);
    jobs.push(job.job);
  });

  test("during: 10 phones append, half a photo is on its way, a record is being printed", () =>
    trial(name, "during", async () => {
      const bytes = photoOf();
      const share = chance.share(0.2, 0.95);
      const upload = await beginUpload(company.crew, `/api/photos/${sha256(bytes)}`, bytes, Math.floor(bytes.length * share));
      const before = filesIn(`records/${job.job}`).length;
      const issuing = phone.issueOnce(job.job);
      await seen("the record's files", () => (filesIn(`records/${job.job}`).length > before ? true : undefined));
      const unanswered = phone.unanswered;
      let left = chance.whole(3, 15);
      const many = phone.enterMany(job.job, 10, 7, () => {
        left -= 1;
        if (left === 0) kill(name);
      });
      const [issued, status] = await Promise.all([issuing, limited("the end of the half photo", upload.status), many]);
      upload.end();
      expect(phone.unanswered).toBeGreaterThan(unanswered);
      expect(status).toBeUndefined();
      const found = await wholeOrNothing(bytes);
      await phone.upload(bytes);
      await phone.picture(job.job, job.phone, bytes);
      if (!issued) await phone.issue(job.job);
      return `${Math.round(share * 100)} % of a photo sent, then ${found}; its record ${issued ? "answered before" : "unanswered, issued again"}`;
    }));
});

describe("afterwards", () => {
  let heads: Readonly<Record<string, unknown>>;

  test("all that was acknowledged is there: each entry once under its number, the photos' bytes, the records", async () => {
    await settled(company.office, jobs, phone.acknowledged, 90_000);
    const { entries, photos, records } = phone.acknowledged;
    // 8 with media down, 6 with print down, 7 with the store down, 71 with workerd killed
    expect([entries.length >= 92, photos.size, records.length >= 2]).toEqual([true, 4, true]);
    heads = await compare(company.office, jobs, phone.acknowledged);
    lines.push(`compared: ${entries.length} entries, ${photos.size} photos, ${records.length} records in ${jobs.length} jobs`);
  }, 120_000);

  test("and is there after the whole stack was stopped and another was started in its place", async () => {
    await limited("the stop", stack.stop());
    stack = await startStack({ directory, demoLinks: false, sweepEvery: 500, instead: { app: join(directory, "no-app") } });
    const office = new Client(stack.edge);
    office.cookie = company.office.cookie;
    expect(await compare(office, jobs, phone.acknowledged)).toEqual(heads);
    expect((await limited("readiness", new Client(stack.edge).get("/api/ready"))).body).toMatchObject({ ready: true });
    const { whole, half, parts } = await originalsOnDisk(join(directory, "store"));
    expect({ half, parts }).toEqual({ half: [], parts: 0 });
    expect(whole).toBeGreaterThanOrEqual(phone.acknowledged.photos.size);
    lines.push(`compared again after stop and start; ${whole} originals on disk, each with its hash, no half one`);
  });
});
