import type { ForPhone } from "../demo/index.ts";
import type { WalkPage } from "./page.ts";

export interface Walk {
  readonly at: WalkPage;
  readonly jobs: ForPhone["jobs"];
  /** JPEGs that lie on the phone. */
  readonly photos: readonly [string, string, string];
}

export interface ScreenShown {
  readonly name: string;
  /** Goes there from wherever the walk is. */
  readonly show: (walk: Walk) => Promise<void>;
}

const inside = (job: string, ...parts: readonly string[]): string => ["/jobs", job, ...parts].join("/");

const typedReading = "label.typed:has(+ p[role=alert]) input";
const enterReading = ".enter-reading";

/** One reading of a set-up; the next place comes by itself. */
async function point({ at }: Walk, text: string): Promise<void> {
  await at.type(typedReading, text);
  const shows = `document.querySelector(${JSON.stringify(enterReading)})?.textContent`;
  const before = await at.page.evaluate(shows);
  await at.press(enterReading);
  await at.until(`${shows} !== ${JSON.stringify(before)}`);
}

async function points(walk: Walk, texts: readonly string[]): Promise<void> {
  for (const text of texts) await point(walk, text);
}

const rimSetUp = "level-along-round";

/** Every screen of the crew's phone, in the order of a walk: what one of them enters stands on those after it. */
export const crewScreens: readonly ScreenShown[] = [
  { name: "first", show: ({ at }) => at.open("/", ".jobs li") },
  { name: "right-job", show: ({ at, jobs }) => at.open(inside(jobs.notYet), ".right-job") },
  {
    name: "job-not-yet",
    show: async ({ at, jobs }) => {
      await at.press(".right-job > .target.main");
      await at.open(inside(jobs.notYet), ".large-clearance");
    },
  },
  {
    name: "job-clear",
    show: async ({ at, jobs }) => {
      await at.open(inside(jobs.clear), ".right-job");
      await at.press(".right-job > .target.main");
      await at.wait(".large-clearance");
    },
  },
  {
    name: "job-covered",
    show: async ({ at, jobs }) => {
      await at.open(inside(jobs.covered), ".right-job");
      await at.press(".right-job > .target.main");
      await at.wait(".step-links");
    },
  },
  { name: "cover-not-yet", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "cover", "fill-trench"), ".hold") },
  { name: "cover-clear", show: ({ at, jobs }) => at.open(inside(jobs.clear, "cover", "backfill-basin"), ".hold") },
  {
    name: "ways",
    show: async ({ at, jobs }) => {
      await at.open(inside(jobs.notYet, "cover", "fill-trench"), ".held-line");
      await at.press(".held-line .others");
      await at.wait(".choices .target");
    },
  },
  {
    name: "way",
    show: async ({ at }) => {
      await at.press('.choices a[href*="/go-ahead-by-telephone/"]');
      await at.wait("textarea");
    },
  },
  { name: "step", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "step", "trench-open"), ".choices") },
  { name: "step-tagged", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "step", "pipe-glued", "1"), ".choices") },
  { name: "names", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "names", "glue-session"), ".typed") },
  {
    name: "reading-tape",
    show: async ({ at, jobs }) => {
      await at.open(inside(jobs.notYet, "take", "cover-shallowest"), ".tape");
      await at.type(typedReading, "12 5/16");
    },
  },
  { name: "reading-tie", show: ({ at, jobs }) => at.open(inside(jobs.covered, "take", "lid-tie-1"), ".tape") },
  {
    name: "reading-moment",
    show: ({ at, jobs }) => at.open(inside(jobs.notYet, "take", "last-joint-made", "1"), "input[type=datetime-local]"),
  },
  {
    name: "who-enters",
    show: async ({ at, jobs }) => {
      await at.open(inside(jobs.notYet, "take", "cover-shallowest"), ".tape");
      await at.press(enterReading);
      await at.wait("dialog[open] .choices button");
    },
  },
  {
    name: "reading-in-doubt",
    show: async ({ at, jobs }) => {
      await at.press("dialog[open] .choices button");
      await at.page.waitForSelector("dialog[open]", { hidden: true });
      await at.open(inside(jobs.clear, "take", "gap-along"), ".tape");
      await at.type(typedReading, "7/16");
      await at.press(enterReading);
      await at.wait(".verdict-now + .choices");
    },
  },
  { name: "answer", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "take", "no-splices"), ".choices button") },
  {
    name: "next-by-itself",
    show: async ({ at }) => {
      await at.press("main > .choices button");
      await at.wait(".just-entered");
    },
  },
  {
    name: "not-taken",
    show: ({ at, jobs }) => at.open(inside(jobs.notYet, "ways", "-", "item:no-belly", "-"), ".choices"),
  },
  {
    name: "move",
    show: async ({ at, jobs }) => {
      await at.open(inside(jobs.notYet, "take", "coldest-temperature", "1"), ".readings-so-far");
      await at.press(".readings-so-far a");
      await at.wait(".choices button");
    },
  },
  { name: "set-up-begin", show: ({ at, jobs }) => at.open(inside(jobs.clear, "set-up", rimSetUp), ".choices .target.main") },
  {
    name: "set-up-midway",
    show: async (walk) => {
      await walk.at.press(".choices .target.main");
      await walk.at.wait(".call-out");
      await points(walk, ["28 5/16", "41 15/16", "41 13/16"]);
    },
  },
  {
    name: "set-up-done",
    show: async (walk) => {
      await points(walk, ["42 1/16", "42 9/16", "36 15/16"]);
      await walk.at.type(typedReading, "28 5/16");
      await walk.at.press(enterReading);
      await walk.at.wait(".verdict-now");
    },
  },
  { name: "set-out", show: ({ at, jobs }) => at.open(inside(jobs.clear, "set-out"), ".set-out") },
  { name: "set-out-rod", show: ({ at, jobs }) => at.open(inside(jobs.clear, "set-out", "rim"), ".tape") },
  { name: "set-out-stand", show: ({ at, jobs }) => at.open(inside(jobs.clear, "set-out", "new"), ".choices") },
  { name: "water", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "water"), ".till") },
  { name: "tonight", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "tonight"), ".night-lines") },
  { name: "where", show: ({ at, jobs }) => at.open(inside(jobs.covered, "where"), ".plan") },
  { name: "picture", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "take", "whole-run"), ".shutter input") },
  {
    name: "picture-in-hand",
    show: async ({ at, photos }) => {
      await at.choose(".shutter input", photos[0]);
      await at.wait("img.small-photo");
    },
  },
  { name: "measure", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "measure", "cover-shallowest"), ".shutter input") },
  {
    name: "measure-no-card",
    show: async ({ at, photos: [photo] }) => {
      await at.choose(".files:not(.shutter) input", photo);
      await at.wait("main > .stands-out");
    },
  },
  { name: "lens", show: ({ at }) => at.open("/phone/lens", "main .files input") },
  { name: "tape-picture", show: ({ at, jobs }) => at.open(inside(jobs.notYet, "tape-picture", "cover-shallowest"), ".shutter input") },
  { name: "burst", show: ({ at, jobs }) => at.open(inside(jobs.clear, "burst"), ".files input") },
  {
    name: "burst-in-hand",
    show: async ({ at, photos }) => {
      await at.choose(".files input", photos[1], photos[2]);
      await at.until('document.querySelector("main > [role=status]")?.childElementCount === 0');
      await at.wait(".in-hand img.small-photo");
    },
  },
  { name: "unsent", show: ({ at }) => at.open("/phone/unsent", ".unsent-count, progress, h2") },
  { name: "person", show: ({ at }) => at.open("/phone/person", ".choices button") },
  { name: "not-here", show: ({ at }) => at.open(inside("0".repeat(32)), "main p") },
];
