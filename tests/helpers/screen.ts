import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import puppeteer, { type Browser, type Page } from "puppeteer";
import { launchOptions } from "#infra/browser/index.ts";

/** What browser tests share: the real browser, a page that writes down every trouble, and what they measure on it. */

export const phone = { width: 360, height: 740 } as const;
export const largePhone = { width: 412, height: 915 } as const;

export const openBrowser = async (): Promise<Browser> => puppeteer.launch(await launchOptions());

export interface Screen {
  readonly page: Page;
  /** Errors of the console and of scripts, and whatever the content security policy stopped. */
  readonly troubles: string[];
  readonly close: () => Promise<void>;
}

/** A page in a context of its own, as on a phone of its own. */
export async function newScreen(browser: Browser, size: { readonly width: number; readonly height: number } = phone): Promise<Screen> {
  const context = await browser.createBrowserContext();
  const page = await context.newPage();
  const troubles: string[] = [];
  await page.setViewport(size);
  page.on("console", (message) => {
    if (["error", "warn"].includes(message.type())) troubles.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => troubles.push(`script: ${String(error)}`));
  await page.exposeFunction("policyStopped", (what: string) => troubles.push(`policy: ${what}`));
  await page.evaluateOnNewDocument(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      const { policyStopped } = globalThis as unknown as { policyStopped: (what: string) => void };
      policyStopped(`${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  return { page, troubles, close: () => context.close() };
}

/**
 * The same, with an app that is not kept for a start without signal: keeping it takes two seconds of a core for each new context. For
 * what is looked at is not the worker; crew, office and owner have it in the demo, and the crew in every test of the phone.
 */
export async function newScreenOnline(
  browser: Browser,
  size: { readonly width: number; readonly height: number } = phone,
): Promise<Screen> {
  const screen = await newScreen(browser, size);
  // as in a browser that takes none: the app goes on without
  await screen.page.evaluateOnNewDocument(() => {
    ServiceWorkerContainer.prototype.register = () => Promise.reject(new Error("no worker is kept here"));
  });
  return screen;
}

/** Follows somebody's one-time link and goes on to the first page, whether or not a passkey is asked for before. */
export async function arrive(page: Page, link: string): Promise<void> {
  await page.goto(link);
  if (new URL(page.url()).pathname !== "/") await page.goto(new URL("/", link).href);
}

/** Everything that the page says, one line each, as it is shown. */
export const textOf = (page: Page, selector = "body"): Promise<string> =>
  // biome-ignore lint/performance/useDomNodeTextContent: what is hidden must not count as said
  page.$eval(selector, (element) => (element as HTMLElement).innerText);

/** Of axe, what is asked here. */
interface Looking {
  readonly run: (
    where: Document,
    how: object,
  ) => Promise<{
    readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[];
    readonly passes: readonly unknown[];
  }>;
}

const axeSource = readFile(fileURLToPath(import.meta.resolve("axe-core/axe.min.js")), "utf8");

/** What axe finds, rules of WCAG's AAA contrast and of target size among them. Only what it finds is described and handed over: of what is well, the count of rules. */
export async function axe(page: Page): Promise<{ readonly violations: readonly string[]; readonly rules: number }> {
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(await axeSource);
  return page.evaluate(async () => {
    const { axe: looking } = globalThis as unknown as { axe: Looking };
    const rules = { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } };
    const { violations, passes } = await looking.run(document, { rules, resultTypes: ["violations"], selectors: false });
    return {
      violations: violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`),
      rules: passes.length,
    };
  });
}

export interface Target {
  readonly text: string;
  readonly width: number;
  readonly height: number;
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** Whatever can be touched, with its box; a radio button counts as its label. */
export const targets = (page: Page): Promise<Target[]> =>
  page.$$eval("a, button, summary, input", (elements) =>
    elements
      .map((element) => element.closest("label") ?? element)
      .filter((element) => element.checkVisibility())
      .map((element) => {
        const { width, height, top, bottom, left, right } = element.getBoundingClientRect();
        return { text: (element.textContent ?? "").slice(0, 40), width, height, top, bottom, left, right };
      }),
  );

/** Pairs of targets with less than `gap` pixels between them both ways. */
export function crowded(all: readonly Target[], gap: number): string[] {
  return all.flatMap((one, i) =>
    all.slice(i + 1).flatMap((other) => {
      const across = Math.max(one.left - other.right, other.left - one.right);
      const down = Math.max(one.top - other.bottom, other.top - one.bottom);
      // half a pixel for rounding
      return Math.max(across, down) < gap - 0.5 ? [`${one.text} / ${other.text}`] : [];
    }),
  );
}
