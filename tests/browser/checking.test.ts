import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, CDPSession, ElementHandle, Page } from "puppeteer";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { Client, newCompany, newJob } from "../helpers/edge.ts";
import { withFigureEdited } from "../helpers/edited-pdf.ts";
import { axe, newScreen, openBrowser, type Screen, targets, textOf } from "../helpers/screen.ts";

/** Whoever holds a record checks it in the app: nobody signed in, and once the page was open, without signal. */
let directory: string;
let browser: Browser;
let screen: Screen;
const file = (name: string): string => join(directory, name);

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-checking-"));
  const company = await newCompany(inject("edge"), inject("operatorKey"));
  const { job } = await newJob(company);
  const { pdf } = (await company.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).body;
  const { bytes } = await company.office.get(pdf);
  await writeFile(file("record.pdf"), bytes);
  await writeFile(file("edited.pdf"), (await withFigureEdited(bytes, "Elm Street 4")).pdf);
  await writeFile(file("keys.json"), (await new Client(inject("edge")).get(`/api/companies/${company.company}/keys`)).bytes);
  await writeFile(file("none.pdf"), "no PDF at all");
  browser = await openBrowser();
  screen = await newScreen(browser, { width: 1280, height: 900 });
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await rm(directory, { recursive: true, force: true });
});

async function give(page: Page, input: "record" | "keys", name: string): Promise<void> {
  const there = (await page.waitForSelector(`input[name=${input}]`)) as ElementHandle<HTMLInputElement>;
  await there.uploadFile(file(name));
}
const says = async (page: Page, text: string): Promise<void> => {
  const come = page.waitForFunction((wanted) => document.querySelector("main")?.textContent?.includes(wanted), { timeout: 30_000 }, text);
  await come.catch(async () => expect(await textOf(page), screen.troubles.join("\n")).toContain(text));
};

test("a record is unchanged, and the company's once its list of keys was handed over", async () => {
  const { page, troubles } = screen;
  await page.goto(`${inject("edge")}/check`);
  await give(page, "record", "record.pdf");
  await says(page, "Unchanged since it was sealed with key ");
  expect(await textOf(page, ".checked")).toContain("Whose key that is cannot be told here");
  await give(page, "keys", "keys.json");
  await says(page, "Lists of keys on this device: Stillwater Yard Works");
  await give(page, "record", "edited.pdf");
  await says(page, "Changed since it was sealed with key ");
  const said = await textOf(page, ".checked");
  // its font holds no other digit than those that the record shows: the edited one is drawn as nothing
  expect(said).toMatch(/Page 1 was sealed as “.*Elm Street 4.*” and now reads “.*Elm Street (?!4)/);
  expect(said).toContain("By Stillwater Yard Works: the key is in its list of keys.");
  await give(page, "record", "none.pdf");
  await says(page, "none.pdf: This file cannot be read as a PDF.");
  await give(page, "keys", "none.pdf");
  await says(page, "This is no list of keys");
  expect((await axe(page)).violations).toEqual([]);
  expect((await targets(page)).filter(({ height, width }) => height < 48 || width < 48)).toEqual([]);
  // nobody is signed in: the session that the app asks after is refused, and nothing else goes wrong
  expect(troubles.filter((trouble) => !trouble.includes("401"))).toEqual([]);
}, 90_000);

test("it works without signal once everything is on the device, whose key it was included", async () => {
  const { page } = screen;
  await page.goto(`${inject("edge")}/check`);
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active !== null);
  await page.reload();
  await says(page, "it works without signal from now on");
  const worker = await browser.waitForTarget((target) => target.type() === "service_worker");
  const sessions: readonly CDPSession[] = [await page.createCDPSession(), await worker.createCDPSession()];
  for (const session of sessions) {
    await session.send("Network.enable");
    await session.send("Network.emulateNetworkConditions", { offline: true, latency: 0, downloadThroughput: 0, uploadThroughput: 0 });
  }
  await page.goto(`${inject("edge")}/check`);
  // really cut off: what was never kept does not come
  expect(
    await page.evaluate(() =>
      fetch("/api/version").then(
        () => "came",
        () => "away",
      ),
    ),
  ).toBe("away");
  await give(page, "record", "record.pdf");
  await says(page, "Unchanged since it was sealed with key ");
  const said = await textOf(page, ".checked");
  expect(said).toContain("By Stillwater Yard Works");
  expect(said).toMatch(/\d+ findings and \d+ clearances come out as they were sealed, under rules 1\./);
}, 90_000);
