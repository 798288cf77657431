import { createHash } from "node:crypto";
import { mkdir, mkdtemp, readFile, rm, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, ElementHandle, Page } from "puppeteer";
import sharp, { type Sharp } from "sharp";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { type ForPhone, forPhone } from "#infra/demo/index.ts";
import { draftsOn } from "../helpers/crew-phone.ts";
import { axe, crowded, largePhone, newScreen, openBrowser, phone, type Screen, targets, textOf } from "../helpers/screen.ts";

/** Pictures on the crew's phone, with real photographs: the sample of the package exif, cut and blurred here. */
let company: ForPhone;
let browser: Browser;
let crew: Screen;
let office: Screen;
let folder: string;
/** A machine that does much else at once takes its time. */
const PATIENCE_MS = 90_000;
const TRIES = 200;
const LONG_MS = 300_000;
const shots = fileURLToPath(new URL("../../out/screens", import.meta.url));

interface Made {
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
}

async function made(name: string, picture: Sharp): Promise<Made> {
  const path = join(folder, name);
  await picture.jpeg({ quality: 88 }).toFile(path);
  const bytes = await readFile(path);
  return { path, sha256: createHash("sha256").update(bytes).digest("hex"), bytes: bytes.length };
}

const city = fileURLToPath(import.meta.resolve("exif/test/sony-alpha-6000.jpg"));
let sharpOne: Made;
let blurredOne: Made;
let burst: readonly Made[];
/** Whole minutes, an hour ago: when the pictures of the burst were taken. */
const firstTaken = Math.floor(Date.now() / 60_000 - 60) * 60_000;

beforeAll(async () => {
  await mkdir(shots, { recursive: true });
  folder = await mkdtemp(join(tmpdir(), "asburied-pictures-"));
  // as large as a phone's: 12 megapixels
  sharpOne = await made("sharp.jpg", sharp(city).resize({ width: 4000, height: 3000, fit: "cover" }));
  blurredOne = await made("blurred.jpg", sharp(city).resize({ width: 4000, height: 3000, fit: "cover" }).blur(20));
  burst = await Promise.all(
    [0, 1, 2, 3, 4, 5].map((n) => made(`IMG_${n}.jpg`, sharp(city).extract({ left: n * 900, top: 2000, width: 1500, height: 2000 }))),
  );
  for (const [n, { path }] of burst.entries()) {
    const taken = new Date(firstTaken + n * 60_000);
    await utimes(path, taken, taken);
  }
  company = await forPhone(inject("edge"), inject("operatorKey"));
  browser = await openBrowser();
  crew = await newScreen(browser);
  office = await newScreen(browser);
  crew.page.setDefaultTimeout(PATIENCE_MS);
  await office.page.goto(await company.officeLink());
  await signIn(crew.page);
}, 300_000);
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

const at = (path: string): string => new URL(path, inject("edge")).href;
const job = (): string => company.jobs.notYet;
const picture = "falls-running";

async function signIn(page: Page): Promise<void> {
  await page.goto(await company.crewLink());
  await page.waitForSelector(".jobs li");
  await page.goto(at("/phone/person"));
  await page.waitForSelector(".choices button");
  await page.locator(".choices button").click();
  await page.waitForSelector(".jobs li");
}

async function open(page: Page, ...inside: string[]): Promise<void> {
  await page.goto(at(["/jobs", job(), ...inside].join("/")));
  await page.waitForSelector(".files input");
}

/** Chooses files with the input of the target that has these words. */
async function choose(page: Page, words: string, ...paths: string[]): Promise<void> {
  const label = await page.waitForSelector(`label.files::-p-text(${words})`);
  const input = await label?.$("input");
  await (input as ElementHandle<HTMLInputElement>).uploadFile(...paths);
}

const press = async (page: Page, words: string): Promise<void> => {
  await (await page.waitForSelector(`main button::-p-text(${words})`))?.click();
};

const says = (page: Page, words: string): Promise<unknown> =>
  page.waitForFunction((text) => document.querySelector("main")?.textContent?.includes(text), {}, words);

interface Entry {
  readonly kind: string;
  readonly id: string;
  readonly what: Readonly<Record<string, unknown>>;
  readonly where?: Readonly<Record<string, unknown>>;
}

interface Sealed {
  readonly envelope: { readonly kind: string; readonly id: string };
  readonly body: Readonly<Record<"what" | "where", { readonly content: Readonly<Record<string, unknown>> } | undefined>>;
}

/** The ledger at the edge, once it holds the pictures of these photos. */
async function ledgerWith(...photos: readonly string[]): Promise<readonly Entry[]> {
  for (let tried = 0; ; tried += 1) {
    const { entries } = await office.page.evaluate(
      async (path) => (await fetch(path)).json() as Promise<{ entries: Sealed[] }>,
      `/api/jobs/${job()}/ledger`,
    );
    const all = entries.map(({ envelope: { kind, id }, body: { what, where } }): Entry => {
      const place = where === undefined ? {} : { where: where.content };
      return { kind, id, what: what?.content ?? {}, ...place };
    });
    const there = new Set(all.filter(({ kind }) => kind === "picture-taken").map(({ what }) => what.photo));
    if (photos.every((one) => there.has(one))) return all;
    if (tried > TRIES) throw new Error("the edge did not get the pictures");
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
}

/** SHA-256 of the bytes that the edge gives back for a photo, once it has them. */
async function hashAtEdge(sha256: string): Promise<string> {
  for (let tried = 0; ; tried += 1) {
    const got = await office.page.evaluate(async (path) => {
      const response = await fetch(path);
      if (!response.ok) return undefined;
      const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", await response.arrayBuffer()));
      return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
    }, `/api/photos/${sha256}/original`);
    if (got !== undefined) return got;
    if (tried > TRIES) throw new Error("the edge did not get the bytes");
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
}

/** What every screen of the phone keeps, in both sizes. */
async function looksRight(page: Page, name: string): Promise<void> {
  for (const size of [phone, largePhone]) {
    await page.setViewport(size);
    await page.screenshot({ path: join(shots, `picture-${name}-${size.width}.png`) });
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wide, `${name} at ${size.width}`).toBe(0);
    const all = (await targets(page)).filter(({ text }) => text !== "");
    expect(all.filter(({ width, height }) => Math.min(width, height) < 48).map(({ text }) => text)).toEqual([]);
    const shutters = await page.$$eval(".shutter", (each) => each.map((one) => one.getBoundingClientRect().height));
    expect(shutters.filter((height) => height < 72)).toEqual([]);
    // at its end nothing lies under what sticks to the screen's edge
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    expect(crowded(await targets(page), 0), `${name} at ${size.width}`).toEqual([]);
    await page.evaluate(() => scrollTo(0, 0));
  }
  await page.setViewport(phone);
  expect((await axe(page)).violations).toEqual([]);
}

interface Choosing {
  chosen: File;
  choosing: number;
  saying: number;
}

/** In the page: when a file was chosen, and when the words stood there. */
function watchChoosing(): void {
  const watched = globalThis as unknown as Choosing;
  const heard = ({ target }: Event): void => {
    const file = (target as HTMLInputElement).files?.[0];
    if (file === undefined) return;
    watched.chosen = file;
    watched.choosing = performance.now();
  };
  document.addEventListener("change", heard, true);
  new MutationObserver(() => {
    if (document.querySelector(".too-poor") !== null) watched.saying ??= performance.now();
    // the words may come into an element that stands there already
  }).observe(document.body, { childList: true, subtree: true, attributes: true });
}

/** To judge a photo may cost so many times its bare opening. */
const OPENINGS = 6;

describe("one picture", () => {
  test(
    "the place is asked for once with its reason, and goes along with its accuracy when it is allowed",
    async () => {
      const { page } = crew;
      await page.browserContext().overridePermissions(inject("edge"), ["geolocation"]);
      await page.setGeolocation({ latitude: 40.25, longitude: -75.5, accuracy: 8 });
      await open(page, "take", picture);
      await says(page, "Shall the place go along");
      await looksRight(page, "shutter");
      await press(page, "Yes, with the place");
      await says(page, "The place goes along, good to 30 feet.");
    },
    LONG_MS,
  );

  test(
    "a blurred one is told within a second of choosing, large, before it is entered",
    async () => {
      const { page } = crew;
      await page.evaluate(watchChoosing);
      await choose(page, "Take the picture", blurredOne.path);
      await page.waitForSelector(".too-poor");
      const { told, decoded } = await page.evaluate(async () => {
        const { chosen, choosing, saying } = globalThis as unknown as Choosing;
        const times: number[] = [];
        for (let n = 0; n < 3; n += 1) {
          const began = performance.now();
          (await createImageBitmap(chosen)).close();
          times.push(performance.now() - began);
        }
        return { told: saying - choosing, decoded: times.sort((a, b) => a - b)[1] ?? 0 };
      });
      process.stdout.write(
        `blurred photo of 12 megapixels: told ${Math.round(told)} ms after choosing; opening it alone took ${Math.round(decoded)} ms\n`,
      );
      // a second where opening the photo alone takes a sixth of one; a machine that is slower, or busy, is as much slower at both
      expect(told).toBeLessThan(Math.max(1000, OPENINGS * decoded));
      expect(await textOf(page, ".too-poor")).toBe("Too blurred to read: take it again");
      const size = await page.$eval(".too-poor", (one) => Number.parseFloat(getComputedStyle(one).fontSize));
      expect(size).toBeGreaterThan(28);
      await page.waitForSelector("img.small-photo");
      await looksRight(page, "blurred");
    },
    LONG_MS,
  );

  test(
    "taken again: both reach the edge as they were, the first one replaced by the second",
    async () => {
      const { page } = crew;
      await choose(page, "Take it again", sharpOne.path);
      await says(page, "Sharp enough to read.");
      await page.waitForSelector("img.small-photo");
      await page.type("main .typed input", "from the bank");
      await looksRight(page, "sharp");
      await press(page, "Keep it");
      await says(page, "Kept.");
      const entries = await ledgerWith(blurredOne.sha256, sharpOne.sha256);
      const of = ({ sha256 }: Made) => entries.filter(({ what }) => what.photo === sha256 && what.item === picture);
      expect(of(blurredOne)).toHaveLength(1);
      expect(of(blurredOne)[0]?.what).toMatchObject({ judged: "unreadable", bytes: blurredOne.bytes, type: "image/jpeg" });
      expect(of(sharpOne)[0]?.what).toMatchObject({ judged: "readable", bytes: sharpOne.bytes, caption: "from the bank" });
      expect(of(sharpOne)[0]?.where).toMatchObject({ latitude: 402_500_000, longitude: -755_000_000, accuracy: 8000 });
      expect(Number(of(sharpOne)[0]?.where?.age)).toBeLessThan(120_000);
      const [first] = of(blurredOne);
      await expect
        .poll(
          async () => {
            const now = await ledgerWith(sharpOne.sha256);
            return now.filter(({ what }) => what.withdrawn === true && (what.entry as { id: string }).id === first?.id).length;
          },
          { timeout: PATIENCE_MS },
        )
        .toBe(1);
      for (const one of [blurredOne, sharpOne]) expect(await hashAtEdge(one.sha256)).toBe(one.sha256);
    },
    LONG_MS,
  );

  test(
    "a phone that closed the app while the camera was open starts there again and says that nothing was received",
    async () => {
      const { page } = crew;
      await open(page, "take", picture);
      const [chooser] = await Promise.all([page.waitForFileChooser(), page.locator(".shutter-row .shutter input").click()]);
      expect(chooser.isMultiple()).toBe(false);
      // a phone takes longer to open its camera than the store to write where it was opened
      await expect.poll(() => draftsOn(page)).toContain("camera");
      await page.goto(at("/"));
      await says(page, "its photo was not received");
      expect(new URL(page.url()).pathname).toBe(`/jobs/${job()}/take/${picture}`);
      await looksRight(page, "not-received");
      await page.goto(at("/"));
      await page.waitForSelector(".jobs li");
      expect(new URL(page.url()).pathname).toBe("/");
    },
    LONG_MS,
  );

  test(
    "what no browser opens is taken all the same, and said to be not judged",
    async () => {
      const { page } = crew;
      const path = join(folder, "odd.heic");
      const bytes = Buffer.concat([Buffer.from("000000186674797068656963000000006d69663168656963", "hex"), Buffer.alloc(4000, 7)]);
      await writeFile(path, bytes);
      await open(page, "take", "finished-picture");
      await choose(page, "Take the picture", path);
      await says(page, "This phone cannot judge it. It is kept as it is.");
      await press(page, "Keep it");
      await says(page, "Kept.");
      const sha256 = createHash("sha256").update(bytes).digest("hex");
      const entry = (await ledgerWith(sha256)).find(({ what }) => what.photo === sha256);
      expect(entry?.what).toMatchObject({ type: "image/heic", bytes: bytes.length });
      expect(entry?.what).not.toHaveProperty("judged");
    },
    LONG_MS,
  );
});

describe("pictures taken together", () => {
  test(
    "six are chosen in one go and put to six places, one press each; their times stay, their bytes arrive",
    async () => {
      const { page } = crew;
      await open(page, "burst");
      await looksRight(page, "burst-empty");
      const began = performance.now();
      await choose(page, "Choose the pictures", ...burst.map(({ path }) => path));
      await page.waitForFunction(
        () => document.querySelector(".in-hand b")?.textContent?.startsWith("1 of 6,") && !document.body.textContent?.includes("Keeping"),
      );
      process.stdout.write(`a burst of six: kept and judged after ${Math.round(performance.now() - began)} ms\n`);
      await page.waitForSelector(".in-hand img.small-photo");
      await looksRight(page, "burst");
      for (let left = 6; left > 0; left -= 1) {
        await page.waitForFunction((many) => document.querySelector(".in-hand b")?.textContent?.startsWith(`1 of ${many},`), {}, left);
        await (await page.waitForSelector("main > .choices button"))?.click();
        await page.waitForFunction((many) => !document.querySelector(".in-hand b")?.textContent?.includes(`of ${many},`), {}, left);
      }
      await says(page, "Put to: ");
      const entries = await ledgerWith(...burst.map(({ sha256 }) => sha256));
      const own = burst.map(({ sha256 }) => entries.find(({ what }) => what.photo === sha256)?.what);
      expect(own.map((what) => what?.taken)).toEqual(burst.map((_, n) => firstTaken + n * 60_000));
      expect(new Set(own.map((what) => `${what?.item} ${what?.tag}`)).size).toBe(6);
      for (const { sha256 } of burst) expect(await hashAtEdge(sha256)).toBe(sha256);
    },
    LONG_MS,
  );

  test(
    "one that is not for this job is taken out after a second word, and does not count",
    async () => {
      const { page } = crew;
      const stray = await made("stray.jpg", sharp(city).extract({ left: 100, top: 2400, width: 1200, height: 900 }));
      const other = await made("other.jpg", sharp(city).extract({ left: 3000, top: 2400, width: 1200, height: 900 }));
      await open(page, "burst");
      await choose(page, "Choose the pictures", stray.path, other.path);
      await says(page, "1 of 2,");
      await page.waitForFunction(() => !document.body.textContent?.includes("Keeping"));
      await page.locator("main details:last-of-type summary").click();
      await page.waitForSelector(".thumbs img.small-photo");
      await looksRight(page, "burst-all");
      await press(page, "Not for this job");
      await press(page, "Yes, take it out");
      await says(page, "1 of 1,");
      await page.reload();
      await says(page, "1 of 1,");
      await press(page, "Not for this job");
      await press(page, "Yes, take it out");
      await says(page, "Take them with the phone's own camera");
    },
    LONG_MS,
  );
});

describe("the right job", () => {
  test(
    "is asked once a day on the job's page, with its street and how far this phone is from the site",
    async () => {
      const { page } = crew;
      // 0.05 degrees south of where this phone is: 2π · 6371.0088 km / 360 / 20 = 5.56 km, 3.45 miles
      const answered = await office.page.evaluate(async (path) => {
        const headers = { "content-type": "application/json", "x-asburied": "1" };
        const place = { latitude: 402_000_000, longitude: -755_000_000, accuracy: 5000, how: "from a map" };
        return (await fetch(path, { method: "POST", headers, body: JSON.stringify(place) })).status;
      }, `/api/jobs/${job()}/site`);
      expect(answered).toBeLessThan(300);
      // the phone reads the job anew when it is looked at
      await page.goto(at("/"));
      await page.waitForSelector(".jobs li");
      await page.goto(at(`/jobs/${job()}`));
      await page.waitForSelector(".right-job");
      await says(page, "6 Example Row, Nowhere County");
      await says(page, "You are 3.5 miles from this site.");
      await looksRight(page, "right-job");
      await press(page, "Yes, this one");
      await page.waitForFunction(() => document.querySelector(".right-job") === null);
      await page.reload();
      await page.waitForSelector(".next");
      await new Promise((resolve) => setTimeout(resolve, 500));
      expect(await page.$(".right-job")).toBeNull();
    },
    LONG_MS,
  );
});

describe("the picture of a tape, the place refused, in Spanish", () => {
  let other: Screen;
  beforeAll(async () => {
    other = await newScreen(browser);
    other.page.setDefaultTimeout(PATIENCE_MS);
    await other.page.browserContext().overridePermissions(inject("edge"), []);
    await other.page.evaluateOnNewDocument(() => {
      const own = globalThis.fetch;
      globalThis.fetch = async (...asked: Parameters<typeof fetch>) => {
        const answer = await own(...asked);
        if (!String(asked[0]).endsWith("/api/session") || !answer.ok) return answer;
        return Response.json({ ...((await answer.json()) as object), language: "es" });
      };
    });
    await signIn(other.page);
  });
  afterAll(() => other.close());

  test(
    "a refusal is respected, the picture goes without a place and is not asked for again that day",
    async () => {
      const { page } = other;
      await open(page, "tape-picture", "outlet-to-pump");
      await says(page, "¿Que el lugar acompañe");
      await looksRight(page, "tape-spanish");
      await press(page, "Sí, con el lugar");
      await says(page, "Hoy sin el lugar.");
      const tape = await made("tape.jpg", sharp(city).extract({ left: 2000, top: 2500, width: 1600, height: 1200 }));
      await choose(page, "Tomar la foto", tape.path);
      await press(page, "Guardarla");
      await says(page, "Guardada.");
      const entry = (await ledgerWith(tape.sha256)).find(({ what }) => what.photo === tape.sha256);
      expect(entry?.what).toMatchObject({ item: "outlet-to-pump" });
      expect(entry?.where).toBeUndefined();
      await open(page, "take", picture);
      await says(page, "Hoy sin el lugar.");
      await looksRight(page, "so-far-spanish");
    },
    LONG_MS,
  );
});

test(
  "nothing troubled the pages, and no policy was broken",
  () => {
    expect(crew.troubles).toEqual([]);
  },
  LONG_MS,
);
