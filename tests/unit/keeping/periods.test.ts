import { describe, expect, test } from "vitest";
import { endedBy, endedOf, keepingOf, keptKinds, usualPeriods } from "#core/keeping/index.ts";
import type { Json, LedgerEntry, PartName } from "#core/ledger/index.ts";

const on = (year: number, month: number, day: number) => ({ year, month, day });
const job = (name: string, lastEntered = on(2026, 5, 4), more: object = {}) => ({ job: name, lastEntered, openCallbacks: 0, ...more });
const longAgo = on(2000, 1, 1);

describe("how long a site is kept", () => {
  test("from its last entry or its last cover, whichever is later, over all its jobs", () => {
    const site = { site: "s", jobs: [job("a"), job("b", on(2024, 1, 1), { coveredUntil: on(2028, 2, 29) })] };
    const keeping = keepingOf(site, { names: 12, pictures: 48, records: 6 }, longAgo);
    expect(keeping.from).toEqual(on(2028, 2, 29));
    // 6, 12 and 48 months from 29 February 2028; the one that ends first comes first
    expect(keeping.endings).toEqual([
      { kind: "records", until: on(2028, 8, 29) },
      { kind: "names", until: on(2029, 2, 28) },
      { kind: "pictures", until: on(2032, 2, 29) },
    ]);
  });

  test("the last day is kept, the next is not; and not before the notice has run out", () => {
    const site = { jobs: [job("a")] };
    const keeping = keepingOf(site, { names: 12 }, longAgo);
    expect([endedBy(keeping, on(2027, 5, 4)), endedBy(keeping, on(2027, 5, 5))]).toEqual([[], ["names"]]);
    const noticed = keepingOf(site, { names: 12 }, on(2030, 1, 31));
    expect([endedBy(noticed, on(2030, 1, 31)), endedBy(noticed, on(2030, 2, 1))]).toEqual([[], ["names"]]);
  });

  test("nothing goes while a callback is open, and what has no period is kept for good", () => {
    const open = keepingOf({ jobs: [job("a"), job("b", longAgo, { openCallbacks: 1 })] }, { names: 1 }, longAgo);
    expect([open.waits, endedBy(open, on(2099, 1, 1))]).toEqual([true, []]);
    const usual = keepingOf({ jobs: [job("a")] }, usualPeriods, longAgo);
    expect(endedBy(usual, on(2046, 5, 4))).toEqual([]);
    expect(endedBy(usual, on(2100, 1, 1))).toEqual(["names", "places", "pictures"]);
  });
});

describe("what goes", () => {
  const salt = "0".repeat(64);
  const [A, B] = ["a".repeat(64), "b".repeat(64)];
  const entry = (number: number, kind: string, said: { readonly [P in PartName]?: Json }): LedgerEntry => ({
    envelope: {
      format: 1,
      job: "j",
      id: `e${number}`,
      kind,
      author: { person: "p", phone: "f" },
      run: 0,
      made: 0,
      parts: {},
      number,
      sent: 0,
      received: 0,
      before: salt,
    },
    body: Object.fromEntries(Object.entries(said).map(([part, content]) => [part, { salt, content }])),
  });
  const entries = [
    entry(1, "job-opened", { what: { title: "t" }, who: { address: "a" } }),
    entry(2, "picture-taken", { what: { photo: A }, where: { latitude: 1 } }),
    entry(3, "done-by-others", { what: { photo: B }, who: { name: "n" } }),
    entry(4, "body-withheld", { what: { parts: ["what"] } }),
    { ...entry(5, "picture-taken", {}), body: { what: { withheld: "erasure" } } },
  ];
  const gone = (...kinds: (typeof keptKinds)[number][]) => {
    const { bodies, files } = endedOf([{ job: "j", entries }], new Set(kinds), new Set());
    return [bodies.map(({ number, parts }) => `${number} ${parts.join("+")}`), files];
  };

  test("of each kind its own parts, and nothing twice", () => {
    expect(gone("names")).toEqual([["1 who", "3 who"], []]);
    expect(gone("places")).toEqual([["2 where"], []]);
    expect(gone("pictures")).toEqual([["2 what"], [A, B]]);
    expect(gone("entries")).toEqual([["1 what", "3 what"], []]);
    expect(gone("records")).toEqual([[], []]);
    expect(gone(...keptKinds)).toEqual([
      ["1 what+who", "2 what+where", "3 what+who"],
      [A, B],
    ]);
  });

  test("a picture that a kept job names stays", () => {
    expect(endedOf([{ job: "j", entries }], new Set(["pictures"]), new Set([A])).files).toEqual([B]);
  });
});
