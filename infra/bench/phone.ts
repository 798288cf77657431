import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import puppeteer, { type Browser, type Page } from "puppeteer";
import { launchOptions } from "../browser/index.ts";
import { type ForPhone, forPhone } from "../demo/index.ts";
import { startStack } from "../local/index.ts";
import type { Line } from "./line.ts";
import { median, type Took } from "./medians.ts";

/** How much slower an old phone is than the machine of the bench. */
const SLOWER = 4;
const ROUNDS = 7;
const FIRST_SCREEN_MS = 1_000;
const VERDICT_MS = 100;

/** Writes down when the first element of a selector is drawn, in the page's own milliseconds. */
const watchFor = (name: string, selector: string): string => `{
  const watch = new MutationObserver(() => {
    if (document.querySelector(${JSON.stringify(selector)}) === null) return;
    watch.disconnect();
    requestAnimationFrame(() => { globalThis.${name} = performance.now(); });
  });
  watch.observe(document, { childList: true, subtree: true });
}`;

/** A phone with the company's jobs and no signal, and the processor time of its page so far, ms. */
interface Phone {
  readonly page: Page;
  readonly spent: () => Promise<number>;
}

async function slowPhone(browser: Browser, company: ForPhone): Promise<Phone> {
  const page = await (await browser.createBrowserContext()).newPage();
  page.setDefaultTimeout(120_000);
  await page.setViewport({ width: 360, height: 740 });
  await page.goto(await company.crewLink());
  await page.waitForFunction(`document.querySelectorAll(".jobs li").length === ${Object.keys(company.jobs).length}`);
  await page.waitForFunction("navigator.serviceWorker.ready.then(({ active }) => active !== null)");
  await page.setOfflineMode(true);
  await page.emulateCPUThrottling(SLOWER);
  const devtools = await page.createCDPSession();
  // the slowing down spends time of the page's own thread: it is in this figure as it is on the clock
  await devtools.send("Performance.enable", { timeDomain: "threadTicks" });
  const spent = async (): Promise<number> => {
    const { metrics } = await devtools.send("Performance.getMetrics");
    return (metrics.find(({ name }) => name === "TaskDuration")?.value ?? 0) * 1000;
  };
  return { page, spent };
}

const middle = (all: readonly Took[]): Took => ({ time: median(all.map(({ time }) => time)), work: median(all.map(({ work }) => work)) });

/** A cold start without signal: from the address to the jobs, drawn from the phone's own store. */
async function firstScreen({ page, spent }: Phone, edge: string): Promise<Took> {
  const { identifier } = await page.evaluateOnNewDocument(watchFor("drawn", ".jobs .says"));
  const took: Took[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    await page.goto("about:blank");
    const before = await spent();
    await page.goto(edge);
    await page.waitForFunction("globalThis.drawn !== undefined", { polling: 200 });
    took.push({ time: Number(await page.evaluate("drawn")), work: (await spent()) - before });
  }
  await page.removeScriptToEvaluateOnNewDocument(identifier);
  return middle(took);
}

/** From pressing 'Enter it' to the sentence of the verdict, on the job that has most entries. */
async function verdict({ page, spent }: Phone, edge: string, job: string): Promise<Took> {
  await page.goto(`${edge}/phone/person`);
  await page.locator(".choices button").click();
  await page.waitForSelector(".jobs li");
  const took: Took[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    await page.goto(`${edge}/jobs/${job}/take/water-running-2`);
    const field = await page.waitForSelector("label.typed:has(+ p[role=alert]) input");
    await field?.type(`6 1${round % 2}/16`);
    await page.evaluate(
      `document.querySelector(".enter-reading").addEventListener("pointerdown", () => { globalThis.pressed = performance.now(); }, { capture: true });
       ${watchFor("said", ".just-entered .findings li, .verdict-now + .choices")}`,
    );
    const before = await spent();
    await page.locator(".enter-reading").click();
    await page.waitForFunction("globalThis.said !== undefined", { polling: 200 });
    took.push({ time: Number(await page.evaluate("said - pressed")), work: (await spent()) - before });
  }
  return middle(took);
}

const line = (what: string, { time, work }: Took, most: number): Line => ({
  what: `${what}, ${SLOWER} times slower`,
  unit: "ms",
  ours: time,
  beside: most,
  atMost: 1,
  work: work / most,
});

/**
 * The crew's phone in Chromium at a quarter of this machine's speed: its own times beside what they may be. Unlike the other
 * benches these are times and no ratios: a busy machine makes them longer.
 */
export async function phone(): Promise<readonly Line[]> {
  const directory = await mkdtemp(join(tmpdir(), "asburied-bench-phone-"));
  const stack = await startStack({ directory, demoLinks: true });
  try {
    const company = await forPhone(stack.edge, stack.secrets.operatorKey);
    const browser = await puppeteer.launch(await launchOptions());
    try {
      const phone = await slowPhone(browser, company);
      return [
        line("first screen, cold and without signal", await firstScreen(phone, stack.edge), FIRST_SCREEN_MS),
        line("a reading's verdict", await verdict(phone, stack.edge, company.jobs.covered), VERDICT_MS),
      ];
    } finally {
      await browser.close();
    }
  } finally {
    await stack.stop();
    await rm(directory, { recursive: true, force: true });
  }
}
