import { describe, expect, test } from "vitest";
import {
  answerView,
  companyObserved,
  type FindingObserved,
  type JobObserved,
  type Observed,
  qualitySpeaking,
  questions,
  type Taught,
  upTo,
  usualAsking,
} from "#core/quality/index.ts";

const DAY_MS = 86_400_000;
const finding = (first: "within" | "outside", at: number): FindingObserved => ({
  check: "rim",
  of: "check",
  step: "set",
  weight: "holds",
  holds: "cover",
  first,
  verdict: "within",
  reworked: false,
  afterCovering: false,
  at,
});
/** One job on the 10th of a month of 2025, its step right or not. */
const job = (month: number, name: string, first: "within" | "outside"): JobObserved => {
  const at = Date.UTC(2025, month - 1, 10, 12);
  const installed = new Date(at).toISOString().slice(0, 10);
  return {
    job: `${name}-${month}`,
    title: name,
    sheet: "sheet",
    opened: at - 5 * DAY_MS,
    installed,
    until: installed,
    foreman: "a",
    crew: ["a"],
    coverings: [],
    findings: [finding(first, at)],
    readings: [],
    pictures: [],
    reworks: [],
    callbacks: [],
    parts: [],
    phoneTime: 0,
  };
};
/** Eight months with three jobs each: one of three goes wrong until May, none from June on. */
const jobs = Array.from({ length: 8 }, (_, i) => i + 1).flatMap((month) => [
  job(month, "x", "within"),
  job(month, "y", "within"),
  job(month, "z", month < 6 ? "outside" : "within"),
]);
const line: Taught = { entry: "t", day: "2025-05-20", persons: [], step: "set" };
const company = (taught: readonly Taught[]): Observed["company"] => ({ taught, studies: [], instrumentChecks: [], sheets: [] });
const question = questions.find(({ id }) => id === "taught");
if (question === undefined) throw new Error("no such question");
const speaking = qualitySpeaking({ language: "en", units: "inch" }, { people: {}, jobs: {}, sheets: {}, instruments: {} });
const answer = (taught: readonly Taught[]) => question.answer({ jobs, company: company(taught) }, usualAsking("2025-12-31"));

describe("before and after teaching", () => {
  test("15 jobs before and 9 after the day: 10 of 15 right, 9 of 9", () => {
    const [row] = answer([line]).tables[0]?.rows ?? [];
    expect(row?.cells.map(({ value }) => value).slice(2, 7)).toEqual([undefined, 15, 10 / 15, 9, 1]);
    expect(row?.cells[2]?.label).toEqual({ of: "word", id: "whole-crew" });
    expect(row?.note).toBe("too few to tell");
  });

  test("the months are drawn with the line where the day falls: between the fifth point and the sixth", () => {
    const view = answerView(answer([line]), speaking);
    const months = view.pictures.find(({ title }) => title === "Share right the first time, by month: set");
    expect(months?.marks.filter(({ is }) => is === "across")).toEqual([
      { is: "across", axis: "x", at: 5.5, look: "dotted", label: "taught" },
    ]);
    expect(view.tables.find(({ id }) => id === "taught-months")?.rows.map(({ cells }) => cells.slice(2, 4))).toEqual([
      ...Array.from({ length: 5 }, () => ["3", "2"]),
      ...Array.from({ length: 3 }, () => ["3", "3"]),
    ]);
  });

  test("taught twice is two lines in one picture; on days between the same months it is one line", () => {
    const lines = (days: readonly string[]) =>
      answerView(answer(days.map((day) => ({ ...line, entry: day, day }))), speaking)
        .pictures.filter(({ title }) => title.startsWith("Share right"))
        .map(({ marks }) => marks.flatMap((mark) => (mark.is === "across" ? [mark.at] : [])));
    expect(lines(["2025-03-02", "2025-05-20"])).toEqual([[2.5, 5.5]]);
    expect(lines(["2025-05-20", "2025-05-25"])).toEqual([[5.5]]);
  });
});

describe("a fact of the company that was a mistake", () => {
  const entry = (id: string, kind: string, what: unknown) => ({ id, kind, what, at: 0 });
  test("is counted no more, and what takes it back is no fact itself", () => {
    const entries = [
      entry("t1", "taught", { step: "set", day: "2025-05-20" }),
      entry("t2", "taught", { step: "set", day: "2025-06-20" }),
      entry("b", "taken-back", { entry: "t1" }),
    ];
    expect(companyObserved(entries, "UTC").taught.map(({ day }) => day)).toEqual(["2025-06-20"]);
  });
});

describe("asked up to a day that is past", () => {
  const noon = (day: string): number => Date.parse(`${day}T12:00:00Z`);
  const called = {
    ...job(3, "called", "within"),
    callbacks: [
      { entry: "c1", symptom: "noise", day: "2025-04-30", confirmed: true },
      { entry: "c2", symptom: "noise", day: "2025-05-01", confirmed: true },
    ],
    coverings: [{ covering: "cover", at: noon("2025-05-02"), person: "a", shown: "clear" as const, openedAgain: true }],
    // ten in the evening of April in a zone four hours behind UTC, which is May there already
    reworks: [
      { about: "rim", step: "set", at: Date.parse("2025-05-01T02:00:00Z"), person: "a", minutes: 5 },
      { about: "rim", step: "set", at: Date.parse("2025-05-01T04:00:00Z"), person: "a", minutes: 7 },
    ],
  };
  const past = upTo("2025-04-30", "America/New_York");

  test("later callbacks, reworks and coverings are left out, by the days of the company's zone", () => {
    const seen = past.job(called);
    expect(seen?.callbacks.map(({ entry }) => entry)).toEqual(["c1"]);
    expect(seen?.reworks.map(({ minutes }) => minutes)).toEqual([5]);
    expect(seen?.coverings).toEqual([{ covering: "cover", openedAgain: false }]);
  });

  test("a job that was opened later is not there at all; what was taught later drew no line yet", () => {
    expect(past.job(job(6, "later", "within"))).toBeUndefined();
    expect(past.company(company([line])).taught).toEqual([]);
    expect(upTo("2025-05-20", "UTC").company(company([line])).taught).toEqual([line]);
  });
});
