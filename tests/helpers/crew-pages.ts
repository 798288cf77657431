import type { Page } from "puppeteer";
import { draftsOn } from "./crew-phone.ts";
import { until } from "./edge.ts";

/** How a test goes through the crew's pages: once a day it is asked which job is the right one, then page after page without loading anew. */

/** Opens a job's page for the first time of the day: says that it is the right one. Its words are handed back. */
export async function rightJob(page: Page, address: string): Promise<string> {
  await page.goto(address);
  const asked = await page.waitForSelector(".right-job");
  const words = (await asked?.evaluate((one) => one.textContent)) ?? "";
  await page.locator(".right-job > .target.main").click();
  await page.waitForFunction(() => document.querySelector(".right-job") === null);
  await page.waitForSelector("main > section");
  // who goes on before the phone has kept the answer is asked again
  await until(
    () => draftsOn(page),
    (places) => places.includes(`right-job ${new URL(address).pathname.split("/")[2]}`),
  );
  return words;
}

/** Goes to another page of the app as a link in it does. */
export async function follow(page: Page, path: string): Promise<void> {
  await page.evaluate(async (to) => {
    history.pushState(null, "", to);
    dispatchEvent(new PopStateEvent("popstate"));
    const frame = (): Promise<unknown> => new Promise((drawn) => requestAnimationFrame(drawn));
    await frame();
    await frame();
    while ((document.querySelector("main")?.childElementCount ?? 0) === 0) await frame();
  }, path);
}

/** Paths of the links in a part of the page, each once. */
export const linksIn = (page: Page, selector: string): Promise<readonly string[]> =>
  page.$$eval(selector, (all) => [...new Set(all.map((one) => new URL((one as HTMLAnchorElement).href).pathname))]);

export interface Row {
  readonly path: string;
  /** What stands below its title. */
  readonly words: string;
  /** Classes of its sign; undefined where none is drawn. */
  readonly sign: string | undefined;
}

/** What a step asks, one row each. */
export const rowsOf = (page: Page): Promise<readonly Row[]> =>
  page.$$eval("main section .choices a:has(.step-name)", (all) =>
    all.map((one) => ({
      path: new URL((one as HTMLAnchorElement).href).pathname,
      words: one.querySelector(".step-name > span")?.textContent ?? "",
      sign: one.querySelector("svg")?.classList.value,
    })),
  );

export interface Said {
  readonly text: string;
  readonly sign: string | undefined;
}

/** The findings of a page, in whole sentences. */
export const findingsSaid = (page: Page): Promise<readonly Said[]> =>
  page.$$eval("main section .findings > li, main > .verdict-now .findings > li", (all) =>
    all.map((one) => ({ text: one.textContent ?? "", sign: one.querySelector("svg")?.classList.value })),
  );

/** What a page says and shows, every part of it unfolded, its name and the words of its pictures with it, and where its main part leads. */
export const said = (page: Page): Promise<{ readonly text: string; readonly links: readonly string[] }> =>
  page.evaluate(() => {
    for (const one of document.querySelectorAll("details")) one.open = true;
    const pictures = [...document.querySelectorAll("img")].map(({ alt }) => alt);
    const links = [...document.querySelectorAll<HTMLAnchorElement>("main a[href]")].map(({ pathname }) => pathname);
    // biome-ignore lint/performance/useDomNodeTextContent: what is hidden must not count as said
    return { text: [document.title, document.body.innerText, ...pictures].join("\n"), links };
  });
