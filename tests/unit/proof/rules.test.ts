import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { type Clearance, clearances, type Finding, findings, type JobLedger, jobState, RULES } from "#core/job/index.ts";
import { type Judging, judge, rulesDigests } from "#core/proof/index.ts";
import { builtRules, digestOfText, digestsModule, readRules, rulesOf } from "#infra/build/rules-file.ts";
import { ledgerOf } from "../../helpers/record.ts";
import { sealedSample } from "../../helpers/sealed-record.ts";

interface Frozen {
  readonly now: number;
  readonly ledger: JobLedger;
  readonly findings: readonly Finding[];
  readonly clearances: readonly Clearance[];
}

const versions = Object.keys(rulesDigests).map(Number);
const frozenOf = (rules: number): Frozen =>
  JSON.parse(readFileSync(new URL(`../../samples/job/frozen-${rules}.json`, import.meta.url), "utf8")) as Frozen;
const asJson = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;
const load = async (code: string): Promise<Judging> =>
  (await import(`data:text/javascript;base64,${Buffer.from(code).toString("base64")}`)) as Judging;
const anew =
  "src/job judges otherwise than the built file of its rules. No record by these rules is in anybody's hands yet: `npm run rules`. " +
  "Otherwise raise RULES first.";

it("there is a built file for the rules of this program and for all before them", () => {
  expect(versions).toEqual(Array.from({ length: RULES }, (_, place) => place + 1));
});

describe.each(versions)("rules %i", (version) => {
  it("are the file that was built, to the last byte", async () => {
    const code = await readRules(version);
    expect(digestOfText(code)).toBe(rulesDigests[version]);
    expect(await rulesOf(code)).toBe(version);
    expect(code).not.toMatch(/\bimport\s*[({"']|\bfetch\(|Date\.now|new Date\(\)|Math\.random/);
  });

  it("give the frozen findings and clearances", async () => {
    const rules = await load(await readRules(version));
    const frozen = frozenOf(version);
    const judged = rules.judge(ledgerOf(frozen.ledger), frozen.now);
    expect(asJson(judged.findings)).toEqual(frozen.findings);
    expect(asJson(judged.clearances)).toEqual(frozen.clearances);
  });
});

describe("the sources of today", () => {
  let built: string;
  beforeAll(async () => {
    built = await builtRules();
  });

  it("build to one file that judges as they do, and as the file that is kept", async () => {
    const [today, kept] = [await load(built), await load(await readRules(RULES))];
    expect(today.rules).toBe(RULES);
    const { ledger, seal } = await sealedSample({ edition: "company" });
    const frozen = frozenOf(RULES);
    for (const [one, at] of [[ledger, seal.issuedAt] as const, [ledgerOf(frozen.ledger), frozen.now] as const]) {
      const wanted = asJson(judge(one, at));
      expect(wanted.findings.length).toBeGreaterThan(50);
      expect(asJson(today.judge(one, at)), anew).toEqual(wanted);
      expect(asJson(kept.judge(one, at)), anew).toEqual(wanted);
    }
    const state = jobState(frozen.ledger);
    expect(asJson(judge(ledgerOf(frozen.ledger), frozen.now))).toEqual(
      asJson({ findings: findings(state), clearances: clearances(state, findings(state), frozen.now) }),
    );
  });

  it("build to the same text twice", async () => {
    expect(digestOfText(await builtRules())).toBe(digestOfText(built));
  });
});

it("the list of digests is written as the formatter would have it", () => {
  expect(readFileSync(new URL("../../../src/proof/rules-digests.ts", import.meta.url), "utf8")).toBe(digestsModule(rulesDigests));
});
