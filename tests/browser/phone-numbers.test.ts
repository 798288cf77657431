import type { Browser, ElementHandle, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { numbersEn } from "#core/screens/parts/words/numbers-en.ts";
import { type ForPhone, forPhone } from "#infra/demo/index.ts";
import { axe, largePhone, newScreen, openBrowser, phone, type Screen, targets, textOf } from "../helpers/screen.ts";

/** Numbers before questions, on the crew's phone: set-out card, till water, tonight, where everything is. */
let company: ForPhone;
let browser: Browser;
let crew: Screen;
let spanish: Screen;
const shots = process.env.ASBURIED_SHOTS;

const at = (path: string): string => new URL(path, inject("edge")).href;
const [courtyard, sideYard] = ["covered", "notYet"] as const;
const job = (which: keyof ForPhone["jobs"], ...inside: readonly string[]): string => ["/jobs", company.jobs[which], ...inside].join("/");

async function signIn(page: Page): Promise<void> {
  await page.goto(await company.crewLink());
  await page.waitForSelector(".jobs li", { timeout: 90_000 });
  await page.goto(at("/phone/person"));
  await page.waitForSelector(".choices button");
  await page.locator(".choices button").click();
  await page.waitForSelector(".jobs li", { timeout: 90_000 });
}

beforeAll(async () => {
  company = await forPhone(inject("edge"), inject("operatorKey"));
  browser = await openBrowser();
  crew = await newScreen(browser);
  await signIn(crew.page);
  spanish = await newScreen(browser);
  await spanish.page.evaluateOnNewDocument(() => {
    const own = globalThis.fetch;
    globalThis.fetch = async (...asked: Parameters<typeof fetch>) => {
      const answer = await own(...asked);
      if (!String(asked[0]).endsWith("/api/session") || !answer.ok) return answer;
      return Response.json({ ...((await answer.json()) as object), language: "es", units: "metric" });
    };
  });
  await signIn(spanish.page);
}, 300_000);
afterAll(() => browser?.close());

/** Waits until the page says something. */
const says = (page: Page, text: string): Promise<unknown> =>
  page.waitForFunction((wanted) => document.body.textContent.includes(wanted), { timeout: 20_000 }, text);

/** Presses what is called so. */
async function press(page: Page, text: string): Promise<void> {
  const found = await page.waitForFunction(
    (wanted) =>
      [...document.querySelectorAll("main a, main button, main summary")].find((one) => one.textContent?.trim().startsWith(wanted)),
    { timeout: 20_000 },
    text,
  );
  const element = found as unknown as ElementHandle<HTMLElement>;
  // a foot that stays on the screen must not lie over it
  await element.evaluate((one) => one.scrollIntoView({ block: "center" }));
  await element.click();
}

async function type(page: Page, text: string): Promise<void> {
  await page.waitForSelector("main .typed input");
  await page.type("main .typed input", text);
  await page.locator("main .enter-reading").click();
}

async function open(page: Page, path: string): Promise<void> {
  await page.goto(at(path));
  await page.waitForSelector("main > *");
}

/** On both sizes: axe finds nothing, everything is large enough to touch, nothing runs out at the side. */
async function looksRight(page: Page, name: string): Promise<void> {
  for (const size of [largePhone, phone]) {
    await page.setViewport(size);
    const { violations } = await axe(page);
    expect(violations, name).toEqual([]);
    const small = (await targets(page)).filter(({ width, height }) => width < 48 || height < 48);
    expect(small, name).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth), name).toBeLessThanOrEqual(size.width);
    if (shots) await page.screenshot({ path: `${shots}/${name}-${size.width}.png`, fullPage: true });
  }
}

/** What one row of the card says, in one line. */
const row = async (page: Page, place: string): Promise<string> =>
  (await textOf(page, `.set-out > li:has([href$="/set-out/${place}"])`)).replaceAll(/\s+/g, " ");

const sizeOf = (page: Page, selector: string): Promise<number> =>
  page.$eval(selector, (element) => Number.parseFloat(getComputedStyle(element).fontSize));

describe("the set-out card", () => {
  test("one reading on the height mark, one at the stake, and the rod readings stand there in the largest type", async () => {
    const { page } = crew;
    await open(page, job(sideYard, "set-out"));
    await says(page, "waits for the height mark");
    await looksRight(page, "set-out-empty");
    await press(page, "Stand the instrument");
    await press(page, "It stands: begin");
    await says(page, "Height mark");
    await type(page, "28 5/16");
    await says(page, "Height mark read 28 5/16 in:");
    await press(page, "Stake at finished grade");
    // the mark 10 in over grade, the rim 5 in under it: the rod reads 28 5/16 + 10 + 5
    await type(page, "38 5/16");
    await says(page, "43 5/16 in");
    expect(await row(page, "rim")).toContain("42 5/16 in to 44 5/16 in");
    expect(await textOf(page, "main")).toContain("The mark stands 10 in over finished grade: read at the stake in this set-up.");
    const largest = await page.$$eval("body *", (all) => Math.max(...all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize))));
    expect(await sizeOf(page, ".rod")).toBe(largest);
    await looksRight(page, "set-out-marked");
  });

  test("what is read lands in its row: raise by so much; read again after it was moved, the new reading stands alone", async () => {
    const { page } = crew;
    // the bed 5 in and the tank's 28 in under grade: 28 5/16 + 10 + 33
    expect(await row(page, "top-of-bed")).toContain("71 5/16 in");
    await press(page, "Top of bed");
    await says(page, "Look for");
    await type(page, "71 11/16");
    await page.waitForSelector(".set-out .landed");
    expect(await row(page, "top-of-bed")).toMatch(/Read 71 11\/16 in: raise 3\/8 in$/);
    await press(page, "Top of bed");
    await says(page, "moved since it was read?");
    await looksRight(page, "rod-again");
    await type(page, "71 1/16");
    await page.waitForSelector(".set-out .landed");
    // 1/16 in beyond the aim of 71 5/16 would be the mean of both
    expect(await row(page, "top-of-bed")).toMatch(/Read 71 1\/16 in: lower 1\/4 in$/);
    await press(page, "Rim");
    await says(page, "Which place?");
    await type(page, "43 11/16");
    await says(page, "Instrument moved");
    expect(await row(page, "rim")).toMatch(/Read 43 11\/16 in: raise 3\/8 in within$/);
    await looksRight(page, "set-out-read");
    // the office takes it all, the withdrawn reading too
    await says(page, "Everything sent.");
    expect(await textOf(page, ".standing")).not.toContain("not taken by the office");
  });

  test("in the marks that the tape was last read by", async () => {
    const { page } = crew;
    await press(page, "Rim");
    await press(page, "tenths");
    await open(page, job(sideYard, "set-out"));
    // 43 5/16 is 43.3125
    await says(page, "43.3 in");
    expect(await row(page, "rim")).toContain("43.3 in");
    await press(page, "Rim");
    await press(page, "1/16");
  });
});

describe("how long till water", () => {
  test("each session's times, and by when to glue for the time that is wished", async () => {
    const { page } = crew;
    await open(page, job(sideYard, "water"));
    await says(page, "Glue session 1");
    expect(await textOf(page, ".till")).toContain("All times are over since");
    await press(page, "A session not named yet");
    await press(page, "rigid pipe");
    await press(page, "dry");
    const [coldest] = await page.$$(".meant input");
    await coldest?.type("52");
    await says(page, "Last joint before");
    // rigid 2 in pipe at 52 °F and dry: 4 h (a pipe maker's table), 5 h more than the wished time leaves none
    const clock = (text: string): number => {
      const [, hours = 0, minutes = 0] = /(\d+):(\d\d)/.exec(text) ?? [];
      return Number(hours) * 60 + Number(minutes);
    };
    const wished = clock(await textOf(page, ".run-at output"));
    expect((wished - clock(await textOf(page, ".glue-before .left")) + 1440) % 1440).toBe(240);
    await looksRight(page, "water");
    for (let i = 0; i < 6; i++) await page.locator('[aria-label="half an hour earlier"]').click();
    await says(page, "Too late for that: glued now, its cure time is over");
    await looksRight(page, "water-late");
  });

  test("a session that was named and not glued yet says what is missing, with the way to it", async () => {
    const { page } = crew;
    await press(page, "Name the next: Glue session");
    await press(page, "Enter it");
    await page.waitForSelector(".next");
    await open(page, job(sideYard, "water"));
    await says(page, "Glue session 2: by when to glue it is not known yet.");
    expect(await textOf(page, ".till")).toContain("When the times are over is not known yet: Glue session 2.");
    const ways = await page.$$eval("main .choices a", (all) => all.map((one) => one.getAttribute("href")));
    expect(ways).toContain(job(sideYard, "take", "last-joint-made", "2"));
    await looksRight(page, "water-missing");
  });

  test("once the last joint is made it counts down from the can's own time, and says which session decides", async () => {
    const { page } = crew;
    await open(page, job(sideYard, "take", "cure-time"));
    await type(page, "6 h");
    await says(page, "6 h");
    await open(page, job(sideYard, "take", "last-joint-made", "2"));
    await press(page, "Now");
    await page.locator("main .enter-reading").click();
    await page.waitForSelector("main .enter-reading", { hidden: true });
    await open(page, job(sideYard, "water"));
    await says(page, "No water for");
    // the joint is entered to the minute, and the test takes some
    expect(await textOf(page, ".till .left")).toMatch(/^(6 h|5 h 5\d min)$/);
    expect(await textOf(page, ".waiting.decides h3")).toBe("Glue session 2");
    expect(await textOf(page, ".till")).toMatch(/No water until .+; Glue session 2 takes the longest\./);
    await looksRight(page, "water-running");
  });
});

describe("leaving tonight", () => {
  test("each line with its state; answers are pressed there, and what is settled says so", async () => {
    const { page } = crew;
    await open(page, job(sideYard, "tonight"));
    await says(page, "Open tonight: the trench");
    await says(page, "Still to settle: ");
    await looksRight(page, "tonight-open");
    await press(page, "fenced");
    await says(page, "How it is left is entered.");
    await press(page, "plugged in");
    await says(page, "The pump is plugged in for the night.");
    expect(await page.$$eval(".unsettled .night-state", (all) => all.map((one) => one.textContent))).toContain("Not as wanted.");
    await press(page, "unplugged");
    await says(page, "Pump for the night: entered.");
    expect(await textOf(page)).not.toContain("The pump is plugged in for the night.");
    await looksRight(page, "tonight-entered");
  });
});

describe("where everything is", () => {
  test("each thing with its distances from the marks, and a plan to scale", async () => {
    const { page } = crew;
    await open(page, job(courtyard, "where"));
    await says(page, "Check valve and its union");
    expect(await textOf(page, ".located:nth-child(2) h3")).toContain("Check valve and its union");
    const distances = await textOf(page, ".located:nth-child(2) .distances");
    expect(distances.replaceAll(/\s+/g, " ")).toBe("A 10 ft 7 3/4 in B 11 ft 2 3/4 in C 7 ft 5 3/4 in");
    expect(await page.$$eval(".plan .mark", (all) => all.length)).toBe(3);
    // A to B is 15 ft 10 1/2 in: the bar's feet and the drawn distance agree
    const drawn = await page.evaluate(() => {
      const [a, b] = [...document.querySelectorAll<SVGPathElement>(".plan .mark")].map((one) => one.getBBox());
      const bar = document.querySelector<SVGPathElement>(".plan .bar")?.getBBox();
      if (!a || !b || !bar) return undefined;
      return {
        apart: Math.hypot(a.x - b.x, a.y - b.y),
        bar: bar.width,
        feet: Number.parseFloat(document.querySelector(".bar-text")?.textContent ?? ""),
      };
    });
    expect(((drawn?.apart ?? 0) / (drawn?.bar ?? 1)) * (drawn?.feet ?? 0)).toBeCloseTo(15.875, 1);
    expect(await sizeOf(page, ".distances b")).toBeGreaterThan(28);
    await looksRight(page, "where");
    await open(page, job(sideYard, "where"));
    await says(page, "Nothing has been tied to a mark yet.");
  });
});

describe("in Spanish and metric", () => {
  test.each([
    ["set-out", sideYard, "Alturas de replanteo"],
    ["set-out/rim", sideYard, "Borde"],
    ["water", sideYard, "¿Cuándo debe correr?"],
    ["tonight", sideYard, "Al irse esta noche"],
    ["where", courtyard, "Dónde está todo"],
  ] as const)("%s", async (path, which, title) => {
    const { page } = spanish;
    await open(page, job(which, ...path.split("/")));
    await says(page, title);
    await looksRight(page, `es-${path.replace("/", "-")}`);
    const said = await textOf(page, "main");
    expect(Object.values(numbersEn).filter((words) => words.length > 12 && said.includes(words))).toEqual([]);
  });
});

test("nothing troubled the pages, and no policy was broken", () => {
  expect([...crew.troubles, ...spanish.troubles]).toEqual([]);
});
