import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { type Clearance, clearances, type Finding, findings } from "#core/job/index.ts";
import { courtyard } from "#infra/demo/courtyard.ts";
import { drawing } from "#infra/demo/drawings.ts";
import { enterAll } from "#infra/demo/enter.ts";
import { type Founded, found, keep, type Version } from "#infra/demo/founding.ts";
import { openJob } from "#infra/demo/open-job.ts";
import { type JobBook, openBook, Phone, randomId } from "#infra/demo/phone.ts";
import { type Line, moment, type Said } from "#infra/demo/script.ts";
import { clockThatCanBeSet, setClock } from "#infra/screens/clock.ts";
import { budgetOf, defaultSheet, everydayTags } from "#infra/sheets/index.ts";
import { Hand, type Taps } from "../helpers/phone-hand.ts";
import { PhonePlayer, type Played } from "../helpers/phone-player.ts";
import { wordsOf } from "../helpers/phone-playing.ts";
import { newScreen, openBrowser, phone, type Screen } from "../helpers/screen.ts";
import { scriptedJob } from "../helpers/scripted-job.ts";

/**
 * The two-day job on a phone-size screen, without signal from the first tap to the last, by touches and typing alone: its first
 * day, or both when the whole job is asked for (`npm run phone`), for which alone the minutes of an everyday job can be counted.
 */
const whole = process.env.ASBURIED_JOB !== "first-day";
const dayOf = (line: Line): string | undefined => (Array.isArray(line) ? line[0] : (line as Said).time).split(" ")[0];
const firstDay = dayOf(courtyard.crew[0] as Line);
const script = whole ? courtyard : { ...courtyard, crew: courtyard.crew.filter((line) => dayOf(line) === firstDay), afterwards: [] };
const sheet = defaultSheet();
let founded: Founded;
let versions: readonly Version[];
let book: JobBook;
let desk: Phone;
let browser: Browser;
let screen: Screen;
let folder: string;
let player: PhonePlayer;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "asburied-played-"));
  founded = await found(inject("edge"), inject("operatorKey"), randomId());
  versions = await keep(founded);
  desk = new Phone(founded.office.person);
  book = await openJob(desk, founded.office.client, script, versions);
  const shared = { book, sheet, script, photos: new Map(), labels: new Map(), fixes: false, draw: drawing };
  await enterAll({ ...shared, phone: desk }, script.office);
  await founded.office.client.empty(book);

  browser = await openBrowser();
  screen = await newScreen(browser);
  const { page } = screen;
  await page.setViewport({ ...phone, hasTouch: true, isMobile: true });
  await page.emulateTimezone("America/Chicago");
  await clockThatCanBeSet(page);
  const { link } = await founded.owner.send<{ link: string }>("POST", `/api/people/${founded.first.person}/links`);
  await page.goto(new URL(link, inject("edge")).href);
  await page.waitForSelector(".jobs li");
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active !== null);
  await page.setOfflineMode(true);
  await setClock(page, moment("12 06:50"));
  await page.goto(inject("edge"));
  await page.waitForSelector(".jobs li");
  player = new PhonePlayer({ hand: new Hand(page), job: book.job, sheet, script, folder });
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

interface Counted {
  readonly readings: number;
  readonly pictures: number;
  readonly taps: number;
}

/** 15 s a reading, 12 s a picture, 3 s a tap (issue 'phone'); touches that are part of a reading or a picture are in its seconds. */
const minutes = ({ readings, pictures, taps }: Counted): number => (readings * 15 + pictures * 12 + taps * 3) / 60;

const sum = (some: readonly Played[], of: (taps: Taps) => number): number => some.reduce((total, { taps }) => total + of(taps), 0);
const counted = (some: readonly Played[]): Counted => ({
  readings: some.filter(({ kind }) => kind === "reading").length,
  pictures: some.filter(({ kind }) => kind === "picture").length,
  taps: sum(some, ({ itself }) => itself),
});

const print = (what: string, of: Counted, more = ""): unknown =>
  process.stdout.write(
    `${what}: ${of.readings} readings, ${of.pictures} pictures, ${of.taps} taps = ${minutes(of).toFixed(1)} min${more}\n`,
  );

/** What everybody does on every job: once what the tolerance sheet asks of it, its names and its coverings; no rework, no tests of another day. */
function everyday(all: readonly Played[]): readonly Played[] {
  const seen = new Set<string>();
  return all.filter(({ line, kind, item }) => {
    if (kind === "covered") return true;
    if (kind === "tag-named") return Object.hasOwn(everydayTags, String(wordsOf<{ set: string }>(line as Said).set));
    if (item === undefined || item.apart === true || !Array.isArray(line)) return false;
    if (item.tags !== undefined && !Object.hasOwn(everydayTags, item.tags)) return false;
    const key = `${item.id} ${line[3]}`;
    const isFirst = !seen.has(key);
    seen.add(key);
    return isFirst;
  });
}

const verdictsOf = (all: readonly Finding[]): readonly string[] =>
  all.map(({ of, check, tag, verdict, by }) => `${of} ${check} ${tag ?? ""}: ${verdict}${by === undefined ? "" : ` by ${by.way}`}`).sort();
const statesOf = (all: readonly Clearance[]): readonly string[] =>
  all.map(({ covering, state, covered }) => `${covering}: ${state}${covered === undefined ? "" : ", covered"}`).sort();

describe(whole ? "the whole two-day job on the phone" : "the first day of the two-day job on the phone", () => {
  test("every line of it is entered by touch, without signal", async () => {
    await player.play(script.crew, ["fill-trench"]);
    expect(screen.troubles.filter((trouble) => !trouble.includes("ERR_INTERNET_DISCONNECTED"))).toEqual([]);
    const { played } = player;
    expect(played.length + player.desk.length).toBe(script.crew.length);
    if (!whole) return;
    const touches = sum(played, ({ reading, picture }) => reading + picture);
    const typed = sum(played, (taps) => taps.typed);
    print("The demo's job whole", counted(played), ` (${touches} touches within readings and pictures, ${typed} characters typed)`);
    const usual = counted(everyday(played));
    print("What every job has of it", usual);
    // a few of the things that every job has are not in the demo's: the count is of all that the sheet asks for
    const { readings, pictures } = budgetOf(sheet, everydayTags);
    expect(usual.readings).toBeLessThanOrEqual(readings);
    expect(usual.pictures).toBeLessThanOrEqual(pictures);
    const asked = { readings, pictures, taps: usual.taps };
    print("An everyday job as the tolerance sheet asks it", asked);
    expect(minutes(asked)).toBeLessThanOrEqual(25);
  }, 900_000);

  test("with signal everything goes, and the edge comes to the same verdicts as the scripted job", async () => {
    const { page } = screen;
    await setClock(page, undefined);
    await page.setOfflineMode(false);
    await page.goto(new URL("/phone/unsent", inject("edge")).href);
    await page.waitForFunction(() => document.body.textContent?.includes("Nothing waits on this phone"), { timeout: 120_000 });
    const { client } = founded.office;
    const ledger = await client.get<{ entries: { envelope: { id: string; kind: string } }[] }>(`/api/jobs/${book.job}/ledger`);
    const goAhead = ledger.entries.find(({ envelope }) => envelope.kind === "go-ahead")?.envelope.id ?? "";
    const after = openBook(book.job, book.versions);
    const labels = new Map([["go-ahead", { id: goAhead, digest: "" }]]);
    const shared = { book: after, sheet, script, photos: new Map(), labels, fixes: false };
    await enterAll({ ...shared, phone: desk }, [...player.desk, ...script.afterwards]);
    await client.empty(after);
    const view = await client.get<{ findings: readonly Finding[]; clearances: readonly Clearance[] }>(`/api/jobs/${book.job}`);
    const scripted = await scriptedJob(script);
    const wanted = findings(scripted);
    expect(verdictsOf(view.findings)).toEqual(verdictsOf(wanted));
    expect(statesOf(view.clearances)).toEqual(statesOf(clearances(scripted, wanted, Date.now())));
  }, 300_000);
});
