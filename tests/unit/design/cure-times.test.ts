import { describe, expect, test } from "vitest";
import { cureClockOf, cureTimes } from "#core/job/index.ts";
import { source } from "./planned.ts";

const HOUR = 3_600_000;
const rigid = source({ pipeSize: "1 1/2 in" }, {}, { pipeKind: "rigid PVC" });
const flexible = source({ pipeSize: "2 in" }, {}, { pipeKind: "flexible PVC" });
const cold = (typed: string) => ({ coldest: { typed, unit: "°F" }, humidity: "dry" as const });

describe("times of a glue session, from the design and what was typed", () => {
  test("1-1/2 in at 70 °F, dry: cure 2 h; 50 °F: 4 h; humid, half as much again (tables A and C alike)", () => {
    expect(cureTimes(rigid, cold("70"))).toMatchObject({ ok: true, value: { cure: 2 * HOUR, set: HOUR / 2 } });
    expect(cureTimes(rigid, cold("50"))).toMatchObject({ ok: true, value: { cure: 4 * HOUR } });
    expect(cureTimes(rigid, { ...cold("50"), humidity: "humid" })).toMatchObject({ ok: true, value: { cure: 6 * HOUR, humid: true } });
  });

  test("humidity that nobody said counts as humid; degrees Celsius are the same", () => {
    const { coldest } = cold("70");
    expect(cureTimes(rigid, { coldest })).toMatchObject({ ok: true, value: { cure: 3 * HOUR } });
    expect(cureTimes(rigid, { coldest: { typed: "21.1 °C", unit: "°F" }, humidity: "dry" })).toMatchObject({
      ok: true,
      value: { cure: 2 * HOUR },
    });
  });

  test("typed as 60 °F it may as well have been 59.5: the colder band is taken", () => {
    expect(cureTimes(rigid, cold("60"))).toMatchObject({ ok: true, value: { cure: 4 * HOUR } });
    expect(cureTimes(rigid, cold("61"))).toMatchObject({ ok: true, value: { cure: 2 * HOUR } });
  });

  test("flexible pipe has no table: the can's own time, typed once", () => {
    expect(cureTimes(flexible, cold("70"))).toMatchObject({ ok: false, refusal: { code: "cure-time-unknown" } });
    expect(cureTimes(flexible, { can: { set: HOUR, cure: 6 * HOUR } })).toMatchObject({
      ok: true,
      value: { cure: 6 * HOUR, basis: { kind: "can" } },
    });
  });

  test("a kind or a temperature that nobody gave is asked for, and none is taken for it", () => {
    expect(cureTimes(source({ pipeSize: "2 in" }), cold("70"))).toMatchObject({ ok: false, refusal: { place: "figures/pipeKind" } });
    expect(cureTimes(source({ pipeSize: "2 in" }), { ...cold("70"), kind: "rigid PVC" })).toMatchObject({ ok: true });
    expect(cureTimes(source({}), cold("70"))).toMatchObject({ ok: false, refusal: { place: "figures/pipeSize" } });
    expect(cureTimes(rigid, {})).toMatchObject({ ok: false, refusal: { place: "cure/coldest" } });
    expect(cureTimes(rigid, cold("warm"))).toMatchObject({ ok: false, refusal: { place: "cure/coldest" } });
  });

  test("the clock counts from the last joint", () => {
    const last = 1_778_616_120_000;
    expect(cureClockOf(rigid, cold("70"), last)).toMatchObject({
      ok: true,
      value: { setFrom: last + HOUR / 2, cureFrom: last + 2 * HOUR },
    });
    expect(cureClockOf(rigid, cold("70"), Number.NaN)).toMatchObject({ ok: false, refusal: { code: "number-not-finite" } });
  });
});
