import type { Browser, ElementHandle } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { isReadAgainAsked } from "#core/job/index.ts";
import { defaultSheet, defaultSheetJson } from "#infra/sheets/index.ts";
import { rightJob } from "../helpers/crew-pages.ts";
import { batchOf, type Client, type Company, type Loose, newCompany, newId, newJob, Phone, until } from "../helpers/edge.ts";
import { axe, newScreenOnline, openBrowser, type Screen, targets, textOf } from "../helpers/screen.ts";

/** The company owner's questions and the crew's pages that feed them, on the real stack. */
let company: Company;
let browser: Browser;
const address = (path: string): string => new URL(path, inject("edge")).href;

async function screenOf(client: Client, size: { width: number; height: number }): Promise<Screen> {
  const screen = await newScreenOnline(browser, size);
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
    await page.locator(".questions .job-link").click();
    await page.waitForSelector(".answered");
    await page.waitForSelector(".plotted-place svg", { timeout: 4000 });
    const said = await textOf(page, "main");
    expect(said).toContain("What it decides: Which step to teach this month");
    expect(said).toContain("Too few to tell: 1 job; from 12 on something is said.");
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
    await page.locator("button[type=submit]").click();
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
    await page.locator("button.main").click();
    for (let done = 0; done < 20; done += 1) {
      await page.waitForFunction((n) => document.querySelector(".study-next p")?.textContent?.startsWith(`${n} of 20`), {}, done);
      const turn = await textOf(page, ".study-turn");
      const mark = Number(/mark (\d)/.exec(turn)?.[1]);
      // Ida reads a sixteenth long each time; nothing that was read before stands on the page
      expect(await page.$eval(".study-next input", (input) => (input as HTMLInputElement).value)).toBe("");
      await page.type(".study-next input", turn.startsWith("Ida") ? `${mark * 7} 1/16` : `${mark * 7}`);
      if (done === 3) await shot(screen, "phone-study");
      await page.locator(".study-next button.main").click();
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
    await page.locator(".study-next button.main").click();
    await page.waitForFunction(() => document.body.textContent?.includes("as entry"));
    const told = (await company.owner.get("/api/questions/instruments")).body;
    expect(told.answer.signals.map(({ what }: { what: string }) => what)).toEqual(["instrument off"]);
    expect(troubles).toEqual([]);
    await screen.close();
  });
});

describe("the blind second look", () => {
  test("the phone asks somebody else, shows nothing of the first, and the owner's question has the pair", async () => {
    const id = Array.from({ length: 400 }, newId).find((one) => isReadAgainAsked(one, "pour-concrete")) ?? "";
    const { phone } = await newJob(company, id);
    await company.owner.post("/api/people", { name: "Noa Fenn", role: "crew" });
    const enter = (kind: string, what: Record<string, string>) => phone.entry(id, company.people.crew, kind, what);
    const entries = [
      await enter("tag-named", { set: "gate-post", tag: "left", hiddenBy: "pour-concrete" }),
      await enter("reading-taken", { item: "hole-deep", tag: "left", typed: "36 1/8", unit: "in" }),
    ];
    expect((await company.crew.post(`/api/jobs/${id}/entries`, batchOf(...entries))).status).toBe(200);
    const screen = await screenOf(company.crew, { width: 360, height: 740 });
    const { page, troubles } = screen;
    await page.goto(address("/"));
    await page.waitForSelector(".jobs li");
    await rightJob(page, address(`/jobs/${id}`));
    const asks = await page.waitForSelector(`a[href="/jobs/${id}/again/pour-concrete"]`);
    expect(await asks?.evaluate((one) => one.textContent)).toBe("Measure it again: 1 reading");
    await clean(screen);
    await shot(screen, "phone-again-asked");
    await asks?.click();
    await page.waitForSelector(".study-choose button");
    // whoever read it first is not asked
    expect(await page.$$eval(".study-choose button", (all) => all.map((one) => one.textContent))).not.toContain("Sam Birch");
    const noa = await page.waitForFunction(() =>
      [...document.querySelectorAll<HTMLElement>(".study-choose button")].find((one) => one.textContent === "Noa Fenn"),
    );
    await (noa.asElement() as ElementHandle<HTMLElement>).click();
    await page.waitForSelector(".enter-reading");
    expect(await textOf(page, "main")).not.toMatch(/36/);
    await page.type(".typed input", "36 3/8");
    await clean(screen);
    await shot(screen, "phone-again");
    await page.locator(".enter-reading").click();
    await page.waitForFunction(() => document.querySelector("main")?.textContent?.includes("That was all"));
    const told = await until(
      async () => (await company.owner.get("/api/questions/second-look")).body.answer,
      (answer) => answer.says[0].figures.pairs === 1,
    );
    expect(told.tables[0].rows[0].cells[0].label.id).toBe("hole-deep");
    // the reading that counts is the first one still, and nothing more is asked
    const [ledger, { findings }] = [
      (await company.office.get(`/api/jobs/${id}/ledger`)).body,
      (await company.office.get(`/api/jobs/${id}`)).body,
    ];
    const of = (kind: string): string => ledger.entries.find(({ envelope }: Loose) => envelope.kind === kind).envelope.id;
    const rested = findings.flatMap(({ entries: ids }: Loose) => ids);
    expect([rested.includes(of("reading-taken")), rested.includes(of("read-again"))]).toEqual([true, false]);
    await page.goto(address(`/jobs/${id}`));
    await page.waitForSelector(".next");
    expect(await page.$$(`a[href="/jobs/${id}/again/pour-concrete"]`)).toEqual([]);
    expect(troubles).toEqual([]);
    await screen.close();
  });
});

describe("what the company keeps about itself", () => {
  test("somebody was taught: entered, listed, and taken back when it was a mistake", async () => {
    const screen = await screenOf(company.owner, { width: 1200, height: 900 });
    const { page, troubles } = screen;
    await page.goto(address("/owner/taught"));
    await page.waitForSelector(".taught-form select");
    const title = defaultSheet().steps.find(({ id }) => id === "pipe-glued")?.title.en ?? "";
    await page.select(".taught-form select", "pipe-glued");
    await page.type(".taught-form input[name=note]", "At the workbench.");
    await clean(screen);
    await page.locator(".taught-form button.main").click();
    await page.waitForFunction((said) => document.querySelector(".own-facts li")?.textContent?.includes(said), {}, title);
    expect(await textOf(page, ".own-facts li p")).toMatch(/Taught: the whole crew\. At the workbench\.$/);
    await shot(screen, "owner-taught");
    expect((await company.owner.get("/api/questions/taught")).body.answer.says.at(-1).figures.taught).toBe(1);
    for (const _ of ["asked", "sure"]) await page.locator(".own-facts li button").click();
    await page.waitForFunction(() => document.querySelectorAll(".own-facts li").length === 0);
    expect((await company.owner.get("/api/questions/taught")).body.answer.says.at(-1).figures.taught).toBe(0);
    expect(troubles).toEqual([]);
    await screen.close();
  });

  test("a tolerance sheet with the study's doubts: what it changes, before and after, and saved as a new version", async () => {
    const screen = await screenOf(company.owner, { width: 1200, height: 900 });
    const { page, troubles } = screen;
    await page.goto(address("/owner/tape-study"));
    const way = await page.waitForSelector(`.own-facts a[href="/office/studied/${defaultSheet().id}"]`);
    await shot(screen, "owner-tape-study");
    await way?.click();
    await page.waitForSelector(".sheet-saving .differences");
    await clean(screen);
    await shot(screen, "office-studied");
    expect(await textOf(page, ".sheet-saving .differences")).toContain("What tape or rod rests on");
    await page.locator(".sheet-saving .target.main").click();
    await page.waitForFunction(() => document.querySelector(".sheet-saving")?.textContent?.includes("Saved as version"));
    const { versions } = (await company.office.get(`/api/company/sheets/${defaultSheet().id}`)).body;
    expect(versions.length).toBe(2);
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
