import type { Browser, ElementHandle, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { defaultSheetJson } from "#infra/sheets/index.ts";
import { batchOf, type Company, newCompany, newId, Phone, sha256 } from "../helpers/edge.ts";
import { axe, newScreenOnline, openBrowser, type Screen, targets, textOf } from "../helpers/screen.ts";

/** What comes after the work, on the office's pages and the real stack: handed over, warranty, the register, callbacks. */
let company: Company;
let browser: Browser;
let screen: Screen;
let job: string;

const address = (path: string): string => new URL(path, inject("edge")).href;
const jobPath = (end: string): string => address(`/jobs/${job}/${end}`);
const warranty = {
  text: { en: ["What we say of our work, word for word."], es: ["Lo que decimos de nuestro trabajo, palabra por palabra."] },
  terms: [
    { part: "Pump", months: 36, starts: "date of sale", register: { days: 30, with: "its maker" } },
    { part: "Workmanship", months: 24, starts: "handover", services: ["winter"] },
  ],
  services: [{ kind: "winter", month: 10, day: 31 }],
};

const setCompany = async (more: object): Promise<void> => {
  const { content } = (await company.office.get("/api/company")).body.settings;
  const set = await company.office.ask("PUT", "/api/company/settings", { json: { ...content, ...more } });
  expect(set.status).toBe(200);
};

/** A job of the default sheet with two glue sessions: the second pipe is not home in its socket. */
async function openJob(): Promise<string> {
  const phone = new Phone();
  const id = newId();
  const { office } = company.people;
  const { name, number, digest } = (await company.office.post("/api/company/sheets", defaultSheetJson)).body;
  const entry = (kind: string, what: object) => phone.entry(id, office, kind, what as never);
  const entries = [
    await entry("job-opened", { title: "Elm Street 4", zone: "America/New_York", language: "en", units: "inch" }),
    await entry("version-taken-over", { thing: "sheet", name, number, digest }),
    await entry("tag-named", { set: "glue-session", tag: "1", hiddenBy: "fill-trench" }),
    await entry("tag-named", { set: "glue-session", tag: "2", hiddenBy: "fill-trench" }),
    await entry("tag-named", { set: "buried-point", tag: "1", hiddenBy: "fill-trench", description: "joints behind the basin" }),
    await entry("reading-taken", { item: "socket-depth", typed: "1 1/2", unit: "in" }),
    await entry("reading-taken", { item: "mark-to-socket", tag: "1", typed: "2 1/16", unit: "in" }),
    await entry("reading-taken", { item: "mark-to-socket", tag: "2", typed: "2 5/16", unit: "in" }),
    await entry("reading-taken", { item: "point-tie-1", tag: "1", typed: "14 ft 3", unit: "ft-in", mark: "corner of the house" }),
    await entry("reading-taken", { item: "point-tie-2", tag: "1", typed: "9 ft 1/2", unit: "ft-in", mark: "gate post" }),
    await entry("covered", { covering: "fill-trench", shown: "not yet", lines: [], sheet: digest, rules: 1, restedOn: [] }),
  ];
  const answer = await company.office.post("/api/jobs", batchOf(...entries));
  expect(answer.body.answers.filter((one: { refusal?: unknown }) => one.refusal !== undefined)).toEqual([]);
  return id;
}

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  await setCompany({ warranty });
  job = await openJob();
  browser = await openBrowser();
  screen = await newScreenOnline(browser, { width: 1100, height: 900 });
  const [name = "", value = ""] = company.office.cookie.split("=");
  await browser.setCookie({ name, value, domain: new URL(inject("edge")).hostname, path: "/", httpOnly: true });
  await screen.page.browserContext().setCookie({ name, value, domain: new URL(inject("edge")).hostname, path: "/", httpOnly: true });
}, 120_000);
afterAll(() => browser?.close());

const clean = async (page: Page): Promise<void> => {
  expect((await axe(page)).violations).toEqual([]);
  expect(
    (await targets(page)).filter(({ height, width }) => height < 48 || width < 24).map(({ text, height }) => `${text} ${height}`),
  ).toEqual([]);
};

/** Opens the part of the page with this name, types into it, enters it, and waits until the edge has taken it. */
async function enter(page: Page, title: string, typed: Readonly<Record<string, string>>): Promise<void> {
  const found = await page.waitForFunction(
    (name) =>
      [...document.querySelectorAll("details.after-said")].find((one) => one.querySelector("summary")?.textContent?.trim() === name),
    {},
    title,
  );
  const part = found.asElement() as ElementHandle<HTMLElement> | null;
  if (part === null) throw new Error(`no part ${title}`);
  await part.$eval("summary", (summary) => (summary as HTMLElement).click());
  for (const [name, value] of Object.entries(typed)) {
    await part.$eval(
      `[name="${name}"]`,
      (field, to) => {
        const own = field as HTMLInputElement;
        own.value = to;
        own.dispatchEvent(new Event("change", { bubbles: true }));
      },
      value,
    );
  }
  await part.$eval("button.main", (button) => (button as HTMLElement).click());
  await page.waitForFunction((of) => /entry \d+/.test(of.textContent ?? ""), {}, part);
}

const entriesOf = async (kind: string): Promise<{ what: Record<string, unknown>; who?: Record<string, unknown> }[]> => {
  const { entries } = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
  return entries
    .filter((one: { envelope: { kind: string } }) => one.envelope.kind === kind)
    .map((one: { body: { what: { content: object }; who?: { content: object } } }) => ({
      what: one.body.what.content,
      ...(one.body.who ? { who: one.body.who.content } : {}),
    }));
};

describe("handed over", () => {
  test("the very text that is shown is kept with its digest and language; the name stands apart", async () => {
    const { page, troubles } = screen;
    await page.goto(jobPath("handed-over"));
    await page.waitForSelector(".shown-text");
    expect(await textOf(page, ".after-work")).toContain("Not handed over yet");
    await clean(page);
    await page.$$eval('input[name="shown"]', ([, spanish]) => (spanish as HTMLElement).click());
    await page.waitForSelector('.shown-text[lang="es"]');
    const shown = await page.$eval(".shown-text", (element) => element.textContent ?? "");
    expect(shown).toContain("Lo que decimos de nuestro trabajo, palabra por palabra.");
    await enter(page, "It was signed", { name: "Alma Reyes", relation: "owner of the house" });
    const [signed] = await entriesOf("signed");
    expect(signed).toEqual({
      what: { relation: "owner of the house", language: "es", text: shown, textDigest: sha256(new TextEncoder().encode(shown)) },
      who: { name: "Alma Reyes" },
    });
    expect(troubles).toEqual([]);
  });
});

describe("warranty", () => {
  test("each part by its own clock, what it rests on, and what is entered moves it", async () => {
    const { page, troubles } = screen;
    await page.goto(jobPath("warranty"));
    await page.waitForSelector("table.counts tbody tr");
    const rows = () => page.$$eval("table.counts tbody tr", (all) => all.map((row) => row.textContent ?? ""));
    const [pump, work] = await rows();
    expect(pump).toContain("its start is not entered");
    expect(work).toMatch(/Winter service due 31 October \d{4}, counts until 15 December \d{4}/);
    expect(await textOf(page, ".after-work")).toContain("Have them read by a lawyer.");
    await clean(page);
    await enter(page, "Invoice paid, or a part's date of sale", {
      rule: "date of sale",
      part: "Pump",
      day: "2024-02-29",
      paper: "receipt 7",
    });
    await page.reload();
    await page.waitForSelector("table.counts tbody tr");
    expect((await rows())[0]).toContain("last day 28 February 2027");
    expect((await rows())[0]).toContain("It was to be registered with its maker by 30 March 2024; nothing is entered of it");
    expect(troubles).toEqual([]);
  });
});

describe("the company's terms", () => {
  test("are typed on a page, saved as a new version of the settings, and nothing else of those is lost", async () => {
    const { page, troubles } = screen;
    const before = (await company.office.get("/api/company")).body.settings;
    await page.goto(address("/office/terms"));
    await page.waitForSelector('input[name="part-1"]');
    expect(await page.$eval('input[name="months-0"]', (input) => (input as HTMLInputElement).value)).toBe("36");
    await clean(page);
    await page.$eval('input[name="acceptedDays"]', (input) => {
      (input as HTMLInputElement).value = "14";
    });
    await page.locator("button.main").click();
    await page.waitForFunction(() => (document.body.textContent ?? "").includes("Saved as a new version"));
    const after = (await company.office.get("/api/company")).body.settings;
    const { services, ...terms } = before.content.warranty;
    const saved = { ...terms, services: [{ ...services[0], within: 45 }], acceptedByUseAfterDays: 14 };
    expect(after.content).toEqual({ ...before.content, warranty: saved });
    expect(after.number).toBeGreaterThan(before.number);
    expect(troubles).toEqual([]);
  });
});

describe("the register", () => {
  test("lists what is to be registered and all covers; a table of old ones is shown line by line before it is taken over", async () => {
    const { page, troubles } = screen;
    await page.goto(address("/office/warranties"));
    await page.waitForSelector("table.counts tbody tr");
    expect(await textOf(page, ".after-work ul")).toContain("Pump");
    const table =
      "number,customer,address,part,start,months\r\nA-1,Tom Ash,3 Fen Lane,Liner,3/1/2024,240\r\nA-2,Ida Moss,7 Fen Lane,Liner,soon,12\r\n";
    const choose = (csv: string) =>
      page.$eval(
        'input[accept=".csv,text/csv"]',
        (input, text) => {
          const files = new DataTransfer();
          files.items.add(new File([text], "old.csv", { type: "text/csv" }));
          (input as HTMLInputElement).files = files.files;
          input.dispatchEvent(new Event("change", { bubbles: true }));
        },
        csv,
      );
    await choose(table);
    await page.waitForFunction(() => (document.body.textContent ?? "").includes("Some lines do not read"));
    expect(await page.$(".issue button.main")).toBeNull();
    await choose(table.replace("soon", "46023"));
    const take = await page.waitForSelector(".issue button.main");
    await clean(page);
    await take?.click();
    await page.waitForFunction(() => (document.body.textContent ?? "").includes("Taken over: 2."));
    await page.waitForFunction(() => (document.body.textContent ?? "").includes("Tom Ash, 3 Fen Lane"));
    // from 1 March 2024 for 240 months
    expect(await textOf(page, ".after-work")).toContain("1 March 2044");
    expect(troubles).toEqual([]);
  });
});

describe("a callback", () => {
  test("is opened with a symptom; the job's own record says what to look at first and where it lies", async () => {
    const { page, troubles } = screen;
    await page.goto(jobPath("callbacks"));
    await page.waitForSelector(".after-said");
    await enter(page, "Somebody calls", { symptom: "wet ground", said: "The lawn is a swamp.", name: "Alma Reyes" });
    await page.reload();
    await page.waitForSelector(".callback-looks > li");
    const looks = await page.$$eval(".callback-looks > li", (all) => all.map((one) => one.textContent ?? ""));
    // a mark drawn 2 in beyond the socket's depth: at 2 5/16 the pipe is 5/16 in short, where 1/4 is the most
    expect(looks[0]).toMatch(/glue session 2/i);
    expect(looks[0]).toContain("beyond its limit of 1/4 in by 1/16 in, which is less than its doubt");
    expect(looks[0]).toContain("It lies under what was covered by: fill the trench");
    expect(looks[0]).toContain("Buried point 1: joints behind the basin: 14 ft 3 in from corner of the house, 9 ft 1/2 in from gate post");
    const said = await textOf(page, ".callback");
    expect(said).toContain("The lawn is a swamp.");
    expect(said).toContain("power off before a hand goes in, every time");
    await clean(page);
    expect(troubles).toEqual([]);
  });

  test("is dug for, and closed with what was seen, its hours and costs; what trips is the electrician's", async () => {
    const { page, troubles } = screen;
    await enter(page, "It has to be opened up again", { covering: "fill-trench", reason: "wet ground" });
    await enter(page, "It is mended", {
      cause: "The pipe of session 2 had slipped.",
      confirmed: "yes",
      borneBy: "company",
      minutes: "2:30",
      partsCost: "12.5",
    });
    const [closed] = await entriesOf("callback-closed");
    expect(closed?.what).toMatchObject({ confirmed: true, borneBy: "company", minutes: 150, partsCost: 1250 });
    await page.reload();
    await page.waitForSelector(".callback");
    expect(await textOf(page, ".callback")).toContain("Confirmed cause: The pipe of session 2 had slipped.");
    await enter(page, "Somebody calls", { symptom: "breaker or ground fault trips" });
    await page.reload();
    await page.waitForSelector(".callback .caution");
    expect(await textOf(page, ".callback")).toContain("licensed electrician");
    expect((await company.office.get("/api/callbacks")).body.callbacks.map(({ closed: is }: { closed: boolean }) => is)).toEqual([
      false,
      true,
    ]);
    await page.goto(address("/office/callbacks"));
    await page.waitForSelector(".shown li");
    await clean(page);
    expect(troubles).toEqual([]);
  });
});

test("all of it in Spanish, on a phone", async () => {
  const { page, troubles } = screen;
  await setCompany({ language: "es" });
  await page.setViewport({ width: 360, height: 740 });
  for (const [path, words] of [
    [jobPath("handed-over"), "Firmado el"],
    [jobPath("warranty"), "último día"],
    [jobPath("callbacks"), "Salta el interruptor"],
    [address("/office/warranties"), "Todas las garantías"],
    [address("/office/callbacks"), "Primero los abiertos"],
    [address("/office/terms"), "Guardar las condiciones"],
  ] as const) {
    await page.goto(path);
    await page.waitForFunction((wanted) => (document.body.textContent ?? "").includes(wanted), {}, words);
    await clean(page);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide, path).toBeLessThanOrEqual(360);
  }
  expect(troubles).toEqual([]);
});
