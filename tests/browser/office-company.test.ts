import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PDFDocument } from "@cantoo/pdf-lib";
import type { Browser, ElementHandle, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { markSvg } from "#infra/demo/mark.ts";
import { type Client, type Company, newCompany, newId } from "../helpers/edge.ts";
import { axe, newScreenOnline, openBrowser, phone, type Screen, targets, textOf } from "../helpers/screen.ts";

/** What the office sets for the whole company and files with a job, on its pages and the real stack. */
let company: Company;
let browser: Browser;
let owner: Screen;
let office: Screen;
let files: string;
let jobs: readonly [string, string];

const address = (path: string): string => new URL(path, inject("edge")).href;
async function signedIn(client: Client): Promise<Screen> {
  const screen = await newScreenOnline(browser, { width: 1280, height: 900 });
  const [name = "", value = ""] = client.cookie.split("=");
  await screen.page.browserContext().setCookie({ name, value, domain: new URL(inject("edge")).hostname, path: "/", httpOnly: true });
  return screen;
}
const open = (site: object, title: string) =>
  company.office.post("/api/openings", { id: newId(), title, site, receiver: { name: "Dana Ashford", contact: "dana@example.net" } });

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  const first = await open({ address: "4 Elm Street", heightMark: "nail in the sill", tieMarks: ["corner of the house"] }, "Front fall");
  if (first.status !== 201) throw new Error(JSON.stringify(first.body));
  const second = await open({ known: first.body.site }, "Back fall");
  jobs = [first.body.job, second.body.job];
  files = await mkdtemp(join(tmpdir(), "asburied-files-"));
  const permit = await PDFDocument.create();
  permit.addPage();
  await writeFile(join(files, "permit.pdf"), await permit.save());
  await writeFile(join(files, "mark.svg"), markSvg);
  await writeFile(join(files, "two.svg"), `${markSvg}<script>alert(1)</script>`);
  browser = await openBrowser();
  owner = await signedIn(company.owner);
  office = await signedIn(company.office);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await rm(files, { recursive: true, force: true });
});

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
const choose = async (page: Page, file: string): Promise<void> => {
  const input = (await page.waitForSelector("input[type=file]")) as ElementHandle<HTMLInputElement>;
  await input.uploadFile(join(files, file));
};
const says = (page: Page, selector: string, words: string): Promise<unknown> =>
  page.waitForFunction((at, wanted) => document.querySelector(at)?.textContent?.includes(wanted) === true, {}, selector, words);
const pressNamed = (page: Page, name: string): Promise<void> =>
  page.evaluate((wanted) => {
    const found = [...document.querySelectorAll<HTMLElement>("button, summary")].find((one) => one.textContent?.trim() === wanted);
    if (found === undefined) throw new Error(`no ${wanted}`);
    found.click();
  }, name);

describe("the company's settings", () => {
  test("take a mark and two colours, say their contrast, and stand in the head of every page", async () => {
    const { page } = owner;
    await page.goto(address("/office/company"));
    await choose(page, "two.svg");
    await says(page, ".company-settings", "This file holds more than a picture");
    // that the edge refused it is a line of the browser's console
    for (const line of owner.troubles.splice(0)) expect(line).toMatch(/422/);
    await choose(page, "mark.svg");
    await page.waitForFunction(() => (document.querySelector<HTMLImageElement>(".company-mark-shown img")?.naturalWidth ?? 0) > 0);
    await page.locator("input[name=ownColours]").click();
    const set = async (name: string, to: string): Promise<void> => {
      await page.waitForSelector(`input[name=${name}]`);
      await page.$eval(
        `input[name=${name}]`,
        (field, value) => {
          (field as HTMLInputElement).value = value;
          field.dispatchEvent(new Event("input", { bubbles: true }));
        },
        to,
      );
    };
    await set("colour-words", "#ff8800");
    // luminance of #ff8800 is 0.2126 + 0.7152 × 0.2462 = 0.3887, so 1.05 / 0.4387 = 2.39
    await says(page, "#colour-words-says", "2.39 : 1 on white, less than 4.5 : 1");
    await set("colour-words", "#0b6572");
    await says(page, "#colour-words-says", "It prints.");
    await set("colour-lines", "#1f4d3a");
    await page.type("input[name=officeMail]", "office@example.org");
    await page.type("textarea[name=lines]", "4 Example Lane\nTelephone 555-0142");
    await pressNamed(page, "Save the settings");
    await says(page, ".company-settings", "Saved.");
    const { content } = (await company.office.get("/api/company")).body.settings;
    expect(content).toMatchObject({
      lines: ["4 Example Lane", "Telephone 555-0142"],
      officeMail: "office@example.org",
      colours: { lines: "#1f4d3a", words: "#0b6572" },
      mark: expect.stringMatching(/^[0-9a-f]{64}$/),
    });
    await page.goto(address("/office/company"));
    await page.waitForFunction(() => (document.querySelector<HTMLImageElement>(".own-mark")?.naturalWidth ?? 0) > 0);
    await page.waitForSelector(".company-keys");
    await clean(owner);
  });

  test("hold the key of the seals: a new one is asked for twice, and by the company owner alone", async () => {
    await company.office.post(`/api/jobs/${jobs[0]}/records`, { edition: "customer" });
    const { page } = owner;
    await page.goto(address("/office/company"));
    await says(page, ".company-keys", "in use");
    await pressNamed(page, "Make a new key");
    await pressNamed(page, "Keep the old one");
    const keys = async () => (await company.office.get(`/api/companies/${company.company}/keys`)).body.keys;
    expect(await keys()).toHaveLength(1);
    await pressNamed(page, "Make a new key");
    await pressNamed(page, "Yes, retire the old key and make a new one");
    await says(page, ".company-keys", "From now on records are sealed with key");
    expect((await keys()).map(({ retired }: { retired?: number }) => retired !== undefined)).toEqual([true, false]);
    await says(page, ".company-keys", "what it sealed can still be checked");
    await office.page.goto(address("/office/company"));
    await says(office.page, ".company-keys", "Only the company owner can make a new key.");
  });
});

describe("the office's other pages", () => {
  test("a site is changed once for all its jobs, which are named before", async () => {
    const { page } = office;
    await page.goto(address("/office/sites"));
    await says(page, ".site-change", "Jobs at this site: 2.");
    await says(page, ".site-change", "Back fall");
    await pressNamed(page, "Change this site");
    await page.$eval("textarea[name=tieMarks]", (field) => {
      (field as HTMLTextAreaElement).value += "\ngate post";
    });
    await page.type("input[name=latitude]", "41.2");
    await page.type("input[name=longitude]", "-74.3");
    await page.type("input[name=how]", "map");
    await pressNamed(page, "Save and tell its jobs");
    await says(page, ".site-change", "told in its jobs: 2.");
    for (const job of jobs) {
      const { entries } = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
      const said = entries.filter(({ envelope }: { envelope: { kind: string } }) => envelope.kind === "site-taken-over").at(-1);
      expect(said.body.what.content.tieMarks).toEqual(["corner of the house", "gate post"]);
    }
    await clean(office);
  });

  test("a paper is filed as PDF, and a released record's link goes into a message for its receiver", async () => {
    const { page } = office;
    await page.goto(address(`/jobs/${jobs[0]}/papers`));
    await page.waitForSelector("details.decision");
    await pressNamed(page, "Add a paper");
    await choose(page, "permit.pdf");
    await page.type("input[name=title]", "Permit of the town");
    await page.type("input[name=kind]", "permit");
    await pressNamed(page, "Add it");
    await says(page, ".after-work", "It opens. Pages: 1.");
    await says(page, ".after-work .findings", "Permit of the town (permit)");
    await clean(office);

    await page.goto(address(`/jobs/${jobs[0]}`));
    const summary = await page.waitForFunction(() =>
      [...document.querySelectorAll<HTMLElement>("summary")].find((one) => one.textContent?.startsWith("Release version")),
    );
    await (summary.asElement() as ElementHandle<HTMLElement>).evaluate((one) => one.click());
    // filled from the contacts
    expect(await page.$eval("input[name=to]", (field) => (field as HTMLInputElement).value)).toBe("Dana Ashford, dana@example.net");
    await pressNamed(page, "Release it");
    await page.waitForSelector(".message input[name=message-address]");
    expect(await page.$eval(".message input[name=message-address]", (field) => (field as HTMLInputElement).value)).toBe("dana@example.net");
    await pressNamed(page, "A message with this link");
    await pressNamed(page, "Make the message");
    await says(page, ".message", "Open the file and send it.");
    expect(await textOf(page, ".message")).not.toContain("Send it from here");
    await clean(office);
  });

  test("two jobs of one site are handed over in one: the text names both, and both have the signature", async () => {
    const { page } = office;
    await page.goto(address(`/jobs/${jobs[0]}/handed-over`));
    await page.waitForSelector("fieldset.choices input[type=checkbox]");
    // the signer is filled from the contacts
    expect(await page.$eval("input[name=name]", (field) => (field as HTMLInputElement).value)).toBe("Dana Ashford");
    await page.locator("fieldset.choices input[type=checkbox]").click();
    await says(page, ".shown-text", "Back fall");
    expect(await textOf(page, ".shown-text")).toContain("Front fall");
    await page.$eval("form:has(input[name=relation]) button.main", (button) => (button as HTMLElement).click());
    await says(page, ".after-work", "Entered");
    const signed = await Promise.all(
      jobs.map(async (job) => {
        const { entries } = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
        return entries
          .filter(({ envelope }: { envelope: { kind: string } }) => envelope.kind === "signed")
          .map(({ body }: { body: { what: { content: object } } }) => body.what.content);
      }),
    );
    expect(signed[0]).toHaveLength(1);
    expect(signed[1]).toEqual(signed[0]);
    expect(signed[0][0]).toMatchObject({ relation: "Receives the record", text: expect.stringMatching(/Front fall[\s\S]*Back fall/) });
    await clean(office);
  });
});
