import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { findings, findingsOn, type JobLedger, type JobState, jobState, RULES } from "#core/job/index.ts";

const frozen = JSON.parse(readFileSync(new URL(`../../samples/job/frozen-${RULES}.json`, import.meta.url), "utf8")) as {
  readonly ledger: JobLedger;
};

/** What is asked for, picked out of all findings: by the item's own name, and by the checks that the sheet has read it. */
function picked(state: JobState, item: string, tag: string | undefined) {
  const reading = new Set(
    (state.sheet?.checks ?? []).filter(({ items, minus = [] }) => [...items, ...minus].includes(item)).map((c) => c.id),
  );
  return findings(state).filter(
    (finding) =>
      (finding.tag === undefined || finding.tag === tag) &&
      (finding.of === "check" ? reading.has(finding.check) : finding.of !== "tag set" && finding.check === item),
  );
}

/** The frozen job as it stood after so many of its entries, made anew: nothing of it was judged before. */
const jobAfter = (count: number): JobState => jobState({ ...frozen.ledger, entries: frozen.ledger.entries.slice(0, count) });
const { length } = frozen.ledger.entries;

describe("the findings that one item decides, judged without the rest", () => {
  test.each([length, Math.round(length * 0.75), Math.round(length / 2), Math.round(length / 4)])(
    "are those that all findings have of it, for every item and tag of the frozen job after %i entries",
    (count) => {
      const all = jobAfter(count);
      const tags = [undefined, ...new Set(all.tags.map(({ tag }) => tag))];
      let some = 0;
      for (const { id } of all.sheet?.items ?? []) {
        const alone = jobAfter(count);
        for (const tag of tags) {
          const found = findingsOn(alone, id, tag);
          expect(found, `${id} ${tag ?? ""}`).toEqual(picked(all, id, tag));
          some += found.length;
        }
        // what was judged for one item serves for all of them
        if (some % 7 === 0) expect(findings(alone)).toEqual(findings(all));
      }
      expect(some).toBeGreaterThan(100);
    },
  );

  test("a job without a tolerance sheet has none", () => {
    expect(findingsOn(jobState({ entries: [], versions: {} }), "rim-height", undefined)).toEqual([]);
  });
});
