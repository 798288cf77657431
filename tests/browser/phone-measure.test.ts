import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, ElementHandle, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { cardText, photoMeasured, type Whats } from "#core/job/index.ts";
import { type ForPhone, forPhone } from "#infra/demo/index.ts";
import { digest } from "#infra/node-digest.ts";
import { allSent, keptOn, read } from "../helpers/crew-phone.ts";
import { sha256, until } from "../helpers/edge.ts";
import { BOARD, type MeasuredScene, measuredScene } from "../helpers/measured-scene.ts";
import { arrive, axe, newScreen, newScreenOnline, openBrowser, type Screen, textOf } from "../helpers/screen.ts";

/** A length in a rendered photo of which every figure is known, measured on the crew's phone, kept, and found at the edge. */
let company: ForPhone;
let browser: Browser;
let crew: Screen;
let office: Screen;
let folder: string;
let scene: MeasuredScene;
let photo: string;
const PATIENCE_MS = 60_000;
const TEST_MS = 180_000;
const size = { width: 360, height: 740 };
const shots = fileURLToPath(new URL("../../out/screens", import.meta.url));
const shot = (name: string, language = "en"): `${string}.png` => `${join(shots, `measure-${language}-${name}`)}.png`;
const item = "cover-shallowest";

const at = (path: string): string => new URL(path, inject("edge")).href;
const job = (): string => company.jobs.notYet;

async function signIn(page: Page): Promise<void> {
  await arrive(page, await company.crewLink());
  await page.waitForSelector(".jobs li");
  await page.goto(at("/phone/person"));
  await page.locator("main .choices button").click();
  await page.waitForSelector(".jobs li");
}

/** What four codes of a card of the job say, as printed for this company. */
async function textsOf(page: Page, of: string): Promise<[string, string, string, string]> {
  const { company: id } = await page.evaluate(async () => (await fetch("/api/session")).json());
  const texts = await Promise.all(
    ([0, 1, 2, 3] as const).map(async (place) => {
      const text = await cardText(digest, { company: id, job: of }, { paper: "letter", place });
      return text.ok ? text.value : "";
    }),
  );
  return texts as [string, string, string, string];
}

beforeAll(async () => {
  await mkdir(shots, { recursive: true });
  folder = await mkdtemp(join(tmpdir(), "asburied-measure-"));
  company = await forPhone(inject("edge"), inject("operatorKey"));
  browser = await openBrowser();
  [crew, office] = [await newScreen(browser, size), await newScreenOnline(browser)];
  crew.page.setDefaultTimeout(PATIENCE_MS);
  await signIn(crew.page);
  await arrive(office.page, await company.officeLink());
  scene = await measuredScene(await textsOf(crew.page, job()));
  photo = join(folder, "board.jpg");
  await writeFile(photo, scene.jpeg);
}, 300_000);
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

async function choose(page: Page, path: string): Promise<void> {
  const input = (await page.waitForSelector("main .files input:not([capture])")) as ElementHandle<HTMLInputElement>;
  await input.uploadFile(path);
}

const says = (page: Page, words: string): Promise<unknown> =>
  page.waitForFunction((text) => document.querySelector("main")?.textContent?.includes(text), {}, words);

/** Presses what is in the page's middle: what is pressed most stands over the rest, below. */
async function press(page: Page, selector: string): Promise<void> {
  await page.$eval(selector, (element) => element.scrollIntoView({ block: "center" }));
  await page.locator(selector).click();
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}
const boxOf = (page: Page, selector: string): Promise<Box> =>
  page.$eval(selector, (element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return { left, top, width, height };
  });

/** Where a spot of the photo is on the screen, while the whole of it is shown. */
async function onScreen(page: Page, [x, y]: readonly [number, number]): Promise<[number, number]> {
  await page.$eval(".measure-stage", (stage) => stage.scrollIntoView({ block: "center" }));
  const { left, top, width, height } = await boxOf(page, ".measure-stage");
  return [left + (x * width) / scene.width, top + (y * height) / scene.height];
}

interface Sealed {
  readonly envelope: { readonly kind: string };
  readonly body: { readonly what: { readonly content: Readonly<Record<string, unknown>> } };
}
const measuredInLedger = (): Promise<readonly Whats["photo-measured"][]> =>
  office.page
    .evaluate(async (path) => (await fetch(path)).json() as Promise<{ entries: Sealed[] }>, `/api/jobs/${job()}/ledger`)
    .then(({ entries }) =>
      entries
        .filter(({ envelope }) => envelope.kind === "photo-measured")
        .map(({ body }) => body.what.content as unknown as Whats["photo-measured"]),
    );

describe("a length in a photo with a card", () => {
  test(
    "two taps, both to the edges, the ruler typed: within its U of 24 in; the tape agrees, and another reading does not",
    async () => {
      const { page } = crew;
      await read(page, at("/"), job(), item, "24 0/16");
      await page.goto(at(`/jobs/${job()}/take/${item}`));
      await page.locator(`main a[href$="/measure/${item}"]`).click();
      await page.waitForSelector("main .shutter");
      await page.screenshot({ path: shot("before") });
      await choose(page, photo);
      await says(page, "Tap the first end.");

      for (const [x, y] of scene.ends) {
        const [left, top] = await onScreen(page, [x + 9, y - 6]);
        await page.mouse.move(left, top);
        await page.mouse.down();
        const [stage, glass] = [await boxOf(page, ".measure-stage"), await boxOf(page, ".measure-glass")];
        // whole within the picture, and away from the finger
        expect(glass.left).toBeGreaterThanOrEqual(stage.left - 1);
        expect(glass.top).toBeGreaterThanOrEqual(stage.top - 1);
        expect(glass.left + glass.width).toBeLessThanOrEqual(stage.left + stage.width + 1);
        expect(Math.hypot(glass.left + 70 - left, glass.top + 70 - top)).toBeGreaterThan(70 + 20);
        await page.screenshot({ path: shot("glass") });
        await page.mouse.up();
      }
      // four arrows on a narrow phone, none of them beyond the picture's edge
      const [picture, last] = [await boxOf(page, ".measure-stage"), await boxOf(page, ".measure-arrows .target:last-child")];
      expect(last.left + last.width).toBeLessThanOrEqual(picture.left + picture.width + 1);
      expect(last.width).toBeGreaterThanOrEqual(64);
      // nobody has laid a tape beside this card's ruler: no number is of use
      await says(page, "Not sure enough yet");
      await says(page, "Lay a tape beside the card's ruler");
      await page.screenshot({ path: shot("rough"), fullPage: true });
      await press(page, ".measure-ruler input");
      await page.type(".measure-ruler input", "10");
      await press(page, ".measure-ruler button");
      await says(page, "10 0/16, not 10");
      await page.type(".measure-ruler input", " 0/16");
      await press(page, ".measure-ruler button");
      await page.waitForFunction(() => document.querySelector(".measure-ruler")?.textContent?.includes("Kept"));
      // near, the finger's ten points are five pixels; the mark goes with it and a key moves it back by one
      await press(page, "main button[aria-label='End 1']");
      const before = await textOf(page, ".measure-length");
      await page.$eval(".measure-stage", (stage) => stage.scrollIntoView({ block: "center" }));
      const { left, top, width, height } = await boxOf(page, ".measure-stage");
      await page.mouse.move(left + width / 2, top + height / 2);
      await page.mouse.down();
      await page.mouse.move(left + width / 2 - 30, top + height / 2, { steps: 3 });
      await page.waitForSelector(".measure-glass");
      await page.screenshot({ path: shot("near") });
      await page.mouse.up();
      await page.waitForFunction((said) => document.querySelector(".measure-length")?.textContent !== said, {}, before);
      expect(await page.$(".measure-glass")).toBeNull();
      await page.keyboard.down("Shift");
      await page.keyboard.press("ArrowRight");
      await page.keyboard.up("Shift");
      await press(page, "main button::-p-text(Both to the edges)");
      await says(page, "Both ends lie on an edge now");
      await says(page, "Sure enough");
      expect((await axe(page)).violations).toEqual([]);
      await page.screenshot({ path: shot("snapped"), fullPage: true });

      await press(page, "main button::-p-text(Keep the length)");
      await says(page, "Tape and picture agree");
      await allSent(page);
      const [entry, ...others] = await until(measuredInLedger, (all) => all.length > 0);
      expect(others).toEqual([]);
      expect(entry).toMatchObject({
        item,
        photo: sha256(scene.jpeg),
        width: scene.width,
        height: scene.height,
        paper: "letter",
        ruler: { typed: "10 0/16", unit: "in" },
      });
      expect(entry?.codes.map(({ place }) => place)).toEqual([0, 1, 2, 3]);
      const measured = entry && photoMeasured(entry);
      if (!measured?.ok) throw new Error("the entry is no length");
      const { micrometres, doubt } = measured.value.length;
      expect(Math.abs(micrometres - BOARD * 1e6)).toBeLessThanOrEqual(doubt);
      expect(doubt).toBeLessThan(6350);
      // the photo itself was entered for the reading, and sent
      expect((await keptOn(page)).photos.find(({ sha256: name }) => name === sha256(scene.jpeg))?.loose).not.toBe(true);
      await page.screenshot({ path: shot("kept") });

      // another reading by tape: before it is covered the phone says so, and holds nothing for it
      await read(page, at("/"), job(), item, "30 0/16");
      await page.goto(at(`/jobs/${job()}/cover/fill-trench`));
      await says(page, "Tape and picture do not agree");
      await page.screenshot({ path: shot("cover"), fullPage: true });
      expect((await axe(page)).violations).toEqual([]);
      expect(crew.troubles).toEqual([]);
    },
    TEST_MS,
  );

  test(
    "the phone's own lens: one photo of a flat card is not enough, and says whether it helps; in Spanish too",
    async () => {
      const { page } = crew;
      await page.goto(at("/phone/lens"));
      await says(page, "Not measured yet.");
      await choose(page, photo);
      await says(page, "2 more are needed.");
      expect(await textOf(page, ".lens-photos")).toMatch(/Picture 1 Helps( little: .*)?\.$/);
      expect((await axe(page)).violations).toEqual([]);
      await company.speak("es");
      await page.reload();
      await says(page, "Todavía no está medida.");
      await page.screenshot({ path: shot("lens", "es"), fullPage: true });
      await page.goto(at(`/jobs/${job()}/measure/${item}`));
      await says(page, "Cinta y foto no coinciden");
      expect((await axe(page)).violations).toEqual([]);
      await page.screenshot({ path: shot("before", "es"), fullPage: true });
      await press(page, ".measure-so-far button::-p-text(Quitarlo)");
      await page.waitForFunction(() => document.querySelector(".measure-so-far") === null);
      await choose(page, photo);
      await says(page, "Toque el primer extremo.");
      for (const end of scene.ends) await page.mouse.click(...(await onScreen(page, end)));
      await says(page, "Los dos extremos están puestos a ojo");
      await page.screenshot({ path: shot("rough", "es"), fullPage: true });
      expect(crew.troubles).toEqual([]);
    },
    TEST_MS,
  );
});
