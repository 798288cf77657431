import { writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { batchOf, type Company, type Loose, newCompany, newJob, type Phone } from "../helpers/edge.ts";
import { arrive, axe, newScreenOnline, openBrowser, type Screen, targets, textOf } from "../helpers/screen.ts";

/** The office sees what is about to be buried, decides, and others send their papers; on the real stack. */
let company: Company;
let browser: Browser;
let screen: Screen;
let own: { readonly job: string; readonly phone: Phone };
let other: { readonly job: string };

const HOUR_MS = 3_600_000;
const address = (path: string): string => new URL(path, inject("edge")).href;

async function enter(kind: string, what: Loose, who?: Loose): Promise<string> {
  const entry = await own.phone.entry(own.job, company.people.crew, kind, what, { made: Date.now(), ...(who ? { who } : {}) });
  const answer = await company.crew.post(`/api/jobs/${own.job}/entries`, { ...batchOf(entry), sent: Date.now() });
  expect(answer.body.answers).toMatchObject([{ outcome: "taken" }]);
  return entry.sealed.id;
}

async function signedIn(person: string, size?: { readonly width: number; readonly height: number }): Promise<Screen> {
  const opened = await newScreenOnline(browser, size);
  const { link } = (await company.owner.post(`/api/people/${person}/links`)).body;
  await arrive(opened.page, address(link));
  return opened;
}

/** Nothing that axe finds, nothing too small to touch, nothing in the console. */
async function isInOrder({ page, troubles }: Screen): Promise<void> {
  expect((await axe(page)).violations).toEqual([]);
  expect((await targets(page)).filter(({ height, width }) => height < 48 || width < 48)).toEqual([]);
  expect(troubles).toEqual([]);
}

const says = (page: Page, text: string, selector = "body"): Promise<unknown> =>
  page.waitForFunction(
    (said, at) => [...document.querySelectorAll(at)].some((one) => one.textContent?.includes(said)),
    { timeout: 20_000 },
    text,
    selector,
  );

/** Touches the link, button or summary that says this. */
async function touch(page: Page, text: string): Promise<void> {
  await says(page, text, "a, button, summary");
  await page.evaluate((said) => {
    const found = [...document.querySelectorAll<HTMLElement>("a, button, summary")].find((one) => one.textContent?.includes(said));
    found?.click();
  }, text);
}

/** Fills what stands in the form that is open, by name. */
async function fill(page: Page, typed: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, text] of Object.entries(typed)) {
    const selector = `details[open] form [name="${name}"]`;
    await page.waitForSelector(selector);
    await page.$eval(selector, (input) => {
      (input as HTMLInputElement).value = "";
    });
    await page.type(selector, text);
  }
}

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  [own, other] = [await newJob(company), await newJob(company)];
  browser = await openBrowser();
  screen = await signedIn(company.people.office, { width: 1280, height: 900 });
}, 120_000);
afterAll(() => browser?.close());

describe("what is about to be buried", () => {
  test("stands first on the office's first page, and news of it comes by itself within 15 s", async () => {
    const { page } = screen;
    await says(page, "No running job has anything to say.");
    expect(await page.$eval("main h2", (first) => first.textContent)).toBe("What is about to be buried");
    const began = Date.now();
    await enter("covering-announced", { covering: "bury-footing", about: Date.now() + HOUR_MS });
    await enter("reading-taken", { item: "top-below-soil", typed: "1", unit: "in" });
    await says(page, "not yet clear: bury the footing", ".buried");
    const took = Date.now() - began;
    console.log(`news after ${(took / 1000).toFixed(1)} s`);
    expect(took).toBeLessThan(16_000);
    const told = await textOf(page, ".buried");
    expect(told).toMatch(/Last read at \d/);
    expect(told).toContain("To decide about: Footing below the soil");
    await isInOrder(screen);
  });
});

describe("deciding", () => {
  test("a line leads to what was entered beside the forms; rework asked for stands on the crew's phone at the item", async () => {
    const { page } = screen;
    await touch(page, "To decide about: Footing below the soil");
    await says(page, "1 in", ".deciding");
    expect(await textOf(page, ".deciding")).toContain("Sam Birch");
    await isInOrder(screen);
    await touch(page, "Ask for rework");
    await fill(page, { reason: "too high, dig down" });
    await touch(page, "Ask for it");
    await says(page, "Entered as entry", ".answer");
    const crew = await signedIn(company.people.crew);
    await crew.page.goto(address(`/jobs/${own.job}/take/top-below-soil`));
    await says(crew.page, "The office asks for rework");
    expect(await textOf(crew.page)).toContain("too high, dig down");
    await isInOrder(crew);
    await crew.close();
  });

  test("accepted as built: what is not filled in is not sent, then it is entered and the line has gone", async () => {
    const { page } = screen;
    await page.goto(address(`/jobs/${own.job}/deciding/check/footing-below`));
    await touch(page, "Accepted as built");
    await fill(page, { extent: "this footing", reason: "a wall stands there" });
    await isInOrder(screen);
    await touch(page, "Accept it as built");
    await says(page, "Entered as entry", ".answer");
    await page.goto(address("/"));
    await says(page, "not yet clear: bury the footing", ".buried");
    expect(await textOf(page, ".buried")).not.toContain("Footing below the soil");
  });

  test("a word by telephone is confirmed, and an authority's word entered", async () => {
    const { page } = screen;
    await enter("go-ahead", { covering: "bury-footing", reason: "rain is coming", role: "crew" }, { name: "Kim Alder" });
    await page.goto(address(`/jobs/${own.job}/deciding`));
    await says(page, "rain is coming", ".deciding");
    await touch(page, "It was given");
    await fill(page, { reason: "I said so" });
    await touch(page, "Confirm it");
    await page.waitForFunction(() => !document.body.textContent?.includes("It was not given"), { timeout: 20_000 });
    await touch(page, "Enter where it stands");
    await fill(page, { what: "wiring", name: "county office", number: "E-17" });
    await page.select('details[open] form [name="state"]', "passed");
    await isInOrder(screen);
    await page.$eval("details[open] form [name='state']", (field) => (field as HTMLSelectElement).form?.requestSubmit());
    await says(page, "E-17", ".inspections li");
    const { clearances } = (await company.office.get(`/api/jobs/${own.job}`)).body;
    expect(clearances.find((one: Loose) => one.covering === "bury-footing").state).toBe("clear");
  });
});

describe("others", () => {
  test("a link opens one page without signing in, takes a PDF and a name, and works no second time", async () => {
    const { page } = screen;
    await page.goto(address(`/jobs/${own.job}/deciding`));
    await touch(page, "A link for an electrician");
    await fill(page, { what: "Set the outlet" });
    await touch(page, "Make the link");
    await page.waitForSelector(".others-link");
    const link = await textOf(page, ".others-link");
    const paper = join(tmpdir(), `paper-${own.job}.pdf`);
    await writeFile(paper, "%PDF-1.7\n% a paper of our own\n%%EOF\n");
    const outside = await newScreenOnline(browser);
    await outside.page.goto(link);
    await says(outside.page, "Set the outlet");
    await isInOrder(outside);
    await outside.page.type("[name=name]", "Lou Marsh");
    await outside.page.type("[name=did]", "set and tried");
    const input = await outside.page.$("input[type=file]");
    await input?.uploadFile(paper);
    await touch(outside.page, "Send it");
    await says(outside.page, "It has arrived.");
    await outside.page.reload();
    await says(outside.page, "This link does not work");
    await outside.close();
    await page.reload();
    await says(page, "Lou Marsh", ".others");
  });
});

describe("moved to the right job", () => {
  test("a whole visit goes with one touch, and both jobs say so", async () => {
    const { page } = screen;
    await page.goto(address(`/jobs/${own.job}/moving`));
    await page.waitForSelector(".moving-visit input");
    await page.locator(".moving-visit input").click();
    await page.select("[name=to]", other.job);
    await page.type("[name=reason]", "wrong yard");
    await isInOrder(screen);
    await touch(page, "Move them");
    await says(page, "Both jobs have been judged anew.", ".answer");
    const verdict = async (job: string) =>
      (await company.office.get(`/api/jobs/${job}`)).body.findings.find((one: Loose) => one.check === "footing-below").verdict;
    expect(await verdict(own.job)).toBe("not taken");
    expect(await verdict(other.job)).toBe("outside");
  });
});
