import { randomBytes } from "node:crypto";
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { ElementHandle, Page } from "puppeteer";
import sharp, { type SharpOptions } from "sharp";
import { type Company, sha256, until } from "./edge.ts";

/** How a test plays a crew's phone, and what it finds in the phone's own store and at the edge. */

export interface Kept {
  readonly entries: readonly {
    readonly id: string;
    readonly run: number;
    readonly standing: string;
    readonly problem?: { code: string };
  }[];
  readonly photos: readonly { readonly sha256: string; readonly standing: string; readonly loose?: boolean }[];
  /** Hashes of the photos whose bytes are here. */
  readonly bytes: readonly string[];
  /** Whether the reserve is held. */
  readonly reserve: boolean;
  readonly skew?: number;
}

/** The places of what was begun on this phone and not entered yet. */
export const draftsOn = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open("asburied");
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const places = await new Promise<readonly IDBValidKey[]>((resolve, reject) => {
      const asking = database.transaction("drafts").objectStore("drafts").getAllKeys();
      asking.onsuccess = () => resolve(asking.result);
      asking.onerror = () => reject(asking.error);
    });
    database.close();
    return places.map(String);
  });

/** What the phone's store holds, read beside the app. */
export const keptOn = (page: Page): Promise<Kept> =>
  page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open("asburied");
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const transaction = database.transaction(["entries", "photos", "bytes", "about", "reserve"]);
    const got = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const [entries, photos, bytes, skew, reserve] = await Promise.all([
      got(transaction.objectStore("entries").getAll()),
      got(transaction.objectStore("photos").getAll()),
      got(transaction.objectStore("bytes").getAllKeys()),
      got(transaction.objectStore("about").get("skew")),
      got(transaction.objectStore("reserve").count()),
    ]);
    database.close();
    return { entries, photos, bytes: bytes.map(String), reserve: reserve > 0, ...(skew === undefined ? {} : { skew: skew.milliseconds }) };
  });

const waits = ({ standing }: { readonly standing: string }): boolean => standing === "not sent";
export const waiting = ({ entries, photos }: Kept): number => [...entries, ...photos].filter(waits).length;

/** Until nothing waits on the phone any more. */
export const allSent = (page: Page, limit = 90_000): Promise<Kept> =>
  until(
    () => keptOn(page),
    (kept) => waiting(kept) === 0,
    limit,
  );

/** A sign-in link of one person of a company, at the address where the phone finds the edge. */
export async function linkFor({ owner }: Company, person: string, address: string): Promise<string> {
  const { link } = (await owner.post(`/api/people/${person}/links`)).body;
  return new URL(new URL(link, address).pathname, address).href;
}

/** First visit: signed in, the person of the day chosen, the app kept for a start without signal. */
export async function firstVisit(page: Page, link: string): Promise<void> {
  await page.goto(link);
  await page.waitForSelector(".jobs li");
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active?.state === "activated");
  await page.goto(new URL("/phone/person", link).href);
  await page.waitForSelector("main .choices button");
  await page.locator("main .choices button").click();
  await page.waitForSelector(".jobs li");
}

const pathIs = (page: Page, not: string): Promise<unknown> => page.waitForFunction((path) => location.pathname !== path, {}, not);

/** One answer, tapped. Returns when the phone has gone on: it has said that it keeps it. */
export async function answer(page: Page, at: string, job: string, item: string, choice = 0): Promise<void> {
  const path = `/jobs/${job}/take/${item}`;
  await page.goto(new URL(path, at).href);
  await page.waitForSelector("main .choices button");
  const buttons = await page.$$("main .choices button");
  await buttons[choice]?.click();
  await pathIs(page, path);
}

/** One reading, typed. */
export async function read(page: Page, at: string, job: string, item: string, typed: string): Promise<void> {
  const path = `/jobs/${job}/take/${item}`;
  await page.goto(new URL(path, at).href);
  await page.waitForSelector("main .typed input[type=text]");
  // a face that comes later moves what is pressed
  await page.evaluate(async () => void (await document.fonts.ready));
  await page.type("main .typed input[type=text]", typed);
  await page.locator("main .enter-reading").click();
  // what comes next by itself may be a reading too
  await page.waitForFunction((was) => location.pathname !== was || document.querySelector("main .enter-reading") === null, {}, path);
}

export interface Made {
  readonly path: string;
  readonly sha256: string;
}

/** JPEGs of their own, all of one picture of about 25 kB: what follows the end of a JPEG's picture is read by nobody. */
export async function jpegs(folder: string, count: number, more = 16): Promise<readonly Made[]> {
  const noise = { create: { width: 220, height: 160, channels: 3, background: "#888", noise: { type: "gaussian", mean: 128, sigma: 40 } } };
  const picture = await sharp(noise as SharpOptions)
    .jpeg({ quality: 90 })
    .toBuffer();
  return Promise.all(
    Array.from({ length: count }, async () => {
      const bytes = Buffer.concat([picture, randomBytes(more)]);
      const name = sha256(bytes);
      const path = join(folder, `${name.slice(0, 16)}.jpg`);
      await writeFile(path, bytes);
      return { path, sha256: name };
    }),
  );
}

/** Chooses files on the page of pictures taken together, and waits until the phone has said that it keeps them, or that it cannot. */
export async function chooseTogether(page: Page, at: string, job: string, files: readonly Made[]): Promise<void> {
  await page.goto(new URL(`/jobs/${job}/burst`, at).href);
  const input = (await page.waitForSelector("main input[type=file][multiple]")) as ElementHandle<HTMLInputElement>;
  const before = (await keptOn(page)).photos.length;
  await input.uploadFile(...files.map(({ path }) => path));
  await until(
    async () => (await keptOn(page)).photos.length,
    (kept) => kept > before,
  );
  await page.waitForFunction(() => !document.querySelector("main")?.textContent?.includes("Keeping"), { timeout: 180_000 });
}

/** Puts the first photo of those taken together to the first picture that is asked for. */
export async function putFirst(page: Page): Promise<void> {
  const button = await page.waitForSelector("main > .choices button");
  const before = (await keptOn(page)).entries.length;
  await button?.click();
  await until(
    async () => (await keptOn(page)).entries.length,
    (length) => length > before,
  );
}

/** How often each entry of people stands in the job's ledger, by its id; what the edge itself says of photos is left out. */
export async function inLedger({ office }: Company, job: string): Promise<ReadonlyMap<string, number>> {
  const { entries } = (await office.get(`/api/jobs/${job}/ledger`)).body as { entries: { envelope: { id: string; kind: string } }[] };
  const counts = new Map<string, number>();
  for (const { envelope } of entries) if (envelope.kind !== "picture-read") counts.set(envelope.id, (counts.get(envelope.id) ?? 0) + 1);
  return counts;
}

/** Those of these photos whose bytes the edge does not give back with their own hash. */
export async function notAtEdge({ office }: Company, photos: readonly string[]): Promise<readonly string[]> {
  const missing: string[] = [];
  for (let i = 0; i < photos.length; i += 8)
    await Promise.all(
      photos.slice(i, i + 8).map(async (name) => {
        const { status, bytes } = await office.get(`/api/photos/${name}/original`);
        if (status !== 200 || sha256(bytes) !== name) missing.push(name);
      }),
    );
  return missing;
}

/** What the block at the foot of the page says. */
export const standing = (page: Page): Promise<string> => page.evaluate(() => document.querySelector(".standing")?.textContent ?? "");
