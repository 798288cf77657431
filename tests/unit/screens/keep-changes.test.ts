import { describe, expect, test } from "vitest";
import { afterReading, afterStored, changed, FIRST_WAIT_MS, LONGEST_WAIT_MS, nextTry } from "#core/screens/field/keep/changes.ts";
import type { Reading } from "#core/screens/field/keep/read.ts";
import { type KeepState, nothing } from "#core/screens/field/keep/state.ts";
import type { Stored } from "#core/screens/field/keep/stored.ts";

const away: KeepState = { ...nothing, awaySince: 5, triesAgain: 9 };
const refused = (status: number) => ({ is: "refused", problem: { status } }) as unknown as Reading;

describe("after the edge was asked for what is new", () => {
  test("it answered: nobody is away, nobody signed out", () => {
    const before: KeepState = { ...away, signedOut: true, anothers: true };
    expect(afterReading(before, { is: "read" }, 20)).toEqual({ ...nothing, triesAgain: 9 });
  });

  test("it is away since it first was", () => {
    expect(afterReading(away, { is: "away" }, 20).awaySince).toBe(5);
    expect(afterReading(nothing, { is: "away" }, 20).awaySince).toBe(20);
  });

  test("a session that has ended is said; any other refusal changes nothing", () => {
    expect(afterReading(away, refused(401), 20)).toEqual({ ...nothing, triesAgain: 9, signedOut: true });
    expect(afterReading(away, refused(503), 20)).toBe(away);
    expect(afterReading(away, { is: "another's" }, 20)).toEqual({ ...nothing, triesAgain: 9, anothers: true });
  });
});

describe("after the store was read", () => {
  const stored: Stored = {
    ...{ heads: [], jobs: new Map(), entries: [], photos: [] },
    session: { session: { person: "one" }, people: [{ person: "two" }] } as unknown as NonNullable<Stored["session"]>,
    today: { person: "two", name: "Two", day: "2026-05-04" },
    skew: { milliseconds: 7 } as NonNullable<Stored["skew"]>,
    read: { at: 11 } as NonNullable<Stored["read"]>,
    phone: { id: "phone" } as NonNullable<Stored["phone"]>,
  };

  test("what it holds is shown, and what only the page knows stays", () => {
    const next = afterStored({ ...away, askingWho: true, full: true }, stored, [], true);
    expect(next).toMatchObject({ awaySince: 5, triesAgain: 9, askingWho: true, full: true, whole: true });
    expect(next).toMatchObject({ session: { person: "one" }, people: [{ person: "two" }], phone: "phone", skew: 7, readAt: 11 });
  });

  test("what it does not hold any more is shown no more", () => {
    const before = afterStored(away, stored, [], true);
    const none = { session: undefined, today: undefined, skew: undefined, read: undefined, phone: undefined };
    const next = afterStored(before, { ...stored, ...none }, [], false);
    for (const key of ["session", "today", "phone", "readAt"]) expect(Object.hasOwn(next, key)).toBe(false);
    expect(next).toMatchObject({ people: [], skew: 0, whole: false });
  });
});

test("members that go are gone, and not undefined", () => {
  expect(Object.keys(changed(away, { full: true }, ["awaySince"]))).not.toContain("awaySince");
});

describe("when an edge in trouble is asked again", () => {
  test("after twice as long each time, a quarter more or less by chance, five minutes at most", () => {
    const waits: number[] = [];
    for (let wait = FIRST_WAIT_MS, n = 0; n < 10; n += 1) {
      const next = nextTry(1000, {}, wait, 0.5);
      waits.push(next.after);
      wait = next.wait;
    }
    expect(waits).toEqual([2_000, 4_000, 8_000, 16_000, 32_000, 64_000, 128_000, 256_000, LONGEST_WAIT_MS, LONGEST_WAIT_MS]);
    expect([nextTry(0, {}, 1000, 0).after, nextTry(0, {}, 1000, 1).after]).toEqual([750, 1250]);
  });

  test("ten entries made while it is awaited do not make the wait longer", () => {
    expect(nextTry(1000, { triesAgain: 1600 }, 8000, 0.9)).toEqual({ after: 600, wait: 8000 });
    // its time has come, and it failed again
    expect(nextTry(1600, { triesAgain: 1600 }, 8000, 0.5)).toEqual({ after: 8000, wait: 16_000 });
  });
});
