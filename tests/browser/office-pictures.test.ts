import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { Browser, Page } from "puppeteer";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import type { Region } from "#core/photo/index.ts";
import type { SeenBefore } from "#core/wire/index.ts";
import { Client } from "#infra/demo/index.ts";
import { type TheDemo, theDemo } from "../helpers/demo.ts";
import { photographs } from "../helpers/photographs.ts";
import { axe, newScreenOnline, openBrowser, type Screen, targets, textOf } from "../helpers/screen.ts";

/** The office blurs parts of a picture, compares pictures seen before and says where a site is, on the real stack. */
let demo: TheDemo;
let browser: Browser;
let screen: Screen;
let client: Client;

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const job = (which: 0 | 1): string => demo.jobs[which] ?? "";
const open = (page: Page, path: string): Promise<unknown> => page.goto(new URL(path, inject("edge")).href);

interface Fact {
  readonly kind: string;
  readonly what: { readonly [key: string]: unknown };
  readonly where: { readonly [key: string]: unknown } | undefined;
}

async function factsIn(which: 0 | 1, kind: string): Promise<readonly Fact[]> {
  const { entries } = await client.get<{
    entries: readonly { envelope: { kind: string }; body: Record<"what" | "where", { content: Fact["what"] } | undefined> }[];
  }>(`/api/jobs/${job(which)}/ledger`);
  return entries
    .filter(({ envelope }) => envelope.kind === kind)
    .map(({ envelope, body }) => ({ kind: envelope.kind, what: body.what?.content ?? {}, where: body.where?.content }));
}

beforeAll(async () => {
  demo = await theDemo();
  client = await new Client(inject("edge")).signIn(demo.links.owner);
  browser = await openBrowser();
  screen = await newScreenOnline(browser, { width: 1280, height: 900 });
  await screen.page.goto(demo.links.office);
}, 240_000);
afterAll(() => browser?.close());

/** Nothing that axe finds, nothing too small to touch, nothing in the console. */
async function isInOrder({ page, troubles }: Screen): Promise<void> {
  expect((await axe(page)).violations).toEqual([]);
  expect((await targets(page)).filter(({ height, width }) => height < 48 || width < 48)).toEqual([]);
  expect(troubles).toEqual([]);
}

const type = async (page: Page, selector: string, text: string): Promise<void> => {
  await page.$eval(selector, (input) => (input as HTMLInputElement).select());
  await page.type(selector, text);
};
const answered = (page: Page, text: string): Promise<unknown> =>
  page.waitForFunction((said) => document.querySelector(".answer")?.textContent?.includes(said), {}, text);

/** How far two pictures differ in a region, mean of the grey steps. */
async function apart(one: Uint8Array, other: Uint8Array, { x, y, width, height }: Region): Promise<number> {
  const size = await sharp(one).metadata();
  const cut = {
    left: Math.round((x / 1e6) * size.width),
    top: Math.round((y / 1e6) * size.height),
    width: Math.round((width / 1e6) * size.width),
    height: Math.round((height / 1e6) * size.height),
  };
  const greyOf = (bytes: Uint8Array): Promise<Buffer> => sharp(bytes).extract(cut).greyscale().raw().toBuffer();
  const [a, b] = [await greyOf(one), await greyOf(other)];
  return a.reduce((sum, grey, n) => sum + Math.abs(grey - (b[n] ?? Number.NaN)), 0) / a.length;
}

describe("parts of a picture that have to go", () => {
  let photo = "";
  let before: Uint8Array;

  /** Opens the steps of the job; of each picture whether it is shown, and whether a link leads from it to its parts. */
  async function figuresOf(page: Page): Promise<readonly (readonly boolean[])[]> {
    await open(page, `/jobs/${job(1)}`);
    await page.waitForSelector(".step");
    await page.$$eval("details", (all) => {
      for (const one of all) one.open = true;
    });
    return page.$$eval(".step figure.picture", (all) =>
      all.map((one) => [one.querySelector("img") !== null, one.querySelector('a[href*="/blurring/"]') !== null]),
    );
  }

  test("the page is reached from under each picture that is shown, by office and owner", async () => {
    const { page } = screen;
    const owner = await newScreenOnline(browser);
    await owner.page.goto(await demo.newLink("owner"));
    for (const which of [owner.page, page]) {
      const figures = await figuresOf(which);
      expect(figures.length).toBeGreaterThan(3);
      expect(figures.every(([shown, leads]) => shown === leads)).toBe(true);
    }
    await owner.close();
    await page.locator('.step a[href*="/blurring/"]').click();
    await page.waitForSelector(".marked-picture img");
    photo = new URL(page.url()).pathname.split("/").at(-1) ?? "";
    before = await client.bytes(`/api/photos/${photo}/screen`);
  });

  test("a part is dragged, another given in numbers by keyboard alone, one removed; what is no part is said so", async () => {
    const { page } = screen;
    await page.waitForFunction(() => (document.querySelector<HTMLImageElement>(".marked-picture img")?.naturalHeight ?? 0) > 0);
    await page.locator(".blurring .main").click();
    // the reason is asked for first, by the browser itself
    expect(await page.$eval("input[name=reason]", (input) => (input as HTMLInputElement).validity.valueMissing)).toBe(true);
    await page.type("input[name=reason]", "a neighbor's house number");
    await page.locator(".blurring .main").click();
    await answered(page, "No part is marked yet.");

    const box = await page.$eval(".marked-picture svg", (svg) => {
      svg.scrollIntoView();
      const { left, top, width, height } = svg.getBoundingClientRect();
      return { left, top, width, height };
    });
    const drag = async (from: readonly [number, number], to: readonly [number, number]): Promise<void> => {
      const at = ([x, y]: readonly [number, number]) => [box.left + x * box.width, box.top + y * box.height] as const;
      await page.mouse.move(...at(from));
      await page.mouse.down();
      await page.mouse.move(...at(to), { steps: 4 });
      await page.mouse.up();
    };
    await drag([0.6, 0.5], [0.1, 0.1]);
    await page.waitForFunction(() => document.querySelectorAll(".marked-part").length === 1);
    const dragged = await page.$$eval(".marked-part input", (all) => all.map((one) => Number((one as HTMLInputElement).value)));
    for (const [n, percent] of [10, 10, 50, 40].entries()) expect(Math.abs((dragged[n] ?? 0) - percent)).toBeLessThan(0.4);
    await drag([0.3, 0.3], [0.3, 0.3]);
    expect((await page.$$(".marked-part")).length).toBe(1);

    await page.focus(".issue > button.target");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelectorAll(".marked-part").length === 3);
    await page.focus(".marked-part:nth-of-type(3) button");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelectorAll(".marked-part").length === 2);
    const field = (n: number): string => `.marked-part:nth-of-type(2) label:nth-of-type(${n}) input`;
    for (const [n, percent] of ["70.5", "80", "29.6", "20"].entries()) await type(page, field(n + 1), percent);
    expect(await textOf(page, ".marked-part:nth-of-type(2)")).toContain("It does not lie inside the picture.");
    await page.locator(".blurring .main").click();
    await answered(page, "A part does not lie inside the picture.");
    await type(page, field(3), "29.5");
    expect(await textOf(page, ".marked-part:nth-of-type(2)")).not.toContain("It does not lie inside the picture.");
    expect((await page.$$(".marked-picture g")).length).toBe(2);
    await isInOrder(screen);
  });

  test("then the blurred rendition is shown, its bytes others than before; the original stays, and the ledger says so", async () => {
    const { page } = screen;
    await page.locator(".blurring .main").click();
    await answered(page, "It is blurred wherever it is shown from now on. The original is kept.");
    const [fact, ...more] = await factsIn(1, "region-blurred");
    expect(more).toEqual([]);
    expect(fact?.what).toMatchObject({ photo, reason: "a neighbor's house number" });
    const regions = fact?.what.regions as readonly Region[];
    expect(regions[1]).toEqual({ x: 705_000, y: 800_000, width: 295_000, height: 200_000 });
    const shown = await page.waitForFunction(() => {
      const image = document.querySelector<HTMLImageElement>(".marked-picture img");
      return image?.complete && image.src.includes("?parts=") ? image.src : undefined;
    });
    expect(await shown.jsonValue()).toContain(`/api/photos/${photo}/screen?parts=${String(fact?.what.rendition)}`);
    const after = await client.bytes(`/api/photos/${photo}/screen`);
    expect(sha256(after)).not.toBe(sha256(before));
    expect(sha256(await client.bytes(`/api/photos/${photo}/original`))).toBe(photo);
    const inside = await apart(before, after, regions[0] as Region);
    const outside = await apart(before, after, { x: 650_000, y: 50_000, width: 300_000, height: 650_000 });
    console.log(`grey steps changed: ${inside.toFixed(1)} inside the part, ${outside.toFixed(2)} outside`);
    expect(inside).toBeGreaterThan(5 * outside);
    expect(inside).toBeGreaterThan(2);
  });

  test("who comes back finds the parts that are blurred, and can take one away again", async () => {
    const { page } = screen;
    await open(page, `/jobs/${job(1)}/blurring/${photo}`);
    await page.waitForSelector(".marked-part");
    expect((await page.$$(".marked-part")).length).toBe(2);
    expect(await textOf(page, ".blurring")).not.toContain("from another job");
    await page.locator(".marked-part:nth-of-type(1) button").click();
    await page.type("input[name=reason]", "only the corner has to go");
    await page.locator(".blurring .main").click();
    await answered(page, "It is blurred wherever");
    const facts = await factsIn(1, "region-blurred");
    expect(facts.at(-1)?.what.regions).toEqual([{ x: 705_000, y: 800_000, width: 295_000, height: 200_000 }]);
  });

  test("a job that names the picture only afterwards warns that what is not marked again is shown again", async () => {
    const { page } = screen;
    const said = { from: "Pat Lindqvist", how: "text message", when: "yesterday" };
    await client.send("POST", `/api/jobs/${job(0)}/received`, { item: "site-first-side", photo, ...said });
    await open(page, `/jobs/${job(0)}/blurring/${photo}`);
    await page.waitForSelector(".marked-picture");
    expect(await textOf(page, ".blurring")).toContain("Parts of this picture were blurred from another job.");
    expect((await page.$$(".marked-part")).length).toBe(0);
  });

  test("a picture that the job does not have is said so", async () => {
    const { page } = screen;
    await open(page, `/jobs/${job(1)}/blurring/${"0".repeat(64)}`);
    await page.waitForSelector(".blurring");
    expect(await textOf(page, ".blurring")).toContain("This job has no such picture, or it cannot be shown yet.");
  });
});

describe("pictures seen before", () => {
  const starfish = photographs.find(({ name }) => name === "starfish")?.file as string;
  let first = "";
  let again = "";

  /** Files a picture of the site that came otherwise. */
  async function filed(which: 0 | 1, bytes: Uint8Array<ArrayBuffer>): Promise<string> {
    const photo = sha256(bytes);
    await client.putPhoto(photo, bytes);
    const said = { from: "Pat Lindqvist", how: "text message", when: "yesterday" };
    await client.send("POST", `/api/jobs/${job(which)}/received`, { item: "site-first-side", photo, ...said });
    for (const until = Date.now() + 60_000; Date.now() < until; await new Promise((resolve) => setTimeout(resolve, 300)))
      if ((await client.get<{ state: string }>(`/api/photos/${photo}`)).state === "read") return photo;
    throw new Error("the picture was not read");
  }
  const listed = async (): Promise<readonly SeenBefore[]> =>
    (await client.get<{ seenBefore: readonly SeenBefore[] }>(`/api/jobs/${job(1)}/seen-before`)).seenBefore;

  beforeAll(async () => {
    const bytes = new Uint8Array(readFileSync(starfish));
    first = await filed(0, bytes);
    await filed(1, bytes);
    again = await filed(1, new Uint8Array(await sharp(starfish).rotate(90).resize(500).jpeg({ quality: 50 }).toBuffer()));
    for (const until = Date.now() + 30_000; Date.now() < until; await new Promise((resolve) => setTimeout(resolve, 300)))
      if ((await listed()).some(({ photo }) => photo.sha256 === again)) return;
    throw new Error("the pair was not found");
  }, 180_000);

  /** The pair that shows these two, marked so that it can be asked for. */
  const pair = (page: Page, one: string, other: string): Promise<string> =>
    page.$$eval(
      ".pair",
      (all, [left = "", right = ""]) => {
        const found = all.find((article) => {
          const [a, b] = [...article.querySelectorAll("img")].map(({ src }) => src);
          return a?.includes(left) && b?.includes(right);
        });
        found?.setAttribute("id", `pair-${right.slice(0, 8)}`);
        return `#pair-${right.slice(0, 8)}`;
      },
      [one, other],
    );

  test("the job's page leads to them with their count", async () => {
    const { page } = screen;
    await open(page, `/jobs/${job(1)}`);
    const link = `a[href="/jobs/${job(1)}/seen-before"]`;
    const said = `Pictures seen before: ${(await listed()).length}`;
    await page.waitForFunction((at, text) => document.querySelector(at)?.textContent === text, {}, link, said);
    await page.locator(link).click();
    await page.waitForSelector(".pair img");
    expect((await page.$$(".pair")).length).toBe((await listed()).length);
    await isInOrder(screen);
  });

  test("one file in two jobs stands side by side, with both jobs and times; the other job is linked, and nobody accused", async () => {
    const { page } = screen;
    const at = await pair(page, first, first);
    const told = await textOf(page, at);
    expect(told).toContain("It is the same file, named in more than one job.");
    expect(told).toContain("Please compare: not of one job and one minute. There may be a good reason.");
    expect(told).toMatch(/This job \d+ \w+ \d{4}, \d+:\d\d/);
    expect(told).not.toMatch(/cheat|fraud|fake|false|copied|forg/i);
    const links = await page.$$eval(`${at} figcaption a`, (all) => all.map((one) => [one.getAttribute("href"), one.textContent]));
    const { title } = await client.get<{ title: string }>(`/api/jobs/${job(0)}`);
    expect(links).toEqual([[`/jobs/${job(0)}`, title]]);
    const tops = await page.$$eval(`${at} .enlarges`, (all) => all.map((one) => one.getBoundingClientRect().top));
    expect(tops[0]).toBe(tops[1]);
  });

  test("a turned one says how; a touch enlarges both at the same place, the next touch ends it, and so does the keyboard", async () => {
    const { page } = screen;
    const at = await pair(page, first, again);
    const told = await textOf(page, at);
    expect(told).toMatch(/They look alike: [0-6] of 64 marks differ\./);
    expect(told).toContain("Turned to the left by a quarter, the later one lies as the earlier.");
    const origins = () =>
      page.$$eval(`${at} .enlarges img`, (all) =>
        all.map((one) => ({ near: one.classList.contains("near"), origin: (one as HTMLElement).style.transformOrigin })),
      );
    const shares = (text: string): number[] => text.split(" ").map((one) => Number.parseFloat(one));
    const [earlier, later] = await page.$$(`${at} .enlarges`);
    await later?.scrollIntoView();
    const box = await later?.boundingBox();
    if (!earlier || !later || !box) throw new Error("the pair has no two pictures");
    // 30 % from the left and 20 % down in the later one; a quarter to the left takes that to 20 % from the left and 70 % down
    await later.click({ offset: { x: box.width * 0.3, y: box.height * 0.2 } });
    await page.waitForSelector(`${at} .near`);
    const [a, b] = await origins();
    expect([a?.near, b?.near]).toEqual([true, true]);
    for (const [n, share] of [20, 70].entries()) expect(Math.abs((shares(a?.origin ?? "")[n] ?? 0) - share)).toBeLessThan(1);
    for (const [n, share] of [30, 20].entries()) expect(Math.abs((shares(b?.origin ?? "")[n] ?? 0) - share)).toBeLessThan(1);
    await earlier.click();
    await page.waitForFunction((pairAt) => document.querySelector(`${pairAt} .near`) === null, {}, at);
    await earlier.focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector(`${at} .near`);
    expect((await origins()).map(({ origin }) => shares(origin).slice(0, 2))).toEqual([
      [50, 50],
      [50, 50],
    ]);
    await page.keyboard.press("Enter");
    await isInOrder(screen);
  });

  test("the crew is not shown the pages", async () => {
    const crew = await newScreenOnline(browser);
    await crew.page.goto(demo.links.crew);
    for (const path of ["seen-before", "site", `blurring/${first}`]) {
      await open(crew.page, `/jobs/${job(0)}/${path}`);
      await crew.page.waitForSelector("h1");
      expect(await textOf(crew.page, "h1")).toBe("There is no such page");
    }
    await crew.close();
  });
});

describe("where the site is", () => {
  test("is typed in decimal degrees; what cannot be read is refused at its field and loses nothing", async () => {
    const { page } = screen;
    await open(page, `/jobs/${job(0)}`);
    await page.waitForSelector(`a[href="/jobs/${job(0)}/site"]`);
    await page.locator(`a[href="/jobs/${job(0)}/site"]`).click();
    await page.waitForSelector(".site-place form");
    expect(await textOf(page, ".site-place")).toContain("Nobody has typed it yet.");
    await isInOrder(screen);
    for (const [name, text] of [
      ["latitude", "95.2"],
      ["longitude", "-93.6"],
      ["accuracy", "16"],
      ["reaches", "250"],
      ["how", "the county's map"],
    ] as const)
      await page.type(`input[name=${name}]`, text);
    await page.locator(".site-place .main").click();
    await answered(page, "Latitude in decimal degrees, south with a minus: The text “95.2” lies outside what can be taken here.");
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).name)).toBe("latitude");
    expect(await page.$eval("input[name=how]", (input) => (input as HTMLInputElement).value)).toBe("the county's map");
    expect(await factsIn(0, "site-located")).toEqual([]);
    await isInOrder(screen);
    await type(page, "input[name=latitude]", "41.508");
    await page.locator(".site-place .main").click();
    await page.waitForFunction(() => /^Entered as entry \d+\.$/.test(document.querySelector(".answer")?.textContent ?? ""));
    // 16 ft is 4.8768 m, rounded up to the millimetre; 250 ft is 76.2 m
    expect(await factsIn(0, "site-located")).toEqual([
      {
        kind: "site-located",
        what: { how: "the county's map", reaches: 76_200_000 },
        where: { latitude: 415_080_000, longitude: -936_000_000, accuracy: 4_877 },
      },
    ]);
    await open(page, `/jobs/${job(0)}/site`);
    await page.waitForSelector(".site-place form");
    expect(await textOf(page, ".site-place")).toContain("Last entered: 41.508000, -93.600000. the county's map");
  });
});
