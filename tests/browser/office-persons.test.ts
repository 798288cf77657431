import type { Browser } from "puppeteer";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { type Client, type Company, newCompany, newId, until } from "../helpers/edge.ts";
import { axe, newScreenOnline, openBrowser, phone, type Screen, targets, textOf } from "../helpers/screen.ts";

/** Somebody's own data, and how long things are kept, on the office's pages and the real stack. */
let company: Company;
let browser: Browser;
let office: Screen;

const address = (path: string): string => new URL(path, inject("edge")).href;
async function signedIn(client: Client): Promise<Screen> {
  const screen = await newScreenOnline(browser, { width: 1280, height: 900 });
  const [name = "", value = ""] = client.cookie.split("=");
  await screen.page.browserContext().setCookie({ name, value, domain: new URL(inject("edge")).hostname, path: "/", httpOnly: true });
  return screen;
}

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  const site = { address: "4 Elm Street", heightMark: "nail in the sill" };
  const opened = await company.office.post("/api/openings", { id: newId(), title: "Front fall", site, customer: { name: "Dana Ashford" } });
  if (opened.status !== 201) throw new Error(JSON.stringify(opened.body));
  browser = await openBrowser();
  office = await signedIn(company.office);
}, 120_000);
afterAll(() => browser?.close());

/** No trouble, nothing that axe finds, nothing too small to touch, and nothing wider than a phone. */
async function clean({ page, troubles }: Screen): Promise<void> {
  expect((await axe(page)).violations).toEqual([]);
  expect(
    (await targets(page)).filter(({ height, width }) => height < 48 || width < 24).map(({ text, height }) => `${text} ${height}`),
  ).toEqual([]);
  await page.setViewport(phone);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(phone.width);
  await page.setViewport({ width: 1280, height: 900 });
  expect(troubles).toEqual([]);
}
const says = async (text: string): Promise<void> => {
  await until(
    () => textOf(office.page),
    (shown) => shown.includes(text),
  );
};
const press = async (text: string): Promise<void> => {
  const button = await office.page.waitForSelector(`::-p-xpath(//button[contains(., "${text}")])`);
  await button?.click();
};

test("a request is entered, shows what names the person, is held with who and until when, and removed after being asked once more", async () => {
  const { page } = office;
  await page.goto(address("/office/persons"));
  await says("Nobody has asked yet.");
  await clean(office);
  await page.select('select[name="asks"]', "removal");
  await page.type('textarea[name="names"]', "Dana Ashford");
  // typed into a field for days as a browser sends it
  await page.$eval('input[name="day"]', (field) => {
    (field as HTMLInputElement).value = "2026-05-04";
  });
  await press("Enter it");
  await says("Entered.");
  await page.locator("::-p-xpath(//a[contains(., 'Dana Ashford')])").click();
  await says("The person is its customer");
  // who of the opening, of the site in the job, and of the site in the company's ledger
  await says("Taken out. Parts of entries: 3; pictures and papers: 0.");
  await clean(office);

  await page.select('select[name="because"]', "dispute");
  await page.$eval('input[name="until"]', (field) => {
    (field as HTMLInputElement).value = "2100-05-04";
  });
  await press("Hold it until then");
  await says("Held until 4 May 2100 because of a dispute; entered by Kim Alder");
  await press("Remove what is listed");
  await press("Yes, remove it; nothing brings it back");
  await says("This request is held until 4 May 2100");
  // the browser tells of the refusal that was asked for, and of nothing else
  expect(office.troubles.splice(0)).toEqual([expect.stringContaining("409")]);

  const [{ request }] = (await company.office.get("/api/persons")).body.requests;
  expect((await company.office.post(`/api/persons/${request}/hold`, { because: "dispute", until: "2026-01-01" })).status).toBe(201);
  await page.reload();
  await press("Remove what is listed");
  await press("Yes, remove it; nothing brings it back");
  await says("Removed");
  expect(await textOf(page, "main")).not.toContain("Dana Ashford");
  expect((await company.office.get("/api/sites")).body.sites[0].address).toBe("N. N.");
  await clean(office);
}, 90_000);

test("how long things are kept: the usual times, the company's own with their notice, and what ends next", async () => {
  const { page } = office;
  await page.goto(address("/office/keeping"));
  await says("These are the program's usual times.");
  await says("Names and contacts: kept until");
  expect(await textOf(page, "main")).not.toMatch(/\d{4}-\d\d-\d\d/);
  await clean(office);
  await page.$eval('input[name="pictures"]', (field) => {
    (field as HTMLInputElement).value = "";
  });
  await page.$eval('input[name="names"]', (field) => {
    (field as HTMLInputElement).value = "2.5";
  });
  await press("Save these times");
  await says("Nothing goes by them for 30 days.");
  await says("nothing goes by them until");
  const { periods, isOwn } = (await company.office.get("/api/keeping")).body;
  expect([isOwn, periods]).toEqual([true, { names: 30, places: 240 }]);
}, 60_000);
