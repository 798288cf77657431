import { describe, expect, test } from "vitest";
import { type Entry, factsOf, findings, isReadAgainAsked, type JobLedger, jobState, readAgainDue, readSheet } from "#core/job/index.ts";
import { observe, questions, usualAsking } from "#core/quality/index.ts";
import { defaultSheetJson } from "#infra/sheets/index.ts";
import { recordOf } from "../../helpers/record.ts";
import { twoDayLedger } from "../../samples/two-day-job.ts";

const read = readSheet(defaultSheetJson);
if (!read.ok) throw new Error(read.refusal.code);
const whole = twoDayLedger(read.value, { order: "as listed" });
const first = read.value.coverings[0]?.id ?? "";
const chosen = Array.from({ length: 200 }, (_, i) => `job-${i}`).find((job) => isReadAgainAsked(job, first)) ?? "";
const untilCovered: JobLedger = {
  ...whole,
  entries: whole.entries.slice(
    0,
    whole.entries.findIndex(({ kind }) => kind === "covered"),
  ),
};
const state = jobState(untilCovered);
const due = readAgainDue(chosen, state, findings(state));

/** The same readings by another person, each as it was read first. */
const again = (from: JobLedger, change: (typed: string) => string = (typed) => typed): readonly Entry[] => {
  const last = from.entries.at(-1);
  if (last === undefined) throw new Error("no entries");
  const readings = new Map(factsOf(state, "reading-taken").map((fact) => [fact.id, fact.what]));
  return due.map(({ reading, item, tag, setUp }, i) => {
    const { typed, unit } = readings.get(reading) ?? { typed: "", unit: "in" };
    const what = { reading, item, typed: change(typed), unit, ...(tag ? { tag } : {}), ...(setUp ? { setUp } : {}) };
    const id = `again-${i}`;
    return { ...last, id, digest: id, kind: "read-again", author: { person: "person-two", phone: "two" }, run: i, what };
  });
};
const asked = (ledger: JobLedger) => {
  const question = questions.find(({ id }) => id === "second-look");
  const job = observe(chosen, jobState(ledger));
  return question?.answer(
    { jobs: [job], company: { taught: [], studies: [], instrumentChecks: [], sheets: [] } },
    usualAsking("2026-12-31"),
  );
};

describe("a second look on its way to the owner", () => {
  test("is asked once all lengths that hold the covering are in, not before", () => {
    // one place of a rim is missing: the check that reads all four waits for it
    const place = due.find(({ reading }) => {
      const left = jobState({ ...untilCovered, entries: untilCovered.entries.filter(({ id }) => id !== reading) });
      return findings(left).some(({ holds, verdict, of }) => holds === first && verdict === "not taken" && of === "check");
    });
    expect(place).toBeDefined();
    const open = jobState({ ...untilCovered, entries: untilCovered.entries.filter(({ id }) => id !== place?.reading) });
    expect(due.length).toBeGreaterThan(3);
    expect(readAgainDue(chosen, open, findings(open))).toEqual([]);
  });

  test("a height names the set-up that it was read in", () => {
    expect(due.map(({ setUp }) => state.setUps.has(setUp ?? ""))).toEqual(due.map(() => true));
  });

  test("every pair reaches the question; read the same, none differs", () => {
    const answer = asked({ ...whole, entries: [...untilCovered.entries, ...again(untilCovered)] });
    expect(answer?.says[0]?.figures).toEqual({ pairs: due.length, off: 0 });
  });

  test("far off differs; from another set-up it is no pair", () => {
    const off = again(untilCovered, () => "200 in");
    expect(asked({ ...whole, entries: [...untilCovered.entries, ...off] })?.says[0]?.figures).toEqual({
      pairs: due.length,
      off: due.length,
    });
    const elsewhere = off.map((entry) => ({ ...entry, what: { ...(entry.what as object), setUp: "another" } }) as Entry);
    expect(asked({ ...whole, entries: [...untilCovered.entries, ...elsewhere] })?.says[0]?.figures).toEqual({ pairs: 0, off: 0 });
  });

  test("the record counts it as no reading and prints none of it", () => {
    const extra = again(whole, () => "200 in");
    const text = (ledger: JobLedger): string => JSON.stringify(recordOf(ledger).steps);
    expect(text({ ...whole, entries: [...whole.entries, ...extra] })).toBe(text(whole));
  });
});
