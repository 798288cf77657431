import { join } from "node:path";
import type { Page } from "puppeteer";
import { afterAll, beforeAll, beforeEach, describe, expect, inject, test } from "vitest";
import type { Between } from "../helpers/between.ts";
import { allSent, answer, keptOn, read, waiting } from "../helpers/crew-phone.ts";
import { CrewSignal, idsOn, shots } from "../helpers/crew-signal.ts";
import { type Company, until } from "../helpers/edge.ts";
import { axe, targets, textOf } from "../helpers/screen.ts";

/** Time on a crew's phone: an edge that stays away, clocks that are wrong, a day that ends, an app that has become older. */
let crew: CrewSignal;
let company: Company;
/** One job and one signal for each test, one phone too where no test says otherwise. */
let job: string;
let signal: Between;
let page: Page;

beforeAll(async () => {
  crew = await CrewSignal.begin(inject("edge"), inject("operatorKey"));
  company = crew.company;
}, 240_000);
afterAll(() => crew?.end());

beforeEach(async () => {
  const visit = await crew.visit();
  ({ job, signal, page } = visit);
  return visit.leave;
}, 120_000);

const expectOnce = (ids: readonly string[]): Promise<void> => crew.expectOnce({ job, signal }, ids);

describe("an edge that stays away", () => {
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
    await page.locator("main .choices button").click();
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
    await page.locator("main .enter-reading").click();
    await page.waitForSelector("dialog[open]");
    expect((await keptOn(page)).entries).toEqual([]);
    expect(await page.$eval("main .typed input[type=text]", (input) => (input as HTMLInputElement).value)).toBe("6 7/16");
    expect((await axe(page)).violations).toEqual([]);
    const inside = await page.$$eval("dialog button", (all) => all.map((one) => one.getBoundingClientRect().height));
    expect(Math.min(...inside)).toBeGreaterThanOrEqual(72);
    expect((await targets(page)).length).toBeGreaterThan(0);
    await page.screenshot({ path: join(shots, "who-enters.png") });
    // left open: nothing was entered, nothing was lost
    await page.locator("dialog > button").click();
    await page.waitForFunction(() => document.querySelector("dialog") === null);
    expect((await keptOn(page)).entries).toEqual([]);
    await page.locator("main .enter-reading").click();
    await page.waitForSelector("dialog[open] .choices button");
    await page.locator("dialog .choices button").click();
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
  await Promise.all([page.waitForNavigation(), page.locator(".newer button").click()]);
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
