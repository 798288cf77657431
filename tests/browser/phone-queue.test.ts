import { mkdir, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "puppeteer";
import { afterAll, beforeAll, beforeEach, describe, expect, inject, test } from "vitest";
import { Between } from "../helpers/between.ts";
import {
  allSent,
  answer,
  chooseTogether,
  firstVisit,
  inLedger,
  jpegs,
  keptOn,
  linkFor,
  notAtEdge,
  read,
  standing,
  waiting,
} from "../helpers/crew-phone.ts";
import { type Company, newCompany, newJob, until } from "../helpers/edge.ts";
import { axe, newScreen, openBrowser, type Screen, targets, textOf } from "../helpers/screen.ts";

/** A crew's phone with all that can befall what it has not sent yet. Between it and the real edge stands a signal that can be weak. */
let company: Company;
let browser: Browser;
let folder: string;
const shots = fileURLToPath(new URL("../../out/screens", import.meta.url));
/** One job and one signal for each test, one phone too where no test says otherwise. */
let job: string;
let signal: Between;
let screen: Screen;
let page: Page;

beforeAll(async () => {
  await mkdir(shots, { recursive: true });
  folder = await mkdtemp(join(tmpdir(), "asburied-queue-"));
  company = await newCompany(inject("edge"), inject("operatorKey"));
  browser = await openBrowser();
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

beforeEach(async () => {
  ({ job } = await newJob(company));
  signal = await new Between(inject("edge")).open();
  screen = await newScreen(browser);
  page = screen.page;
  await firstVisit(page, await newLink());
  return async () => {
    await screen.close().catch(() => {});
    await signal.close();
  };
}, 120_000);

const newLink = (): Promise<string> => linkFor(company, company.people.crew, signal.address);
const idsOn = async (one: Page): Promise<readonly string[]> => (await keptOn(one)).entries.map(({ id }) => id);

/** Entries of people at the edge, besides the two that open a job. */
async function expectOnce(ids: readonly string[]): Promise<void> {
  const counts = await inLedger(company, job);
  expect(ids.map((id) => counts.get(id))).toEqual(ids.map(() => 1));
  expect(counts.size).toBe(ids.length + 2);
  expect(ids.map((id) => signal.entriesTaken.get(id))).toEqual(ids.map(() => 1));
}

/** The page is looked at again. */
const look = (one: Page): Promise<unknown> => one.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));

describe("a phone that is full", () => {
  test("says so; entries still fit, nothing that it said it keeps is lost, and it is full no more once the office has it", async () => {
    // a profile on the disk: what a private window has used is told otherwise
    await screen.close();
    const phone = await openBrowser();
    page = await phone.newPage();
    await page.setViewport({ width: 360, height: 740 });
    await firstVisit(page, await newLink());
    const cdp = await page.createCDPSession();
    const used = (): Promise<number> => page.evaluate(async () => (await navigator.storage.estimate()).usage ?? 0);
    /** So much is left. The browser remembers for half a minute what is left for a store that is open: it is closed first. */
    const room = async (bytes: number): Promise<void> => {
      const quotaSize = (await used()) + bytes;
      const { href } = new URL(page.url());
      await page.goto("about:blank");
      await new Promise((resolve) => setTimeout(resolve, 4_000));
      await cdp.send("Storage.overrideQuotaForOrigin", { origin: signal.address, quotaSize });
      await page.goto(href);
      await page.waitForSelector("main");
    };
    const photos = await jpegs(folder, 5, 400_000);
    await signal.close();
    // two fit, the third does not
    await room(1_100_000);
    await chooseTogether(page, signal.address, job, photos);
    expect(await textOf(page, "main")).toContain("full");
    await until(
      () => standing(page),
      (says) => says.includes("This phone is full."),
    );
    const two = await keptOn(page);
    expect([two.photos.length, two.reserve]).toEqual([2, true]);
    // not a byte left but the reserve
    await room(0);
    const typed = ["6 0/16", "6 1/16", "6 2/16"];
    for (const one of typed) await read(page, signal.address, job, "top-below-soil", one);
    for (let n = 0; n < 4; n += 1) await answer(page, signal.address, job, "lines-asked", n % 2);
    const before = await keptOn(page);
    expect([before.entries.length, waiting(before), before.reserve]).toEqual([7, 9, false]);
    expect(await standing(page)).toContain("This phone is full.");
    await page.goto(`${signal.address}/phone/unsent`);
    await page.waitForFunction(() => document.querySelector("main")?.textContent?.includes("This phone is full."));
    await page.screenshot({ path: join(shots, "unsent-full.png"), fullPage: true });
    expect((await axe(page)).violations).toEqual([]);
    await signal.open();
    await page.goto(signal.address);
    const sent = await allSent(page);
    expect(sent.photos.map((one) => one.standing)).toEqual(["acknowledged", "acknowledged"]);
    expect(
      await notAtEdge(
        company,
        sent.photos.map(({ sha256 }) => sha256),
      ),
    ).toEqual([]);
    await expectOnce(before.entries.map(({ id }) => id));
    await room(20_000_000);
    await page.goto(signal.address);
    await until(
      () => standing(page),
      (says) => says.startsWith("Everything sent."),
    );
    expect((await keptOn(page)).reserve).toBe(true);
    await phone.close();
  }, 240_000);
});

describe("an edge in trouble", () => {
  test("answers 500, then the session is over: everything is kept and goes on by itself; one that is refused holds nothing up", async () => {
    const at = signal.address;
    const photos = await jpegs(folder, 2);
    signal.instead = ({ path }) => (path.startsWith("/api/") ? 500 : undefined);
    await answer(page, at, job, "lines-asked");
    await chooseTogether(page, at, job, photos);
    await until(
      () => standing(page),
      (says) => /^3 not sent\. No answer since/.test(says),
    );
    expect(waiting(await keptOn(page))).toBe(3);

    // the session ends while the edge is in trouble
    signal.instead = () => undefined;
    const ended = await page.evaluate(
      async () => (await fetch("/api/session/end", { method: "POST", headers: { "x-asburied": "1" } })).status,
    );
    expect(ended).toBeLessThan(300);
    await look(page);
    await until(
      () => standing(page),
      (says) => says.includes("Signed out."),
    );
    await answer(page, at, job, "gate-swings");
    expect(waiting(await keptOn(page))).toBe(4);
    await page.goto(`${at}/phone/unsent`);
    await page.waitForFunction(() => document.querySelector("main")?.textContent?.includes("ask the office for a new link"));

    // one entry names what the sheet does not know; it stands between two good ones
    await page.evaluate(async () => {
      const opening = indexedDB.open("asburied");
      const database = await new Promise<IDBDatabase>((resolve) => {
        opening.onsuccess = () => resolve(opening.result);
      });
      const store = database.transaction("entries", "readwrite").objectStore("entries");
      const all = await new Promise<{ run: number; id: string; entry: { sealed: object; body: object } }[]>((resolve) => {
        const getting = store.getAll();
        getting.onsuccess = () => resolve(getting.result);
      });
      const [first] = all;
      if (first === undefined) throw new Error("no entry");
      const sealed = { ...first.entry.sealed, kind: "No Such Kind" };
      await new Promise<void>((resolve) => {
        const putting = store.put({ ...first, entry: { ...first.entry, sealed } });
        putting.onsuccess = () => resolve();
      });
      database.close();
    });
    const [spoilt, ...good] = await idsOn(page);
    expect(good).toHaveLength(1);
    await page.goto(await newLink());
    await page.waitForSelector(".jobs li");
    const sent = await allSent(page);
    expect(sent.entries.filter((one) => one.standing === "refused").map(({ id }) => id)).toEqual([spoilt]);
    expect(sent.photos.map((one) => one.standing)).toEqual(["acknowledged", "acknowledged"]);
    await expectOnce(good);
    expect(
      await notAtEdge(
        company,
        photos.map(({ sha256 }) => sha256),
      ),
    ).toEqual([]);
    await until(
      () => standing(page),
      (says) => says.includes("1 not taken by the office"),
    );
    await page.goto(`${at}/phone/unsent`);
    await page.waitForSelector(".refused-entry p + p");
    expect((await textOf(page, ".refused-entry")).length).toBeGreaterThan(40);
    expect((await axe(page)).violations).toEqual([]);
  }, 240_000);

  test("is asked again after longer and longer waits", async () => {
    const asked: number[] = [];
    signal.instead = ({ path }) => {
      if (!path.startsWith("/api/")) return undefined;
      if (path === "/api/session") asked.push(Date.now());
      return 503;
    };
    await answer(page, signal.address, job, "lines-asked");
    await new Promise((resolve) => setTimeout(resolve, 12_000));
    // what is asked within a second is one attempt: to send, then to read
    const attempts = asked.filter((time, i) => i === 0 || time - (asked[i - 1] ?? 0) > 1_000);
    const [first = 0, second = 0] = attempts.slice(1).map((time, i) => time - (attempts[i] ?? 0));
    // waits of 2 s and 4 s, each give or take a quarter: at most 2.5 s, then at least 3 s
    expect(second).toBeGreaterThan(first);
    expect(attempts.length).toBeLessThanOrEqual(4);
    signal.instead = () => undefined;
    await allSent(page, 40_000);
  }, 120_000);
});

describe("more than one page", () => {
  test("two pages of one phone: entries in both, each sent once", async () => {
    const at = signal.address;
    const second = await page.browserContext().newPage();
    await signal.close();
    await answer(page, at, job, "lines-asked");
    await answer(second, at, job, "gate-swings");
    await answer(page, at, job, "lines-asked", 1);
    await read(second, at, job, "top-below-soil", "6 0/16");
    const before = await keptOn(page);
    expect(before.entries.map(({ run }) => run)).toEqual([0, 1, 2, 3]);
    await signal.open();
    await Promise.all([look(page), look(second)]);
    await allSent(page);
    await expectOnce(before.entries.map(({ id }) => id));
    for (const one of [page, second])
      await until(
        () => standing(one),
        (says) => says.startsWith("Everything sent."),
        40_000,
      );
  }, 120_000);

  test("two phones on one job: each sees what the other entered", async () => {
    const at = signal.address;
    const other = await newScreen(browser);
    await firstVisit(other.page, await newLink());
    await signal.close();
    await read(page, at, job, "top-below-soil", "6 3/16");
    await read(other.page, at, job, "top-below-soil", "6 5/16");
    const ids = [...(await idsOn(page)), ...(await idsOn(other.page))];
    expect(new Set(ids).size).toBe(2);
    await signal.open();
    for (const one of [page, other.page]) {
      await look(one);
      await allSent(one);
    }
    await expectOnce(ids);
    for (const one of [page, other.page]) {
      await one.goto(`${at}/jobs/${job}/take/top-below-soil`);
      await until(
        async () => {
          await look(one);
          return one.evaluate(() => document.querySelector("main")?.textContent ?? "");
        },
        (says) => says.includes("6 3/16") && says.includes("6 5/16"),
        40_000,
      );
    }
    await other.close();
  }, 120_000);
});

describe("clocks", () => {
  const HOUR = 3_600_000;

  test("a phone three hours ahead learns it; its entry carries both clocks, and what it says now is the edge's", async () => {
    const at = signal.address;
    await page.evaluateOnNewDocument((shift) => {
      const Real = Date;
      globalThis.Date = new Proxy(Real, {
        construct: (target, given) => (given.length === 0 ? new target(target.now() + shift) : Reflect.construct(target, given)),
        get: (target, name) => (name === "now" ? () => target.now() + shift : Reflect.get(target, name)),
      });
    }, 3 * HOUR);
    await page.goto(at);
    await page.waitForSelector(".jobs li");
    // another day may have begun three hours ahead
    await page.goto(`${at}/phone/person`);
    await page.waitForSelector("main .choices button");
    await page.click("main .choices button");
    await page.waitForSelector(".jobs li");
    const began = Date.now();
    await answer(page, at, job, "lines-asked");
    const [id] = await idsOn(page);
    const { skew } = await allSent(page);
    expect(Math.abs((skew ?? 0) + 3 * HOUR)).toBeLessThan(20_000);
    const { entries } = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
    const { made, sent, received } = entries.find((one: { envelope: { id: string } }) => one.envelope.id === id).envelope;
    for (const clock of [made, sent]) expect(Math.abs(clock - 3 * HOUR - began)).toBeLessThan(40_000);
    expect(Math.abs(received - began)).toBeLessThan(40_000);

    // without signal, the next entry's time is the edge's all the same
    await signal.close();
    await read(page, at, job, "top-below-soil", "6 0/16");
    await page.goto(`${at}/jobs/${job}/take/top-below-soil`);
    await page.waitForSelector(".readings-so-far li");
    const said = await textOf(page, ".readings-so-far");
    const minutes = [-1, 0, 1].map((n) =>
      new Intl.DateTimeFormat("en-US", { timeZone: "America/New_York", hour: "numeric", minute: "2-digit", hourCycle: "h23" }).format(
        Date.now() + n * 60_000,
      ),
    );
    const plain = (text: string): string => text.replaceAll(/\b0(\d:)/g, "$1");
    expect(
      minutes.map(plain).some((minute) => plain(said).includes(minute)),
      `${said} at ${minutes.join(", ")}`,
    ).toBe(true);
  }, 120_000);

  test("the day ended while a tape was read: who enters is asked over the page, and what was typed is entered then", async () => {
    const at = signal.address;
    await page.goto(`${at}/jobs/${job}/take/top-below-soil`);
    await page.waitForSelector("main .typed input[type=text]");
    await page.evaluate(async () => void (await document.fonts.ready));
    await page.type("main .typed input[type=text]", "6 7/16");
    await page.evaluate((day) => {
      const now = Date.now;
      Date.now = () => now.call(Date) + day;
    }, 24 * HOUR);
    await page.click("main .enter-reading");
    await page.waitForSelector("dialog[open]");
    expect((await keptOn(page)).entries).toEqual([]);
    expect(await page.$eval("main .typed input[type=text]", (input) => (input as HTMLInputElement).value)).toBe("6 7/16");
    expect((await axe(page)).violations).toEqual([]);
    const inside = await page.$$eval("dialog button", (all) => all.map((one) => one.getBoundingClientRect().height));
    expect(Math.min(...inside)).toBeGreaterThanOrEqual(72);
    expect((await targets(page)).length).toBeGreaterThan(0);
    await page.screenshot({ path: join(shots, "who-enters.png") });
    // left open: nothing was entered, nothing was lost
    await page.click("dialog > button");
    await page.waitForFunction(() => document.querySelector("dialog") === null);
    expect((await keptOn(page)).entries).toEqual([]);
    await page.click("main .enter-reading");
    await page.waitForSelector("dialog[open] .choices button");
    await page.click("dialog .choices button");
    await page.waitForFunction(() => document.querySelector("main .enter-reading") === null);
    const { entries } = (await until(
      async () => (await company.office.get(`/api/jobs/${job}/ledger`)).body,
      ({ entries: all }) => all.length === 3,
    )) as { entries: { body: { what: { content: { typed?: string } } } }[] };
    expect(entries.at(-1)?.body.what.content.typed).toBe("6 7/16");
  }, 120_000);
});

test("a newer app says that it lies ready; taking it keeps what was typed and what is not sent", async () => {
  const at = signal.address;
  signal.instead = ({ path }) => (path.startsWith("/api/") ? 503 : undefined);
  await answer(page, at, job, "lines-asked");
  signal.newerApp = "\n// newer";
  await page.goto(`${at}/jobs/${job}/take/top-below-soil`);
  await page.waitForSelector("main .typed input[type=text]");
  await page.type("main .typed input[type=text]", "6 7/16");
  await page.evaluate(async () => void (await (await navigator.serviceWorker.getRegistration())?.update()));
  await page.waitForSelector(".newer button");
  expect(await textOf(page, ".newer")).toContain("A newer version lies ready.");
  // nothing changes under the hand
  expect(await page.$eval("main .typed input[type=text]", (input) => (input as HTMLInputElement).value)).toBe("6 7/16");
  const before = await keptOn(page);
  expect(waiting(before)).toBe(1);
  await Promise.all([page.waitForNavigation(), page.click(".newer button")]);
  await page.waitForFunction(
    () =>
      document.querySelector<HTMLInputElement>("main .typed input[type=text]")?.value === "6 7/16" &&
      document.querySelector(".newer") === null,
  );
  expect((await keptOn(page)).entries).toEqual(before.entries);
  signal.instead = () => undefined;
  await page.reload();
  await allSent(page);
  await expectOnce(before.entries.map(({ id }) => id));
}, 120_000);

describe("many at once", () => {
  test("two hundred pictures queued without signal, some answers of the edge lost on the way: nothing is lost, nothing stands twice", async () => {
    const photos = await jpegs(folder, 200);
    await signal.close();
    await chooseTogether(page, signal.address, job, photos);
    await answer(page, signal.address, job, "lines-asked");
    const before = await keptOn(page);
    expect(waiting(before)).toBe(201);
    // every fortieth photo is stored, and the phone does not hear of it
    let puts = 0;
    signal.instead = ({ method }) => {
      if (method !== "PUT") return undefined;
      puts += 1;
      return puts % 40 === 0 ? "answer lost" : undefined;
    };
    const began = performance.now();
    await signal.open();
    await page.goto(signal.address);
    const sent = await until(
      async () => {
        await look(page);
        return keptOn(page);
      },
      (kept) => waiting(kept) === 0,
      240_000,
    );
    process.stdout.write(`200 photos and an entry sent after ${Math.round((performance.now() - began) / 1000)} s, in ${puts} puts\n`);
    expect(sent.photos.map((one) => one.standing)).toEqual(Array(200).fill("acknowledged"));
    expect(sent.bytes).toEqual([]);
    const names = photos.map(({ sha256 }) => sha256);
    expect(new Set(sent.photos.map(({ sha256 }) => sha256))).toEqual(new Set(names));
    expect(await notAtEdge(company, names)).toEqual([]);
    // sent again only where the answer was lost
    expect(puts).toBe(200 + names.filter((name) => signal.photosStored.get(name) === 2).length);
    await expectOnce(before.entries.map(({ id }) => id));
  }, 400_000);
});
