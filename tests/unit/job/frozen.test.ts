import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { clearances, findings, type JobLedger, jobState, RULES } from "#core/job/index.ts";

/** Digest of the findings of each frozen ledger. One that is in the hands of anybody is never changed here again. */
const digests: Readonly<Record<number, string>> = {
  1: "526c3fd780b0163942470bc48d719ab9346ff12e61445c682dafefccc4fdee82",
};

interface Frozen {
  readonly rules: number;
  readonly now: number;
  readonly ledger: JobLedger;
  readonly findings: readonly unknown[];
  readonly clearances: readonly unknown[];
}

const fileOf = (rules: number): URL => new URL(`../../samples/job/frozen-${rules}.json`, import.meta.url);
const asJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
const digestOf = (value: unknown): string => createHash("sha256").update(JSON.stringify(value)).digest("hex");
const anew =
  "A frozen ledger gets other findings than it had: raise RULES in src/job/rules.ts, freeze anew with `npx node tests/helpers/freeze-job.ts`, " +
  "and add the new digest to tests/unit/job/frozen.test.ts beside the old ones";

describe(`the frozen ledger of rules ${RULES}`, () => {
  test("is there", () => {
    expect(existsSync(fileOf(RULES)), anew).toBe(true);
    expect(Object.keys(digests)).toContain(String(RULES));
  });

  const frozen = JSON.parse(readFileSync(fileOf(RULES), "utf8")) as Frozen;
  const state = jobState(frozen.ledger);
  const all = findings(state);

  test("gets the findings that it had", () => {
    expect(frozen.rules).toBe(RULES);
    expect(asJson(all), anew).toEqual(frozen.findings);
    expect(asJson(clearances(state, all, frozen.now)), anew).toEqual(frozen.clearances);
  });

  test.each(Object.entries(digests))("nobody changed what was frozen under rules %s", (rules, digest) => {
    const kept = JSON.parse(readFileSync(fileOf(Number(rules)), "utf8")) as Frozen;
    expect(digestOf(kept.findings), `${anew}. It is now`).toBe(digest);
  });

  test("has something of everything in it", () => {
    const verdicts = new Set(all.map((finding) => finding.verdict));
    expect([...verdicts].sort()).toEqual(["could not be taken", "does not apply", "not taken", "outside", "too close to call", "within"]);
    expect(new Set(all.flatMap((finding) => finding.by?.way ?? []))).toEqual(
      new Set(["concession", "departure", "does not apply", "go-ahead", "rework"]),
    );
    expect(new Set(clearances(state, all, frozen.now).map((c) => c.state))).toEqual(new Set(["clear", "on word", "not yet"]));
  });
});
