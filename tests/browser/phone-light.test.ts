import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import type { Browser } from "puppeteer";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { type ForPhone, forPhone } from "#infra/demo/index.ts";
import { openBrowser } from "../helpers/screen.ts";

/** What an old phone is asked to carry before it shows anything. */
let browser: Browser;
let company: ForPhone;

beforeAll(async () => {
  company = await forPhone(inject("edge"), inject("operatorKey"));
  browser = await openBrowser();
}, 240_000);
afterAll(() => browser?.close());

const MOST = 120_000;
const brotli = (text: string): number => brotliCompressSync(text, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }).length;

/** Scripts that a script names in its static imports: what is loaded only when it is used stays out. */
const staticImports = (text: string): readonly string[] =>
  [...text.matchAll(/(?:^|[;}\n])import(?:[\w$*{},\s]+from)?["']\.\/([^"']+\.js)["']/g)].map(([, name = ""]) => name);

test("the crew's script at first start is at most 120 kB compressed (brotli), by what it imports and by what a phone loads", async () => {
  const edge = inject("edge");
  const page = await (await fetch(edge)).text();
  const texts = new Map<string, string>();
  const queue = [...page.matchAll(/(?:src|href)="\/assets\/([^"]+\.js)"/g)].map(([, name = ""]) => name);
  for (let name = queue.shift(); name !== undefined; name = queue.shift()) {
    if (texts.has(name)) continue;
    const text = await (await fetch(`${edge}/assets/${name}`)).text();
    texts.set(name, text);
    queue.push(...staticImports(text));
  }
  const named = [...texts.values()].reduce((sum, text) => sum + brotli(text), 0);

  const context = await browser.createBrowserContext();
  const phone = await context.newPage();
  // one that is still on its way when the page closes has no text, and is none of what is counted
  const loaded = new Map<string, Promise<string | Error>>();
  phone.on("response", (response) => {
    if (response.request().resourceType() === "script" && response.status() === 200)
      loaded.set(
        response.url(),
        response.text().catch((error: Error) => error),
      );
  });
  // what had come when the first screen stood there; what is asked for after it is drawn is no part of it
  await phone.evaluateOnNewDocument(`{
    const watch = new MutationObserver(() => {
      if (document.querySelector(".jobs li") === null) return;
      watch.disconnect();
      globalThis.tillThen = performance.getEntriesByType("resource").map(({ name }) => name);
    });
    watch.observe(document, { childList: true, subtree: true });
  }`);
  await phone.goto(await company.crewLink());
  await phone.waitForSelector(".jobs li");
  const tillThen = new Set((await phone.evaluate("tillThen")) as readonly string[]);
  const tillFirst = [...loaded].filter(([url]) => tillThen.has(url));
  const scripts = await Promise.all(
    tillFirst.map(async ([url, coming]) => {
      const text = await coming;
      if (text instanceof Error) throw text;
      return { url, text };
    }),
  );
  await context.close();
  const came = scripts.reduce((sum, { text }) => sum + brotli(text), 0);
  const gzip = scripts.reduce((sum, { text }) => sum + gzipSync(text, { level: 9 }).length, 0);
  const kB = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;
  process.stdout.write(
    `The crew's script at first start: ${kB(named)} by its imports, ${kB(came)} loaded till the first screen (brotli; gzip ${kB(gzip)})\n`,
  );
  // the scripts that a phone loads are those that the pages name, and whatever the first screen asks for by itself
  for (const name of texts.keys()) expect(scripts.some(({ url }) => url.endsWith(name))).toBe(true);
  expect(named).toBeGreaterThan(20_000);
  expect(named).toBeLessThanOrEqual(MOST);
  expect(came).toBeLessThanOrEqual(MOST);
}, 120_000);
