import "../node-version.mjs";
import { mkdir, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import puppeteer from "puppeteer";
import { launchOptions } from "../browser/index.ts";
import { forPhone } from "../demo/index.ts";
import { type Stack, startStack } from "../local/index.ts";
import { sizes, walkScreens } from "./walk.ts";

/** `npm run screens -- --out DIR`: every screen of the crew's phone from the demo's jobs, in both languages and sizes, as PNG. */
const out = (() => {
  try {
    return parseArgs({ options: { out: { type: "string" } } }).values.out;
  } catch (error) {
    console.error((error as Error).message);
    return undefined;
  }
})();
if (!out) {
  console.error("Say where the pictures go: npm run screens -- --out DIR");
  process.exit(2);
}

const folder = resolve(out);
const directory = await mkdtemp(join(tmpdir(), "asburied-screens-"));
let stack: Stack | undefined;
const clear = async (): Promise<void> => {
  await stack?.stop();
  await rm(directory, { recursive: true, force: true });
};
for (const signal of ["SIGINT", "SIGTERM"] as const) {
  process.on(signal, () => void clear().finally(() => process.exit(130)));
}

try {
  await mkdir(folder, { recursive: true });
  stack = await startStack({ directory, demoLinks: true, sweepEvery: 2_000 });
  const company = await forPhone(stack.edge, stack.secrets.operatorKey);
  const browser = await puppeteer.launch(await launchOptions());
  try {
    for (const language of ["en", "es"] as const) {
      await walkScreens({
        edge: stack.edge,
        browser,
        company,
        language,
        visit: async (name, page) => {
          for (const { width, height } of [...sizes].reverse()) {
            await page.setViewport({ width, height });
            const file = `${name}-${language}-${width}.png`;
            await page.screenshot({ path: join(folder, file) as `${string}.png` });
            console.log(file);
            // the rest of a page that is longer than the screen
            const tall = Number(await page.evaluate("document.documentElement.scrollHeight"));
            if (tall <= height) continue;
            const whole = `${name}-${language}-${width}-whole.png`;
            await page.screenshot({ path: join(folder, whole) as `${string}.png`, fullPage: true });
            console.log(whole);
          }
        },
      });
    }
  } finally {
    await browser.close();
  }
} catch (error) {
  console.error(`The screens were not all drawn: ${(error as Error).message}`);
  process.exitCode = 1;
} finally {
  await clear();
}
process.exit();
