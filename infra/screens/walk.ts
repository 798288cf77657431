import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "puppeteer";
import { drawing, type ForPhone, moment, ZONE } from "../demo/index.ts";
import { clockThatCanBeSet, setClock } from "./clock.ts";
import { crewScreens } from "./list.ts";
import { WalkPage } from "./page.ts";

/** The smaller and the larger phone that every screen is drawn for. */
export const sizes = [
  { width: 360, height: 740 },
  { width: 412, height: 915 },
] as const;

/** A machine that does more than this takes its time. */
const PATIENCE_MS = 90_000;

/** The evening of the demo's second day: glue is fresh, something stands open, and there is no signal. */
const EVENING = "13 17:10";

export interface WalkPlan {
  readonly edge: string;
  readonly browser: Browser;
  readonly company: ForPhone;
  readonly language: "en" | "es";
  /** Called at every screen, in the smaller size. */
  readonly visit: (name: string, page: Page) => Promise<void>;
}

async function photosIn(folder: string): Promise<readonly [string, string, string]> {
  const photo = async (n: number): Promise<string> => {
    const path = join(folder, `${n}.jpg`);
    const place = { latitude: 41.0107, longitude: -89.1388 };
    const when = { wallClock: `2026-05-13T16:4${n}:00`, offset: "-05:00" };
    await writeFile(
      path,
      await drawing({ title: "Whole run, tape alongside", job: "Side-yard fall", sketch: "trench section", ...when, ...place }),
    );
    return path;
  };
  return [await photo(1), await photo(2), await photo(3)];
}

/** Walks a phone of its own over every screen of the crew. It has read the company's jobs and then lost its signal. */
export async function walkScreens({ edge, browser, company, language, visit }: WalkPlan): Promise<void> {
  await company.speak(language);
  const folder = await mkdtemp(join(tmpdir(), "asburied-screens-"));
  const context = await browser.createBrowserContext();
  try {
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE_MS);
    await page.setViewport(sizes[0]);
    await page.emulateTimezone(ZONE);
    await clockThatCanBeSet(page);
    await page.goto(await company.crewLink());
    await page.waitForFunction(`document.querySelectorAll(".jobs li").length === ${Object.keys(company.jobs).length}`);
    await page.waitForFunction("navigator.serviceWorker.ready.then(({ active }) => active !== null)");
    await page.setOfflineMode(true);
    await setClock(page, moment(EVENING));
    const walk = { at: new WalkPage(page, edge), jobs: company.jobs, photos: await photosIn(folder) };
    for (const { name, show } of crewScreens) {
      await show(walk).catch((error: Error) => {
        throw new Error(`the screen ${name} did not come: ${error.message}`, { cause: error });
      });
      await page.evaluate("document.fonts.ready");
      await visit(name, page);
    }
  } finally {
    await context.close();
    await rm(folder, { recursive: true, force: true });
  }
}
