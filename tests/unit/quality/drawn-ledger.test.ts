import { webcrypto } from "node:crypto";
import { beforeAll, describe, expect, test } from "vitest";
import { findings, jobLedgerOf, jobState, sheetFaults } from "#core/job/index.ts";
import { digestBy, type Ledger, verify } from "#core/ledger/index.ts";
import { type JobObserved, observe } from "#core/quality/index.ts";
import { companyFrom, idFrom, ledgerDrawn, planted, questionsSheet, versionsDrawn } from "#infra/company/index.ts";

const COMPANY = "made-up";
const { jobs } = companyFrom({ seed: 7, jobs: 12, effects: planted(60) });
const who = (name: string | undefined): string | undefined => (name === undefined ? undefined : idFrom(`${COMPANY} ${name}`));

let ledgers: readonly Ledger[] = [];
let seen: readonly JobObserved[] = [];
beforeAll(async () => {
  const versions = await versionsDrawn();
  ledgers = await Promise.all(jobs.map((job) => ledgerDrawn(job, versions, COMPANY)));
  seen = ledgers.map((ledger) => {
    const state = jobState(jobLedgerOf(ledger));
    return observe(ledger.job, state, findings(state));
  });
});

describe("a drawn job and its ledger say the same", () => {
  test("the ledger verifies, and its tolerance sheet has no fault", async () => {
    const digest = digestBy({
      sha256: (bytes) => webcrypto.subtle.digest("SHA-256", bytes),
      encode: (text) => new TextEncoder().encode(text),
    });
    for (const ledger of ledgers) expect((await verify(digest, ledger)).faults).toEqual([]);
    expect(sheetFaults(questionsSheet())).toEqual([]);
  });

  test("coverings, days, foreman", () => {
    for (const [i, job] of jobs.entries()) {
      const own = seen[i];
      expect(own?.installed).toBe(job.installed);
      expect(own?.foreman).toBe(who(job.foreman));
      expect(own?.coverings.map(({ covering, at }) => [covering, at])).toEqual(
        job.coverings.map(({ covering, at = 0 }) => [covering, at + 500]),
      );
    }
  });

  test("every held finding: first verdict and value, last verdict, rework, deviation", () => {
    const held = ({ findings: all }: JobObserved) =>
      new Map(
        all
          .filter(({ weight }) => weight === "holds")
          .map(({ check, first, firstValue, verdict, reworked, deviation, passage, lower, upper, aim, instrument, afterCovering }) => [
            check,
            { first, firstValue, verdict, reworked, deviation, passage, lower, upper, aim, instrument, afterCovering },
          ]),
      );
    for (const [i, job] of jobs.entries()) {
      const [drawn, own] = [held(job), held(seen[i] ?? job)];
      expect([...own.keys()].sort()).toEqual([...drawn.keys()].sort());
      for (const [check, one] of drawn) {
        const { instrument, ...rest } = own.get(check) ?? one;
        expect(rest, `${job.job} ${check}`).toMatchObject(
          Object.fromEntries(Object.entries(one).filter(([key, v]) => key !== "instrument" && v !== undefined)),
        );
        if (one.instrument !== undefined) expect(instrument).toBe(one.instrument);
      }
    }
    expect(jobs.some((job) => job.findings.some(({ reworked }) => reworked))).toBe(true);
  });

  test("readings: text, value, nominal, doubt, the rim that they stand around", () => {
    for (const [i, job] of jobs.entries()) {
      const key = ({ item, typed }: JobObserved["readings"][number]): string => `${item} ${typed}`;
      const drawn = new Map(job.readings.filter(({ blindOf }) => blindOf === undefined).map((one) => [key(one), one]));
      const own = new Map((seen[i]?.readings ?? []).filter(({ blindOf }) => blindOf === undefined).map((one) => [key(one), one]));
      expect([...own.keys()].sort()).toEqual([...drawn.keys()].sort());
      for (const [name, { value = 0, nominal, around, u = 0, person }] of drawn) {
        const read = own.get(name);
        expect(Math.abs((read?.value ?? 0) - value), name).toBeLessThanOrEqual(1);
        expect(Math.abs((read?.u ?? 0) - u), name).toBeLessThanOrEqual(2);
        expect(read).toMatchObject({ person: who(person), afterCovering: false });
        expect(read?.nominal === undefined ? undefined : Math.abs(read.nominal - (nominal ?? 0)) <= 1).toBe(
          nominal === undefined ? undefined : true,
        );
        expect(read?.around).toBe(around);
      }
    }
  });

  test("what somebody else read again stands beside the reading that it repeats, and no finding goes by it", () => {
    const pairs = (job: JobObserved): readonly string[] => {
      const byEntry = new Map(job.readings.map((one) => [one.entry, one]));
      return job.readings.flatMap(({ blindOf, typed, u = 0 }) => {
        const first = blindOf === undefined ? undefined : byEntry.get(blindOf);
        return first ? [`${first.typed} then ${typed}, ${Math.round(u / 10)}`] : [];
      });
    };
    const drawn = jobs.map(pairs);
    expect(seen.map((job) => [...pairs(job)].sort())).toEqual(drawn.map((own) => [...own].sort()));
    expect(drawn.flat().length).toBeGreaterThan(0);
  });

  test("pictures, rework, callbacks and parts", () => {
    for (const [i, job] of jobs.entries()) {
      const own = seen[i];
      expect(own?.pictures.map(({ photo }) => photo).sort()).toEqual(job.pictures.map(({ photo }) => photo).sort());
      expect(own?.reworks.map(({ about, step, minutes }) => ({ about, step, minutes }))).toEqual(
        job.reworks.map(({ about, step, minutes }) => ({ about, step, minutes })),
      );
      const byDay = <T extends { readonly day: string }>(list: readonly T[] = []) =>
        list.map(({ day, ...one }) => ({ day, ...one, entry: "" })).sort((a, b) => (a.day < b.day ? -1 : 1));
      expect(byDay(own?.callbacks)).toEqual(byDay(job.callbacks));
      const named = <T extends { readonly part: string }>(list: readonly T[] = []) => [...list].sort((a, b) => (a.part < b.part ? -1 : 1));
      expect(named(own?.parts)).toEqual(named(job.parts));
    }
    expect(jobs.some(({ callbacks }) => callbacks.length > 0)).toBe(true);
  });
});
