import { mkdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { verdicts } from "#core/job/index.ts";
import { defaultSheet } from "#infra/sheets/index.ts";
import { findingsSaid, follow, linksIn, rightJob, rowsOf, said } from "../helpers/crew-pages.ts";
import { type TheDemo, theDemo } from "../helpers/demo.ts";
import {
  axe,
  crowded,
  largePhone,
  newScreen,
  newScreenOnline,
  openBrowser,
  phone,
  type Screen,
  targets,
  textOf,
} from "../helpers/screen.ts";
import { keptOffEnglish, keptOffSpanish, kinderWords } from "../unit/record/kept-off.ts";

/** The demo company on the real stack, looked at by each of its three roles. */
let demo: TheDemo;
let browser: Browser;
/** Where the screenshots of the last run lie. */
const shots = fileURLToPath(new URL("../../out/screens", import.meta.url));
const screens: Record<"crew" | "office" | "owner", Screen> = {} as never;

beforeAll(async () => {
  await mkdir(shots, { recursive: true });
  demo = await theDemo();
  browser = await openBrowser();
  for (const role of ["crew", "office", "owner"] as const) {
    screens[role] = await newScreen(browser);
    await screens[role].page.goto(await demo.newLink(role));
    await screens[role].page.waitForFunction(async () => (await navigator.serviceWorker.ready).active?.state === "activated");
  }
  await screens.crew.page.waitForFunction(() => document.querySelectorAll(".jobs li").length === 2);
  for (const which of [covered, open_])
    expect(await rightJob(screens.crew.page, address(jobPath(which)))).toMatch(/Nowhere County.*Yes, this one/);
  await screens.crew.page.goto(address("/"));
  await screens.crew.page.waitForSelector(".jobs li");
}, 240_000);
afterAll(() => browser?.close());

const address = (path: string): string => new URL(path, inject("edge")).href;

async function open(page: Page, path: string): Promise<void> {
  await page.goto(address(path));
  await page.waitForSelector(path === "/" ? ".jobs > li, .counted" : "main section, main li");
}

/** What the edge answers the one who is signed in on this page. */
const asked = (page: Page, path: string): Promise<Record<string, unknown>> =>
  page.evaluate(async (at) => (await fetch(at)).json() as Promise<Record<string, unknown>>, path);

const sheet = defaultSheet();
const [covered, open_] = [0, 1];
const jobPath = (which: number): string => `/jobs/${demo.jobs[which]}`;

test("a sign-in link leads to the page of the role, in the company's language; office and owner to their passkey first", async () => {
  expect(await textOf(screens.crew.page, "h1")).toBe("Open in the ground");
  for (const { page } of [screens.office, screens.owner]) {
    await page.waitForFunction(() => document.querySelector("h1")?.textContent === "Make your passkey");
    await page.locator("main a").click();
    await page.waitForFunction(() => !["Make your passkey", undefined].includes(document.querySelector("h1")?.textContent));
  }
  expect(await textOf(screens.office.page, "h1")).toBe("Jobs");
  expect(await textOf(screens.owner.page, "h1")).toBe("What the jobs have");
  for (const { page } of Object.values(screens)) expect(await page.evaluate(() => document.documentElement.lang)).toBe("en");
});

interface Found {
  readonly step: string;
  readonly check: string;
  readonly of: string;
  readonly tag?: string;
  readonly verdict: string;
  readonly value?: number;
  readonly asks?: string;
}

interface View {
  readonly findings: readonly Found[];
  readonly clearances: readonly {
    readonly covering: string;
    readonly state: string;
    readonly lines: readonly { readonly waysOut: readonly string[] }[];
    readonly covered?: object;
    readonly announced?: { readonly about: number };
  }[];
}
const viewOf = (page: Page, which: number): Promise<View> =>
  asked(page, jobPath(which).replace("/jobs", "/api/jobs")) as unknown as Promise<View>;
const isForElectrician = ({ asks, value }: Found): boolean => asks !== undefined && value !== undefined;

/** The pages of a job's steps, the steps that the office alone takes apart: for the things that repeat one for each name. */
function stepPages(which: number, findings: readonly Found[]): ReadonlyMap<string, readonly Found[]> {
  const pages = new Map<string, Found[]>();
  for (const { id, office } of sheet.steps) if (office !== true) pages.set(`${jobPath(which)}/step/${id}`, []);
  for (const found of findings) {
    const step = `${jobPath(which)}/step/${found.step}`;
    const path = found.tag === undefined ? step : `${step}/${found.tag}`;
    if (pages.has(step)) pages.set(path, [...(pages.get(path) ?? []), found]);
  }
  return pages;
}

const verdictWord =
  /(within|as asked|taken|outside|too close to call|not taken|could not be taken|does not apply|beside its figure: ask the electrician)$/;

describe("crew", () => {
  test("what is open in the ground comes first: the next covering with one clearance and at most three lines, then the others", async () => {
    const { page } = screens.crew;
    await open(page, jobPath(open_));
    expect(await page.$eval("main > *", (first) => [first.className, first.getAttribute("aria-label")])).toEqual([
      "next",
      "Open in the ground",
    ]);
    const { clearances } = await viewOf(page, open_);
    const about = ({ announced }: View["clearances"][number]): number => announced?.about ?? Number.POSITIVE_INFINITY;
    const still = clearances.filter((one) => one.covered === undefined).sort((a, b) => (about(a) === about(b) ? 0 : about(a) - about(b)));
    expect(still.length).toBeGreaterThan(2);
    const [next, ...rest] = still;
    expect(next?.lines.length).toBeGreaterThan(3);
    expect(await page.$$eval(".clearance", (all) => all.map((one) => one.textContent))).toEqual([
      next?.state === "not yet" ? "not yet" : expect.stringMatching(/^clear to /),
    ]);
    const lines = await page.$$eval(".next > .held-lines > li", (all) =>
      all.map((one) => ({ says: one.firstElementChild?.textContent, ways: one.querySelectorAll("a.others").length })),
    );
    expect(lines).toEqual(Array(3).fill({ says: expect.stringMatching(/\w{3}/), ways: 1 }));
    expect(await textOf(page, ".next > .shutter-row")).toContain(`All ${next?.lines.length} that hold it`);
    const others = await page.$$eval(".next > .choices a", (all) =>
      all.map((one) => ({ says: one.querySelector("b")?.textContent, held: one.querySelector(".held")?.textContent })),
    );
    expect(others).toEqual(
      rest.map(({ state, lines: { length } }) => ({
        says: expect.stringMatching(state === "not yet" ? /^not yet: / : /^clear to /),
        held: state === "not yet" ? `${length} thing${length === 1 ? " holds" : "s hold"} it` : undefined,
      })),
    );
  });

  test("each covering has a page with its one clearance in large type and all that holds it, each line with its ways out", async () => {
    const { page } = screens.crew;
    await open(page, jobPath(open_));
    const { clearances } = await viewOf(page, open_);
    for (const { covering, state, lines } of clearances.filter((one) => one.covered === undefined)) {
      await follow(page, `${jobPath(open_)}/cover/${covering}`);
      const shown = await page.$$eval(".clearance", (all) =>
        all.map((one) => ({ says: one.textContent, size: Number.parseFloat(getComputedStyle(one).fontSize) })),
      );
      expect(shown.map(({ says }) => says)).toEqual([state === "not yet" ? "not yet" : expect.stringMatching(/^clear to /)]);
      expect(shown[0]?.size).toBeGreaterThan(36);
      const ways = await page.$$eval(".held-lines > li", (all) =>
        all.map((one) => (one.querySelector("a.others") as HTMLAnchorElement | null)?.pathname ?? ""),
      );
      expect(ways.length).toBe(lines.length);
      for (const [n, path] of ways.slice(0, 3).entries()) {
        await follow(page, path);
        const said = await page.$$eval("main > .choices > li", (all) => all.map((one) => one.textContent ?? ""));
        expect(said.filter((text) => text.length > 3).length, path).toBe(lines[n]?.waysOut.length);
      }
    }
  });

  test("says that wiring and safety are not judged", async () => {
    const { page } = screens.crew;
    for (const path of ["/", jobPath(open_), jobPath(covered), `${jobPath(open_)}/cover/fill-trench`]) {
      await open(page, path);
      expect(await textOf(page, "main")).toContain("Wiring and safety are not judged here. Local code and a licensed person decide.");
    }
  });

  test("every finding stands in its step with its verdict in words, and no verdict is left to colour", async () => {
    const { page } = screens.crew;
    await open(page, jobPath(covered));
    const { findings } = await viewOf(page, covered);
    const counted = await page.$$eval(".step-links .step-name > span", (all) => all.map((one) => one.textContent ?? ""));
    expect(counted.filter((text) => text !== "" && !text.split(", ").every((one) => /^\d+ /.test(one) && verdictWord.test(one)))).toEqual(
      [],
    );
    const numbers = counted.flatMap((text) => [...text.matchAll(/\d+/g)].map(Number));
    const crewFindings = findings.filter(({ step }) => sheet.steps.some(({ id, office }) => id === step && office !== true));
    expect(numbers.reduce((sum, one) => sum + one, 0)).toBe(crewFindings.length);
    let sentences = 0;
    for (const [path, found] of stepPages(covered, crewFindings)) {
      await follow(page, path);
      const said = await findingsSaid(page);
      expect(
        said.filter(({ text, sign }) => sign === undefined || text.length < 8),
        path,
      ).toEqual([]);
      const saying = found.filter(({ verdict }) => verdict !== "not taken");
      expect(said.length, path).toBe(saying.filter(({ of }) => of === "check" || of === "tag set").length);
      sentences += said.length;
      const rows = new Map((await rowsOf(page)).map((row) => [row.path, row]));
      for (const { check, tag } of saying.filter(({ of }) => ["picture", "reading", "answer"].includes(of))) {
        const row = rows.get(`${jobPath(covered)}/take/${check}${tag === undefined ? "" : `/${tag}`}`);
        expect(row?.words, `${check} ${tag}`).toMatch(verdictWord);
        expect(row?.sign, `${check} ${tag}`).toMatch(/^sign/);
      }
    }
    expect(sentences).toBeGreaterThan(20);
  });

  test("a picture is the rendition that media made, its words say what it shows, and nothing leads to the bytes as they were taken", async () => {
    const { page } = screens.crew;
    await open(page, jobPath(covered));
    const { findings } = await viewOf(page, covered);
    const pictures = findings.filter(({ of, verdict }) => of === "picture" && verdict === "within");
    expect(pictures.length).toBeGreaterThan(5);
    for (const { check, tag } of pictures.slice(0, 4)) {
      await follow(page, `${jobPath(covered)}/take/${check}${tag === undefined ? "" : `/${tag}`}`);
      await page.waitForFunction(() => {
        const image = document.querySelector<HTMLImageElement>(".pictures-so-far img");
        image?.scrollIntoView();
        return image?.complete && image.naturalWidth > 200;
      });
      const image = await page.$eval(".pictures-so-far img", (one) => ({
        alt: (one as HTMLImageElement).alt,
        from: (one as HTMLImageElement).src,
      }));
      expect(image.alt.length).toBeGreaterThan(8);
      expect(image.alt).toBe(await textOf(page, "h1"));
      expect(image.from).toMatch(/\/api\/photos\/[0-9a-f]{64}\/screen$/);
      expect(await page.$$('a[href^="/api/photos"]')).toEqual([]);
    }
  });

  test("no verdict is drawn beside what the electrician is asked, and none is put in doubt", async () => {
    const { page } = screens.crew;
    await open(page, jobPath(covered));
    const { findings } = await viewOf(page, covered);
    const forElectrician = findings.filter(isForElectrician);
    expect(forElectrician.length).toBeGreaterThan(0);
    expect(await textOf(page, ".step-links")).toContain("1 beside its figure: ask the electrician");
    for (const { step, check, tag } of forElectrician) {
      await follow(page, [jobPath(covered), "step", step, ...(tag === undefined ? [] : [tag])].join("/"));
      const inStep = (await findingsSaid(page)).filter(({ text }) => text.includes("Ask the electrician"));
      expect(inStep.length).toBeGreaterThan(0);
      const own = sheet.checks.find(({ id }) => id === check)?.items ?? [];
      const rows = (await rowsOf(page)).filter(({ path }) => own.some((item) => path.includes(`/take/${item}`)));
      expect(rows.length).toBeGreaterThan(0);
      for (const { path, words } of rows) {
        expect(words).toMatch(/: beside its figure: ask the electrician$/);
        await follow(page, path);
        const onReading = (await findingsSaid(page)).filter(({ text }) => text.includes("Ask the electrician"));
        expect(onReading.length).toBeGreaterThan(0);
        expect(new Set([...inStep, ...rows, ...onReading].map(({ sign }) => sign))).toEqual(new Set(["sign"]));
      }
    }
  });
});

describe.each(["crew", "office", "owner"] as const)("what the %s is told of digging and wiring", (role) => {
  test("before digging it reads entered or missing, never clear", async () => {
    const { page } = screens[role];
    for (const which of [covered, open_]) {
      await open(page, jobPath(which));
      const view = await asked(page, jobPath(which).replace("/jobs", "/api/jobs"));
      const due = view.beforehand as { state: string; missing: unknown[] }[];
      expect(due.length).toBeGreaterThan(0);
      const shown = await page.$$eval(".beforehand", (all) =>
        all.map((one) => ({ title: one.querySelector("h2")?.textContent, says: one.querySelector("p, summary")?.textContent })),
      );
      expect(shown[0]?.title).toMatch(/digging/);
      expect(shown.map(({ says }) => says)).toEqual(
        due.map(({ state, missing }) =>
          state === "everything entered" ? "everything entered" : `missing: ${missing.length} thing${missing.length === 1 ? "" : "s"}`,
        ),
      );
    }
  });
});

describe.each(["office", "owner"] as const)("what the %s is told of wiring", (role) => {
  test("no verdict is drawn beside what the electrician is asked", async () => {
    const { page } = screens[role];
    await open(page, jobPath(covered));
    await page.$$eval("details", (all) => {
      for (const one of all) one.open = true;
    });
    const signs = await page.$$eval(".step .findings > li", (all) =>
      all
        .filter((one) => one.textContent?.includes("Ask the electrician"))
        .map((one) => [...(one.querySelector("svg")?.classList ?? [])].join(" ")),
    );
    expect(signs.length).toBeGreaterThan(0);
    expect(new Set(signs)).toEqual(new Set(["sign"]));
    const steps = await textOf(page, ".steps");
    expect(steps).toContain("1 beside its figure: ask the electrician");
  });
});

test("what is left to do names who does it and by which day", async () => {
  const { page } = screens.office;
  await open(page, jobPath(covered));
  const left = await page.$$eval(".handing-over .shown li", (all) => all.map((one) => one.textContent ?? ""));
  expect(left.some((text) => /: [A-Z][a-z]+ [A-Z][a-z]+, by \d{1,2} [A-Z][a-z]+ \d{4}/.test(text))).toBe(true);
});

describe("office", () => {
  test("all jobs in one list, the one with something open first, every covering with its state", async () => {
    const { page } = screens.office;
    await open(page, "/");
    const jobs = await page.$$eval(".jobs > li", (all) => all.map((one) => one.textContent ?? ""));
    expect(jobs.length).toBe(2);
    expect(jobs[0]).toContain("not yet:");
    expect(jobs[1]).not.toContain("not yet:");
    expect(jobs[1]?.match(/: covered/g)?.length).toBe(5);
  });

  test("a job shows first what was covered on a not yet and what passed by a decision, with name and reason", async () => {
    const { page } = screens.office;
    await open(page, jobPath(covered));
    const exceptions = await textOf(page, ".exceptions");
    expect(exceptions).toContain("Covered on a not yet:");
    expect(exceptions).toMatch(/Accepted as built by [A-Z][a-z]+ [A-Z][a-z]+: \w+/);
    expect(exceptions).toMatch(/outside by/);
  });

  test("three readings are confirmed by their photos, said in words beside the findings that rest on them", async () => {
    const { page } = screens.office;
    await open(page, jobPath(covered));
    const said = await page.$$eval(".steps .findings .in-photo", (all) => all.map((one) => one.textContent ?? ""));
    expect(said).toEqual(
      ["2 1/16 in", "11 1/2 in", "13/16 in"].map((typed) =>
        expect.stringMatching(new RegExp(`^Tape: ${typed} ± .*in the photo: .* They agree\\.$`)),
      ),
    );
  });

  test("a record that was issued opens as a PDF, and a new one can be issued", async () => {
    const { page } = screens.office;
    await open(page, jobPath(open_));
    const { records } = await asked(page, `${jobPath(open_).replace("/jobs", "/api/jobs")}/records`);
    const version = (records as unknown[]).length + 1;
    await page.locator('input[value="company"]').click();
    await page.locator("div.issue button").click();
    await page.waitForFunction(
      (made) => document.querySelector("div.issue .answer")?.textContent?.startsWith(made),
      { timeout: 60_000 },
      `Issued: version ${version}`,
    );
    const named = `Version ${version}, for the company`;
    await page.waitForFunction((name) => document.querySelector(".records")?.textContent?.includes(name), {}, named);
    const href = await page.$$eval(
      ".records li",
      (all, name) => all.find((one) => one.textContent?.includes(name))?.querySelector("a")?.href,
      named,
    );
    const pdf = await page.evaluate(async (at) => {
      const answer = await fetch(at as string);
      return { type: answer.headers.get("content-type"), begins: (await answer.text()).slice(0, 5) };
    }, href);
    expect(pdf).toEqual({ type: "application/pdf", begins: "%PDF-" });
  });

  test("the design check of a job opens as a PDF, under its own heading", async () => {
    const { page } = screens.office;
    await open(page, jobPath(covered));
    const found = await page.$eval('main a[href$="/design/pdf"]', (link) => ({
      text: link.textContent,
      heading: link.closest("section")?.querySelector("h2")?.textContent,
      href: (link as HTMLAnchorElement).href,
    }));
    expect(found).toMatchObject({ text: "Print the design check", heading: "Design check before the dig" });
    const pdf = await page.evaluate(async (at) => {
      const answer = await fetch(at);
      return { type: answer.headers.get("content-type"), begins: (await answer.text()).slice(0, 5) };
    }, found.href);
    expect(pdf).toEqual({ type: "application/pdf", begins: "%PDF-" });
  });

  test("a refusal to issue is said in words, and nothing is lost", async () => {
    const screen = await newScreenOnline(browser);
    const { page } = screen;
    await page.goto(await demo.newLink("office"));
    await open(page, jobPath(covered));
    await page.setRequestInterception(true);
    page.on("request", (request) => {
      if (request.method() !== "POST" || !request.url().endsWith("/records")) return void request.continue();
      const problem = {
        type: "urn:asburied:print-unavailable",
        title: "",
        status: 503,
        detail: "",
        code: "print-unavailable",
        place: "print",
        figures: {},
      };
      return void request.respond({ status: 503, contentType: "application/problem+json", body: JSON.stringify(problem) });
    });
    await page.waitForSelector("div.issue button");
    await page.locator("div.issue button").click();
    await page.waitForSelector("div.issue .answer.refused");
    expect(await textOf(page, "div.issue .answer")).toMatch(/^It was not issued\. .{20,}/);
    expect(await page.$$(".covering")).not.toEqual([]);
    await screen.close();
  });
});

describe("company owner", () => {
  test("the counts are those of the edge's findings", async () => {
    const { page } = screens.owner;
    await open(page, jobPath(covered));
    const view = await asked(page, jobPath(covered).replace("/jobs", "/api/jobs"));
    const findings = view.findings as { verdict: string; of: string; value?: number; asks?: string }[];
    const forElectrician = findings.filter(({ asks, value }) => asks !== undefined && value !== undefined);
    const judged = findings.filter((one) => !forElectrician.includes(one));
    const shown = await page.$$eval("table.counts tbody tr", (rows) =>
      rows.map((row) => [row.querySelector("th")?.textContent?.trim(), Number(row.querySelector("td")?.textContent)]),
    );
    const counted = new Map(shown as [string, number][]);
    const number = (wanted: (one: (typeof findings)[number]) => boolean): number => judged.filter(wanted).length;
    for (const verdict of verdicts.filter((one) => one !== "within"))
      expect(counted.get(verdict), verdict).toBe(number((one) => one.verdict === verdict));
    const [within, asAsked, taken] = ["within", "as asked", "taken"].map((word) => counted.get(word) ?? 0);
    expect(taken).toBe(number(({ verdict, of }) => verdict === "within" && ["picture", "reading"].includes(of)));
    expect((within ?? 0) + (asAsked ?? 0) + (taken ?? 0)).toBe(number(({ verdict }) => verdict === "within"));
    expect(within).toBeLessThanOrEqual(number(({ verdict, of }) => verdict === "within" && of === "check"));
    expect(within).toBeGreaterThan(5);
    expect(forElectrician.length).toBeGreaterThan(0);
    expect(counted.get("beside its figure: ask the electrician")).toBe(forElectrician.length);
    expect(counted.get("Covered")).toBe(5);
    expect(counted.get("Covered on a not yet")).toBe(1);
  });

  test("the first page counts every job", async () => {
    const { page } = screens.owner;
    await open(page, "/");
    await page.waitForFunction(() => document.querySelectorAll("table.counts").length === 2);
    expect(await page.$$eval(".counted h2", (all) => all.length)).toBe(2);
  });
});

describe.each(["crew", "office", "owner"] as const)("every page of %s", (role) => {
  const least = role === "crew" ? 72 : 48;

  test.each([phone, largePhone])(
    "fits $width by $height and is big enough to touch; axe finds nothing on the smaller one",
    async (size) => {
      const { page, troubles } = screens[role];
      await page.setViewport(size);
      for (const [name, path] of [
        ["list", "/"],
        ["open", jobPath(open_)],
        ["covered", jobPath(covered)],
      ] as const) {
        await open(page, path);
        await page.waitForFunction(
          () => !document.body.textContent?.includes("counting …") && !document.body.textContent?.includes("Reading …"),
        );
        const shot = join(shots, `${role}-${name}-${size.width}.png`);
        await page.screenshot({ path: shot as `${string}.png` });
        expect((await readFile(shot)).length).toBeGreaterThan(8_000);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), name).toBe(size.width);
        const touched = await targets(page);
        expect(touched.length).toBeGreaterThan(1);
        expect(
          touched.filter(({ height, width }) => height < least || width < 48),
          name,
        ).toEqual([]);
        if (role === "crew") expect(crowded(touched, 12), name).toEqual([]);
        if (size !== phone) continue;
        const { violations, rules } = await axe(page);
        expect(violations, name).toEqual([]);
        expect(rules).toBeGreaterThan(10);
      }
      expect(troubles).toEqual([]);
    },
  );
});

test("when the office does not answer the page says so, keeps what it shows, and goes on when it answers again", async () => {
  const screen = await newScreen(browser);
  const { page } = screen;
  await page.goto(await demo.newLink("crew"));
  await page.waitForSelector(".jobs li");
  await rightJob(page, address(jobPath(open_)));
  const before = await textOf(page, ".next");
  await page.setOfflineMode(true);
  // as when the page is looked at again
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
  await page.waitForSelector(".standing.waits");
  expect(await textOf(page, ".standing")).toMatch(/^No answer since \d+:\d\d:\d\d\.$/);
  expect(await textOf(page, ".next")).toBe(before);
  await page.setOfflineMode(false);
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
  await page.waitForFunction(() => document.querySelector(".standing.waits") === null);
  expect(await textOf(page, ".standing")).toMatch(/^Everything sent\. Read at/);
  await screen.close();
});

test("signing out ends it here: the page shows nothing of the company any more", async () => {
  const screen = await newScreen(browser);
  const { page } = screen;
  await page.goto(await demo.newLink("crew"));
  await page.waitForSelector(".jobs li");
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).active?.state === "activated");
  const title = await textOf(page, ".jobs h2");
  await page.locator("footer .who").click();
  await page.waitForSelector(".sign-out button");
  await page.locator(".sign-out button").click();
  await page.waitForFunction(() => document.querySelector("h1")?.textContent === "Sign in");
  expect(await textOf(page)).toMatch(/^Sign in\s+Office and company owner\s/);
  // nor after the phone is started anew without signal
  await page.setOfflineMode(true);
  await page.goto(new URL("/", page.url()).href);
  await page.waitForSelector("h1");
  expect(await textOf(page)).not.toContain(title);
  await screen.close();
});

const atRest = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => !/counting …|contando …|Reading …|Leyendo …/.test(document.body.textContent ?? ""));

/** The crew's further pages: what the job's page leads to and, of the job that has most, what those lead to in their turn. */
async function further(page: Page, which: number): Promise<readonly string[]> {
  const texts: string[] = [];
  const job = jobPath(which);
  const first = await linksIn(page, `main a[href^="${job}/"]`);
  const seen = new Set(first);
  const waiting = [...first];
  for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
    await follow(page, path);
    const { text, links } = await said(page);
    texts.push(text);
    if (which === covered && first.includes(path))
      for (const link of links)
        if (link.startsWith(`${job}/`) && !seen.has(link)) {
          seen.add(link);
          waiting.push(link);
        }
  }
  return texts;
}

/** Everything that a role can see, every part of it unfolded. */
async function whole(role: keyof typeof screens): Promise<string> {
  const { page } = screens[role];
  const texts: string[] = [];
  for (const which of [undefined, open_, covered]) {
    await open(page, which === undefined ? "/" : jobPath(which));
    await atRest(page);
    texts.push((await said(page)).text);
    if (role === "crew" && which !== undefined) texts.push(...(await further(page, which)));
  }
  if (role === "crew")
    for (const path of ["/phone/person", "/phone/unsent"]) {
      await follow(page, path);
      texts.push((await said(page)).text);
    }
  // the trade's word for what a ground-fault breaker watches
  return texts.join("\n").replaceAll(/falla a tierra/giu, "");
}
const found = (text: string, words: readonly RegExp[]): string[] =>
  words.flatMap((word) =>
    [...text.matchAll(new RegExp(word, "giu"))].map(({ index = 0 }) => text.slice(Math.max(0, index - 30), index + 40)),
  );

/** Each role in one language; every sentence in both is looked through by the unit tests of the dictionaries. */
const walks = { es: ["crew"], en: ["office", "owner"] } as const;

// English last: the files after this one look at the same company
describe.each(["es", "en"] as const)("in %s", (language) => {
  beforeAll(async () => {
    const { page } = screens.owner;
    const status = await page.evaluate(async (to) => {
      const { settings } = await (await fetch("/api/company")).json();
      const body = JSON.stringify({ ...settings.content, language: to });
      return (
        await fetch("/api/company/settings", { method: "PUT", headers: { "content-type": "application/json", "x-asburied": "1" }, body })
      ).status;
    }, language);
    expect(status).toBe(200);
  });

  test.each<keyof typeof screens>(walks[language])("no page of %s has a word that is kept off the screens, nor blame", async (role) => {
    const text = await whole(role);
    expect(text.length).toBeGreaterThan(2_000);
    expect(text).toContain(language === "en" ? "Wiring and safety are not judged" : "no se juzga el cableado");
    expect(found(text, language === "en" ? keptOffEnglish : keptOffSpanish)).toEqual([]);
    expect(found(text, kinderWords)).toEqual([]);
  });

  test("a word that is kept off would have been found", () => {
    const menu = language === "en" ? "Open the checklist.\nNo form\nA dashboard" : "La lista de control.\nUn formulario\nEl tablero";
    expect(found(menu, language === "en" ? keptOffEnglish : keptOffSpanish).length).toBe(3);
  });
});

test("the policy stops a style that somebody puts into the page, and these tests would have seen it", async () => {
  const screen = await newScreenOnline(browser);
  const { page, troubles } = screen;
  await page.goto(await demo.newLink("crew"));
  await page.waitForSelector("main");
  await page.evaluate(() => {
    const style = document.createElement("style");
    style.textContent = "body { display: none }";
    document.head.append(style);
    document.body.setAttribute("style", "display: none");
  });
  await page.waitForFunction(() => true);
  expect(await page.$eval("body", (body) => getComputedStyle(body).display)).toBe("block");
  expect(troubles.some((trouble) => trouble.startsWith("policy: style-src"))).toBe(true);
  await screen.close();
});
