import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import puppeteer, { type Browser, type Page } from "puppeteer";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchOptions } from "#infra/browser/index.ts";
import { type Stack, startStack } from "#infra/local/index.ts";
import {
  allSent,
  answer,
  chooseTogether,
  firstVisit,
  inLedger,
  jpegs,
  keptOn,
  linkFor,
  type Made,
  notAtEdge,
  putFirst,
  read,
  standing,
  waiting,
} from "../helpers/crew-phone.ts";
import { type Company, newCompany, newJob, until } from "../helpers/edge.ts";
import { phone } from "../helpers/screen.ts";

/** A phone that is killed twice, its profile kept, and an edge that was not even started in between. */
let folder: string;
let stack: Stack;
let company: Company;
let job: string;
let browser: Browser | undefined;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "asburied-kept-"));
  stack = await startStack({ directory: join(folder, "stack"), demoLinks: false, sweepEvery: 2_000 });
  company = await newCompany(stack.edge, stack.secrets.operatorKey);
  ({ job } = await newJob(company));
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await stack?.stop();
  await rm(folder, { recursive: true, force: true });
}, 60_000);

/** The phone is switched on. */
async function switchedOn(): Promise<Page> {
  browser = await puppeteer.launch({ ...(await launchOptions()), userDataDir: join(folder, "profile") });
  const page = await browser.newPage();
  await page.setViewport(phone);
  return page;
}

/** The battery is taken out: nothing is said to any page. */
async function killed(): Promise<void> {
  const process = browser?.process();
  const ended = new Promise((resolve) => process?.once("exit", resolve));
  process?.kill("SIGKILL");
  await ended;
  browser = undefined;
}

test("killed with unsent entries and pictures, started without an edge, ten more entries, killed during the upload: every byte and every entry once", async () => {
  const at = stack.edge;
  const first = await switchedOn();
  await firstVisit(first, await linkFor(company, company.people.crew, at));
  // switched off in good order once: the first visit was yesterday
  await browser?.close();
  await stack.down("edge");

  const made: Made[] = [...(await jpegs(folder, 3)), ...(await jpegs(folder, 2, 2_500_000))];
  const noSignal = await switchedOn();
  await noSignal.goto(at);
  await noSignal.waitForSelector(".jobs li");
  await answer(noSignal, at, job, "lines-asked");
  await read(noSignal, at, job, "top-below-soil", "6 0/16");
  await chooseTogether(noSignal, at, job, made.slice(0, 2));
  await putFirst(noSignal);
  const before = await keptOn(noSignal);
  expect([before.entries.length, before.photos.length, waiting(before)]).toEqual([3, 2, 5]);
  await killed();

  const again = await switchedOn();
  await again.goto(at);
  await again.waitForSelector(".jobs li");
  expect(await keptOn(again)).toEqual(before);
  expect(await standing(again)).toMatch(/^5 not sent\. No answer since/);
  for (let n = 0; n < 6; n += 1) await answer(again, at, job, n % 2 === 0 ? "lines-asked" : "gate-swings", n % 2);
  for (const typed of ["6 1/16", "6 2/16"]) await read(again, at, job, "top-below-soil", typed);
  await chooseTogether(again, at, job, made.slice(2));
  for (let n = 0; n < 2; n += 1) await putFirst(again);
  // the fifth picture waits to be put to what it shows, and goes to the edge all the same
  const all = await keptOn(again);
  expect([all.entries.length, all.photos.length]).toEqual([13, 5]);
  expect(new Set(all.entries.map(({ run }) => run)).size).toBe(13);
  expect([...all.bytes].sort()).toEqual(made.map(({ sha256 }) => sha256).sort());

  // a signal that carries 200 kB a second: the large ones are on their way for a while
  const network = await again.createCDPSession();
  await network.send("Network.enable");
  await network.send("Network.emulateNetworkConditions", {
    offline: false,
    latency: 20,
    downloadThroughput: -1,
    uploadThroughput: 200_000,
  });
  await stack.up("edge");
  await again.goto(at);
  await again.waitForSelector(".standing");
  await until(
    () => standing(again),
    (says) => /Sending a picture: ([1-9]|[1-8]\d) %/.test(says),
    90_000,
  );
  const during = await keptOn(again);
  expect(waiting(during)).toBeGreaterThan(0);
  await killed();

  const last = await switchedOn();
  await last.goto(at);
  await last.waitForSelector(".jobs li");
  const sent = await allSent(last);
  expect(sent.entries.filter(({ standing: one }) => one === "refused")).toEqual([]);
  expect(sent.photos.map(({ standing: one }) => one)).toEqual(Array(5).fill("acknowledged"));
  expect(sent.bytes).toEqual([]);
  const counts = await inLedger(company, job);
  expect(all.entries.map(({ id }) => counts.get(id))).toEqual(Array(13).fill(1));
  // what the office entered to open it, and nothing else
  expect(counts.size).toBe(13 + 2);
  expect(
    await notAtEdge(
      company,
      made.map(({ sha256 }) => sha256),
    ),
  ).toEqual([]);
}, 400_000);
