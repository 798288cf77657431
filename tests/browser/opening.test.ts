import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, ElementHandle, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { defaultSheetJson } from "#infra/sheets/default-sheet.ts";
import { type Company, type Loose, newCompany } from "../helpers/edge.ts";
import { arrive, axe, newScreenOnline, openBrowser, phone, type Screen, targets, textOf } from "../helpers/screen.ts";

/** The office opens jobs, takes a table of them and an archive, on the real stack: at a desk in English, on a phone in Spanish. */
let company: Company;
let browser: Browser;
let desk: Screen;
let hand: Screen;
let folder: string;
let job = "";

const open = (page: Page, path: string): Promise<unknown> => page.goto(new URL(path, inject("edge")).href);
const signIn = async (screen: Screen, of: Company): Promise<void> => {
  const { link } = (await of.owner.post(`/api/people/${of.people.office}/links`)).body;
  await arrive(screen.page, new URL(link, inject("edge")).href);
};
const jobs = async (): Promise<Loose[]> => (await company.office.get("/api/jobs")).body.jobs;
const says = (page: Page, text: string, where = "body"): Promise<unknown> =>
  page.waitForFunction((said, at) => document.querySelector(at)?.textContent?.includes(said), { timeout: 20_000 }, text, where);
const choose = async (page: Page, selector: string, path: string): Promise<void> =>
  ((await page.$(selector)) as ElementHandle<HTMLInputElement>).uploadFile(path);

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
  const facts = { pumpCurve: "0 gpm 16 ft; 20 gpm 13 ft; 45 gpm 5.84 ft; 58 gpm 0 ft", cordLength: { typed: "20", unit: "ft" } };
  await company.office.post("/api/company/kit-cards", { id: "pump", part: "Pump 140 W", facts });
  folder = await mkdtemp(join(tmpdir(), "asburied-opening-"));
  browser = await openBrowser();
  desk = await newScreenOnline(browser, { width: 1280, height: 900 });
  hand = await newScreenOnline(browser, phone);
  await signIn(desk, company);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

describe("opening a job at a desk", () => {
  test("the page is reached from the jobs; nothing is opened without a title", async () => {
    const { page } = desk;
    await page.waitForSelector('a[href="/office/opening"]');
    await page.locator('a[href="/office/opening"]').click();
    await page.waitForSelector("input[name=title]");
    await page.waitForSelector("input[name=figure-staticHead]");
    await page.locator(".opening > .main").click();
    expect(await page.$eval("input[name=title]", (input) => (input as HTMLInputElement).validity.valueMissing)).toBe(true);
    expect(await jobs()).toEqual([]);
    await isInOrder(desk);
  });

  test("the design check answers beside the numbers as they are typed", async () => {
    const { page } = desk;
    await page.locator("input[name=kitCard]").click();
    await page.type("input[name=figure-staticHead]", "4");
    await page.type("input[name=figure-pipeRun]", "18 ft");
    await page.type("input[name=figure-pipeSize]", "2");
    await page.type("input[name=figure-spillwayWidth]", "22");
    await page.type("input[name=figure-flowPerInch]", "100");
    await says(page, "gpm", ".design-beside");
    await page.$eval("input[name=figure-staticHead]", (input) => (input as HTMLInputElement).select());
    await page.type("input[name=figure-staticHead]", "12");
    await page.waitForFunction(() => /not enough/i.test(document.querySelector(".design-beside dl div")?.textContent ?? ""));
    await page.$eval("input[name=figure-staticHead]", (input) => (input as HTMLInputElement).select());
    await page.type("input[name=figure-staticHead]", "4");
  });

  test("contacts, site, crew, ticket and what came before are opened as one job; a latitude that is none is told first", async () => {
    const { page } = desk;
    await page.type("input[name=title]", "Terrace fall");
    await page.type("input[name=ownNumber]", "W-1");
    await page.type("input[name=order]", "PO 7");
    await page.type("input[name=customer-name]", "Ines Marlow");
    await page.type("input[name=receiver-name]", "Ines Marlow");
    await page.type("input[name=address]", "9 Example Row");
    await page.type("input[name=heightMark]", "nail in the sill");
    await page.type("textarea[name=tieMarks]", "A, garage corner\nB, gate post");
    await page.type("input[name=latitude]", "north");
    await page.type("input[name=longitude]", "-89.1204");
    await page.locator("input[name=crew]").click();
    await page.$eval("input[name=reading-ticket-dig-from]", (input) => {
      (input as HTMLInputElement).value = "2026-05-11T17:00";
    });
    await page.locator("input[name=late]").click();
    await page.type("input[name=lateReason]", "Taken over in the middle");
    await page.select("select[name=begins]", "pipe-glued");
    await page.waitForSelector("input[name=coveredBefore]");
    await page.locator(".opening > .main").click();
    await page.waitForFunction(() => document.activeElement?.getAttribute("name") === "latitude");
    expect(await jobs()).toEqual([]);
    await isInOrder(desk);
    await page.$eval("input[name=latitude]", (input) => (input as HTMLInputElement).select());
    await page.type("input[name=latitude]", "41.0021");
    await page.locator(".opening > .main").click();
    await page.waitForFunction(() => location.pathname.startsWith("/jobs/"));
    job = new URL(page.url()).pathname.split("/").at(-1) ?? "";
    await says(page, "Terrace fall", "h1");
    await says(page, "covered before this record began");
    const ledger = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
    const of = (kind: string) => ledger.entries.filter((e: Loose) => e.envelope.kind === kind).map((e: Loose) => e.body);
    expect(of("job-opened")[0].who.content).toEqual({
      address: "9 Example Row",
      customer: { name: "Ines Marlow" },
      receiver: { name: "Ines Marlow" },
    });
    expect(of("site-located")[0].where.content).toEqual({ latitude: 410_021_000, longitude: -891_204_000 });
    expect(of("reading-taken")[0].what.content).toEqual({ item: "ticket-dig-from", typed: "2026-05-11T17:00-04:00", unit: "instant" });
    expect(of("design-set")[0].what.content.figures).toMatchObject({
      staticHead: { typed: "4", unit: "ft" },
      pipeRun: { typed: "18 ft", unit: "ft" },
    });
    expect(of("opened-late")[0].what.content.coverings).toEqual(["backfill-basin"]);
  });

  test("a number that is taken is told, and nothing typed is lost", async () => {
    const { page } = desk;
    await open(page, "/office/opening");
    await page.waitForSelector("input[name=figure-staticHead]");
    await page.type("input[name=title]", "Another");
    await page.type("input[name=ownNumber]", "W-1");
    const [, site = ""] = await page.$$eval("select[name=site] option", (all) => all.map((one) => (one as HTMLOptionElement).value));
    await page.select("select[name=site]", site);
    await says(page, "nail in the sill; A, garage corner; B, gate post");
    await page.locator(".opening > .main").click();
    await says(page, "already belongs to another", ".answer");
    expect(await page.$eval("input[name=title]", (input) => (input as HTMLInputElement).value)).toBe("Another");
    desk.troubles.splice(0); // the browser's own word on an answer of 409
    await page.$eval("input[name=ownNumber]", (input) => (input as HTMLInputElement).select());
    await page.type("input[name=ownNumber]", "W-2");
    await page.locator(".opening > .main").click();
    await page.waitForFunction(() => location.pathname.startsWith("/jobs/"));
    expect((await company.office.get("/api/sites")).body.sites).toMatchObject([{ jobs: { length: 2 } }]);
  });

  test("particulars change: only what was changed is entered", async () => {
    const { page } = desk;
    await open(page, `/jobs/${job}/particulars`);
    await page.waitForSelector("input[name=invoice]");
    await page.locator(".opening .main").click();
    await says(page, "Nothing was changed.", ".answer");
    await page.type("input[name=invoice]", "I-88");
    await page.locator(".opening .main").click();
    await says(page, "Entered as entry", ".answer");
    await isInOrder(desk);
    const { entries } = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
    expect(entries.at(-1).body.what.content).toEqual({ invoice: "I-88" });
    expect(entries.at(-1).body.who).toBeUndefined();
  });
});

describe("a table of jobs", () => {
  test("is looked at line by line, put right, and taken whole", async () => {
    const { page } = desk;
    const path = join(folder, "jobs.csv");
    const table = (day: string) =>
      `\ufeffJob number;Title;Site address;Locate ticket: dig from\r\nX-1;First;"3 Lane; rear";5/11/2026\r\nX-2;Second;;${day}\r\n`;
    await writeFile(path, table("31/31/2026"));
    const before = (await jobs()).length;
    await open(page, "/office/table");
    await page.waitForSelector("input[name=file]");
    await choose(page, "input[name=file]", path);
    await page.locator(".opening button[type=submit]").click();
    await says(page, "1 to open, 0 to change, 0 as they are, 1 that cannot be taken.", ".answer");
    await says(page, "All of it is taken, or nothing");
    expect(await page.$(".opening button.main")).toBeNull();
    await isInOrder(desk);
    await writeFile(path, table("46177.5"));
    await choose(page, "input[name=file]", path);
    await page.locator(".opening button[type=submit]").click();
    await says(page, "2 to open, 0 to change, 0 as they are, 0 that cannot be taken.", ".answer");
    expect((await jobs()).length).toBe(before);
    await page.locator(".opening button.main").click();
    await says(page, "Taken: 2 opened, 0 changed, 0 left as they are.", ".answer");
    expect((await jobs()).map(({ ownNumber }) => ownNumber).sort()).toEqual(["W-1", "W-2", "X-1", "X-2"]);
  });
});

describe("taken out and read in, on a phone in Spanish", () => {
  test("every table and archive can be taken out, and the archive is read into another company", async () => {
    const { page } = desk;
    await open(page, `/jobs/${job}`);
    await page.waitForSelector('a[href$="/archive"]');
    const links = await page.$$eval("a[download]", (all) => all.map((one) => (one as HTMLAnchorElement).getAttribute("href")));
    expect(links).toEqual([
      `/api/tables/jobs?job=${job}`,
      `/api/tables/readings?job=${job}`,
      `/api/tables/findings?job=${job}`,
      `/api/jobs/${job}/archive`,
      `/api/jobs/${job}/archive?photos=none`,
    ]);
    for (const link of links) expect((await company.office.get(link ?? "")).status).toBe(200);
    const path = join(folder, "job.zip");
    await writeFile(path, (await company.office.get(`/api/jobs/${job}/archive`)).bytes);
    const other = await newCompany(inject("edge"), inject("operatorKey"));
    const settings = { name: "Otra", zone: "America/Chicago", units: "metric", language: "es" };
    expect((await other.office.ask("PUT", "/api/company/settings", { json: settings })).status).toBe(200);
    await signIn(hand, other);
    await open(hand.page, "/office/archive");
    await hand.page.waitForSelector("input[name=archive]");
    await isInOrder(hand);
    await choose(hand.page, "input[name=archive]", path);
    await hand.page.locator(".opening .main").click();
    await says(hand.page, "Leído:", ".answer");
    await hand.page.locator(`.answer a[href="/jobs/${job}"]`).click();
    await says(hand.page, "Terrace fall", "h1");
    await says(hand.page, "cubierto antes de que empezara este registro");
  });

  test("the opening and the table are in order on a phone, and in Spanish", async () => {
    for (const [path, title, ready] of [
      ["/office/opening", "Abrir un trabajo", "input[name=title]"],
      ["/office/table", "Trabajos desde una tabla", "input[name=file]"],
    ] as const) {
      await open(hand.page, path);
      await hand.page.waitForSelector(ready);
      expect(await textOf(hand.page, "h1")).toBe(title);
      await isInOrder(hand);
    }
  });
});
