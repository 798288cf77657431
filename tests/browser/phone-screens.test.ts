import type { Browser, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { courtyard } from "#infra/demo/courtyard.ts";
import { type ForPhone, forPhone } from "#infra/demo/index.ts";
import { sideYard } from "#infra/demo/side-yard.ts";
import { crewScreens, sizes, walkScreens } from "#infra/screens/index.ts";
import { axe, openBrowser, targets } from "../helpers/screen.ts";

/** Every screen of the crew's phone, in both languages and sizes: the walk that `npm run screens` draws. */
let browser: Browser;
let company: ForPhone;

beforeAll(async () => {
  company = await forPhone(inject("edge"), inject("operatorKey"));
  browser = await openBrowser();
}, 240_000);
afterAll(() => browser?.close());

/** What a gloved thumb is promised 72 pixels and 12 between: the shutter, the tape's marks, the ways of a clearance. */
const large = [".shutter-row", ".row-of-three", ".row-of-two", ".row-of-four", ".tape-by", ".held-lines > li", ".two-answers"];

/** Faults of one group of large targets: too small, or too close to one another. */
const crampedIn = (page: Page): Promise<string[]> =>
  page.evaluate((groups) => {
    const faults: string[] = [];
    for (const group of document.querySelectorAll(groups.join(", "))) {
      const boxes = [...group.querySelectorAll(":scope > .target, :scope > a, :scope > button")]
        .filter((one) => one.checkVisibility())
        .map((one) => ({ text: (one.textContent ?? "").slice(0, 30), box: one.getBoundingClientRect() }));
      for (const { text, box } of boxes)
        if (Math.min(box.width, box.height) < 71.5) faults.push(`${text}: ${Math.round(box.width)} by ${Math.round(box.height)}`);
      for (const [i, one] of boxes.entries())
        for (const other of boxes.slice(i + 1)) {
          const across = Math.max(one.box.left - other.box.right, other.box.left - one.box.right);
          const down = Math.max(one.box.top - other.box.bottom, other.box.top - one.box.bottom);
          if (Math.max(across, down) < 11.5) faults.push(`${one.text} / ${other.text}`);
        }
    }
    return faults;
  }, large);

/** Elements that would move although somebody asked for less motion. */
const moving = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll("*")]
      .filter((one) => {
        const { transitionDuration, animationName } = getComputedStyle(one);
        return animationName !== "none" || transitionDuration.split(", ").some((time) => time !== "0s");
      })
      .map((one) => one.className.toString()),
  );

/** What of a clearance, its lines and the shutter cannot be seen at once, without a touch. */
const hiddenOn = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const clearance = document.querySelector("main > .large-clearance, .next > .large-clearance");
    const shutter = document.querySelector("main .shutter-row");
    if (clearance === null || shutter === null || document.querySelector(".right-job") !== null) return [];
    scrollTo(0, 0);
    const row = shutter.getBoundingClientRect();
    return [
      ...(row.bottom > innerHeight + 0.5 ? ["the shutter"] : []),
      ...(clearance.getBoundingClientRect().bottom > row.top + 0.5 ? ["the clearance"] : []),
      ...[...document.querySelectorAll(".next > .held-lines > li")]
        .filter((line) => line.getBoundingClientRect().bottom > row.top + 0.5)
        .map((line) => line.textContent ?? ""),
    ];
  });

interface Looked {
  readonly hidden: readonly string[];
  readonly wide: readonly string[];
  readonly small: readonly string[];
  readonly cramped: readonly string[];
  readonly violations: readonly string[];
  readonly moving: readonly string[];
  readonly words: readonly string[];
}

/** Everything that the page says, and says to those who do not see it; one line each. */
const saidOn = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const shown: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
      // what a phone showed when something was covered stays in the language in which it was shown
      if (node.parentElement?.closest(".shown") === null && node.parentElement.checkVisibility() && (node.textContent ?? "").trim() !== "")
        shown.push(node.textContent ?? "");
    const names = [...document.querySelectorAll("[aria-label], [aria-valuetext], [alt], [title]")].flatMap((one) =>
      ["aria-label", "aria-valuetext", "alt", "title"].flatMap((name) => one.getAttribute(name) ?? []),
    );
    return [...shown, ...names, document.title];
  });

/** `npm test` lets axe look at every third screen. */
const axeEvery = Number(process.env.ASBURIED_AXE_EVERY ?? 1);

/** One walk over all screens. */
async function walked(language: "en" | "es"): Promise<ReadonlyMap<string, Looked>> {
  const screens = new Map<string, Looked>();
  await walkScreens({
    edge: inject("edge"),
    browser,
    company,
    language,
    visit: async (name, page) => {
      await page.emulateMediaFeatures([{ name: "prefers-reduced-motion", value: "reduce" }]);
      const [wide, small, cramped]: [string[], string[], string[]] = [[], [], []];
      for (const size of [...sizes].reverse()) {
        await page.setViewport(size);
        if (await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth))
          wide.push(`${size.width}`);
        const all = (await targets(page)).filter(({ text }) => text !== "");
        small.push(...all.filter(({ width, height }) => Math.min(width, height) < 48).map(({ text }) => text));
        cramped.push(...(await crampedIn(page)));
      }
      const hidden = await hiddenOn(page);
      // as tall as the page: what a row under the thumb lies over now is reached by scrolling
      await page.setViewport({ width: sizes[0].width, height: await page.evaluate(() => document.documentElement.scrollHeight) });
      const { violations } = screens.size % axeEvery === 0 ? await axe(page) : { violations: [] };
      await page.setViewport(sizes[0]);
      screens.set(name, { hidden, wide, small, cramped, violations, moving: await moving(page), words: await saidOn(page) });
    },
  });
  return screens;
}

const faults = (screens: ReadonlyMap<string, Looked>, of: (looked: Looked) => readonly string[]): readonly string[] =>
  [...screens].flatMap(([name, looked]) => of(looked).map((fault) => `${name}: ${fault}`));

/** Every text of the demo's own: it stays in the language in which somebody wrote it. */
function written(value: unknown): readonly string[] {
  if (typeof value === "string") return [value];
  if (typeof value === "function") return [];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(written) : [];
}
const own = written([courtyard, sideYard, "Corner fall"])
  .filter((text) => text.length > 3)
  .sort((a, b) => b.length - a.length);

/** Words that no English sentence does without, and that are no Spanish ones. */
const english =
  /(?<![\p{L}])(the|and|of|is|are|not|for|from|with|this|that|it|by|yet|was|were|to|has|have|taken|within|outside|reading|picture|enter|step)(?![\p{L}])/iu;

/** `npm test` walks the longer one alone. */
const languages = (["en", "es"] as const).filter((language) => (process.env.ASBURIED_LANGUAGES ?? "en es").includes(language));

describe.each(languages)("the crew's screens (%s)", (language) => {
  let screens: ReadonlyMap<string, Looked>;
  beforeAll(async () => {
    screens = await walked(language);
  }, 400_000);

  test("are all there", () => {
    expect([...screens.keys()]).toEqual(crewScreens.map(({ name }) => name));
  });

  test("fit a phone's width, at 360 and at 412", () => {
    expect(faults(screens, ({ wide }) => wide)).toEqual([]);
  });

  test("have nothing to touch under 48, and what is pressed most at 72 with 12 between", () => {
    expect(faults(screens, ({ small }) => small)).toEqual([]);
    expect(faults(screens, ({ cramped }) => cramped)).toEqual([]);
  });

  test("show a clearance, the lines that hold it and the shutter at once, at 360 by 740", () => {
    expect(faults(screens, ({ hidden }) => hidden)).toEqual([]);
  });

  test("hold for axe, contrast of AAA included", () => {
    expect(faults(screens, ({ violations }) => violations)).toEqual([]);
  });

  test("do not move when less motion is asked for", () => {
    expect(faults(screens, ({ moving: all }) => all)).toEqual([]);
  });

  test("speak their language", () => {
    const foreign = faults(screens, ({ words }) =>
      words.map((text) => own.reduce((rest, word) => rest.replaceAll(word, ""), text)).filter((text) => english.test(text)),
    );
    if (language === "es") expect(foreign).toEqual([]);
    // the same look finds English where it is spoken, on every screen
    else expect(new Set(foreign.map((one) => one.split(":")[0])).size).toBe(crewScreens.length);
  });
});
