import { describe, expect, test } from "vitest";
import type * as z from "zod/mini";
import {
  beforehandOf,
  clearances,
  findings,
  handingOver,
  type JobLedger,
  jobState,
  readSheet,
  verdicts,
  waysOut,
} from "#core/job/index.ts";
import { fixedUnits } from "#core/units/index.ts";
import { floatOccasions } from "#core/water/index.ts";
import { beforehand, clearance, finding, handingOver as handingOverShape, listsOfCore } from "#core/wire/index.ts";
import { defaultSheetJson } from "#infra/sheets/index.ts";
import frozen from "../../samples/job/frozen-1.json" with { type: "json" };
import { twoDayLedger } from "../../samples/two-day-job.ts";

const read = readSheet(defaultSheetJson);
if (!read.ok) throw new Error(read.refusal.code);
const whole = twoDayLedger(read.value, { order: "as listed" });
/** The job as it grows: what waits, what is doubted and what is missing differ on the way. */
const grown: readonly JobLedger[] = [1, 2, 4, 8].map((share) => ({
  ...whole,
  entries: whole.entries.slice(0, Math.ceil((whole.entries.length * share) / 8)),
}));

/** What a shape finds wrong: a member that it does not name is one too. */
const faults = (shape: z.ZodMiniType, values: readonly unknown[]): readonly unknown[] =>
  values.flatMap((value) => {
    const found = shape.safeParse(value);
    return found.success ? [] : [{ value, issues: found.error.issues }];
  });

describe("what the core makes of a job has the shapes that the API's document says", () => {
  test("of a whole job, as it grows", () => {
    for (const ledger of grown) {
      const state = jobState(ledger);
      const all = findings(state);
      const now = Date.UTC(2026, 11, 31);
      expect(all.length).toBeGreaterThan(50);
      expect(faults(finding, all)).toEqual([]);
      expect(faults(clearance, clearances(state, all, now))).toEqual([]);
      expect(faults(beforehand, beforehandOf(state, all, now))).toEqual([]);
      expect(faults(handingOverShape, [handingOver(state, all, now)])).toEqual([]);
    }
  });

  test("of the frozen ledger, which has decisions, rework and what was doubted later", () => {
    expect(faults(finding, frozen.findings)).toEqual([]);
    expect(faults(clearance, frozen.clearances)).toEqual([]);
  });

  test("its lists are the core's", () => {
    expect(listsOfCore.verdict.options).toEqual([...verdicts]);
    expect(listsOfCore.wayOut.options).toEqual([...waysOut]);
    expect(listsOfCore.kind.options).toEqual(Object.keys(fixedUnits));
    expect(listsOfCore.occasion.options).toEqual([...floatOccasions]);
  });

  test("a finding with a member that nobody named, or without its verdict, has another shape", () => {
    const [one] = frozen.findings;
    expect(faults(finding, [{ ...one, colour: "green" }])).toHaveLength(1);
    expect(faults(finding, [{ ...one, verdict: undefined }])).toHaveLength(1);
    expect(faults(finding, [{ ...one, value: 1.5 }])).toHaveLength(1);
  });
});
