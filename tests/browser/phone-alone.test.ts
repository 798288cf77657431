import type { Browser } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { forPhone } from "#infra/demo/index.ts";
import { axe, newScreen, openBrowser, type Screen, textOf } from "../helpers/screen.ts";

/** The crew's phone with nothing but what it keeps. */
let browser: Browser;
let screen: Screen;

beforeAll(async () => {
  const company = await forPhone(inject("edge"), inject("operatorKey"));
  browser = await openBrowser();
  screen = await newScreen(browser);
  await screen.page.goto(await company.crewLink());
  // all of them: what comes later would not have been there before
  await screen.page.waitForFunction((all) => document.querySelectorAll(".jobs li").length === all, {}, Object.keys(company.jobs).length);
}, 240_000);
afterAll(() => browser?.close());

const at = (path: string): string => new URL(path, inject("edge")).href;

describe("who enters today", () => {
  test("is chosen from the crew's people and stands at the foot of every page", async () => {
    const { page } = screen;
    await page.goto(at("/phone/person"));
    await page.waitForSelector(".choices button");
    const names = await page.$$eval(".choices button", (all) => all.map((one) => one.textContent ?? ""));
    expect(names.length).toBeGreaterThan(0);
    await page.locator(".choices button").click();
    await page.waitForSelector(".jobs li");
    expect(await textOf(page, ".who b")).toBe(names[0]);
    await page.goto(at("/"));
    await page.waitForSelector(".jobs li");
    expect(await textOf(page, ".who b")).toBe(names[0]);
  });
});

describe("without signal", () => {
  test("a cold start in a new page draws what the phone keeps, job pages included", async () => {
    const { page } = screen;
    await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active !== null);
    const before = await textOf(page, ".jobs");
    await page.setOfflineMode(true);
    await page.goto(at("/"));
    await page.waitForSelector(".jobs li");
    expect(await textOf(page, ".jobs")).toBe(before);
    await page.goto(at("/phone/unsent"));
    await page.waitForFunction(() => document.body.textContent?.includes("Nothing waits on this phone"));
    const { violations } = await axe(page);
    expect(violations).toEqual([]);
    await page.setOfflineMode(false);
  });
});
