import { describe, expect, it } from "vitest";
import { jobState } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { isoDay, typedDay } from "#core/units/index.ts";
import { type Cover, coversOf, handedOver, readTerms, standingOn, warrantyClocks } from "#core/warranty/index.ts";
import { bench, book, type Entering, pictureItem, type What } from "../../helpers/job.ts";

const sheet = bench({ items: [pictureItem("water-runs", { marks: "first running" })] });
const day = (text: string) => typedDay(text) ?? { year: 0, month: 0, day: 0 };
const noon = (text: string): Entering => ({ at: Date.parse(`${text}T16:00:00Z`) });
type Line = readonly [kind: string, what: What, on?: string];

const stateOf = (lines: readonly Line[]) => {
  const b = book(sheet);
  for (const [kind, what, on] of lines) b.enter(kind, what, on === undefined ? {} : noon(on));
  return jobState(b.ledger());
};
const covers = (warranty: Json, ...lines: readonly Line[]): readonly Cover[] =>
  coversOf(warrantyClocks(stateOf(lines)), readTerms(warranty));
const one = (term: Json, ...lines: readonly Line[]): Cover => {
  const [cover] = covers({ terms: [term] }, ...lines);
  if (cover === undefined) throw new Error("no cover");
  return cover;
};
const ends = ({ end }: Cover): string | undefined => end && isoDay(end);
const signed = (on: string): Line => ["signed", { relation: "owner of the house", language: "en" }, on];
const pump = { part: "Pump", months: 36, starts: "date of sale" };

describe("each part starts by its own clock", () => {
  it("handing over, first running, the invoice, the part's date of sale", () => {
    const terms = [
      { part: "Workmanship", months: 24, starts: "handover" },
      { part: "Liner", months: 120, starts: "first running" },
      { part: "Lights", months: 12, starts: "invoice paid" },
      pump,
    ];
    const lines: readonly Line[] = [
      ["picture-taken", { item: "water-runs", photo: "0".repeat(64), bytes: 1, type: "image/jpeg" }, "2026-06-03"],
      signed("2026-06-05"),
      ["cover-started", { rule: "invoice paid", day: "2026-06-30" }, "2026-07-01"],
      ["cover-started", { rule: "date of sale", day: "2026-04-20", part: " pump " }, "2026-07-01"],
    ];
    expect(covers({ terms }, ...lines).map((cover) => [cover.part, cover.start && isoDay(cover.start.day), ends(cover)])).toEqual([
      ["Workmanship", "2026-06-05", "2028-06-05"],
      ["Liner", "2026-06-03", "2036-06-03"],
      ["Lights", "2026-06-30", "2027-06-30"],
      ["Pump", "2026-04-20", "2029-04-20"],
    ]);
  });

  it("without its start a cover has no end, and the sale of another part is none of its own", () => {
    const cover = one(pump, ["cover-started", { rule: "date of sale", day: "2026-04-20", part: "Light" }]);
    expect(cover.start).toBeUndefined();
    expect(ends(cover)).toBeUndefined();
    expect(standingOn(cover, day("2030-01-01")).is).toBe("start not known");
  });

  it("signed late in the evening counts for the day that it was where the site is", () => {
    // 2026-06-06, 03:00 UTC is 23:00 of the 5th in New York
    const b = book(sheet);
    b.enter("signed", { relation: "tenant", language: "es" }, { at: Date.UTC(2026, 5, 6, 3) });
    const [cover] = coversOf(
      warrantyClocks(jobState(b.ledger())),
      readTerms({ terms: [{ part: "Work", months: 12, starts: "handover" }] }),
    );
    expect(cover && ends(cover)).toBe("2027-06-05");
  });

  it("both days belong to the cover", () => {
    const cover = one(pump, ["cover-started", { rule: "date of sale", day: "2024-02-29", part: "Pump" }]);
    expect(["2024-02-28", "2024-02-29", "2027-02-28", "2027-03-01"].map((on) => standingOn(cover, day(on)).is)).toEqual([
      "not begun",
      "runs",
      "runs",
      "over",
    ]);
  });
});

describe("handed over", () => {
  const terms = readTerms({ acceptedByUseAfterDays: 14 });
  const how = (lines: readonly Line[], of = terms) => {
    const over = handedOver(warrantyClocks(stateOf(lines)), of);
    return over && [over.how, isoDay(over.day)];
  };
  const delivered: Line = ["delivered-unsigned", { how: "by hand", day: "2026-06-10", to: "letter box", because: "vacant" }, "2026-06-11"];
  const used: Line = ["in-use", { since: "2026-06-01", how: "seen running" }, "2026-06-12"];

  it("is the first of signature, delivery without one, and use", () => {
    expect(how([])).toBeUndefined();
    expect(how([signed("2026-06-20"), delivered])).toEqual(["delivered without signature", "2026-06-10"]);
    // used since the 1st, and 14 days later
    expect(how([signed("2026-06-20"), used])).toEqual(["accepted by use", "2026-06-15"]);
    expect(how([signed("2026-06-05"), used])).toEqual(["signed", "2026-06-05"]);
  });

  it("use alone accepts nothing where the terms name no days, or where somebody objected", () => {
    expect(how([used], readTerms({}))).toBeUndefined();
    expect(how([used, ["declined", { objection: "The edge is too high." }]])).toBeUndefined();
  });

  it("an objection stays word for word", () => {
    const objection = "«No firmo: falta la luz»";
    const clocks = warrantyClocks(
      stateOf([["delivered-unsigned", { how: "mail", day: "2026-06-10", to: "her address", because: "declined", objection }]]),
    );
    expect(handedOver(clocks, terms)).toMatchObject({ how: "delivered without signature", because: "declined", objection });
  });
});

describe("parts", () => {
  const sold: Line = ["cover-started", { rule: "date of sale", day: "2026-01-15", part: "Pump" }];
  const replaced = (on: string, why = "under warranty"): Line => ["part-replaced", { part: "Pump", day: on, why }];

  it("an old one that stayed has none, whatever the terms say of such parts", () => {
    const all = covers(
      { terms: [pump] },
      sold,
      ["part-kept", { part: "PUMP", why: "runs well" }],
      ["part-kept", { part: "Old basin", why: "good wall" }],
    );
    expect(all.map(({ part, kept, end }) => [part, kept?.why, end])).toEqual([
      ["Pump", "runs well", undefined],
      ["Old basin", "good wall", undefined],
    ]);
    expect(all.map((cover) => standingOn(cover, day("2026-02-01")).is)).toEqual(["kept, no cover", "kept, no cover"]);
  });

  it.each([
    // sold 2026-01-15 for 36 months: 2029-01-15
    ["rest of the old term", "2027-06-30", "2029-01-15"],
    ["new term", "2027-06-30", "2030-06-30"],
    ["longer of both", "2027-06-30", "2030-06-30"],
    [undefined, "2027-06-30", "2029-01-15"],
    // the day after the last: no longer under warranty, whatever the rule
    ["new term", "2029-01-16", "2029-01-15"],
    ["new term", "2029-01-15", "2032-01-15"],
  ])("replaced under the rule %s on %s: ends %s", (replacement, on, end) => {
    const term = replacement === undefined ? pump : { ...pump, replacement };
    expect(ends(one(term, sold, replaced(on)))).toBe(end);
  });

  it("replaced twice: each counts from the end that the one before left", () => {
    const cover = one({ ...pump, replacement: "new term" }, sold, replaced("2031-05-31"), replaced("2028-08-31"));
    // 2028-08-31 and 36 months: 2031-08-31; replaced again before that day: 2034-05-31
    expect(ends(cover)).toBe("2034-05-31");
    expect(cover.replaced.map(({ why, rule }) => [why, rule])).toEqual([
      ["under warranty", "new term"],
      ["under warranty", "new term"],
    ]);
  });

  it("sold anew after its cover it has a whole term", () => {
    expect(ends(one(pump, sold, replaced("2030-02-28", "sold")))).toBe("2033-02-28");
  });
});

describe("registering", () => {
  const term = { ...pump, register: { days: 30, with: "the maker" } };
  const sold: Line = ["cover-started", { rule: "date of sale", day: "2026-01-31", part: "Pump" }];
  const registered = (on: string): Line => ["part-registered", { part: "Pump", day: on, number: "R 7" }];

  it("is due so many days after the start", () => {
    // 31 January and 30 days: 2 March
    const cover = one(term, sold);
    expect(cover.registration && isoDay(cover.registration.by)).toBe("2026-03-02");
    expect(["2026-03-02", "2026-03-03"].map((on) => standingOn(cover, day(on)).registration)).toEqual(["to do", "late"]);
  });

  it.each([
    ["2026-03-02", "done"],
    ["2026-03-03", "done late"],
  ])("done on %s: %s", (on, is) => {
    expect(standingOn(one(term, sold, registered(on)), day("2026-12-01")).registration).toBe(is);
  });
});

describe("conditions", () => {
  const warranty = {
    terms: [{ part: "Pump", months: 36, starts: "date of sale", services: ["winter"] }],
    services: [
      { kind: "winter", month: 10, day: 31, within: 30 },
      { kind: "spring", month: 4, day: 1 },
    ],
  };
  const sold: Line = ["cover-started", { rule: "date of sale", day: "2025-05-01", part: "Pump" }];
  const done = (service: string, date: string): Line => ["service-done", { service, date }];

  it("each winter's service is asked, within its days, and shown by its entry", () => {
    const [cover] = covers(warranty, sold, done("Winter", "2025-10-01"), done("winter", "2026-09-30"), done("spring", "2026-10-31"));
    if (cover === undefined) throw new Error("no cover");
    // 2025-10-01 lies 30 days before the 31st, 2026-09-30 lies 31
    expect(cover.services.map(({ day: due, done: by }) => [isoDay(due), by && isoDay(by.day)])).toEqual([
      ["2025-10-31", "2025-10-01"],
      ["2026-10-31", undefined],
      ["2027-10-31", undefined],
    ]);
    const standing = (on: string) => {
      const { missed, next } = standingOn(cover, day(on));
      return [missed.map(({ day: due }) => isoDay(due)), next && isoDay(next.day)];
    };
    expect(standing("2026-11-30")).toEqual([[], "2026-10-31"]);
    expect(standing("2026-12-01")).toEqual([["2026-10-31"], "2027-10-31"]);
    // what a missed one means is for the company's terms: the cover itself goes on
    expect(standingOn(cover, day("2026-12-01")).is).toBe("runs");
  });

  it("yearly on the leap day falls on the last of February elsewhere", () => {
    const yearly = { terms: [{ ...pump, months: 60, services: ["yearly"] }], services: [{ kind: "yearly" }] };
    const [cover] = covers(yearly, ["cover-started", { rule: "date of sale", day: "2024-02-29", part: "Pump" }]);
    expect(cover?.services.map(({ day: due }) => isoDay(due))).toEqual([
      "2025-02-28",
      "2026-02-28",
      "2027-02-28",
      "2028-02-29",
      "2029-02-28",
    ]);
  });
});

describe("a new owner of the house", () => {
  const sold: Line = ["cover-started", { rule: "date of sale", day: "2026-01-15", part: "Pump" }];
  const moved = (told: string): Line => ["new-owner", { day: "2027-03-10" }, told];

  it.each([
    [{ newOwner: "passes on" }, "2028-01-01", "passes on", "2029-01-15"],
    [{ newOwner: "ends" }, "2027-03-10", "ended", "2027-03-10"],
    [{ newOwner: "passes on when told", newOwnerDays: 30 }, "2027-04-09", "passes on", "2029-01-15"],
    [{ newOwner: "passes on when told", newOwnerDays: 30 }, "2027-04-10", "ended", "2027-03-10"],
    [{}, "2027-04-10", "not said", "2029-01-15"],
  ])("%j, told on %s: %s, to %s", (rule, told, becomes, end) => {
    const cover = one({ ...pump, ...rule }, sold, moved(told));
    expect(cover.newOwner?.becomes).toBe(becomes);
    expect(ends(cover)).toBe(end);
  });

  it("after the cover changes nothing", () => {
    const cover = one({ ...pump, months: 12, newOwner: "ends" }, sold, moved("2027-03-11"));
    expect([cover.newOwner, ends(cover)]).toEqual([undefined, "2027-01-15"]);
  });
});

describe("terms as a company saved them", () => {
  it("what does not read is left out, and nothing is refused", () => {
    const read = readTerms({
      text: { es: ["Solo español."] },
      terms: [{ part: "Pump", months: 1.5 }, { part: 7, months: 12 }, "x", { part: "Pump", months: 12, starts: "some day", register: 3 }],
      services: [{ kind: "summer" }, { kind: "winter", month: 13 }, { kind: "return visit", daysAfter: 30 }],
      acceptedByUseAfterDays: -1,
    });
    expect(read).toEqual({
      text: { en: ["Solo español."], es: ["Solo español."] },
      terms: [{ part: "Pump", months: 12, starts: "handover" }],
      services: [
        { kind: "winter", within: 45 },
        { kind: "return visit", daysAfter: 30, within: 45 },
      ],
    });
    for (const none of [undefined, null, 7, "terms", []]) expect(readTerms(none).terms).toEqual([]);
  });
});
