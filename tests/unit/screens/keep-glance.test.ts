import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { clearances, findings, type JobLedger, jobState, RULES } from "#core/job/index.ts";
import { glanceOf } from "#core/screens/field/keep/book.ts";
import { glanceMark, headOf, keptGlance, ownMark } from "#core/screens/field/keep/heads.ts";
import type { JobHead, KeptJob, OwnEntry } from "#core/screens/field/keep/shapes.ts";

const frozen = JSON.parse(readFileSync(new URL(`../../samples/job/frozen-${RULES}.json`, import.meta.url), "utf8")) as {
  readonly ledger: JobLedger;
};
/** The frozen job while its glue was fresh: things are waited for. */
const whole = jobState(frozen.ledger);
const book = { state: whole, findings: findings(whole) };
const instants = [...new Set(book.findings.flatMap(({ from }) => from ?? []))].sort((a, b) => a - b);

describe("what the first screen says of a job", () => {
  test("is what its clearances say, without what is covered", () => {
    for (const now of instants) {
      const open = clearances(whole, book.findings, now).filter(({ covered }) => covered === undefined);
      const { open: said, zone } = glanceOf(book, now);
      expect(zone).toBe(whole.opened?.zone);
      expect(new Map(said.map(({ covering, state, held }) => [covering, [state, held]]))).toEqual(
        new Map(open.map(({ covering, state, lines }) => [covering, [state, lines.length]])),
      );
    }
  });

  test("holds until the next thing that is waited for, and not a millisecond longer", () => {
    expect(instants.length).toBeGreaterThan(1);
    instants.forEach((until, i) => {
      const at = (instants[i - 1] ?? until - 60_000) + 1;
      const glance = glanceOf(book, at);
      expect(glance).toMatchObject({ at, until });
      for (const now of [at, Math.floor((at + until) / 2), until - 1]) expect(glanceOf(book, now).open).toEqual(glance.open);
    });
    expect(glanceOf(book, (instants.at(-1) ?? 0) + 1).until).toBeUndefined();
  });
});

describe("what was kept of it", () => {
  const kept = { job: "job-1", title: "Bench job", readAt: 5, ledger: { head: { number: 3, hash: "a".repeat(64) } } } as unknown as KeptJob;
  const one = { run: 7, job: "job-1", id: "x", standing: "not sent" } as OwnEntry;
  const glance = { open: [], zone: "UTC", at: 1_000, until: 2_000 };
  const app = "https://edge/assets/index-1.js";
  const mark = glanceMark(headOf(kept), ownMark([one], "job-1", 0), app);
  const head: JobHead = { ...headOf(kept), glance: { ...glance, mark } };

  test("counts from when it was made until it may be otherwise, and for no clock before", () => {
    const at = (now: number) => keptGlance(head, mark, now) !== undefined;
    expect([999, 1_000, 1_999, 2_000].map(at)).toEqual([false, true, true, false]);
  });

  test("counts for nothing with another ledger, other own entries, another clock or another app", () => {
    const of = (own: readonly OwnEntry[], skew = 0, by = app, hash = head.hash): unknown =>
      keptGlance(head, glanceMark({ hash }, ownMark(own, "job-1", skew), by), 1_500);
    expect(of([one])).toMatchObject(glance);
    expect(of([one], 400)).toMatchObject(glance);
    expect(of([{ ...one, standing: "acknowledged" }])).toMatchObject(glance);
    expect(of([one, { ...one, run: 8, job: "job-2" }])).toMatchObject(glance);
    for (const other of [
      of([]),
      of([one, { ...one, run: 8 }]),
      of([{ ...one, standing: "refused" }]),
      of([one], 3_600_000),
      of([one], 0, "https://edge/assets/index-2.js"),
      of([one], 0, app, "b".repeat(64)),
    ])
      expect(other).toBeUndefined();
  });

  test("goes when its job is read anew", () => {
    expect(headOf(kept)).toEqual({ job: "job-1", title: "Bench job", hash: "a".repeat(64), readAt: 5 });
  });
});
