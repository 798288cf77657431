import { createHash } from "node:crypto";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, ElementHandle, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { cardText } from "#core/job/index.ts";
import { type ForPhone, forPhone } from "#infra/demo/index.ts";
import { digest } from "#infra/node-digest.ts";
import { cardScene, type FourTexts } from "../helpers/card-scene.ts";
import { draftsOn } from "../helpers/crew-phone.ts";
import { axe, crowded, newScreen, openBrowser, phone, type Screen, targets, textOf } from "../helpers/screen.ts";

/** Cards on the crew's phone, in rendered photos of which every corner is known. */
let company: ForPhone;
let browser: Browser;
let crew: Screen;
/** A machine that does much else at once takes its time. */
const PATIENCE_MS = 60_000;

const at = (path: string): string => new URL(path, inject("edge")).href;

const shots = fileURLToPath(new URL("../../out/screens", import.meta.url));
let folder: string;

beforeAll(async () => {
  await mkdir(shots, { recursive: true });
  folder = await mkdtemp(join(tmpdir(), "asburied-cards-"));
  company = await forPhone(inject("edge"), inject("operatorKey"));
  browser = await openBrowser();
  crew = await newScreen(browser);
  crew.page.setDefaultTimeout(PATIENCE_MS);
  await crew.page.goto(await company.crewLink());
  await crew.page.waitForFunction(() => document.querySelectorAll(".jobs li").length === 3);
}, 300_000);
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

interface Corner {
  readonly x: number;
  readonly y: number;
  readonly u: number;
}
interface Looked {
  readonly is: string;
  readonly width: number;
  readonly height: number;
  readonly codes: readonly { readonly text: string; readonly corners: readonly Corner[] }[];
}

/** The script that looks for cards, as the list of the app's files names it. */
const finder = async (): Promise<string> => {
  const [name = ""] = /assets\/find-worker-[\w-]+\.js/.exec(await (await fetch(at("/sw.js"))).text()) ?? [];
  return `/${name}`;
};

/** Has it look at a photo, as the pages do. */
const looked = (page: Page, address: string, jpeg: Buffer): Promise<Looked> =>
  page.evaluate(
    async (script, base64) => {
      const { trustedTypes } = globalThis as unknown as {
        trustedTypes: { createPolicy(name: string, rules: object): { createScriptURL(url: string): string } };
      };
      const policy = trustedTypes.createPolicy("test", { createScriptURL: (url: string) => url });
      const worker = new Worker(policy.createScriptURL(script));
      const photo = new Blob([Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))], { type: "image/jpeg" });
      const answer = new Promise<Looked>((resolve) => {
        worker.onmessage = ({ data }) => resolve(data.cards);
        worker.onerror = ({ message }) => resolve({ is: message, width: 0, height: 0, codes: [] });
      });
      worker.postMessage({ number: 1, photo });
      return answer.finally(() => worker.terminate());
    },
    address,
    jpeg.toString("base64"),
  );

const codes = (rest: string): FourTexts => [`AB1A${rest}`, `AB1B${rest}`, `AB1C${rest}`, `AB1D${rest}`];

describe("finding", () => {
  test("every corner of a card is found to a fraction of a pixel, and again without signal, by what the phone keeps", async () => {
    const { page } = crew;
    const texts = codes("7F3K0042A01K9QXY");
    const { jpeg, truth } = await cardScene({ cards: [texts], width: 1800, height: 1350, tilt: 30, distance: 0.7, seed: 3 });
    const script = await finder();
    const seen = await looked(page, script, jpeg);
    expect(seen).toMatchObject({ is: "looked", width: 1800, height: 1350 });
    expect(seen.codes.map(({ text }) => text).sort()).toEqual([...texts].sort());
    for (const { text, corners } of seen.codes)
      for (const [i, { x, y, u }] of corners.entries()) {
        const [a, b] = truth.get(text)?.[i] ?? [Number.NaN, Number.NaN];
        // the lower right one has no pattern of its own
        expect(u).toBeLessThan(i === 2 ? 1 : 0.2);
        expect(Math.hypot(x - a, y - b), `${text} ${i}`).toBeLessThan(Math.max(0.15, 3 * u));
      }
    await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active !== null);
    await page.reload();
    await page.setOfflineMode(true);
    const without = await looked(page, script, jpeg).finally(() => page.setOfflineMode(false));
    expect(without).toEqual(seen);
  });

  test("a photo without a card says so", async () => {
    const { jpeg } = await cardScene({ cards: [], width: 800, height: 600, tilt: 30, distance: 0.7, seed: 4 });
    expect(await looked(crew.page, await finder(), jpeg)).toEqual({ is: "looked", width: 800, height: 600, codes: [] });
  });

  test("the page itself may run no machine code, and the script that finds cards nothing else", async () => {
    const page = await fetch(at("/"));
    expect(page.headers.get("content-security-policy")).toContain("script-src 'self';");
    expect(page.headers.get("content-security-policy")).not.toContain("wasm");
    const script = await fetch(at(await finder()));
    expect(script.headers.get("content-security-policy")).toBe(
      "default-src 'none'; script-src 'wasm-unsafe-eval'; connect-src 'self'; require-trusted-types-for 'script'",
    );
    expect(script.headers.get("cache-control")).toContain("immutable");
  });
});

interface Taken {
  readonly path: string;
  readonly sha256: string;
}

let count = 0;
let first: Taken;

/** A photo of cards of this company, one for each job and step that is named. */
async function taken(...cards: readonly { readonly job: string; readonly step?: string }[]): Promise<Taken> {
  const own = await crew.page.evaluate(async () => ((await (await fetch("/api/session")).json()) as { company: string }).company);
  const texts = await Promise.all(
    cards.map(async (card) => {
      const four = ([0, 1, 2, 3] as const).map(async (place) => {
        const text = await cardText(digest, { company: own, ...card }, { paper: "letter", place });
        if (!text.ok) throw new Error(text.refusal.code);
        return text.value;
      });
      return (await Promise.all(four)) as unknown as FourTexts;
    }),
  );
  count += 1;
  const { jpeg } = await cardScene({ cards: texts, width: 800, height: 600, tilt: 20, distance: 0.55, seed: 10 * count });
  const path = join(folder, `IMG_${count}.jpg`);
  await writeFile(path, jpeg);
  return { path, sha256: createHash("sha256").update(jpeg).digest("hex") };
}

async function choose(words: string, ...photos: readonly Taken[]): Promise<void> {
  const label = await crew.page.waitForSelector(`label.files::-p-text(${words})`);
  const input = (await label?.$("input")) as ElementHandle<HTMLInputElement>;
  await input.uploadFile(...photos.map(({ path }) => path));
}

async function says(words: string): Promise<void> {
  const { page } = crew;
  const there = page.waitForFunction((text) => document.querySelector("main")?.textContent?.includes(text), { timeout: 30_000 }, words);
  await there.catch(async () => expect(await textOf(page, "main")).toContain(words));
}
const press = (words: string): Promise<void> => crew.page.locator(`main button::-p-text(${words})`).click();

/** Where the pictures of these photos stand in a job's ledger at the edge, once it has them. */
async function itemsOf(job: string, ...photos: readonly Taken[]): Promise<readonly unknown[]> {
  for (let tried = 0; tried < 200; tried += 1) {
    const items = await crew.page.evaluate(
      async (path, all) => {
        const { entries } = (await (await fetch(path)).json()) as {
          entries: { envelope: { kind: string }; body: { what?: { content: { photo?: string; item?: string } } } }[];
        };
        const pictures = entries.filter(({ envelope }) => envelope.kind === "picture-taken").map(({ body }) => body.what?.content);
        return all.flatMap((sha256) => pictures.filter((what) => what?.photo === sha256).map((what) => what?.item));
      },
      `/api/jobs/${job}/ledger`,
      photos.map(({ sha256 }) => sha256),
    );
    if (items.length >= photos.length) return items;
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  throw new Error("the edge did not get the pictures");
}

/** What every screen of the phone keeps. */
async function looksRight(name: string): Promise<void> {
  const { page } = crew;
  await page.screenshot({ path: join(shots, `cards-${name}-${phone.width}.png`), fullPage: true });
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide, name).toBe(0);
  await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
  const all = (await targets(page)).filter(({ text }) => text !== "");
  expect(all.filter(({ width, height }) => Math.min(width, height) < 48).map(({ text }) => text)).toEqual([]);
  expect(crowded(all, 0), name).toEqual([]);
  await page.evaluate(() => scrollTo(0, 0));
}

describe("filing", () => {
  test("before it is said who enters, nothing goes by itself: its card's place comes first", async () => {
    const { page } = crew;
    const job = company.jobs.notYet;
    first = await taken({ job, step: "walk-through" });
    await page.goto(at(`/jobs/${job}/burst`));
    await choose("Choose the pictures", first);
    await says("By the card in it");
    expect(await textOf(page, ".choices button")).toContain("walk-through");
    await looksRight("first");
    expect((await axe(page)).violations).toEqual([]);
    await page.goto(at("/phone/person"));
    await page.locator(".choices button").click();
    await page.waitForSelector(".jobs li");
  });

  test("without signal, a photo whose card names a step with one open place goes there and says so; the next one with it asks", async () => {
    const { page } = crew;
    const job = company.jobs.notYet;
    const [second, several] = [
      await taken({ job, step: "walk-through" }),
      await taken({ job, step: "walk-through" }, { job, step: "rock-and-foam" }),
    ];
    await page.setOfflineMode(true);
    // two pages of one phone: it goes there once
    const other = await page.browserContext().newPage();
    await Promise.all([other, page].map((one) => one.goto(at(`/jobs/${job}/burst`))));
    await says("Take them with the phone's own camera");
    await expect.poll(() => draftsOn(page), { timeout: PATIENCE_MS }).toContain(`put-by-card ${job}`);
    await other.close();
    await page.reload();
    await says("Put by their card: 1");
    await choose("Choose", second, several);
    await says("1 of 2,");
    await says("By the card in it");
    await says("It has a picture already; this one is added to it.");
    await page.locator(".put-by-card summary").click();
    await looksRight("put");
    await press("Finished");
    await says("Put to: Finished.");
    await says("Several cards are in it. By which one?");
    expect(await page.$$eval("h2 + .choices .step-name b", (all) => all.slice(0, 2).map((one) => one.textContent))).toEqual([
      "Finished",
      "Stone nearest the basin and what carries it",
    ]);
    await press("Not for this job");
    await press("Yes, take it out");
    await says("Take them with the phone's own camera");
    await page.setOfflineMode(false);
    await page.reload();
    await says("Put by their card: 1");
    expect(await itemsOf(job, first, second)).toEqual(["finished-picture", "finished-picture"]);
  });

  test("on the page of another step it asks: there it goes with a word, and what belongs here stays", async () => {
    const { page } = crew;
    const job = company.jobs.notYet;
    const [there, here] = [await taken({ job, step: "rock-and-foam" }), await taken({ job, step: "walk-through" })];
    await page.goto(at(`/jobs/${job}/take/falls-running`));
    await choose("Take the picture", there);
    await says("The card in it is for another step: Rock and foam.");
    await looksRight("other-step");
    await press("Put it there");
    await says("Put to: Stone nearest the basin and what carries it.");
    await choose("Take the picture", here);
    await says("The card in it is for another step: Clean-up and walk-through.");
    await press("It belongs here");
    await press("Keep it");
    await says("Kept.");
    expect(await itemsOf(job, there, here)).toEqual(["stone-nearest-basin", "falls-running"]);
  });

  test("a card of another job asks, and on a word the photo waits with that job's pictures", async () => {
    const { page } = crew;
    const photo = await taken({ job: company.jobs.clear });
    await page.goto(at(`/jobs/${company.jobs.notYet}/burst`));
    await choose("Choose", photo);
    await says("The card in it is of another job: Corner fall.");
    await looksRight("other-job");
    expect((await axe(page)).violations).toEqual([]);
    await press("Put it there");
    await says("It waits with the pictures of:");
    await page.locator(".put-to a").click();
    await says("1 of 1,");
    await says("The card in it is of this job.");
    await page.locator("main .choices button").click();
    await says("Put to: ");
    expect(await itemsOf(company.jobs.clear, photo)).toHaveLength(1);
  });

  test("nothing troubled the pages, and no policy was broken", () => {
    expect(crew.troubles.filter((trouble) => !trouble.includes("ERR_INTERNET_DISCONNECTED"))).toEqual([]);
  });
});
