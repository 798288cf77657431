import type { Browser } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { type Company, newCompany, newJob } from "../helpers/edge.ts";
import { axe, newScreenOnline, openBrowser, phone, type Screen, targets, textOf } from "../helpers/screen.ts";

/** Work that did not go through, on the office's page. What is listed is given by the test: the real list takes hours to come about. */
let company: Company;
let browser: Browser;
let screen: Screen;
let work: readonly object[];
let language: "en" | "es" = "en";
const asked: unknown[] = [];

const address = (path: string): string => new URL(path, inject("edge")).href;
const photo = "0123456789abcdef".repeat(4);

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  const { job } = await newJob(company);
  const next = Date.UTC(2026, 4, 5, 12);
  work = [
    { kind: "tell", photo, job, tries: 10, why: "broke", next, laidAside: true },
    { kind: "read", photo, tries: 4, why: "media-unavailable", next, laidAside: false },
    { kind: "compare", photo, tries: 3, why: null, next, laidAside: false },
  ];
  const session = (await company.office.get("/api/session")).body;
  browser = await openBrowser();
  screen = await newScreenOnline(browser, { width: 1280, height: 900 });
  const { page } = screen;
  const [name = "", value = ""] = company.office.cookie.split("=");
  await page.browserContext().setCookie({ name, value, domain: new URL(inject("edge")).hostname, path: "/", httpOnly: true });
  await page.setBypassServiceWorker(true);
  await page.setRequestInterception(true);
  page.on("request", (request) => {
    const { pathname } = new URL(request.url());
    const answers: Readonly<Record<string, () => unknown>> = {
      "/api/session": () => ({ ...session, language }),
      "/api/laid-aside": () => ({ work, more: 0 }),
      "/api/laid-aside/again": () => {
        asked.push(JSON.parse(request.postData() ?? "null"));
        const again = work.length;
        work = work.slice(1);
        return { again };
      },
    };
    const answer = answers[pathname];
    if (answer === undefined) void request.continue();
    else void request.respond({ status: 200, contentType: "application/json", body: JSON.stringify(answer()) });
  });
}, 120_000);
afterAll(() => browser?.close());

describe("work that did not go through", () => {
  test("is told on the first page, with what, why, how often and when again", async () => {
    const { page } = screen;
    await page.goto(address("/"));
    await page.waitForSelector("::-p-text(Work that did not go through: 3)");
    await page.locator("a::-p-text(Work that did not go through: 3)").click();
    await page.waitForSelector("::-p-text(A job that could not be told what its picture holds)");
    // the jobs' titles come by another answer than the list
    await page.waitForFunction(() => document.body.textContent?.includes("Elm Street 4"));
    const text = await textOf(page);
    for (const words of [
      "Elm Street 4",
      "A fault of the program. Tell whoever runs it.",
      "Laid aside after 10 tries.",
      "The part that reads pictures did not answer.",
      "Tried 4 times.",
      "Nothing was heard of why.",
    ])
      expect(text).toContain(words);
    expect((await axe(page)).violations).toEqual([]);
    expect((await targets(page)).filter(({ height }) => height < 48).map(({ text: named }) => named)).toEqual([]);
    await page.setViewport(phone);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(phone.width);
  });

  test("is tried again when somebody says so, one or all", async () => {
    const { page } = screen;
    await page.locator("article button::-p-text(Try again now)").click();
    await page.waitForSelector("::-p-text(Asked for: 3.)");
    await page.waitForFunction(() => document.querySelectorAll("article").length === 2);
    await page.locator("button::-p-text(Try all of it again now)").click();
    await page.waitForFunction(() => document.querySelectorAll("article").length === 1);
    expect(asked).toEqual([{ work: [{ kind: "tell", photo, job: expect.any(String) }] }, {}]);
  });

  test("in Spanish, and when there is nothing", async () => {
    const { page, troubles } = screen;
    language = "es";
    await page.goto(address("/office/laid-aside"));
    await page.waitForSelector("::-p-text(Una foto que no se pudo comparar con las demás)");
    work = [];
    await page.goto(address("/office/laid-aside"));
    await page.waitForSelector("::-p-text(Nada. Todo lo que llegó ya se leyó o se está leyendo.)");
    expect(troubles).toEqual([]);
  });
});
