import type { Browser, ElementHandle } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { defaultSheetJson } from "#infra/sheets/index.ts";
import { batchOf, type Client, type Company, newCompany, newId, Phone } from "../helpers/edge.ts";
import { axe, newScreen, openBrowser, type Screen, targets, textOf } from "../helpers/screen.ts";

/** The company owner's questions and the crew's pages that feed them, on the real stack. */
let company: Company;
let browser: Browser;
const address = (path: string): string => new URL(path, inject("edge")).href;

async function screenOf(client: Client, size: { width: number; height: number }): Promise<Screen> {
  const screen = await newScreen(browser, size);
  const [name = "", value = ""] = client.cookie.split("=");
  await screen.page.browserContext().setCookie({ name, value, domain: new URL(inject("edge")).hostname, path: "/", httpOnly: true });
  return screen;
}

const shot = async ({ page }: Screen, name: string): Promise<void> => {
  if (process.env.ASBURIED_KEEP) await page.screenshot({ path: `${process.env.ASBURIED_KEEP}/${name}.png`, fullPage: true });
};

async function openJob(): Promise<void> {
  const phone = new Phone();
  const job = newId();
  const { office } = company.people;
  const { name, number, digest } = (await company.office.post("/api/company/sheets", defaultSheetJson)).body;
  const entry = (kind: string, what: object) => phone.entry(job, office, kind, what as never);
  const entries = [
    await entry("job-opened", { title: "Elm Street 4", zone: "America/New_York", language: "en", units: "inch" }),
    await entry("version-taken-over", { thing: "sheet", name, number, digest }),
    await entry("tag-named", { set: "glue-session", tag: "1", hiddenBy: "fill-trench" }),
    await entry("reading-taken", { item: "socket-depth", typed: "1 1/2", unit: "in" }),
    await entry("reading-taken", { item: "mark-to-socket", tag: "1", typed: "3", unit: "in" }),
  ];
  expect((await company.office.post("/api/jobs", batchOf(...entries))).status).toBe(201);
}

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  await openJob();
  browser = await openBrowser();
}, 120_000);
afterAll(() => browser?.close());

/** By wide and by narrow: axe is clean, targets are large enough, nothing is wider than the page. */
async function clean({ page }: Screen): Promise<void> {
  expect((await axe(page)).violations).toEqual([]);
  const small = (await targets(page)).filter(({ height, width }) => height < 44 || width < 24);
  expect(small.map(({ text, height }) => `${text} ${height}`)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
}

describe("the company owner", () => {
  test("opens a question: its decision, too few to tell, the picture beside its table, the CSV", async () => {
    const screen = await screenOf(company.owner, { width: 1200, height: 900 });
    const { page, troubles } = screen;
    await page.goto(address("/"));
    await page.waitForSelector(".questions .job-link");
    expect(await page.$$eval(".questions .job-link", (all) => all.length)).toBe(14);
    await clean(screen);
    await shot(screen, "owner-first");
    await page.click(".questions .job-link");
    await page.waitForSelector(".answered");
    await page.waitForSelector(".plotted-place svg", { timeout: 4000 });
    const said = await textOf(page, "main");
    expect(said).toContain("What it decides: Which step to teach this month");
    expect(said).toContain("Too few to tell: 1 jobs; from 12 on something is said.");
    expect(await page.$eval(".plotted-place svg", (svg) => svg.getAttribute("aria-label"))).toBe("Share right the first time, by step");
    await page.evaluate(() => document.querySelector(".beside-tables a")?.scrollIntoView());
    expect(await page.$eval(".beside-tables a", (link) => link.getAttribute("href"))).toContain("table=first-time-right-steps");
    await clean(screen);
    await shot(screen, "owner-question");
    await page.goto(address("/owner/sampling"));
    await page.waitForSelector("input[name=lot]");
    for (const [name, value] of [
      ["lot", "40"],
      ["looked", "5"],
      ["off", "0"],
    ] as const)
      await page.type(`input[name=${name}]`, value);
    await page.click("button[type=submit]");
    await page.waitForFunction(() => /\b17\b/.test(document.querySelector(".answer-says")?.textContent ?? ""));
    await shot(screen, "owner-sampling");
    expect(troubles).toEqual([]);
    await screen.close();
  });
});

describe("the crew's phone", () => {
  test("walks two people through the tape study, blind, and the owner's question has it", async () => {
    const { person } = (await company.owner.post("/api/people", { name: "Ida Marsh", role: "crew" })).body;
    const screen = await screenOf(company.crew, { width: 360, height: 740 });
    const { page, troubles } = screen;
    await page.goto(address("/phone/study"));
    await page.waitForFunction(() => document.querySelectorAll(".study-choose button").length > 8);
    const press = async (text: string) => {
      const found = await page.waitForFunction(
        (wanted) => [...document.querySelectorAll<HTMLElement>(".study-choose button")].find((one) => one.textContent?.trim() === wanted),
        {},
        text,
      );
      await (found.asElement() as ElementHandle<HTMLElement>).evaluate((one) => one.click());
    };
    for (const text of ["Sam Birch", "Ida Marsh", "Tape"]) await press(text);
    await page.$$eval(".study-choose:last-of-type button", ([first]) => (first as HTMLElement).click());
    await clean(screen);
    await page.click("button.main");
    for (let done = 0; done < 20; done += 1) {
      await page.waitForFunction((n) => document.querySelector(".study-next p")?.textContent?.startsWith(`${n} of 20`), {}, done);
      const turn = await textOf(page, ".study-turn");
      const mark = Number(/mark (\d)/.exec(turn)?.[1]);
      // Ida reads a sixteenth long each time; nothing that was read before stands on the page
      expect(await page.$eval(".study-next input", (input) => (input as HTMLInputElement).value)).toBe("");
      await page.type(".study-next input", turn.startsWith("Ida") ? `${mark * 7} 1/16` : `${mark * 7}`);
      if (done === 3) await shot(screen, "phone-study");
      await page.click(".study-next button.main");
    }
    await page.waitForFunction(() => document.body.textContent?.includes("as entry"));
    expect((await company.owner.get("/api/questions/tape-study")).body.answer.tables[0].rows.length).toBe(1);
    const { entries } = (await company.office.get("/api/company/ledger")).body;
    const study = entries.find((one: { envelope: { kind: string } }) => one.envelope.kind === "tape-studied").body.what.content;
    expect([study.readings.length, study.people.includes(person)]).toEqual([20, true]);

    await page.goto(address("/phone/instruments"));
    await page.waitForSelector(".study-choose button");
    for (const text of ["Laser, rod and receiver", "Laser read two ways"]) await press(text);
    await page.waitForSelector("input[name=over]");
    // a quarter inch apart at 100 ft: an eighth off (3.2 mm), where a sixteenth is allowed and the marks of two readings hide 0.65 mm
    for (const [name, value] of [
      ["first", "40 1/16"],
      ["second", "40 5/16"],
      ["over", "100"],
    ] as const)
      await page.type(`input[name=${name}]`, value);
    await clean(screen);
    await shot(screen, "phone-instrument");
    await page.click(".study-next button.main");
    await page.waitForFunction(() => document.body.textContent?.includes("as entry"));
    const told = (await company.owner.get("/api/questions/instruments")).body;
    expect(told.answer.signals.map(({ what }: { what: string }) => what)).toEqual(["instrument off"]);
    expect(troubles).toEqual([]);
    await screen.close();
  });
});

test("a question on a phone and in Spanish", async () => {
  const { content } = (await company.office.get("/api/company")).body.settings;
  await company.office.ask("PUT", "/api/company/settings", { json: { ...content, language: "es" } });
  const screen = await screenOf(company.owner, { width: 360, height: 740 });
  await screen.page.goto(address("/owner/first-time-right"));
  await screen.page.waitForSelector(".plotted-place svg", { timeout: 4000 });
  expect(await textOf(screen.page, "main")).toContain("Qué decide");
  await clean(screen);
  await shot(screen, "owner-phone");
  await company.office.ask("PUT", "/api/company/settings", { json: content });
  expect(screen.troubles).toEqual([]);
  await screen.close();
});
