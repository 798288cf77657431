import { join } from "node:path";
import type { Page } from "puppeteer";
import { afterAll, beforeAll, beforeEach, describe, expect, inject, test } from "vitest";
import type { Between } from "../helpers/between.ts";
import { allSent, answer, chooseTogether, firstVisit, jpegs, keptOn, notAtEdge, read, standing, waiting } from "../helpers/crew-phone.ts";
import { CrewSignal, shots } from "../helpers/crew-signal.ts";
import { type Company, until } from "../helpers/edge.ts";
import { axe, openBrowser, type Screen, textOf } from "../helpers/screen.ts";

/** A crew's phone that has no room left. */
let crew: CrewSignal;
let company: Company;
/** One job and one signal for each test, one phone too where no test says otherwise. */
let job: string;
let signal: Between;
let screen: Screen;
let page: Page;

beforeAll(async () => {
  crew = await CrewSignal.begin(inject("edge"), inject("operatorKey"));
  company = crew.company;
}, 240_000);
afterAll(() => crew?.end());

beforeEach(async () => {
  const visit = await crew.visit();
  ({ job, signal, screen, page } = visit);
  return visit.leave;
}, 120_000);

const newLink = (): Promise<string> => crew.newLink(signal);
const expectOnce = (ids: readonly string[]): Promise<void> => crew.expectOnce({ job, signal }, ids);

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
    const photos = await jpegs(crew.folder, 5, 400_000);
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
