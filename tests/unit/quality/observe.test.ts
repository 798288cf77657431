import { describe, expect, test } from "vitest";
import { type Entry, findings, type JobLedger, jobState, readSheet } from "#core/job/index.ts";
import { observe } from "#core/quality/index.ts";
import { defaultSheetJson } from "#infra/sheets/index.ts";
import { twoDayLedger } from "../../samples/two-day-job.ts";

const read = readSheet(defaultSheetJson);
if (!read.ok) throw new Error(read.refusal.code);
const sheet = read.value;
const ledger = twoDayLedger(sheet, { order: "as listed" });
const seen = (of: JobLedger) => observe("job", jobState(of));

/** A held length that one item alone gives, taken without a set-up, and what was entered of it. */
const alone = sheet.checks.find(
  ({ function: by, items, minus, weight, kind, holds, aim }) =>
    by === "single value" &&
    items.length === 1 &&
    minus === undefined &&
    weight === "holds" &&
    kind === "length" &&
    holds !== "by tag" &&
    aim !== undefined &&
    sheet.items.some(({ id, inSetUp, tags }) => id === items[0] && !inSetUp && tags === undefined) &&
    ledger.entries.some(({ kind: of, what }) => of === "reading-taken" && (what as { item?: string }).item === items[0]),
);
const first = ledger.entries.find(({ kind, what }) => kind === "reading-taken" && (what as { item?: string }).item === alone?.items[0]);
const last = ledger.entries.at(-1);
if (!alone || !first || !last) throw new Error("the sample has no such reading");

/** The same reading once more, far off, after everything else. */
const again: Entry = {
  ...last,
  id: "again",
  digest: "again",
  kind: "reading-taken",
  run: last.run + 1,
  made: last.made + 60_000,
  what: { item: alone.items[0] ?? "", typed: "99 in", unit: "in" },
};

describe("a whole job of two days", () => {
  const job = seen(ledger);

  test("when it was done, who led it, what was shown", () => {
    expect([job.installed, job.foreman]).toEqual(["2026-06-03", "person-one"]);
    expect(job.coverings.map(({ covering, shown, openedAgain }) => [covering, shown, openedAgain])).toEqual(
      sheet.coverings.map(({ id }) => [id, "clear", false]),
    );
    // every pause of a minute or ten counts up to five minutes; none is counted while the phone rests overnight
    expect(job.phoneTime).toBeGreaterThan(60 * 60_000);
    expect(job.phoneTime).toBeLessThan(5 * 60_000 * ledger.entries.length);
  });

  test("entered once, the first value is the value", () => {
    for (const one of job.findings) expect([one.check, one.first]).toEqual([one.check, one.verdict]);
    expect(job.findings.filter(({ reworked, afterCovering }) => reworked || afterCovering)).toEqual([]);
  });

  test("what is asked only of those who have it is there once it was entered", () => {
    expect(job.findings.filter(({ weight, verdict }) => weight !== "holds" && weight !== "asked" && verdict === "not taken")).toEqual([]);
    expect(job.findings.length).toBeGreaterThan(60);
  });

  test("four places around a rim are known as one set, in one set-up", () => {
    const rim = job.readings.filter(({ around }) => around !== undefined);
    expect(new Set(rim.map(({ item }) => item)).size).toBe(4);
    expect(rim.every(({ setUp, u = 0 }) => setUp !== undefined && u > 0)).toBe(true);
  });
});

describe("read a second time, after the covering", () => {
  const state = jobState({ ...ledger, entries: [...ledger.entries, again] });
  const own = observe("job", state).findings.find(({ check }) => check === alone.id);

  test("the first value stays what it was; the finding goes by both", () => {
    const before = findings(jobState(ledger)).find(({ check }) => check === alone.id);
    expect(own?.first).toBe("within");
    expect(own?.firstValue).toBe(before?.value);
    expect(own?.value).not.toBe(before?.value);
  });

  test("it is known to have come after the covering", () => {
    expect(own?.afterCovering).toBe(true);
    const readings = observe("job", state).readings.filter(({ item }) => item === alone.items[0]);
    expect(readings.map(({ afterCovering }) => afterCovering)).toEqual([false, true]);
  });
});
