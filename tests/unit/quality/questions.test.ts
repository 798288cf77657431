import { describe, expect, test } from "vitest";
import {
  type Answer,
  type Asking,
  type FindingObserved,
  type JobObserved,
  type Observed,
  type QuestionId,
  questions,
  type ReadingObserved,
  usualAsking,
} from "#core/quality/index.ts";
import { companyFrom, planted, today } from "#infra/company/index.ts";

const nothing: Observed["company"] = { taught: [], studies: [], instrumentChecks: [], sheets: [] };
const usual = usualAsking("2026-03-01");

function ask(
  id: QuestionId,
  jobs: readonly JobObserved[],
  asking: Partial<Asking> = {},
  company: Partial<Observed["company"]> = {},
): Answer {
  const question = questions.find((one) => one.id === id);
  if (!question) throw new Error(`no question ${id}`);
  return question.answer({ jobs, company: { ...nothing, ...company } }, { ...usual, ...asking });
}

const finding = (check: string, more: Partial<FindingObserved> = {}): FindingObserved => ({
  check,
  of: "check",
  step: "set",
  weight: "holds",
  holds: "cover",
  first: "within",
  verdict: "within",
  reworked: false,
  afterCovering: false,
  ...more,
});
const job = (name: string, findings: readonly FindingObserved[], more: Partial<JobObserved> = {}): JobObserved => ({
  job: name,
  title: name,
  sheet: "sheet",
  opened: Date.UTC(2025, 0, 1),
  installed: "2025-01-10",
  until: "2025-01-10",
  foreman: "a",
  crew: ["a"],
  coverings: [{ covering: "cover", at: Date.UTC(2025, 0, 9), person: "a", shown: "clear", openedAgain: false }],
  findings,
  readings: [],
  pictures: [],
  reworks: [],
  callbacks: [],
  parts: [],
  phoneTime: 0,
  ...more,
});
const cells = (answer: Answer, table: string, place = 0): readonly (number | string | undefined)[] =>
  answer.tables.find(({ id }) => id === table)?.rows[place]?.cells.map(({ value, label }) => label?.id ?? value) ?? [];

describe("right the first time", () => {
  test("four corners of one basin are one event; too close to call stands apart; what does not apply is out", () => {
    const corners = (first: FindingObserved["first"]) => ["a", "b", "c", "d"].map((check) => finding(check, { first }));
    const jobs = [
      job("right", corners("within")),
      job("wrong", [...corners("within").slice(1), finding("a", { first: "outside", reworked: true })]),
      job("close", [...corners("within").slice(1), finding("a", { first: "too close to call" })]),
      job("late", [...corners("within").slice(1), finding("a", { afterCovering: true })]),
      job("none", corners("not taken")),
      job(
        "out",
        corners("does not apply").map((one) => ({ ...one, verdict: "does not apply" as const })),
      ),
    ];
    // asked 5 (one out), right 1, not right 2, too close 1, nothing entered 1; the share is of 4
    expect(cells(ask("first-time-right", jobs), "first-time-right-steps").slice(0, 7)).toEqual(["set", 5, 1, 2, 1, 1, 0.25]);
  });

  test("says too few before anything else", () => {
    expect(ask("first-time-right", [job("one", [finding("a")])]).tooFew?.figures).toEqual({ jobs: 1, wanted: 12 });
  });
});

describe("holds", () => {
  test("asked, said not yet, found, let pass and nothing came of it, minutes waited", () => {
    const call = { entry: "c", symptom: "no flow", day: "2025-06-01", confirmed: true };
    const jobs = [
      job("a", [finding("x", { first: "outside", reworked: true, waited: 30 * 60_000 })]),
      job("b", [finding("x", { first: "outside", verdict: "outside", passage: "concession" })]),
      job("c", [finding("x", { first: "outside", verdict: "outside", passage: "go-ahead" })], { callbacks: [call] }),
      job("d", [finding("x")]),
      job("e", [finding("x", { first: "not taken", verdict: "not taken" })]),
    ];
    expect(cells(ask("worth-of-holds", jobs), "holds")).toEqual(["x", 4, 3, 1, 0.25, 30, 2, 1]);
  });
});

describe("sampling", () => {
  test("5 of 40 measured again and none off: up to 17 could still be", () => {
    // C(23,5)/C(40,5) = 33,649/658,008 = 0.051; with 18 off C(22,5) = 26,334 of them, 0.040
    const answer = ask("sampling", [], { sample: { lot: 40, looked: 5, off: 0 } });
    expect(answer.says[0]?.figures).toEqual({ looked: 5, lot: 40, off: 0, most: 17, sure: 95 });
    // none at all: (40 - n)/40 <= 0.05
    expect(cells(answer, "looks-needed")).toEqual([0, 38]);
  });
});

describe("instruments", () => {
  const reading = (entry: string, at: number): ReadingObserved => ({
    entry,
    item: "rim",
    step: "set",
    typed: "1 in",
    unit: "in",
    kind: "length",
    at,
    person: "a",
    phone: "p",
    instrument: "laser",
    afterCovering: false,
  });
  const check = (entry: string, at: number, off: number) =>
    ({ entry, instrument: "laser", at, person: "a", way: "laser two ways", off, distance: 30_480_000, allowed: 1_588 }) as const;

  test("a bad check puts in doubt what was read since the last good one, and no more", () => {
    const jobs = [
      job("a", [], { readings: [reading("r1", 10), reading("r2", 30)] }),
      job("b", [], { readings: [reading("r3", 40), reading("r4", 60)] }),
    ];
    const answer = ask("instruments", jobs, {}, { instrumentChecks: [check("good", 20, -1_000), check("bad", 50, 3_000)] });
    expect(answer.signals.map(({ what, says }) => [what, says.figures])).toEqual([["instrument off", { readings: 2, jobs: 2 }]]);
    expect(answer.tables.find(({ id }) => id === "readings-in-doubt")?.rows.length).toBe(2);
  });
});

describe("came back", () => {
  test("only jobs that had the time are in a share of a year", () => {
    const called = (day: string) => [{ entry: day, symptom: "no flow", day, confirmed: false }];
    const jobs = [
      job("early", [], { installed: "2024-05-01", callbacks: called("2024-12-24") }),
      job("late", [], { installed: "2024-05-20", callbacks: called("2025-07-01") }),
      job("never", [], { installed: "2024-05-31" }),
      job("young", [], { installed: "2025-12-01" }),
      // called back already, and yet without the year: to count it alone would make the month look worse than it is
      job("young and called", [], { installed: "2025-12-02", callbacks: called("2025-12-20") }),
    ];
    const answer = ask("came-back", jobs);
    // 3 had a year, one was called back within it; all three had the winter to 1 April 2025, one came back in it
    expect(cells(answer, "came-back-months", 0)).toEqual(["2024-05", 3, 3, 1, 1 / 3, 3, 1, 1 / 3]);
    expect(cells(answer, "came-back-months", 1)).toEqual(["2025-12", 2, 0, 0, undefined, 0, 0, undefined]);
  });
});

describe("came back: nothing so far", () => {
  test("no callback among 20 that had a year is no certainty: up to 17 % could be", () => {
    const jobs = Array.from({ length: 20 }, (_, i) => job(`j${i}`, [], { installed: "2024-05-10" }));
    // 1 - 0.025^(1/20) = 0.168
    expect(ask("came-back", jobs).says[0]?.figures).toEqual({ share: 0, low: 0, high: 16.8 });
  });
});

describe("persons", () => {
  const company = companyFrom({ seed: 5, jobs: 60, effects: planted(60) });

  test("nobody is named in a comparison while the owner has not asked for it", () => {
    for (const id of ["foremen", "readings-that-carry-nothing", "first-time-right"] as const) {
      const { signals, tables } = ask(id, company.jobs, { today });
      expect(signals.map(({ about }) => about.of)).not.toContain("person");
      expect(tables.flatMap(({ rows }) => rows.flatMap(({ cells: all }) => all.map(({ label }) => label?.of)))).not.toContain("person");
    }
  });

  test("with it, five foremen stand in the funnel and are drawn towards all", () => {
    const { pictures, tables } = ask("foremen", company.jobs, { today, persons: true });
    expect(pictures[0]?.draws === "funnel" ? pictures[0].points.length : 0).toBe(5);
    const rows = tables[0]?.rows ?? [];
    const [least, most] = [rows[0]?.cells, rows.at(-1)?.cells];
    const share = (of: typeof least, place: number): number => Number(of?.[place]?.value);
    // the shares lie nearer to each other once they are drawn towards all
    expect(share(most, 4) - share(least, 4)).toBeLessThan(share(most, 3) - share(least, 3));
  });
});

describe("another limit", () => {
  test("counts what it would have caught, and says nothing of what came back with too few confirmed callbacks", () => {
    const jobs = Array.from({ length: 20 }, (_, i) =>
      job(`j${i}`, [finding("x", { kind: "length", firstValue: i * 1_000, lower: 0, upper: 18_500 })]),
    );
    const answer = ask("changed-limit", jobs, { limit: { check: "x", lower: 0, upper: 14_500 } });
    // 19,000 lies beyond the limit of now; 15,000 to 19,000 beyond the other
    expect(answer.says[0]?.figures).toEqual({ n: 20, now: 1, asked: 5, more: 4, share: 25 });
    expect(answer.says[1]?.key).toBe("changed-limit.back-too-few");
    expect(answer.tables.map(({ id }) => id)).not.toContain("changed-limit-back");
  });
});

describe("every question", () => {
  const company = companyFrom({ seed: 11, jobs: 80, effects: planted(60) });
  const parts = ["coverings", "findings", "readings", "pictures", "reworks", "callbacks", "parts"] as const;

  test.each(questions.map(({ id }) => id))("%s is answered from the parts that it names, and no others", (id) => {
    const question = questions.find((one) => one.id === id);
    if (!question) throw new Error(id);
    const left = Object.fromEntries(parts.filter((part) => !question.reads.includes(part)).map((part) => [part, []]));
    const asking = { ...usual, today, persons: true, limit: { check: "step-one-height", upper: 110_000 } };
    const whole = question.answer(company, asking);
    expect(question.answer({ ...company, jobs: company.jobs.map((one) => ({ ...one, ...left })) }, asking)).toEqual(whole);
  });

  test.each(questions.map(({ id }) => id))("%s: an answer is plain data: it comes back from JSON as it was", (id) => {
    const answer = ask(id, company.jobs, { today, persons: true }, company.company);
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });

  test("days asked for leave out what was installed on other days", () => {
    const inYear = company.jobs.filter(({ installed = "" }) => installed >= "2024-01-01" && installed <= "2024-12-31");
    const { counted } = ask("first-time-right", company.jobs, { today, from: "2024-01-01", to: "2024-12-31" });
    expect(counted[0]?.figures).toEqual({ jobs: inYear.length });
    expect(inYear.length).toBeLessThan(company.jobs.length);
  });
});

test("what a question keeps of each job answers as the whole jobs do", () => {
  const observed = companyFrom({ seed: 3, jobs: 120, effects: planted(120) });
  const asking: Asking = { ...usualAsking(today), persons: true };
  const keeping = questions.filter(({ keeps }) => keeps !== undefined);
  expect(keeping.length).toBeGreaterThan(6);
  for (const { id, keeps, answer } of keeping) {
    const kept = observed.jobs.map(keeps?.(observed.company) ?? ((job) => job));
    expect(JSON.stringify(kept).length, id).toBeLessThan(JSON.stringify(observed.jobs).length);
    expect(answer({ jobs: kept, company: observed.company }, asking), id).toEqual(answer(observed, asking));
  }
});
