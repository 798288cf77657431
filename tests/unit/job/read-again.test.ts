import { describe, expect, test } from "vitest";
import { findings, isReadAgainAsked, type JobLedger, jobState, readAgainDue, readSheet } from "#core/job/index.ts";
import { defaultSheetJson } from "#infra/sheets/index.ts";
import { twoDayLedger } from "../../samples/two-day-job.ts";

const read = readSheet(defaultSheetJson);
if (!read.ok) throw new Error(read.refusal.code);
const whole = twoDayLedger(read.value, { order: "as listed" });
/** The job up to its first covering. */
const before: JobLedger = {
  ...whole,
  entries: whole.entries.slice(
    0,
    whole.entries.findIndex(({ kind }) => kind === "covered"),
  ),
};
const first = read.value.coverings[0]?.id ?? "";
const chosen = Array.from({ length: 200 }, (_, i) => `job-${i}`).find((job) => isReadAgainAsked(job, first)) ?? "";

describe("what someone else reads again", () => {
  test("one covering in ten, and always the same ones", () => {
    const asked = Array.from({ length: 20_000 }, (_, i) => isReadAgainAsked(`job-${i}`, first));
    const share = asked.filter(Boolean).length / asked.length;
    // five standard deviations of a share of 1 in 10 of 20,000
    expect(Math.abs(share - 0.1)).toBeLessThan(5 * Math.sqrt(0.09 / 20_000));
    expect(isReadAgainAsked(chosen, first)).toBe(true);
  });

  test("the readings that hold it, before it is covered; not once it is", () => {
    const state = jobState(before);
    const due = readAgainDue(chosen, state, findings(state));
    expect(due.length).toBeGreaterThan(3);
    expect(new Set(due.map(({ covering }) => covering))).toEqual(new Set([first]));
    expect(new Set(due.map(({ notBy }) => notBy))).toEqual(new Set(["person-one"]));
    const after = jobState(whole);
    expect(readAgainDue(chosen, after, findings(after))).toEqual([]);
  });

  test("one that was read again is due no more, and no finding changes", () => {
    const state = jobState(before);
    const all = findings(state);
    const [one] = readAgainDue(chosen, state, all);
    if (!one) throw new Error("nothing due");
    const last = before.entries.at(-1);
    if (!last) throw new Error("no entries");
    const what = { reading: one.reading, item: one.item, typed: "39 in", unit: "in" };
    const again = { ...last, id: "again", digest: "again", kind: "read-again", author: { person: "two", phone: "two" }, run: 0, what };
    const next = jobState({ ...before, entries: [...before.entries, again] });
    expect(findings(next)).toEqual(all);
    expect(readAgainDue(chosen, next, findings(next)).map(({ reading }) => reading)).not.toContain(one.reading);
  });
});
