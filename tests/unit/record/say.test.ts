import { describe, expect, it } from "vitest";
import type { Check, Finding } from "#core/job/index.ts";
import { makeSayer } from "#core/record/index.ts";
import { settlingOf } from "#core/record/settle.ts";
import { answerItem, bench, book, inch, lengthItem, pictureItem } from "../../helpers/job.ts";
import { recordOf } from "../../helpers/record.ts";

const sixteenth = inch / 16;
/** Sixteenths of an inch, as a stored integer. */
const sixteenths = (count: number): number => Math.round(count * sixteenth);
const words = (en: string) => ({ en });
const check = (id: string, more: Partial<Check> & Pick<Check, "function" | "items">): Check => ({
  id,
  step: "step-one",
  title: words(id),
  kind: "length",
  weight: "asked",
  ...more,
});
const saidOf = (found: Finding, checks: readonly Check[], language: "en" | "es" = "en"): string =>
  makeSayer({
    language,
    units: "inch",
    zone: "UTC",
    sheet: bench({ items: [lengthItem("one-read"), lengthItem("two-read")], checks }),
  }).finding(found);
const base = { step: "step-one", of: "check", weight: "asked", kind: "length", entries: [] } as const;

describe("what may settle a verdict that is too close to call", () => {
  /** U of the whole and u of its contributors in sixteenths of an inch. */
  const settles = (needed: number, contributors: Readonly<Record<string, number>>) => {
    const u = Math.hypot(...Object.values(contributors));
    return settlingOf({
      ...base,
      check: "c",
      verdict: "too close to call",
      doubt: 2 * u * sixteenth,
      contributors: Object.entries(contributors)
        .map(([name, value]) => ({ name, u: value * sixteenth }))
        .sort((a, b) => b.u - a.u),
      says: { key: "value.too-close", figures: { needed: needed * sixteenth } },
    });
  };

  it("is a second or a third reading where the placing brings the doubt, and nothing where no reading would do", () => {
    // two readings divide the placing's part by the square root of two: 2 x 2 / 1.414 = 2.83
    expect(settles(3, { placing: 2, "permitted-error": 0.1 })).toBe("second");
    expect(settles(2.5, { placing: 2, "permitted-error": 0.1 })).toBe("third");
    expect(settles(1, { placing: 2, "permitted-error": 0.1 })).toBe("none");
    expect(settles(0, { placing: 2 })).toBe("none");
  });

  it("is a finer tape or the receiver on fine where these bring it and the rest is small enough", () => {
    expect(settles(1.5, { resolution: 2, placing: 0.5 })).toBe("tape");
    expect(settles(0.5, { resolution: 2, placing: 1.5 })).toBe("none");
    expect(settles(1.5, { receiver: 2, placing: 0.5 })).toBe("receiver");
    expect(settles(1, { "permitted-error": 2, placing: 0.2 })).toBe("none");
  });

  it("is nothing for what is not too close to call", () => {
    expect(settlingOf({ ...base, check: "c", verdict: "within", says: { key: "value.within", figures: {} } })).toBeUndefined();
  });

  it("prints as a sentence in both languages, without a figure that no tape could meet", () => {
    const close: Finding = {
      ...base,
      check: "one-check",
      verdict: "too close to call",
      value: sixteenths(20),
      doubt: sixteenths(4),
      lower: sixteenths(17),
      contributors: [{ name: "placing", u: sixteenths(2) }],
      says: { key: "value.too-close", figures: { by: sixteenths(3), needed: sixteenths(3) } },
    };
    const checks = [check("one-check", { function: "single value", items: ["one-read"], lower: sixteenths(17) })];
    expect(saidOf(close, checks)).toBe(
      "one-check: 1 1/4 in ± 1/4 in; the limit is at least 1 1/16 in: too close to call. A second reading, or a harder and stiller edge to read from, may settle it.",
    );
    expect(saidOf(close, checks, "es")).toContain("Una segunda lectura");
  });
});

describe("which way something lies", () => {
  const moved = check("moved-check", {
    function: "moved since",
    items: ["one-read"],
    minus: ["two-read"],
    lower: sixteenths(-6),
    upper: sixteenths(6),
  });
  const found: Finding = {
    ...base,
    check: "moved-check",
    verdict: "within",
    value: sixteenths(-2),
    doubt: sixteenths(1),
    says: { key: "value.within", figures: {} },
  };

  it("is said as higher or lower, at the place that moved most, and never with a sign", () => {
    const place = { item: "one-read" };
    expect(saidOf({ ...found, place, lower: sixteenths(-6), upper: sixteenths(6) }, [moved])).toBe(
      "moved-check: 1/8 in lower ± 1/16 in; the limit is ± 3/8 in: within. Most at: one-read.",
    );
    expect(saidOf({ ...found, value: sixteenths(2) }, [moved])).toContain("1/8 in higher ±");
    expect(saidOf({ ...found, value: 0 }, [moved])).toContain(": 0 in ±");
  });

  it("what is worked out from several readings is told in thirty-seconds, a reading in the tape's own marks", () => {
    expect(saidOf({ ...found, value: sixteenths(3.5) }, [moved])).toContain("7/32 in higher");
    const plain = check("plain-check", { function: "single value", items: ["one-read"] });
    expect(saidOf({ ...found, check: "plain-check", value: sixteenths(3.6) }, [plain])).toContain(": 1/4 in ±");
  });
});

it("a doubt of a time is rounded up to whole minutes", () => {
  const time = check("cure-check", { function: "time passed since", items: ["one-read"], kind: "duration" });
  const found: Finding = {
    ...base,
    kind: "duration",
    check: "cure-check",
    verdict: "within",
    value: 61 * 60_000,
    doubt: 61_000,
    lower: 60 * 60_000,
    says: { key: "value.within", figures: {} },
  };
  expect(saidOf(found, [time])).toContain("1 h 1 min ± 2 min");
});

it("a low intake says the gallons that it wins and the depths that they are of (45 in square: 13.1 to 17.5 gal, common practice, no source)", () => {
  const intake = answerItem("intake-low", { weight: "asked", source: "common practice", wins: { lower: 1.5 * inch, upper: 2 * inch } });
  const b = book(bench({ items: [intake] }));
  b.enter("design-set", { figures: { basinLength: { typed: "45", unit: "in" }, basinWidth: { typed: "45", unit: "in" } } });
  b.answer("intake-low", "is-wet");
  expect(recordOf(b.ledger()).findings[0]?.says).toContain(
    "A low intake wins 13.1 gal to 17.5 gal of water (1 1/2 in to 2 in; common practice, no source).",
  );
});

it("a source prints in words: the tolerance sheet's own, or common practice", () => {
  const { origin } = makeSayer({ language: "en", units: "inch", zone: "UTC" });
  expect(origin("own")).toBe("the tolerance sheet's own figure");
  expect(origin("own; a 6 in piece is common practice")).toBe("the tolerance sheet's own figure; a 6 in piece is common practice");
  expect(origin("common practice")).toBe("common practice, no source");
  expect(origin("the can's own figure")).toBe("the can's own figure");
});

it("ties say from which mark, points and places what they are, and two set-ups stand apart", () => {
  const tie = lengthItem("tie-one", { weight: "asked", tags: "point-set" });
  const place = lengthItem("rim-one", { weight: "asked", inSetUp: true, instrument: "bench-laser" });
  const sheet = bench({
    steps: [{ id: "step-one", number: 1, title: words("One"), cautions: [], note: words("1 is nearest the house.") }],
    tagSets: [{ id: "point-set", title: words("Point"), least: 1, coverings: ["bury-it"] }],
    items: [tie, place, pictureItem("place-seen", { weight: "asked" })],
  });
  const b = book(sheet);
  b.enter("tag-named", { set: "point-set", tag: "P1", hiddenBy: "bury-it", description: "union behind the basin" });
  b.read({ item: "tie-one", tag: "P1" }, "8 ft 4", { mark: "corner of the house" });
  for (const typed of ["30 1/16", "31 1/16"]) b.read("rim-one", typed, { setUp: b.setUp() });
  const model = recordOf(b.ledger());
  const [step] = model.steps;
  expect(step?.explains).toEqual(["1 is nearest the house.", "Point P1: union behind the basin"]);
  expect(step?.readings[0]).toMatchObject({ typed: "8 ft 4", how: "from corner of the house, Tape, Hard edge" });
  expect(model.findings.find((view) => view.check === "tie-one")?.says).toMatch(/: 8 ft 4\. From: corner of the house\.$/);
  expect(step?.readings.slice(1).map(({ setUp }) => setUp)).toEqual([
    expect.stringMatching(/^Set-up 1, 1 June 2026, .*: Laser, receiver on fine$/),
    expect.stringMatching(/^Set-up 2, /),
  ]);
});

it("a refusal names a day in words, as every page does; what is no day stays as it is", () => {
  const told = (language: "en" | "es", until: string) =>
    makeSayer({ language, units: "inch", zone: "UTC" }).refusal({ code: "person-request-held", place: "request", figures: { until } });
  expect(told("en", "2100-05-04")).toContain("held until 4 May 2100.");
  expect(told("es", "2100-05-04")).toContain("4 de mayo de 2100");
  expect(told("en", "2100-02-30")).toContain("held until 2100-02-30.");
});
