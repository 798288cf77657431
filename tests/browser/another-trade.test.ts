import type { Browser } from "puppeteer";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { batchOf, type Company, newCompany, newJob } from "../helpers/edge.ts";
import { newScreen, openBrowser, type Screen, textOf } from "../helpers/screen.ts";

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
  screen = await newScreen(browser);
  const [name = "", value = ""] = company.crew.cookie.split("=");
  await screen.page.browserContext().setCookie({ name, value, domain: new URL(inject("edge")).hostname, path: "/", httpOnly: true });
}, 120_000);
afterAll(() => browser?.close());

const read = async (): Promise<string[]> => {
  await screen.page.goto(`${inject("edge")}/jobs/${job}`);
  await screen.page.waitForSelector(".covering");
  return screen.page.$$eval(".clearance", (all) => all.map((one) => one.textContent ?? ""));
};

test("a covering that is clear says so by the act itself, beside one that is not", async () => {
  expect(await read()).toEqual(["clear to pour the concrete", "not yet"]);
  expect(await textOf(screen.page, ".cautions")).toContain("Wet concrete burns the skin");
});

test("a photo that has not come yet is named as such, and no broken picture is shown", async () => {
  await screen.page.$$eval("details.step", (all) => {
    for (const one of all) one.open = true;
  });
  expect(await textOf(screen.page, ".picture")).toContain("The photo has not reached the office yet.");
  expect(await screen.page.$$(".picture img")).toEqual([]);
});

test("in Spanish and metric the same job says the same", async () => {
  const { content } = (await company.owner.get("/api/company")).body.settings;
  const set = await company.owner.ask("PUT", "/api/company/settings", { json: { ...content, language: "es", units: "metric" } });
  expect(set.status).toBe(200);
  expect(await read()).toEqual(["listo para vaciar el concreto", "todavía no"]);
  expect(await screen.page.evaluate(() => document.documentElement.lang)).toBe("es");
  await screen.page.$$eval("details.step", (all) => {
    for (const one of all) one.open = true;
  });
  const steps = await textOf(screen.page, ".steps");
  expect(steps).toContain("Profundidad del hoyo");
  expect(steps).toMatch(/9(1[78]|17)[.,\d]* mm/);
  expect(steps).not.toMatch(/\bnot taken\b|\bwithin\b/);
  expect(await textOf(screen.page, "main")).toContain("Aquí no se juzga el cableado ni la seguridad.");
  expect(screen.troubles).toEqual([]);
});
