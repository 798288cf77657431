import type { Browser, ElementHandle, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { defaultSheet, defaultSheetJson } from "#infra/sheets/index.ts";
import { batchOf, type Company, type Loose, newCompany, newId, Phone } from "../helpers/edge.ts";
import { arrive, axe, newScreenOnline, openBrowser, phone, type Screen, targets, textOf } from "../helpers/screen.ts";

/** The office changes a limit of the tolerance sheet and moves a job to it, on the real stack: at a desk in English, on a phone in Spanish. */
let company: Company;
let browser: Browser;
let desk: Screen;
const job = newId();
const sheet = defaultSheet();
const check = "edge-running";
const step = sheet.steps.find(({ id }) => id === "edges-running");

const open = (page: Page, path: string): Promise<unknown> => page.goto(new URL(path, inject("edge")).href);
const says = (page: Page, text: string, where = "body"): Promise<unknown> =>
  page.waitForFunction((said, at) => document.querySelector(at)?.textContent?.includes(said), { timeout: 10_000 }, text, where);
/** Presses what says this. */
const press = async (page: Page, text: string, tag = "button"): Promise<void> => {
  const found = await page.waitForFunction(
    (said, of) => [...document.querySelectorAll<HTMLElement>(of)].find((one) => one.textContent?.includes(said) && one.checkVisibility()),
    {},
    text,
    tag,
  );
  await (found as ElementHandle<HTMLElement>).click();
};
/** Types into the field of this label, in the place of what stood there. */
const type = async (page: Page, label: string, text: string): Promise<void> => {
  const field = (await page.waitForFunction(
    (said) =>
      [...document.querySelectorAll("label")]
        .find((one) => one.firstChild?.textContent === said && one.checkVisibility())
        ?.querySelector("input"),
    {},
    label,
  )) as ElementHandle<HTMLInputElement>;
  await field.click({ count: 3 });
  await field.type(text);
};
const openCheck = async (page: Page, language: "en" | "es"): Promise<void> => {
  await page.waitForSelector(".sheet-edit");
  await press(page, step?.title[language] ?? "", "summary");
  await page.waitForSelector(`[id="open-checks/${check}"]`);
  await page.locator(`[id="open-checks/${check}"]`).click();
  await page.waitForSelector(".decided");
};
/** Nothing that axe finds, nothing too small to touch, nothing wider than the page, nothing in the console. */
async function isInOrder({ page, troubles }: Screen): Promise<void> {
  expect((await axe(page)).violations).toEqual([]);
  expect((await targets(page)).filter(({ height, width }) => height < 48 || width < 48)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  expect(troubles).toEqual([]);
}

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  await company.office.post("/api/company/sheets", defaultSheetJson);
  await company.office.post("/api/company/kit-cards", {
    id: "pump",
    part: "Pump 140 W",
    facts: { pumpCurve: "0 gpm 16 ft; 20 gpm 13 ft; 45 gpm 5.84 ft; 58 gpm 0 ft", intakeHeight: { typed: "2 3/4", unit: "in" } },
  });
  await company.office.post("/api/openings", { id: job, title: "Two stretches", sheet: sheet.id, kitCards: ["pump"] });
  const crew = new Phone();
  const made = { made: Date.now() };
  const [tag, reading] = [
    await crew.entry(job, company.people.crew, "tag-named", { set: "edge-stretch", tag: "A", hiddenBy: "trim-liner-edge" }, made),
    await crew.entry(
      job,
      company.people.crew,
      "reading-taken",
      { item: "edge-above-running", tag: "A", typed: "2 12/16", unit: "in" },
      made,
    ),
  ];
  const sent = await company.crew.post(`/api/jobs/${job}/entries`, { ...batchOf(tag, reading), sent: Date.now() });
  expect(sent.body.answers.map(({ outcome }: Loose) => outcome)).toEqual(["taken", "taken"]);
  browser = await openBrowser();
  desk = await newScreenOnline(browser, { width: 1280, height: 900 });
  const { link } = (await company.owner.post(`/api/people/${company.people.office}/links`)).body;
  await arrive(desk.page, new URL(link, inject("edge")).href);
}, 60_000);
afterAll(() => browser?.close());

describe("a tolerance sheet changed on a page", () => {
  test("an aim too near its limit is told as it is typed, and saving keeps what was typed", async () => {
    const { page } = desk;
    await page.waitForSelector('a[href="/office/sheets"]');
    await page.locator('a[href="/office/sheets"]').click();
    await page.waitForSelector(`a[href="/office/sheets/${sheet.id}"]`);
    await page.locator(`a[href="/office/sheets/${sheet.id}"]`).click();
    await openCheck(page, "en");
    await says(page, "Can be decided: 1 in from the aim", ".decided");
    await type(page, "Aim: the figure", "2 1/4");
    await page.waitForSelector(".decided.at-fault");
    await type(page, "Lower limit: the figure", "2 1/3");
    await says(page, "1/3", ".field-fault");
    await press(page, "Save as a new version");
    await says(page, "Not saved. What you typed stays here.", ".sheet-saving");
    const typed = await page.$$eval(".line-form .limit input", (fields) => fields.map((field) => field.value));
    expect(typed.slice(0, 2)).toEqual(["2 1/4", "2 1/3"]);
    expect(await page.$$eval(".faults .target", (all) => all.map((one) => one.textContent))).toContain(
      "Open: Liner edge above the running water",
    );
    expect((await company.office.get(`/api/company/sheets/${sheet.id}`)).body.versions).toHaveLength(1);
  }, 30_000);

  test("mended, it is saved as version 2, with what changed", async () => {
    const { page } = desk;
    await type(page, "Aim: the figure", "3 1/2");
    await type(page, "Lower limit: the figure", "2 1/2");
    await says(page, "Can be decided: 1 in from the aim", ".decided");
    await says(page, "Nothing is at fault", ".sheet-saving");
    await isInOrder(desk);
    await press(page, "Save as a new version");
    await says(page, "Saved as version 2", ".sheet-saving");
    const said = await textOf(page, ".sheet-saving .differences");
    expect(said.split("\n").filter((line) => line !== "")).toEqual([
      "Check “Liner edge above the running water”, aim: was 3 in, now 3 1/2 in",
      "Check “Liner edge above the running water”, lower limit: was 2 in, now 2 1/2 in",
    ]);
    const [newest, first] = (await company.office.get(`/api/company/sheets/${sheet.id}`)).body.versions;
    const content = (digest: string) => company.office.get(`/api/company/versions/${digest}`).then(({ body }) => body.content);
    expect(await content(first.digest)).toEqual(defaultSheetJson);
    expect((await content(newest.digest)).checks.find(({ id }: Loose) => id === check)).toMatchObject({ aim: 88_900, lower: 63_500 });
  }, 30_000);

  test("a job is moved to it by an entry, and what would change is told before", async () => {
    const { page } = desk;
    await open(page, `/jobs/${job}`);
    await page.waitForSelector(`a[href="/jobs/${job}/versions"]`);
    await page.locator(`a[href="/jobs/${job}/versions"]`).click();
    await press(page, "What would change");
    await says(page, "lower limit: was 2 in, now 2 1/2 in", ".would-change");
    // 2 3/4 in with U = 0.41 in: 3/4 in over the older limit, 1/4 in over the newer one
    await says(page, "within", ".would-change");
    await says(page, "too close to call", ".would-change");
    await press(page, "Move this job to Buried basin with a waterfall and a side-wall fitting, 2");
    await says(page, "Entered. This job is judged by Buried basin with a waterfall and a side-wall fitting, 2 now.", ".issued");
    await says(page, "All of them are the newest that the company has.", ".issued");
    const { findings, sheet: pinned } = (await company.office.get(`/api/jobs/${job}`)).body;
    expect(findings.find((one: Loose) => one.check === check && one.tag === "A")).toMatchObject({
      verdict: "too close to call",
      lower: 63_500,
    });
    expect(pinned.number).toBeGreaterThan(1);
    expect(await textOf(page, ".issued .findings")).toContain("earlier");
    // what was judged under the earlier version can be read in it, and nothing of it can be changed
    await press(page, "Read this version", "a");
    await says(page, "To be read only.");
    await press(page, step?.title.en ?? "", "summary");
    await page.waitForSelector(`[id="open-checks/${check}"]`);
    await page.locator(`[id="open-checks/${check}"]`).click();
    const aim = await page.waitForSelector(".line-form .limit input");
    expect(await aim?.evaluate((field) => [(field as HTMLInputElement).value, field.matches(":disabled")])).toEqual(["3 in", true]);
    expect(
      await page.$$eval(
        "button",
        (all) => all.filter((one) => /^(Add|Up|Down|Save|Take)/.test(one.textContent ?? "") && !one.matches(":disabled")).length,
      ),
    ).toBe(0);
  }, 30_000);

  test("a kit card, its pump's curve drawn; a curve that does not read is told, and stays as typed", async () => {
    const { page } = desk;
    await open(page, "/office/kits/pump");
    await page.waitForSelector("svg.curve");
    expect(await page.$eval("svg.curve", (curve) => curve.getAttribute("aria-label"))).toContain("45 gpm 5.84 ft");
    await isInOrder(desk);
    await type(page, "Pump: intake above the floor", "2 1/3");
    await press(page, "Save as a new version");
    await says(page, "Not saved", ".kit-card");
    await type(page, "Pump: intake above the floor", "2 1/2");
    await press(page, "Save as a new version");
    await says(page, "Pump: intake above the floor: was 2 3/4 in, now 2 1/2 in", ".kit-card");
  }, 30_000);

  test("on a phone in Spanish: list, sheet, limit, kit cards and the job's versions", async () => {
    const settings = { name: "Stillwater Yard Works", zone: "America/New_York", units: "metric", language: "es" };
    await company.owner.ask("PUT", "/api/company/settings", { json: settings });
    const { page } = desk;
    await page.setViewport(phone);
    await open(page, "/office/sheets");
    await says(page, "Qué cambió desde la versión anterior");
    await press(page, "Qué cambió desde la versión anterior", "summary");
    await says(page, "antes 76 mm, ahora 89 mm");
    await isInOrder(desk);
    await open(page, `/office/sheets/${sheet.id}`);
    await openCheck(page, "es");
    await says(page, "Se puede decidir: 25 mm", ".decided");
    await isInOrder(desk);
    await open(page, "/office/kits");
    await says(page, "Qué cambió desde la versión anterior");
    await open(page, `/jobs/${job}/versions`);
    await says(page, "Hay una más nueva: Pump 140 W");
    await press(page, "Qué cambiaría");
    await page.waitForSelector(".would-change .differences");
    await isInOrder(desk);
  }, 30_000);
});
