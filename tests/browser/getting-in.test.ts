import type { Browser, CDPSession, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { type Company, newCompany } from "../helpers/edge.ts";
import { axe, newScreenOnline, openBrowser, phone, type Screen, targets, textOf } from "../helpers/screen.ts";

/** Getting in as people do it: a real browser with an authenticator of its own (W3C Web Authentication Level 3, 11), on the real stack. */
let company: Company;
let browser: Browser;
const address = (path: string): string => new URL(path, inject("edge").replace("127.0.0.1", "localhost")).href;

interface Desk extends Screen {
  readonly devtools: CDPSession;
  /** Another authenticator, in place of the one before. */
  readonly another: () => Promise<void>;
}

async function newDesk(size: { readonly width: number; readonly height: number } = { width: 1280, height: 900 }): Promise<Desk> {
  const screen = await newScreenOnline(browser, size);
  const devtools = await screen.page.createCDPSession();
  await devtools.send("WebAuthn.enable");
  let now: string | undefined;
  const another = async (): Promise<void> => {
    if (now !== undefined) await devtools.send("WebAuthn.removeVirtualAuthenticator", { authenticatorId: now });
    const options = {
      protocol: "ctap2",
      transport: "internal",
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    } as const;
    now = (await devtools.send("WebAuthn.addVirtualAuthenticator", { options })).authenticatorId;
  };
  await another();
  return { ...screen, devtools, another };
}

const press = (page: Page, name: string): Promise<void> =>
  page.evaluate((wanted) => {
    const found = [...document.querySelectorAll<HTMLElement>("button, summary, a")].find(
      (one) => one.textContent?.trim() === wanted && one.checkVisibility(),
    );
    if (found === undefined) throw new Error(`no ${wanted} in: ${document.body.textContent}`);
    found.click();
  }, name);
const heading = (page: Page, words: string): Promise<unknown> =>
  page.waitForFunction((wanted) => document.querySelector("h1")?.textContent === wanted, {}, words);
const says = (page: Page, words: string): Promise<unknown> =>
  page.waitForFunction((wanted) => document.querySelector("main")?.textContent?.includes(wanted) === true, {}, words);

/** That the edge refused something is a line of the browser's console, one for each question that was still on its way. */
const isRefusal = (line: string): boolean => line.includes("the server responded with a status of");
const refusedOnly = ({ troubles }: Screen): void => expect(troubles.splice(0).filter((line) => !isRefusal(line))).toEqual([]);

/** No trouble, nothing that axe finds, nothing too small to touch, and nothing wider than a phone. */
async function clean({ page, troubles }: Screen, signedOut = false): Promise<void> {
  expect((await axe(page)).violations).toEqual([]);
  const small = (await targets(page)).filter(({ height, width }) => height < 48 || width < 24);
  expect(small.map(({ text, height }) => `${text} ${height}`)).toEqual([]);
  const before = page.viewport();
  await page.setViewport(phone);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(phone.width);
  if (before !== null) await page.setViewport(before);
  expect(troubles.splice(0).filter((line) => !(signedOut && isRefusal(line)))).toEqual([]);
}

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  browser = await openBrowser();
}, 120_000);
afterAll(() => browser?.close());

const invite = async (name: string, role: string): Promise<{ readonly person: string; readonly link: string }> => {
  const { person } = (await company.owner.post("/api/people", { name, role })).body;
  const { link } = (await company.owner.post(`/api/people/${person}/links`)).body;
  return { person, link: address(link) };
};

describe("office and owner", () => {
  test("a first link leads to a passkey; it signs in, a second one too, and a removed one does not", async () => {
    const { person, link } = await invite("Ada Wren", "company owner");
    const desk = await newDesk();
    const { page } = desk;
    await page.goto(link);
    await heading(page, "Make your passkey");
    await clean(desk);
    await press(page, "Make a passkey");
    await says(page, "It is made.");
    await press(page, "Go on to the jobs");
    await heading(page, "What the jobs have");
    await press(page, "Sign out here");
    await heading(page, "Sign in");
    await clean(desk, true);
    await press(page, "Sign in with a passkey");
    await heading(page, "What the jobs have");

    await page.goto(address("/access"));
    await says(page, "with a passkey, since");
    await desk.another();
    await page.$eval("input[name=name]", (input) => {
      (input as HTMLInputElement).value = "Key in the drawer";
    });
    await press(page, "Make a passkey");
    await says(page, "Key in the drawer, made");
    await clean(desk);
    // the newest is in the browser now; the first one goes
    await press(page, "Remove");
    const removed = page.waitForResponse((answer) => answer.request().method() !== "GET" && answer.url().includes("passkey"));
    await press(page, "Remove it, and sign out what it signed in");
    await removed;
    // looked at again: by itself the page asks every 15 s
    await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
    await heading(page, "Sign in");
    refusedOnly(desk);
    await press(page, "Sign in with a passkey");
    // and is where it was
    await heading(page, "Your passkeys and devices");

    // lost: another owner gives a new way in, on the page of the people
    const other = await newDesk();
    await other.page.goto(address((await invite("Ben Marsh", "company owner")).link));
    await heading(other.page, "Make your passkey");
    await other.page.goto(address("/office/people"));
    await says(other.page, "Ada Wren");
    await clean(other);
    await other.page.evaluate(() => {
      const of = [...document.querySelectorAll("article")].find((one) => one.querySelector("h3")?.textContent === "Ada Wren");
      const key = [...(of?.querySelectorAll("button") ?? [])].find((one) => one.textContent?.startsWith("Passkeys are lost"));
      key?.click();
    });
    await says(other.page, "All passkeys of Ada Wren are withdrawn");
    await press(other.page, "Withdraw them and make a new link");
    await other.page.waitForSelector("output.others-link");
    const renewed = await other.page.$eval("output.others-link", (output) => output.textContent ?? "");
    await page.goto(address("/"));
    await heading(page, "Sign in");
    await press(page, "Sign in with a passkey");
    await says(page, "That did not let you in");
    refusedOnly(desk);
    await page.goto(renewed);
    await heading(page, "Make your passkey");
    expect((await company.owner.get(`/api/people/${person}/access`)).body.passkeys).toEqual([]);
    await desk.close();
    await other.close();
  }, 60_000);
});

describe("a crew's phone", () => {
  test("comes in by the digits or the picture of a code that the office makes, and each code once", async () => {
    const office = await newDesk();
    await office.page.goto((await invite("Kim Alder", "office")).link);
    await heading(office.page, "Make your passkey");
    await office.page.goto(address("/office/people"));
    const make = async (): Promise<{ readonly digits: string; readonly path: string }> => {
      const before = await office.page.$$eval(".access-digits", (all) => all.map(({ textContent }) => textContent));
      await press(office.page, "Make a code for a phone");
      await office.page.waitForFunction(
        (old) => [...document.querySelectorAll(".access-digits")].some((one) => !old.includes(one.textContent)),
        {},
        before,
      );
      return office.page.$eval(".access-given", (given) => ({
        digits: given.querySelector(".access-digits")?.textContent ?? "",
        path: new URL(given.querySelector("[data-holds]")?.getAttribute("data-holds") ?? "").hash,
      }));
    };
    await says(office.page, "Sam Birch");
    const first = await make();
    expect(first.digits).toMatch(/^\d{4} \d{4} \d{4}$/);
    await clean(office);

    const crew = await newScreenOnline(browser);
    await crew.page.goto(address("/"));
    await heading(crew.page, "Sign in");
    refusedOnly(crew);
    await clean(crew);
    await crew.page.type("input[name=digits]", first.digits);
    await press(crew.page, "Take this phone into use");
    await heading(crew.page, "Open in the ground");
    expect(await textOf(crew.page)).toContain("Sam Birch");

    const second = await newScreenOnline(browser);
    await second.page.goto(address("/join"));
    await heading(second.page, "Take this phone into use");
    await second.page.type("input[name=digits]", first.digits);
    await press(second.page, "Take this phone into use");
    await says(second.page, "There is no such code that still waits");
    refusedOnly(second);
    const { path } = await make();
    await second.page.goto(address(`/join${path}`));
    await says(second.page, "The office's code is here.");
    await clean(second);
    await press(second.page, "Take this phone into use");
    await heading(second.page, "Open in the ground");

    // the office sees both phones, and signs one out
    await press(office.page, "Passkeys and devices");
    await says(office.page, "a computer, by a code, since");
    await press(office.page, "Sign it out");
    await says(office.page, "It is signed out.");
    await clean(office);
    for (const screen of [office, crew, second]) await screen.close();
  }, 60_000);
});
