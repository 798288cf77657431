import { describe, expect, test } from "vitest";
import { clearances, type Entry, findings, isBeforeRecord, type JobLedger, jobState, jobWho, siteMarks } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { makeSayer } from "#core/record/index.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";

const sheet = defaultSheet();
let run = 0;
const entry = (kind: string, what: Json, who?: Json): Entry => {
  run += 1;
  return {
    id: `e${run}`,
    digest: "d",
    kind,
    author: { person: "o", phone: "edge" },
    run,
    made: run * 1000,
    what,
    ...(who === undefined ? {} : { who }),
  };
};
const opened = entry(
  "job-opened",
  { title: "T", zone: "UTC", language: "en", units: "inch", order: "1" },
  { address: "A", customer: { name: "C" } },
);
const took = entry("version-taken-over", { thing: "sheet", name: sheet.id, number: 1, digest: "s" });
const stateOf = (...entries: Entry[]) =>
  jobState({ entries: [opened, took, ...entries], versions: { s: sheet as unknown as Json } } as JobLedger);
const steps = ["arrive-on-site", "hole-and-bed", "basin-set", "side-wall-fitting", "wet-check", "basin-backfill"];
const late = (coverings: readonly string[] = ["backfill-basin"]) => entry("opened-late", { reason: "r", steps, coverings: [...coverings] });

describe("a job opened late", () => {
  test("what came before is no 'not taken', holds nothing, and says so in both languages", () => {
    const [before, after] = [findings(stateOf()), findings(stateOf(late()))];
    expect(after).toHaveLength(before.length);
    const changed = after.filter((finding, i) => JSON.stringify(finding) !== JSON.stringify(before[i]));
    expect(changed.length).toBeGreaterThan(20);
    for (const finding of changed)
      expect([finding.verdict, finding.by?.way, isBeforeRecord(finding)]).toEqual(["does not apply", "does not apply", true]);
    // of these steps nothing is left as missing, and of later ones only what rests on earlier steps alone was changed
    expect(after.filter(({ step, verdict }) => steps.includes(step) && verdict === "not taken")).toEqual([]);
    const said = (language: "en" | "es") => makeSayer({ language, units: "inch", zone: "UTC", sheet });
    const [one] = changed;
    expect(one && said("en").verdictWord(one)).toBe("before this record began");
    expect(one && said("es").verdictWord(one)).toBe("antes de que empezara este registro");
    expect(one && said("en").finding(one)).toMatch(/: before this record began\.$/);
  });

  test("a covering of then is covered before the record: nothing was shown, nothing is doubted; the next ones are open", () => {
    const state = stateOf(late());
    const all = clearances(state, findings(state), 0);
    const [first, second] = all;
    expect(first).toMatchObject({
      covering: "backfill-basin",
      lines: [],
      covered: { beforeRecord: true, noLaterThan: true, laterDoubted: false },
    });
    expect(first?.covered).not.toHaveProperty("shown");
    expect(second?.covered).toBeUndefined();
    expect(second?.state).toBe("not yet");
  });

  test("what was entered of it all the same counts as it stands, and opening the covering up again ends the excuse for it", () => {
    const answer = entry("answered", {
      item: "ticket-good",
      choice: sheet.items.find(({ id }) => id === "ticket-good")?.choices?.find(({ accepts }) => !accepts)?.id ?? "",
    });
    const found = findings(stateOf(late(), answer)).find(({ check }) => check === "ticket-good");
    expect(found?.verdict).toBe("outside");
    const again = stateOf(late(), entry("opened-up-again", { covering: "backfill-basin", exposed: "all", reason: "leak" }));
    expect(clearances(again, findings(again), 0)[0]?.covered).toBeUndefined();
  });

  test("without steps it changes no finding", () => {
    expect(findings(stateOf(entry("opened-late", { reason: "r" })))).toEqual(findings(stateOf()));
  });
});

test("particulars lie over what was said before, contact by contact; the site's address and marks with them", () => {
  const state = stateOf(
    entry("site-taken-over", { site: "s1", number: 3, heightMark: "sill", tieMarks: ["A"] }, { address: "B" }),
    entry("particulars-set", { invoice: "9", title: "U" }, { onSite: { name: "D" } }),
    entry("particulars-set", { title: "V" }),
  );
  expect(state.opened).toMatchObject({ title: "V", order: "1", invoice: "9", zone: "UTC" });
  expect(jobWho(state)).toEqual({ address: "B", customer: { name: "C" }, onSite: { name: "D" } });
  expect(siteMarks(state)).toEqual({ heightMark: "sill", tieMarks: ["A"] });
});
