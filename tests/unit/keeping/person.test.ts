import { describe, expect, test } from "vitest";
import { coveredUntil, holdOn, isCustomerOf, isNamedIn, mentionsIn, removalOf } from "#core/keeping/index.ts";
import type { Json, LedgerEntry, PartName } from "#core/ledger/index.ts";
import { coversOf, readTerms, type WarrantyClocks } from "#core/warranty/index.ts";

const ines = { names: ["Ines Marlow", "Marlow, Ines"], contacts: ["+1 (555) 016-0012", "ines@example.invalid"] };
const salt = "0".repeat(64);
const [A, B] = ["a".repeat(64), "b".repeat(64)];

const entry = (number: number, kind: string, said: { readonly [P in PartName]?: Json }): LedgerEntry => ({
  envelope: {
    format: 1,
    job: "j",
    id: `e${number}`,
    kind,
    author: { person: "p", phone: "f" },
    run: number,
    made: 0,
    parts: {},
    number,
    sent: 0,
    received: 0,
    before: salt,
  },
  body: Object.fromEntries(Object.entries(said).map(([part, content]) => [part, { salt, content }])),
});

describe("a person is named", () => {
  test.each([
    "Ines Marlow",
    "INÉS  MARLOW was here",
    "call Marlow, Ines.",
    "Ines Marlow's dog",
    "555 016 0012",
    "5550160012",
    "1-555-016-0012 after six",
    "016 0012 at home",
    "write to <INES@example.invalid>.",
  ])("in %j", (text) => expect(isNamedIn(text, ines)).toBe(true));

  test.each([
    "Inesmarlow",
    "Ines, and Dov Marlowe",
    "Marlow",
    "555 016 0013",
    "16 0012",
    "ines.example.invalid, and inesx@example.invalid",
  ])("not in %j", (text) => expect(isNamedIn(text, ines)).toBe(false));

  test("an empty name and a number too short name nobody", () => {
    expect(isNamedIn("anything at all 12345", { names: ["", " .,"], contacts: ["12345"] })).toBe(false);
  });

  test("at any depth, in the part that says so; what is withheld names nobody; an id only as a whole", () => {
    const entries = [
      entry(1, "job-opened", { what: { title: "Elm Street 4", crew: ["p9"] }, who: { customer: { name: "Ines Marlow" } } }),
      { ...entry(2, "note-for-record", {}), body: { who: { withheld: "erasure" } } },
      entry(3, "note-for-record", { what: { text: "p9 has left" } }),
    ];
    expect(mentionsIn(entries, ines)).toEqual([{ number: 1, id: "e1", kind: "job-opened", part: "who" }]);
    expect(mentionsIn(entries, { names: [], contacts: [], person: "p9" })).toEqual([
      { number: 1, id: "e1", kind: "job-opened", part: "what" },
    ]);
    expect([isCustomerOf(entries, ines), isCustomerOf(entries.slice(1), ines)]).toEqual([true, false]);
  });
});

describe("what goes and what stays", () => {
  const entries = [
    entry(1, "job-opened", {
      what: { title: "Fall for Ines Marlow" },
      who: { address: "9 Example Row", customer: { name: "Ines Marlow" } },
    }),
    entry(2, "site-located", { what: { how: "map" }, where: { latitude: 1, longitude: 2 } }),
    entry(3, "picture-taken", { what: { item: "i", photo: A, caption: "Ines Marlow's gate" } }),
    entry(4, "note-for-record", { what: { text: "Ines Marlow was here" }, who: { name: "Lou Marsh" } }),
    entry(5, "reading-taken", { what: { typed: "12" } }),
    entry(6, "done-by-others", { what: { what: "wiring", photo: B }, who: { name: "Lou Marsh" } }),
    entry(7, "body-withheld", { what: { entry: { id: "e5", digest: A }, parts: ["what"], reason: "Ines Marlow" } }),
  ];
  const job = { job: "j", entries, isTheirs: true, isWhole: false };
  const said = (bodies: readonly { readonly number: number; readonly parts: readonly string[] }[]) =>
    bodies.map(({ number, parts }) => `${number} ${parts.join("+")}`);

  test("of a customer's job that is kept: name, address and place; what was found rests on the rest", () => {
    const removal = removalOf([job], ines, new Set());
    expect(said(removal.bodies)).toEqual(["1 who", "2 where", "4 what"]);
    expect(said(removal.stays)).toEqual(["1 what", "3 what"]);
    expect(removal.files).toEqual([]);
  });

  test("of another's job only what names the person", () => {
    const removal = removalOf([{ ...job, isTheirs: false }], ines, new Set());
    expect(said(removal.bodies)).toEqual(["1 who", "4 what"]);
    expect(said(removalOf([job], { names: ["Lou Marsh"], contacts: [] }, new Set()).bodies)).toEqual([
      "1 who",
      "2 where",
      "4 who",
      "6 who",
    ]);
  });

  test("of a job that is not kept everything, but files that another job names", () => {
    const whole = { ...job, isWhole: true };
    const removal = removalOf([whole], ines, new Set());
    expect(said(removal.bodies)).toEqual(["1 what+who", "2 what+where", "3 what", "4 what+who", "5 what", "6 what+who"]);
    expect([removal.files, removal.stays]).toEqual([[A, B], []]);
    expect(removalOf([whole], ines, new Set([B])).files).toEqual([A]);
    const kept = {
      job: "k",
      entries: [entry(1, "moved-in", { what: { from: "j", entries: [{ what: { photo: A } }] } })],
      isTheirs: false,
      isWhole: false,
    };
    expect(removalOf([whole, kept], ines, new Set()).files).toEqual([B]);
  });

  test("an id alone is nobody's name", () => {
    const removal = removalOf([{ ...job, isTheirs: false }], { names: ["Nobody"], contacts: [], person: "i" }, new Set());
    expect([removal.bodies, removal.stays]).toEqual([[], []]);
  });
});

describe("held", () => {
  const on = (year: number, month: number, day: number) => ({ year, month, day });
  const clocks = {
    zone: "UTC",
    language: "en",
    handings: [],
    objections: [],
    starts: [{ rule: "invoice paid", day: on(2024, 2, 29), entry: "e" }],
    kept: [],
    replaced: [],
    registered: [],
    services: [],
    owners: [],
  } as unknown as WarrantyClocks;
  const terms = readTerms({ terms: [12, 24, 36].map((months) => ({ part: `part ${months}`, months, starts: "invoice paid" })) });

  test("until the last day of the last cover that runs; both days belong to it", () => {
    // 36 months from 29 February 2024: 28 February 2027
    const covers = coversOf(clocks, terms);
    expect(coveredUntil(covers, on(2026, 1, 1))).toEqual(on(2027, 2, 28));
    expect(coveredUntil(covers, on(2027, 2, 28))).toEqual(on(2027, 2, 28));
    expect(coveredUntil(covers, on(2027, 3, 1))).toBeUndefined();
    expect(coveredUntil(coversOf({ ...clocks, starts: [] }, terms), on(2026, 1, 1))).toBeUndefined();
  });

  test("by the hold that ends last, the day itself included", () => {
    const holds = [
      { because: "dispute", until: on(2026, 5, 4) },
      { because: "warranty", until: on(2026, 3, 1) },
    ] as const;
    expect(holdOn(holds, on(2026, 5, 4))?.because).toBe("dispute");
    expect(holdOn(holds, on(2026, 5, 5))).toBeUndefined();
  });
});
