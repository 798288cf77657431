import { describe, expect, test } from "vitest";
import type { Clearance, Finding, Verdict } from "#core/job/index.ts";
import { verdicts } from "#core/job/index.ts";
import { countsOf, exceptionsOf, findingBehind } from "#core/screens/parts/counts.ts";
import { newsAfter } from "#core/screens/parts/news.ts";
import { type ListedJob, nextOf, soonestFirst } from "#core/screens/parts/order.ts";
import { jobPath, placeOf } from "#core/screens/parts/place.ts";
import { shapeOfClearance, shapeOfVerdict } from "#core/screens/parts/shapes.ts";

interface Open {
  readonly covering: string;
  readonly done?: boolean;
  readonly clear?: boolean;
  readonly lines?: number;
  readonly about?: number;
}

const job = (title: string, ...coverings: readonly Open[]): ListedJob => ({
  job: title,
  title,
  entries: 1,
  state: { coverings: coverings.map((covering) => ({ title: null, done: false, clear: false, lines: 0, ...covering })) },
});

describe("order of jobs", () => {
  test("what was announced soonest first, then nearest to clear, then what has nothing open", () => {
    const jobs = [
      job("all covered", { covering: "a", done: true }),
      job("far", { covering: "a", lines: 9 }),
      job("near", { covering: "a", lines: 1 }),
      job("clear", { covering: "a", clear: true }),
      job("tomorrow", { covering: "a", lines: 3, about: 2_000 }),
      job("today", { covering: "a", lines: 3 }, { covering: "b", lines: 3, about: 1_000 }),
    ];
    expect(soonestFirst(jobs).map(({ title }) => title)).toEqual(["today", "tomorrow", "clear", "near", "far", "all covered"]);
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
    expect(placeOf(jobPath("A9_x-1"))).toEqual({ page: "job", job: "A9_x-1" });
    expect(placeOf("/")).toEqual({ page: "jobs" });
  });

  test.each(["/jobs", "/jobs/", "/jobs/a b", "/jobs/../x", "/jobs/a/b", "/elsewhere", `/jobs/${"a".repeat(65)}`])(
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

describe("counts", () => {
  test("each verdict is counted for itself, each covering as it was covered", () => {
    const covered = { at: 1, noLaterThan: false, laterDoubted: false } as const;
    const clearances: Clearance[] = [
      { covering: "a", state: "clear", lines: [], covered: { ...covered, shown: "clear" } },
      { covering: "b", state: "not yet", lines: [], covered: { ...covered, shown: "not yet" } },
      { covering: "c", state: "not yet", lines: [], covered: { ...covered, shown: "clear", laterDoubted: true } },
      { covering: "d", state: "not yet", lines: [] },
    ];
    const counts = countsOf({ findings: [finding("within"), finding("within"), finding("outside"), finding("not taken")], clearances });
    expect(counts).toEqual({
      findings: { within: 2, outside: 1, "too close to call": 0, "not taken": 1, "could not be taken": 0, "does not apply": 0 },
      covered: 3,
      open: 1,
      onNotYet: 1,
      laterDoubted: 1,
    });
  });

  test("what to read first: what is not within, and whatever passed by a decision", () => {
    const decided = finding("within", { by: { way: "rework", entry: "e" } });
    const all = [
      finding("within"),
      finding("not taken"),
      finding("outside"),
      finding("too close to call"),
      decided,
      finding("could not be taken"),
    ];
    expect(exceptionsOf(all).map(({ verdict }) => verdict)).toEqual(["outside", "too close to call", "within", "could not be taken"]);
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
