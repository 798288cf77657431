import { describe, expect, test } from "vitest";
import type { Check, Item } from "#core/job/index.ts";
import { answerItem, asks, bench, book, inch, lengthItem, minute, pictureItem, start } from "../../helpers/job.ts";

/*
 * Doubt by hand. One half-width is written in 1/32 in = 793.75 µm: 1/16 in marks 1, hard edge 2, receiver on fine 2, slope of
 * the laser at 50 ft 1, receiver on coarse 4, running water 8, turf 16. u = half-width / √3, U = 2 u, in quadrature. The
 * sheet's own figures are whole micrometres, so that U may differ by one or two.
 */
const U = (sumOfSquares: number): number => (2 * 793.75 * Math.sqrt(sumOfSquares)) / Math.sqrt(3);
/** Permitted error of a class II tape up to 1 m: 0.3 + 0.2 mm (OIML R 35), a source beside the marks. */
const tape = (2 * 500) / Math.sqrt(3);
const both = (...parts: number[]): number => Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0));
const near = (value: number | undefined, by: number): void => expect(Math.abs((value ?? Number.NaN) - by)).toBeLessThan(4);

const check = (id: string, more: Partial<Check>): Check => ({
  id,
  step: "step-one",
  title: { en: id },
  function: "single value",
  items: [],
  kind: "length",
  weight: "holds",
  holds: "bury-it",
  ...more,
});
const places = ["place-one", "place-two", "place-three", "place-four"];
const rod = (id: string, more: Partial<Item> = {}): Item => lengthItem(id, { instrument: "bench-laser", inSetUp: true, ...more });
const marks = [rod("mark-first", { heightMark: true }), rod("mark-last", { heightMark: true })];
const level = { function: "out of level" as const, items: places, upper: inch / 2, aim: inch / 4, costs: "water lost to tilt" as const };

const round = { on: ["round-rim"] };
const rimSheet = bench({
  switches: [{ id: "round-rim", title: { en: "Round" }, standard: false }],
  items: [...marks, ...places.map((id) => rod(id)), rod("stake-rod")],
  checks: [
    check("along-check", { ...level, way: "along" }),
    check("across-check", { ...level, way: "across" }),
    check("along-round", { ...level, way: "along", places: "quarter points", switches: round }),
    check("across-round", { ...level, way: "across", places: "quarter points", switches: round }),
    check("fourth-check", { function: "fourth place", items: places, aim: 0, lower: -inch / 2, upper: inch / 2 }),
    check("below-check", { items: places, minus: ["stake-rod"], aim: 4 * inch, lower: 3 * inch, upper: 5 * inch }),
  ],
});
/** One set-up: the mark, four places of the rim in order, a stake, the mark. */
function rim(rods: readonly string[], how: { receiver?: "fine" | "coarse"; closing?: string | null; stake?: string } = {}) {
  const b = book(rimSheet);
  const setUp = b.setUp(how.receiver ?? "fine");
  b.read("mark-first", "30 0/16", { setUp });
  rods.forEach((typed, i) => {
    b.read(places[i] ?? "", typed, { setUp });
  });
  b.read("stake-rod", how.stake ?? "32 0/16", { setUp });
  if (how.closing !== null) b.read("mark-last", how.closing ?? "30 0/16", { setUp });
  return b;
}

describe("out of level", () => {
  // heights 0, -1/4, -3/8, -1/8 in: a plane that falls 1/4 along and 1/8 across
  const tilted = ["36 0/16", "36 4/16", "36 6/16", "36 2/16"];

  test("both ways, by the corners: mean of two less mean of two", () => {
    const b = rim(tilted);
    expect(b.finding("along-check")).toMatchObject({ value: inch / 4, verdict: "within", upper: inch / 2 });
    expect(b.finding("across-check")).toMatchObject({ value: inch / 8, verdict: "within" });
    // the line's height and the tape's permitted error are the set-up's and drop out: 1 + 4 + 4 + 1, twice halved
    near(b.finding("along-check").doubt, U(10));
    expect(b.finding("along-check").contributors?.map((c) => c.name)).toEqual(["placing", "receiver", "resolution"]);
  });

  test("by the quarter points: one place less the opposite one", () => {
    const b = rim(["36 0/16", "36 1/16", "36 4/16", "36 3/16"]);
    b.enter("design-set", { switches: { "round-rim": true } });
    expect(b.finding("along-round")).toMatchObject({ value: inch / 4 });
    expect(b.finding("across-round")).toMatchObject({ value: inch / 8 });
    near(b.finding("along-round").doubt, U(20));
  });

  test("twisted and tilted with the same highest and lowest are different findings", () => {
    const twisted = rim(["36 0/16", "36 6/16", "36 0/16", "36 6/16"]);
    const values = ["along-check", "across-check", "fourth-check"].map((id) => twisted.finding(id).value);
    // z1 - z2 + z3 - z4 = 3/8 + 3/8
    expect(values).toEqual([0, 0, (inch * 3) / 4]);
    expect(["along-check", "fourth-check"].map((id) => rim(tilted).finding(id).value)).toEqual([inch / 4, 0]);
  });

  test("what it costs: plan area by half the tilt, of a rectangle and of a circle", () => {
    const b = rim(tilted);
    const figures = (f: Record<string, string>) =>
      b.enter("design-set", { figures: Object.fromEntries(Object.entries(f).map(([key, typed]) => [key, { typed, unit: "in" }])) });
    expect(b.finding("along-check").costs).toBeUndefined();
    figures({ basinDiameter: "40" });
    // π/4 × 40² in² × 1/8 in = 157.08 in³ = 2,574.1 ml
    expect(b.finding("along-check").costs).toEqual({ kind: "volume", value: 2574 });
    figures({ basinLength: "60", basinWidth: "48" });
    // 60 × 48 in² × 1/8 in = 360 in³ = 5,899.35 ml
    expect(b.finding("along-check").costs).toEqual({ kind: "volume", value: 5899 });
  });
});

describe("fourth place, and rim below finished grade", () => {
  test("the gap under the corner that rocks", () => {
    // heights 0, -1/4, -1/4, -1/4: 0 + 1/4 - 1/4 + 1/4
    const b = rim(["36 0/16", "36 4/16", "36 4/16", "36 4/16"]);
    expect(b.finding("fourth-check")).toMatchObject({ value: inch / 4, verdict: "within" });
    near(b.finding("fourth-check").doubt, U(40));
  });

  test("single value with something taken off: the mean of four less the stake", () => {
    const b = rim(["36 0/16", "36 4/16", "36 6/16", "36 2/16"]);
    // mean 36 3/16 less 32 0/16 = 4 3/16 in = 106,362.5 µm
    expect(b.finding("below-check")).toMatchObject({ value: 106_363, verdict: "within" });
    near(b.finding("below-check").doubt, U(10 / 4 + 10));
  });

  test("an error of the height mark, or of the line's height, shifts all four places and leaves out of level alone", () => {
    const high = rim(["36 8/16", "36 12/16", "36 14/16", "36 10/16"], { stake: "32 0/16" });
    const low = rim(["36 0/16", "36 4/16", "36 6/16", "36 2/16"]);
    for (const id of ["along-check", "across-check", "fourth-check"]) {
      expect(high.finding(id).value).toBe(low.finding(id).value);
      expect(high.finding(id).doubt).toBe(low.finding(id).doubt);
    }
    expect((high.finding("below-check").value ?? 0) - (low.finding("below-check").value ?? 0)).toBe(inch / 2);
  });
});

describe("set-ups", () => {
  const flat = ["36 0/16", "36 0/16", "36 6/16", "36 6/16"];

  test("the mark not read again: so far, and the covering still asks for it", () => {
    const b = rim(flat, { closing: null });
    expect(b.finding("across-check")).toMatchObject({ verdict: "within", soFar: true });
    expect(asks(b.clearance("bury-it"))).toEqual(["mark-last"]);
    expect(b.finding("mark-first").says.key).toBe("mark.so-far");
  });

  test.each([
    ["fine", "30 3/16", "within"],
    ["fine", "30 4/16", "too close to call"],
    ["coarse", "30 4/16", "within"],
    ["coarse", "30 5/16", "too close to call"],
  ] as const)("receiver on %s, mark 30 0/16 and then %s: %s", (receiver, closing, verdict) => {
    const b = rim(["36 0/16", "36 0/16", "36 0/16", "36 0/16"], { receiver, closing });
    expect(b.finding("along-check").verdict).toBe(verdict);
    expect(b.finding("mark-last").says.key).toBe(verdict === "within" ? "mark.closed" : "mark.does-not-close");
    expect(b.finding("along-check").soFar).toBeUndefined();
  });

  test("a mark that does not close: too close to call, until a second set-up does", () => {
    const b = rim(flat, { closing: "30 8/16" });
    expect(b.finding("across-check")).toMatchObject({ verdict: "too close to call", says: { key: "reason.mark-not-closed" } });
    expect(b.finding("across-check").entries).toContain(b.done().state.byItem.get("mark-last")?.[0]?.id);
    const setUp = b.setUp();
    b.read("mark-first", "29 0/16", { setUp });
    for (const [i, typed] of ["35 0/16", "35 0/16", "35 4/16", "35 4/16"].entries()) b.read(places[i] ?? "", typed, { setUp });
    b.read("stake-rod", "31 0/16", { setUp });
    expect(b.finding("across-check")).toMatchObject({ verdict: "within", value: inch / 4, soFar: true });
    b.read("mark-last", "29 1/16", { setUp });
    expect(b.finding("across-check")).toMatchObject({ verdict: "within", value: inch / 4 });
    expect(b.clearance("bury-it").state).toBe("clear");
  });

  test("rework of the rim asks for the new set-up's mark too", () => {
    const b = rim(flat);
    expect(b.clearance("bury-it").state).toBe("clear");
    for (const id of ["along-check", "below-check"]) b.enter("reworked", { about: { check: id }, done: "bed trimmed", minutes: 40 });
    expect(asks(b.clearance("bury-it"))).toEqual(places);
    const setUp = b.setUp();
    for (const id of places) b.read(id, "35 0/16", { setUp });
    expect(asks(b.clearance("bury-it"))).toEqual(["mark-first", "mark-last", "stake-rod"]);
    b.read("mark-first", "29 0/16", { setUp });
    b.read("stake-rod", "31 0/16", { setUp });
    b.read("mark-last", "29 0/16", { setUp });
    expect(b.clearance("bury-it").state).toBe("clear");
    expect(b.finding("across-check").beforeRework).toEqual([{ value: (inch * 3) / 8, verdict: "within" }]);
  });

  test("the receiver alone changes a verdict", () => {
    // 3/8 against 1/2 in leaves 3,175 µm: U is 2,898 on fine (10), 4,299 on coarse (1 + 4 + 16 + 1)
    near(rim(flat).finding("across-check").doubt, U(10));
    near(rim(flat, { receiver: "coarse" }).finding("across-check").doubt, U(22));
    expect(rim(flat).finding("across-check").verdict).toBe("within");
    expect(rim(flat, { receiver: "coarse" }).finding("across-check").verdict).toBe("too close to call");
  });

  test("a set-up that does not say how its receiver stood counts as coarse; so does one that is not there", () => {
    for (const known of [true, false]) {
      const b = book(rimSheet);
      const setUp = known ? b.enter("set-up-made", { instrument: "bench-laser" }) : "lost";
      b.read("mark-first", "30 0/16", { setUp });
      for (const [i, typed] of flat.entries()) b.read(places[i] ?? "", typed, { setUp });
      b.read("mark-last", "30 0/16", { setUp });
      near(b.finding("across-check").doubt, U(22));
    }
  });

  test("places read from two set-ups are no rim: the newest is asked for what it lacks", () => {
    const b = book(rimSheet);
    const first = b.setUp();
    for (const id of places.slice(0, 3)) b.read(id, "36 0/16", { setUp: first });
    const second = b.setUp();
    b.read("place-four", "36 0/16", { setUp: second });
    expect(b.finding("along-check").missing?.map((about) => about.item)).toEqual(places.slice(0, 3));
  });

  test("the typed distance counts instead of 50 ft", () => {
    const b = rim(flat);
    const setUp = b.setUp("fine", { distance: { typed: "200", unit: "ft" } });
    for (const id of ["mark-first", ...places, "mark-last"]) b.read(id, "30 0/16", { setUp });
    // slope at 200 ft is four times that at 50 ft. Two set-ups: marks and placing by √2, receiver and slope as their mean
    near(b.finding("along-check").doubt, U((1 + 4) / 2 + 2 ** 2 + ((1 + 4) / 2) ** 2));
  });
});

describe("moved since", () => {
  const sheet = bench({
    items: [
      ...marks,
      ...["before-one", "before-two", "after-one", "after-two"].map((id) => rod(id)),
      rod("mark-after-first", { heightMark: true }),
      rod("mark-after-last", { heightMark: true }),
    ],
    checks: [
      check("moved-check", {
        function: "moved since",
        items: ["after-one", "after-two"],
        minus: ["before-one", "before-two"],
        aim: 0,
        lower: -inch / 2,
        upper: inch / 2,
      }),
    ],
  });
  function settled(...after: readonly [string, string]) {
    const b = book(sheet);
    const before = b.setUp();
    for (const id of ["mark-first", "mark-last"]) b.read(id, "30 0/16", { setUp: before });
    for (const id of ["before-one", "before-two"]) b.read(id, "35 0/16", { setUp: before });
    const now = b.setUp();
    for (const id of ["mark-after-first", "mark-after-last"]) b.read(id, "31 0/16", { setUp: now });
    b.read("after-one", after[0], { setUp: now });
    b.read("after-two", after[1], { setUp: now });
    return b;
  }

  test("one place that sank is not averaged away by one that stood", () => {
    const b = settled("36 0/16", "36 6/16");
    expect(b.finding("moved-check")).toMatchObject({ value: (-inch * 3) / 8, verdict: "too close to call" });
    // each set-up: a place 10, and the mean of two readings of the mark: (1 + 4) / 2 + 4 + 1
    near(b.finding("moved-check").doubt, U(2 * (10 + 2.5 + 5)));
  });

  test("a new line height moves nothing; up is positive", () => {
    expect(settled("36 0/16", "36 0/16").finding("moved-check")).toMatchObject({ value: 0, verdict: "within" });
    expect(settled("36 0/16", "34 0/16").finding("moved-check")).toMatchObject({ value: 2 * inch, verdict: "outside" });
  });

  test("it rests on the marks of both set-ups", () => {
    const b = settled("36 0/16", "36 0/16");
    expect(b.finding("moved-check").entries).toHaveLength(8);
  });
});

describe("steady", () => {
  const sheet = bench({
    items: ["water-one", "water-two"].map((id) => lengthItem(id, { placingAlso: "moving-water" })),
    checks: [check("steady-check", { function: "steady", items: ["water-one", "water-two"], apart: 5 * minute })],
  });
  const two = (first: string, second: string, apart: number) => {
    const b = book(sheet);
    b.read("water-one", first);
    b.read("water-two", second, {}, { at: b.clock() + apart });
    return b.finding("steady-check");
  };
  // each reading 1 + 4 + 64 and the tape, both new each time: U of the difference 10,798 µm, just over 27/64 in
  const agreed = both(U(2 * 69), tape * Math.sqrt(2));

  test("agree within the doubt of their difference, and not past it", () => {
    near(two("5 0/16", "5 1/16", 6 * minute).doubt, agreed);
    expect(two("5 0/16", "5 6/16", 6 * minute)).toMatchObject({ verdict: "within", value: (inch * 3) / 8 });
    expect(two("5 6/16", "5 0/16", 6 * minute)).toMatchObject({ verdict: "within", value: (inch * 3) / 8 });
    expect(two("5 0/16", "5 7/16", 6 * minute)).toMatchObject({ verdict: "outside", aim: 0 });
    near(two("5 0/16", "5 7/16", 6 * minute).upper, agreed);
  });

  test("taken too soon after each other they settle nothing", () => {
    expect(two("5 0/16", "5 0/16", 4 * minute)).toMatchObject({
      verdict: "too close to call",
      says: { key: "reason.too-soon", figures: { apartDuration: 4 * minute, leastDuration: 5 * minute } },
    });
    expect(two("5 0/16", "5 0/16", 5 * minute).verdict).toBe("within");
  });

  test("typed times count before the time of entry", () => {
    const b = book(sheet);
    b.read("water-one", "5 0/16", { at: start });
    b.read("water-two", "5 0/16", { at: start + 10 * minute });
    expect(b.finding("steady-check").verdict).toBe("within");
  });
});

describe("level along a lip", () => {
  const gap = { instrument: "bench-level", signed: true } as const;
  const sheet = bench({
    items: [lengthItem("gap-first", gap), lengthItem("gap-turned", gap)].map(({ placing: _, ...item }) => item),
    checks: [
      check("lip-check", { function: "level along a lip", items: ["gap-first", "gap-turned"], aim: 1588, upper: inch / 8 }),
      check("not-turned", { items: ["gap-first", "gap-turned"], aim: 1588, upper: inch / 8 }),
    ],
  });
  const lip = (first: string, turned: string) => {
    const b = book(sheet);
    b.read("gap-first", first);
    b.read("gap-turned", turned);
    return b;
  };

  test("turned end for end: the level's own error drops out of value and doubt", () => {
    // a lip 1/16 in out, read with a level that is itself 1/16 in off: 1/8 one way, 0 the other
    const b = lip("4/32", "0/32");
    expect(b.finding("lip-check")).toMatchObject({ value: 1588, verdict: "within" });
    // shims in 1/32 in steps: half-width 1/64 in = 0.5, mean of two; no placing, no permitted error
    near(b.finding("lip-check").doubt, U(0.25 / 2));
    // not turned, the vial's 0.5 mm/m over 4 ft (0.6096 mm) stays in both alike, once for each reading
    near(b.finding("not-turned").doubt, both(U(0.25 / 2), ((2 * 609.6) / Math.sqrt(3)) * Math.SQRT1_2));
  });

  test("gaps under opposite ends have opposite signs", () => {
    expect(lip("2/32", "-2/32").finding("lip-check")).toMatchObject({ value: 0, verdict: "within" });
    expect(lip("-8/32", "-8/32").finding("lip-check")).toMatchObject({ value: inch / 4, verdict: "outside" });
    expect(lip("4/32", "4/32").finding("lip-check").verdict).toBe("too close to call");
  });
});

describe("at least one of", () => {
  const sheet = bench({
    items: [pictureItem("ticket-seen", { weight: "if you have it" }), answerItem("mix-asked", { weight: "if you have it" })],
    checks: [check("either-check", { function: "at least one of", items: ["ticket-seen", "mix-asked"], kind: "count" })],
  });

  test("none: both are named; a picture or an accepting answer is enough; a bad answer alone is not", () => {
    const b = book(sheet);
    expect(asks(b.clearance("bury-it"))).toEqual(["ticket-seen", "mix-asked"]);
    b.answer("mix-asked", "is-wet");
    expect(b.finding("either-check")).toMatchObject({ verdict: "outside", says: { key: "check.none-of-them" } });
    b.picture("ticket-seen");
    expect(b.finding("either-check")).toMatchObject({ verdict: "within", says: { key: "check.one-of-them" } });
    const other = book(sheet);
    other.answer("mix-asked", "is-dry");
    expect(other.clearance("bury-it").state).toBe("clear");
  });
});

describe("time passed since", () => {
  const sheet = bench({
    tagSets: [{ id: "glue-round", title: { en: "Session" }, least: 1, coverings: ["bury-it"] }],
    items: [
      lengthItem("joint-made", { quantity: "instant", unit: { inch: "instant", metric: "instant" }, tags: "glue-round" }),
      lengthItem("cure-asked", { quantity: "duration", unit: { inch: "h", metric: "h" }, weight: "asked" }),
      answerItem("joints-dry", { tags: "glue-round" }),
    ],
    checks: [
      check("cure-check", {
        function: "time passed since",
        items: ["joint-made"],
        until: "joints-dry",
        kind: "duration",
        aim: { function: "as typed", item: "cure-asked", offset: 15 * minute },
        lower: { function: "as typed", item: "cure-asked" },
      }),
    ],
  });
  const made = start + 60 * minute;
  const glued = () => {
    const b = book(sheet);
    b.tag("glue-round", "1", "bury-it");
    b.read({ item: "joint-made", tag: "1" }, new Date(made).toISOString(), { unit: "instant" });
    return b;
  };
  const cured = made + 120 * minute;

  test("waits for the can's own time, once it is typed", () => {
    const b = glued();
    expect(b.finding("cure-check", "1")).toMatchObject({ verdict: "not taken", missing: [{ item: "cure-asked" }] });
    b.read("cure-asked", "2 h", { unit: "h" });
    expect(b.finding("cure-check", "1")).toMatchObject({ verdict: "within", from: cured, says: { figures: { fromInstant: cured } } });
  });

  test("the clearance before that instant and from it on; the finding does not move", () => {
    const b = glued();
    b.read("cure-asked", "2 h", { unit: "h" });
    b.enter("does-not-apply", { about: { item: "joints-dry" }, reason: "no water yet", role: "office" });
    const before = b.clearance("bury-it", cured - 1);
    expect(before).toMatchObject({ state: "not yet", lines: [{ about: { check: "cure-check", tag: "1" }, from: cured }] });
    expect(before.lines[0]?.waysOut[0]).toBe("wait");
    expect(b.clearance("bury-it", cured)).toMatchObject({ state: "clear", lines: [] });
    expect(b.done(cured - 1).all).toEqual(b.done(cured).all);
  });

  test("a go-ahead passes what only waits, until the time has come", () => {
    const b = glued();
    b.read("cure-asked", "2 h", { unit: "h" });
    b.enter("does-not-apply", { about: { item: "joints-dry" }, reason: "no water yet", role: "office" });
    b.enter("go-ahead", { covering: "bury-it", reason: "rain", role: "crew" });
    expect(b.clearance("bury-it", cured - 1).state).toBe("on word");
    expect(b.clearance("bury-it", cured).state).toBe("clear");
  });

  test("looked at too early is outside, in time is within", () => {
    const early = glued();
    early.read("cure-asked", "2 h", { unit: "h" });
    early.answer({ item: "joints-dry", tag: "1" }, "is-dry", { at: cured - 10 * minute });
    expect(early.finding("cure-check", "1")).toMatchObject({ verdict: "outside", value: 110 * minute, lower: 120 * minute });
    early.answer({ item: "joints-dry", tag: "1" }, "is-dry", { at: cured + 10 * minute });
    expect(early.finding("cure-check", "1")).toMatchObject({ verdict: "within", value: 130 * minute, aim: 135 * minute });
    // the clocks' half a second, as a standard uncertainty
    expect(early.finding("cure-check", "1").doubt).toBe(1000);
  });

  test("the last of several joints counts", () => {
    const b = glued();
    b.read("cure-asked", "2 h", { unit: "h" });
    b.read({ item: "joint-made", tag: "1" }, new Date(made + 30 * minute).toISOString(), { unit: "instant" });
    expect(b.finding("cure-check", "1").from).toBe(cured + 30 * minute);
  });
});

describe("several readings of one point", () => {
  const sheet = bench({
    items: [lengthItem("depth-read"), lengthItem("cold-read", { quantity: "temperature", unit: { inch: "°F", metric: "°C" } })],
    checks: [check("depth-check", { items: ["depth-read"], aim: 10 * inch, lower: 8 * inch })],
  });

  test("the mean; resolution and placing by the root of their number, the rest whole", () => {
    const b = book(sheet);
    b.read("depth-read", "9 0/16");
    near(b.finding("depth-check").doubt, both(U(5), tape));
    b.read("depth-read", "9 1/16");
    // 228,600 and 230,188 µm
    expect(b.finding("depth-check")).toMatchObject({ value: 229_394, verdict: "within" });
    near(b.finding("depth-check").doubt, both(U(2.5), tape));
  });

  test("two that disagree ask for a third, and no limit settles them", () => {
    const b = book(sheet);
    b.read("depth-read", "12 0/16");
    b.read("depth-read", "13 0/16");
    expect(b.finding("depth-check")).toMatchObject({ verdict: "too close to call", says: { key: "reason.readings-disagree" } });
    b.read("depth-read", "12 1/16");
    expect(b.finding("depth-check")).toMatchObject({ verdict: "within" });
  });

  test("the placing alone changes a verdict", () => {
    // 8 1/2 against 8 in leaves 12,700 µm: U is 2,129 on a hard edge (1 + 4), 14,705 on turf (1 + 256)
    const on = (placing: string) => {
      const b = book(sheet);
      b.read("depth-read", "8 8/16", { placing });
      return b.finding("depth-check");
    };
    near(on("soft-place").doubt, both(U(257), tape));
    expect([on("hard-place").verdict, on("soft-place").verdict]).toEqual(["within", "too close to call"]);
  });

  test("a name that the sheet does not know takes no doubt away", () => {
    const b = book(sheet);
    b.read("depth-read", "9 0/16", { placing: "thin-air", instrument: "naked-eye" });
    near(b.finding("depth-check").doubt, both(U(5), tape));
  });

  test("simple acceptance takes the value alone", () => {
    const simple = { ...sheet, checks: sheet.checks.map((c) => ({ ...c, rule: "simple acceptance" as const })) };
    const b = book(simple);
    b.read("depth-read", "8 0/16");
    expect(b.finding("depth-check").verdict).toBe("within");
  });

  test("a temperature below zero is read", () => {
    const b = book(sheet);
    b.read("cold-read", "-4", { unit: "°F" });
    expect(b.finding("cold-read")).toMatchObject({ verdict: "within", says: { figures: { typed: "-4 °F" } } });
  });
});

describe("limits that are named", () => {
  const sheet = bench({
    items: [lengthItem("cord-run"), lengthItem("rim-height"), lengthItem("typed-limit", { weight: "asked" })],
    checks: [
      check("cord-check", {
        items: ["cord-run"],
        upper: { function: "cord reach", offset: -36 * inch },
        weight: "asked",
        holds: undefined as never,
      }),
      check("rim-check", {
        items: ["rim-height"],
        aim: { function: "rim below finished grade" },
        lower: { function: "rim below finished grade", offset: -inch },
        upper: { function: "rim below finished grade", offset: inch },
      }),
    ].map(({ holds, ...rest }) => (holds === undefined ? rest : { ...rest, holds })),
  });

  test("cord reach: the cord less the basin's depth and the slack that the sheet gives, here 3 ft (own); both figures are asked for by name", () => {
    const b = book(sheet);
    b.read("cord-run", "10 ft", { unit: "ft" });
    expect(b.finding("cord-check")).toMatchObject({ verdict: "not taken", unknown: ["cordLength", "basinDepth"] });
    b.enter("design-set", { figures: { cordLength: { typed: "20", unit: "ft" }, basinDepth: { typed: "30", unit: "in" } } });
    // 20 ft - 30 in - 3 ft = 174 in
    expect(b.finding("cord-check")).toMatchObject({ verdict: "within", upper: 174 * inch });
  });

  test("the design's figure, with its offsets", () => {
    const b = book(sheet);
    b.read("rim-height", "4 0/16");
    b.enter("design-set", { figures: { rimBelowGrade: { typed: "4 1/2", unit: "in" } } });
    expect(b.finding("rim-check")).toMatchObject({ verdict: "within", aim: 4.5 * inch, lower: 3.5 * inch, upper: 5.5 * inch });
  });

  test("a figure that does not read is no figure", () => {
    const b = book(sheet);
    b.read("rim-height", "4 0/16");
    b.enter("design-set", { figures: { rimBelowGrade: { typed: "about four", unit: "in" } } });
    expect(b.finding("rim-check").unknown).toEqual(["rimBelowGrade"]);
  });
});
