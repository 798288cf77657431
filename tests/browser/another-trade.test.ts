import type { Browser } from "puppeteer";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import type { Json } from "#core/ledger/index.ts";
import { follow, rightJob } from "../helpers/crew-pages.ts";
import { batchOf, type Company, newCompany, newJob } from "../helpers/edge.ts";
import { newScreenOnline, openBrowser, type Screen, textOf } from "../helpers/screen.ts";

/** A tolerance sheet of another trade on the same screens, with nothing in them changed for it. */
let company: Company;
let job: string;
let browser: Browser;
let screen: Screen;

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  const opened = await newJob(company);
  job = opened.job;
  const { phone } = opened;
  const enter = (kind: string, what: Record<string, string | number>) => phone.entry(job, company.people.crew, kind, what);
  const tag = "left";
  const picture = (item: string, digit: string) => ({ item, tag, photo: digit.repeat(64), bytes: 10, type: "image/jpeg" });
  const answer = await company.crew.post(
    `/api/jobs/${job}/entries`,
    batchOf(
      await enter("tag-named", { set: "gate-post", tag, hiddenBy: "pour-concrete" }),
      await enter("picture-taken", picture("hole-with-rule", "a")),
      await enter("reading-taken", { item: "hole-deep", tag, typed: "36 1/8", unit: "in" }),
      await enter("answered", { item: "stone-under", tag, choice: "it-is" }),
      await enter("answered", { item: "post-plumb", tag, choice: "it-is" }),
      await enter("picture-taken", picture("post-braced", "b")),
    ),
  );
  expect(answer.body.answers.map((one: { outcome?: string }) => one.outcome)).toEqual(Array(6).fill("taken"));
  browser = await openBrowser();
  screen = await newScreenOnline(browser);
  const [name = "", value = ""] = company.crew.cookie.split("=");
  await screen.page.browserContext().setCookie({ name, value, domain: new URL(inject("edge")).hostname, path: "/", httpOnly: true });
}, 120_000);
afterAll(() => browser?.close());

/** What the crew reads of the covering that comes next, and of the others. */
const read = async (): Promise<string[]> => {
  await screen.page.goto(`${inject("edge")}/jobs/${job}`);
  await screen.page.waitForSelector(".next");
  return screen.page.$$eval(".next > .large-clearance .clearance, .next > .choices b", (all) => all.map((one) => one.textContent ?? ""));
};

test("a covering that is clear says so by the act itself, beside one that is not", async () => {
  await screen.page.goto(inject("edge"));
  await screen.page.waitForSelector(".jobs li");
  await rightJob(screen.page, `${inject("edge")}/jobs/${job}`);
  expect(await read()).toEqual(["clear to pour the concrete", "not yet: bury the footing"]);
  await follow(screen.page, `/jobs/${job}/cover/pour-concrete`);
  expect(await screen.page.$$eval(".clearance", (all) => all.map((one) => one.textContent))).toEqual(["clear to pour the concrete"]);
  expect(await textOf(screen.page, ".cautions")).toContain("Wet concrete burns the skin");
  await follow(screen.page, `/jobs/${job}/cover/bury-footing`);
  expect(await screen.page.$$eval(".clearance", (all) => all.map((one) => one.textContent))).toEqual(["not yet"]);
});

test("a photo that has not come yet is named as such, and no broken picture is shown", async () => {
  for (const item of ["hole-with-rule", "post-braced"]) {
    await follow(screen.page, `/jobs/${job}/take/${item}/left`);
    await screen.page.waitForFunction(() => !document.querySelector(".pictures-so-far")?.textContent?.includes("Looking at it"));
    expect(await textOf(screen.page, ".pictures-so-far")).toContain("The photo has not reached the office yet.");
    expect(await screen.page.$$("main img")).toEqual([]);
  }
});

/** The page of the office on a job: what it says to read first, or in another part. */
async function readFirst(of: string, part = ".exceptions"): Promise<string> {
  const office = await newScreenOnline(browser);
  try {
    const [name = "", value = ""] = company.office.cookie.split("=");
    await office.page.browserContext().setCookie({ name, value, domain: new URL(inject("edge")).hostname, path: "/", httpOnly: true });
    await office.page.goto(`${inject("edge")}/jobs/${of}`);
    await office.page.waitForSelector(".covering");
    await office.page.waitForFunction((at) => !(document.querySelector(at)?.textContent ?? "Reading …").includes("Reading …"), {}, part);
    return await textOf(office.page, part);
  } finally {
    await office.close();
  }
}

test("a job with nothing entered is not said to be all right", async () => {
  const { job: empty } = await newJob(company);
  const says = await readFirst(empty);
  expect(says).toMatch(/\d+ things that were asked are not entered/);
  expect(says).not.toContain("Nothing stands out");
  expect(await readFirst(empty, ".issued")).toContain("No record has been issued yet.");
});

test("what was covered without a word is said to be so, and stands among what to read first", async () => {
  const { job: unsaid, phone } = await newJob(company);
  const swings = await phone.entry(unsaid, company.people.crew, "answered", { item: "gate-swings", choice: "it-is" });
  await company.crew.post(`/api/jobs/${unsaid}/entries`, batchOf(swings));
  expect(await readFirst(unsaid)).toContain("Covered, and nobody said so; no clearance was shown: bury the footing");
  await screen.page.goto(`${inject("edge")}/jobs/${unsaid}`);
  await screen.page.waitForSelector(".covering.done");
  expect(await textOf(screen.page, ".covering.done")).toMatch(
    /covered no later than .*; nobody said so when it was done\. No clearance was shown\./,
  );
  expect(await screen.page.$$(".covering.done .sign-within")).toEqual([]);
  expect(await screen.page.$$(".covering.done .sign-undecided")).not.toEqual([]);
});

test("clear on somebody's word is told from clear, in the list and on the job", async () => {
  const { job: word, phone } = await newJob(company);
  const enter = (kind: string, what: Json, who?: Json) =>
    phone.entry(word, company.people.crew, kind, what, who === undefined ? {} : { who });
  const reason = "seen by telephone";
  const goAhead = await enter("go-ahead", { covering: "bury-footing", reason, role: "crew" }, { name: "Kim Alder" });
  const about = Date.UTC(2026, 4, 5, 14);
  const announced = await enter("covering-announced", { covering: "bury-footing", about });
  const answer = await company.crew.post(`/api/jobs/${word}/entries`, batchOf(goAhead, announced));
  expect(answer.body.answers.map((one: { outcome?: string }) => one.outcome)).toEqual(["taken", "taken"]);
  const listed = (await company.crew.get("/api/jobs")).body.jobs.find((one: { job: string }) => one.job === word);
  expect(listed.state.coverings[1]).toMatchObject({ state: "on word", clear: true, about });
  await screen.page.goto(`${inject("edge")}/`);
  await screen.page.waitForSelector(".jobs li");
  // announced for a time, so it comes before what is not
  await screen.page.waitForFunction((path) => document.querySelector(".jobs li a")?.getAttribute("href") === path, {}, `/jobs/${word}`);
  const first = await textOf(screen.page, ".jobs li");
  expect(first).toContain("clear to bury the footing, on somebody's word");
  expect(first).toMatch(/announced for about 5 May 2026, \d+:\d\d/);
  expect(await screen.page.$$(".jobs li:first-child .sign-word")).not.toEqual([]);
});

test("in Spanish and metric the same job says the same", async () => {
  const { content } = (await company.owner.get("/api/company")).body.settings;
  const set = await company.owner.ask("PUT", "/api/company/settings", { json: { ...content, language: "es", units: "metric" } });
  expect(set.status).toBe(200);
  expect(await read()).toEqual(["listo para vaciar el concreto", "todavía no: enterrar la base"]);
  expect(await screen.page.evaluate(() => document.documentElement.lang)).toBe("es");
  expect(await textOf(screen.page, "main")).toContain("Aquí no se juzga el cableado ni la seguridad.");
  const counted = await textOf(screen.page, ".step-links");
  await follow(screen.page, `/jobs/${job}/step/dig-hole/left`);
  const steps = `${counted}\n${await textOf(screen.page, "main")}`;
  expect(steps).toContain("Profundidad del hoyo");
  expect(await textOf(screen.page, ".findings")).toMatch(/9(1[78]|17)[.,\d]* mm/);
  expect(steps).not.toMatch(/\bnot taken\b|\bwithin\b/);
  expect(screen.troubles).toEqual([]);
});
