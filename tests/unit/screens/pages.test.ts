import { describe, expect, test } from "vitest";
import type { Clearance, Finding, Verdict } from "#core/job/index.ts";
import { verdicts } from "#core/job/index.ts";
import { countsOf, exceptionsOf, findingBehind } from "#core/screens/parts/counts.ts";
import { newsAfter } from "#core/screens/parts/news.ts";
import { type ListedJob, nextOf, soonestFirst } from "#core/screens/parts/order.ts";
import { jobPath, placeOf } from "#core/screens/parts/place.ts";
import { shapeOfClearance, shapeOfCovered, shapeOfFinding, shapeOfVerdict } from "#core/screens/parts/shapes.ts";

interface Open {
  readonly covering: string;
  readonly done?: boolean;
  readonly state?: "clear" | "on word" | "not yet";
  readonly lines?: number;
  readonly about?: number;
}

const job = (title: string, ...coverings: readonly Open[]): ListedJob => ({
  job: title,
  title,
  entries: 1,
  state: {
    coverings: coverings.map((covering) => {
      const { state = "not yet" } = covering;
      return { title: { en: covering.covering }, done: false, clear: state !== "not yet", lines: 0, ...covering, state };
    }),
  },
});

describe("order of jobs", () => {
  test("what was announced soonest first, then nearest to clear, then what has nothing open", () => {
    const jobs = [
      job("all covered", { covering: "a", done: true }),
      job("far", { covering: "a", lines: 9 }),
      job("near", { covering: "a", lines: 1 }),
      job("on word", { covering: "a", state: "on word" }),
      job("clear", { covering: "a", state: "clear" }),
      job("tomorrow", { covering: "a", lines: 3, about: 2_000 }),
      job("today", { covering: "a", lines: 3 }, { covering: "b", lines: 3, about: 1_000 }),
    ];
    expect(soonestFirst(jobs).map(({ title }) => title)).toEqual(["today", "tomorrow", "clear", "on word", "near", "far", "all covered"]);
  });

  test("the list that was handed in stays as it was", () => {
    const jobs = [job("b", { covering: "a", done: true }), job("a", { covering: "a" })];
    soonestFirst(jobs);
    expect(jobs.map(({ title }) => title)).toEqual(["b", "a"]);
  });

  test("next is the covering announced soonest, else the first that is open", () => {
    expect(nextOf(job("x", { covering: "a", done: true }, { covering: "b" }, { covering: "c" }))?.covering).toBe("b");
    expect(nextOf(job("x", { covering: "b" }, { covering: "c", about: 5 }))?.covering).toBe("c");
    expect(nextOf(job("x", { covering: "a", done: true }))).toBeUndefined();
  });
});

describe("places", () => {
  test("a job's path leads back to the job", () => {
    expect(placeOf(jobPath("A9_x-1"))).toEqual({ page: "job", job: "A9_x-1", rest: [] });
    expect(placeOf("/")).toEqual({ page: "jobs" });
    expect(placeOf(jobPath("x", "step", "a b"))).toEqual({ page: "job", job: "x", part: "step", rest: ["a b"] });
  });

  test.each(["/jobs", "/jobs/", "/jobs/a b", "/jobs/../x", "/phone", "/phone/a/b", "/elsewhere", `/jobs/${"a".repeat(65)}`])(
    "%s is no place",
    (path) => {
      expect(placeOf(path)).toEqual({ page: "unknown" });
    },
  );
});

describe("news", () => {
  const problem = { type: "", title: "", status: 401, detail: "", code: "session-ended", place: "", figures: {} };

  test("no answer keeps what is shown and says since when", () => {
    const read = newsAfter({}, { is: "given", value: "job" }, 10);
    expect(read).toEqual({ value: "job", readAt: 10 });
    const away = newsAfter(newsAfter(read, { is: "away" }, 20), { is: "away" }, 30);
    expect(away).toEqual({ value: "job", readAt: 10, awaySince: 20 });
    expect(newsAfter(away, { is: "given", value: "newer" }, 40)).toEqual({ value: "newer", readAt: 40 });
  });

  test("a refusal takes away what was shown: the session may have been withdrawn", () => {
    expect(newsAfter({ value: "job", readAt: 10 }, { is: "refused", problem }, 20)).toEqual({ problem, readAt: 20 });
  });
});

const finding = (verdict: Verdict, more: Partial<Finding> = {}): Finding => ({
  step: "s",
  check: "c",
  of: "check",
  verdict,
  weight: "holds",
  entries: [],
  says: { key: "value.within", figures: {} },
  ...more,
});

const covered = { at: 1, noLaterThan: false, laterDoubted: false } as const;

describe("counts", () => {
  test("each verdict is counted for itself, each covering as it was covered", () => {
    const clearances: Clearance[] = [
      { covering: "a", state: "clear", lines: [], covered: { ...covered, shown: "clear" } },
      { covering: "b", state: "not yet", lines: [], covered: { ...covered, shown: "not yet" } },
      { covering: "c", state: "not yet", lines: [], covered: { ...covered, shown: "clear", laterDoubted: true } },
      { covering: "d", state: "not yet", lines: [] },
      { covering: "e", state: "clear", lines: [], covered: { ...covered, noLaterThan: true } },
      { covering: "f", state: "on word", lines: [], covered: { ...covered, shown: "on word" } },
    ];
    const cord = finding("within", { asks: "electrician", value: 1 });
    const untaken = finding("not taken", { asks: "electrician" });
    const answer = finding("within", { of: "answer" });
    const oneOf = finding("within", { says: { key: "check.one-of", figures: {} } });
    const findings = [finding("within"), cord, finding("outside"), untaken, answer, oneOf, finding("within", { of: "picture" })];
    expect(countsOf({ findings, clearances })).toEqual({
      findings: {
        within: 1,
        "as asked": 2,
        taken: 1,
        outside: 1,
        "too close to call": 0,
        "not taken": 1,
        "could not be taken": 0,
        "does not apply": 0,
        "beside its figure": 1,
      },
      covered: 5,
      open: 1,
      onNotYet: 1,
      onWord: 1,
      unsaid: 1,
      laterDoubted: 1,
    });
  });

  test("what to read first: what is not within and what passed by a decision, in order; what is missing apart", () => {
    const granted = finding("not taken", { by: { way: "go-ahead", entry: "e" } });
    const reworked = finding("within", { by: { way: "rework", entry: "e" }, beforeRework: [{ value: 1, verdict: "outside" }] });
    const all = [
      finding("within"),
      finding("not taken"),
      finding("not taken", { weight: "open" }),
      reworked,
      granted,
      finding("could not be taken"),
      finding("too close to call"),
      finding("outside"),
    ];
    const { found, missing } = exceptionsOf(all);
    expect(found.map(({ verdict }) => verdict)).toEqual(["outside", "too close to call", "could not be taken", "not taken", "within"]);
    expect(found.slice(3)).toEqual([granted, reworked]);
    expect(missing).toEqual([all[1]]);
  });

  test("a job with nothing entered is all missing, not all right", () => {
    const { found, missing } = exceptionsOf([finding("not taken"), finding("not taken", { weight: "asked" })]);
    expect([found.length, missing.length]).toEqual([0, 2]);
  });

  test("a line finds the finding behind it, by its tag too", () => {
    const [a, b] = [finding("outside", { tag: "A" }), finding("outside", { tag: "B" })];
    expect(findingBehind([a, b], { check: "c", tag: "B" })).toBe(b);
    expect(findingBehind([a, b], { check: "c" })).toBeUndefined();
    expect(findingBehind([finding("not taken", { of: "picture", check: "i" })], { item: "i" })?.check).toBe("i");
  });
});

test("no two states that must be told apart without colour have the same shape", () => {
  expect(new Set(verdicts.map(shapeOfVerdict)).size).toBe(5);
  expect(shapeOfVerdict("within")).not.toBe(shapeOfVerdict("outside"));
  expect(new Set((["clear", "on word", "not yet"] as const).map(shapeOfClearance)).size).toBe(3);
});

test("nothing is drawn as within that nobody showed, and no verdict of what a licensed person decides", () => {
  expect(shapeOfCovered({ laterDoubted: false })).toBe("undecided");
  expect(shapeOfCovered({ ...covered, shown: "clear" })).toBe("within");
  expect(shapeOfCovered({ ...covered, shown: "on word" })).toBe("word");
  expect(shapeOfCovered({ ...covered, shown: "on word", laterDoubted: true })).toBe("undecided");
  expect(shapeOfCovered({ ...covered, shown: "not yet", laterDoubted: true })).toBe("outside");
  for (const verdict of verdicts) expect(shapeOfFinding(finding(verdict, { asks: "electrician", value: 1 }))).toBe("apart");
  expect(shapeOfFinding(finding("not taken", { asks: "electrician" }))).toBe("missing");
  const unseen = { key: "picture.not-looked-at", figures: {} };
  expect(shapeOfFinding(finding("within", { of: "picture", says: unseen }))).toBe("apart");
  expect(shapeOfFinding(finding("outside"))).toBe("outside");
});
