import type { Page } from "puppeteer";
import { afterAll, beforeAll, beforeEach, describe, expect, inject, test } from "vitest";
import type { Between } from "../helpers/between.ts";
import { allSent, answer, chooseTogether, firstVisit, jpegs, keptOn, notAtEdge, read, standing, waiting } from "../helpers/crew-phone.ts";
import { CrewSignal, idsOn, look } from "../helpers/crew-signal.ts";
import { type Company, until } from "../helpers/edge.ts";
import { axe, newScreen, textOf } from "../helpers/screen.ts";

/** What a crew's phone has not sent yet: an edge in trouble, two pages, two phones, many pictures. */
let crew: CrewSignal;
let company: Company;
/** One job and one signal for each test, one phone too where no test says otherwise. */
let job: string;
let signal: Between;
let page: Page;

beforeAll(async () => {
  crew = await CrewSignal.begin(inject("edge"), inject("operatorKey"));
  company = crew.company;
}, 240_000);
afterAll(() => crew?.end());

beforeEach(async () => {
  const visit = await crew.visit();
  ({ job, signal, page } = visit);
  return visit.leave;
}, 120_000);

const newLink = (): Promise<string> => crew.newLink(signal);
const expectOnce = (ids: readonly string[]): Promise<void> => crew.expectOnce({ job, signal }, ids);

describe("an edge in trouble", () => {
  test("answers 500, then the session is over: everything is kept and goes on by itself; one that is refused holds nothing up", async () => {
    const at = signal.address;
    const photos = await jpegs(crew.folder, 2);
    signal.instead = ({ path }) => (path.startsWith("/api/") ? 500 : undefined);
    await answer(page, at, job, "lines-asked");
    await chooseTogether(page, at, job, photos);
    await until(
      () => standing(page),
      (says) => /^3 not sent\. No answer since/.test(says),
    );
    expect(waiting(await keptOn(page))).toBe(3);

    // the session ends while the edge is in trouble
    signal.instead = () => undefined;
    const ended = await page.evaluate(
      async () => (await fetch("/api/session/end", { method: "POST", headers: { "x-asburied": "1" } })).status,
    );
    expect(ended).toBeLessThan(300);
    await look(page);
    await until(
      () => standing(page),
      (says) => says.includes("Signed out."),
    );
    await answer(page, at, job, "gate-swings");
    expect(waiting(await keptOn(page))).toBe(4);
    await page.goto(`${at}/phone/unsent`);
    await page.waitForFunction(() => document.querySelector("main")?.textContent?.includes("ask the office for a new code"));

    // one entry names what the sheet does not know; it stands between two good ones
    await page.evaluate(async () => {
      const opening = indexedDB.open("asburied");
      const database = await new Promise<IDBDatabase>((resolve) => {
        opening.onsuccess = () => resolve(opening.result);
      });
      const store = database.transaction("entries", "readwrite").objectStore("entries");
      const all = await new Promise<{ run: number; id: string; entry: { sealed: object; body: object } }[]>((resolve) => {
        const getting = store.getAll();
        getting.onsuccess = () => resolve(getting.result);
      });
      const [first] = all;
      if (first === undefined) throw new Error("no entry");
      const sealed = { ...first.entry.sealed, kind: "No Such Kind" };
      await new Promise<void>((resolve) => {
        const putting = store.put({ ...first, entry: { ...first.entry, sealed } });
        putting.onsuccess = () => resolve();
      });
      database.close();
    });
    const [spoilt, ...good] = await idsOn(page);
    expect(good).toHaveLength(1);
    await page.goto(await newLink());
    await page.waitForSelector(".jobs li");
    const sent = await allSent(page);
    expect(sent.entries.filter((one) => one.standing === "refused").map(({ id }) => id)).toEqual([spoilt]);
    expect(sent.photos.map((one) => one.standing)).toEqual(["acknowledged", "acknowledged"]);
    await expectOnce(good);
    expect(
      await notAtEdge(
        company,
        photos.map(({ sha256 }) => sha256),
      ),
    ).toEqual([]);
    await until(
      () => standing(page),
      (says) => says.includes("1 not taken by the office"),
    );
    await page.goto(`${at}/phone/unsent`);
    await page.waitForSelector(".refused-entry p + p");
    expect((await textOf(page, ".refused-entry")).length).toBeGreaterThan(40);
    expect((await axe(page)).violations).toEqual([]);
  }, 240_000);
});

describe("more than one page", () => {
  test("two pages of one phone: entries in both, each sent once", async () => {
    const at = signal.address;
    const second = await page.browserContext().newPage();
    await signal.close();
    await answer(page, at, job, "lines-asked");
    await answer(second, at, job, "gate-swings");
    await answer(page, at, job, "lines-asked", 1);
    await read(second, at, job, "top-below-soil", "6 0/16");
    const before = await keptOn(page);
    expect(before.entries.map(({ run }) => run)).toEqual([0, 1, 2, 3]);
    await signal.open();
    await Promise.all([look(page), look(second)]);
    await allSent(page);
    await expectOnce(before.entries.map(({ id }) => id));
    for (const one of [page, second])
      await until(
        () => standing(one),
        (says) => says.startsWith("Everything sent."),
        40_000,
      );
  }, 120_000);

  test("two phones on one job: each sees what the other entered", async () => {
    const at = signal.address;
    const other = await newScreen(crew.browser);
    await firstVisit(other.page, await newLink());
    await signal.close();
    await read(page, at, job, "top-below-soil", "6 3/16");
    await read(other.page, at, job, "top-below-soil", "6 5/16");
    const ids = [...(await idsOn(page)), ...(await idsOn(other.page))];
    expect(new Set(ids).size).toBe(2);
    await signal.open();
    for (const one of [page, other.page]) {
      await look(one);
      await allSent(one);
    }
    await expectOnce(ids);
    for (const one of [page, other.page]) {
      await one.goto(`${at}/jobs/${job}/take/top-below-soil`);
      await until(
        async () => {
          await look(one);
          return one.evaluate(() => document.querySelector("main")?.textContent ?? "");
        },
        (says) => says.includes("6 3/16") && says.includes("6 5/16"),
        40_000,
      );
    }
    await other.close();
  }, 120_000);
});

/** Two hundred by `npm run phone`; `npm test` has time for a fifth of them. */
const MANY = Number(process.env.ASBURIED_PICTURES ?? 200);

describe("many at once", () => {
  test(`${MANY} pictures queued without signal, some answers of the edge lost on the way: nothing is lost, nothing stands twice`, async () => {
    const photos = await jpegs(crew.folder, MANY);
    await signal.close();
    await chooseTogether(page, signal.address, job, photos);
    await answer(page, signal.address, job, "lines-asked");
    const before = await keptOn(page);
    expect(waiting(before)).toBe(MANY + 1);
    // five photos are stored, and the phone does not hear of it
    let puts = 0;
    signal.instead = ({ method }) => {
      if (method !== "PUT") return undefined;
      puts += 1;
      return puts % (MANY / 5) === 0 ? "answer lost" : undefined;
    };
    const began = performance.now();
    await signal.open();
    await page.goto(signal.address);
    const sent = await until(
      async () => {
        // nobody waits out the longer and longer waits after an answer that was lost, nor looks ten times a second
        await new Promise((resolve) => setTimeout(resolve, 500));
        if ((await standing(page)).includes("No answer")) await look(page);
        return keptOn(page);
      },
      (kept) => waiting(kept) === 0,
      240_000,
    );
    process.stdout.write(`${MANY} photos and an entry sent after ${Math.round((performance.now() - began) / 1000)} s, in ${puts} puts\n`);
    expect(sent.photos.map((one) => one.standing)).toEqual(Array(MANY).fill("acknowledged"));
    expect(sent.bytes).toEqual([]);
    const names = photos.map(({ sha256 }) => sha256);
    expect(new Set(sent.photos.map(({ sha256 }) => sha256))).toEqual(new Set(names));
    expect(await notAtEdge(company, names)).toEqual([]);
    // sent again only where the answer was lost
    expect(puts).toBe(MANY + names.filter((name) => signal.photosStored.get(name) === 2).length);
    await expectOnce(before.entries.map(({ id }) => id));
  }, 400_000);
});
