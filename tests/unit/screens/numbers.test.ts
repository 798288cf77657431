import { describe, expect, test } from "vitest";
import { clearances, findings, glueBefore, jobState, leavingTonight, setOutCard, type ToleranceSheet, waterWhen } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { shapeOfNight, toSettle } from "#core/screens/field/numbers/evening.ts";
import { barOf, fitted, lettered, PLAN_WIDTH } from "#core/screens/field/numbers/plan-fit.ts";
import { aboutPath, nextRead, rodInstances, rodNames, rodOfAddress, rodPath } from "#core/screens/field/numbers/rod-places.ts";
import { sessionOf } from "#core/screens/field/numbers/session-meant.ts";
import { clockAt, dayAt, halfHourFrom, hourAt } from "#core/screens/field/numbers/site-time.ts";
import { leftOf, releasesWater } from "#core/screens/field/numbers/waits.ts";
import { placeOf } from "#core/screens/parts/place.ts";
import { defaultSheet } from "#infra/sheets/index.ts";
import { type Book, book, minute, start } from "../../helpers/job.ts";

const hour = 60 * minute;
const sheet: ToleranceSheet = defaultSheet();
const figure = (typed: string, unit: string) => ({ typed, unit });
const opened = (figures: object): Book => {
  const b = book(sheet);
  b.enter("design-set", { figures: figures as Json });
  return b;
};
const design = {
  rimBelowGrade: figure("5", "in"),
  bedThickness: figure("3", "in"),
  basinDepth: figure("24", "in"),
  markOverGrade: figure("10", "in"),
};

describe("the site's clock", () => {
  // 12 May 2026, 20:30 UTC: Chicago keeps UTC-5 in summer, Kolkata UTC+5:30
  const instant = Date.UTC(2026, 4, 12, 20, 30);

  test.each([
    ["America/Chicago", 15, "2026-05-12", "15:30"],
    ["Asia/Kolkata", 2, "2026-05-13", "2:00"],
    ["UTC", 20, "2026-05-12", "20:30"],
    ["Not/AZone", 20, "2026-05-12", "20:30"],
  ])("%s", (zone, hours, day, clock) => {
    expect(hourAt(instant, zone)).toBe(hours);
    expect(dayAt(instant, zone)).toBe(day);
    expect(clockAt(instant, instant, zone, "en")).toBe(clock);
  });

  test("another day than now's is said by its name, in the reader's language", () => {
    const next = instant + 12 * hour;
    // 13 May 2026 is a Wednesday
    expect(clockAt(next, instant, "America/Chicago", "en")).toMatch(/^Wed 3:30$/);
    expect(clockAt(next, instant, "America/Chicago", "es")).toMatch(/^mié,? 3:30$/);
  });

  test("a wished time is a half hour, never before what it is taken from", () => {
    expect(halfHourFrom(instant)).toBe(instant);
    expect(halfHourFrom(instant + 1)).toBe(instant + 30 * minute);
  });
});

describe("the rod's places", () => {
  test("each has an address of its own that leads back to it", () => {
    for (const name of rodNames) {
      const place = placeOf(rodPath("j", name));
      expect(place).toMatchObject({ page: "job", part: "set-out" });
      expect(place.page === "job" && rodOfAddress(place.rest[0] ?? "")).toBe(name);
    }
    expect(rodOfAddress("elsewhere")).toBeUndefined();
  });

  const seen = (b: Book) => {
    const state = jobState(b.ledger());
    return { state, clearances: clearances(state, findings(state), b.clock()) };
  };

  test("the rim's four places, the one that was not read next; after the backfill those that are for afterwards", () => {
    const b = opened(design);
    const setUp = b.setUp("fine", { instrument: "rotary-laser", receiver: "fine" });
    b.read("mark-first", "40", { setUp });
    b.read("rim-place-1", "55 3/16", { setUp });
    const before = seen(b);
    const rim = rodInstances(before, "rim");
    expect(rim.map(({ item }) => item.id)).toEqual(["rim-place-1", "rim-place-2", "rim-place-3", "rim-place-4"]);
    const card = setOutCard(before.state);
    expect(nextRead(before.state, card, "rim", rim)?.item.id).toBe("rim-place-2");
    const marks = rodInstances(before, "height mark");
    expect(nextRead(before.state, card, "height mark", marks)?.item.id).toBe("mark-last");
    b.covered("backfill-basin");
    expect(rodInstances(seen(b), "rim").map(({ item }) => item.id)).toEqual(["rim-after-1", "rim-after-3"]);
  });

  test("what was withdrawn because the place moved no longer counts into the mean", () => {
    const b = opened(design);
    const setUp = b.setUp("fine", { instrument: "rotary-laser", receiver: "fine" });
    b.read("mark-first", "40", { setUp });
    const first = b.read("rod-bed-top", "75", { setUp });
    b.enter("corrected", { entry: { id: first, digest: first }, reason: "lowered", withdrawn: true });
    // mark 10 in over grade, read 40: the line 50 over; bed at 5 + 24 under: the rod reads 79
    b.read("rod-bed-top", "79 4/16", { setUp });
    const row = setOutCard(jobState(b.ledger())).rows.find(({ place }) => place === "top of bed");
    expect(row?.latest).toMatchObject({ value: 79.25 * 25_400, move: "raise", by: 6350 });
  });

  test("a rim that was raised: what was read before counts as before rework", () => {
    const b = opened(design);
    const setUp = b.setUp("fine", { instrument: "rotary-laser", receiver: "fine" });
    b.read("mark-first", "40", { setUp });
    b.read("rim-place-1", "55 8/16", { setUp });
    b.enter("reworked", { about: { item: "rim-place-1" }, done: "raised", minutes: 0 });
    b.read("rim-place-1", "55 1/16", { setUp });
    const row = setOutCard(jobState(b.ledger())).rows.find(({ place }) => place === "rim");
    // 55 1/16 in is 1,398,587.5 µm, the aim 55 in
    expect(row?.readings.map(({ value, move, by }) => [value, move, by])).toEqual([[1_398_588, "raise", 1588]]);
  });

  test("what is missing leads to the set-up in use, to its own page, or to its names", () => {
    expect(aboutPath("j", sheet, { item: "mark-first" })).toBe("/jobs/j/set-out/height-mark");
    expect(aboutPath("j", sheet, { item: "stake-at-grade" })).toBe("/jobs/j/set-out/finished-grade");
    expect(aboutPath("j", sheet, { item: "rod-bed-top" })).toBe("/jobs/j/set-out/top-of-bed");
    expect(aboutPath("j", sheet, { item: "last-joint-made", tag: "2" })).toBe("/jobs/j/take/last-joint-made/2");
    expect(aboutPath("j", sheet, { item: "glue-session" })).toBe("/jobs/j/names/glue-session");
    expect(aboutPath("j", sheet, { check: "water-left-in" })).toBe("/jobs/j/take/wet-check-end");
    expect(aboutPath("j", undefined, { item: "mark-first" })).toBeUndefined();
  });
});

describe("how long till water", () => {
  test("what is left is whole minutes, rounded up: nobody is let in early", () => {
    expect(leftOf({ from: 10 * minute }, 1)).toBe(10 * minute);
    expect(leftOf({ from: 10 * minute }, minute)).toBe(9 * minute);
    expect(leftOf({ from: 10 * minute }, 10 * minute)).toBe(0);
    expect(leftOf({ from: 10 * minute }, 11 * minute)).toBe(0);
    expect(leftOf({}, 0)).toBeUndefined();
  });

  test("every line of the core waits by a check that releases water, and no other check does", () => {
    const b = opened({ pipeSize: figure("2", "in") });
    b.tag("glue-session", "1", "fill-trench");
    b.tag("label-wait", "F", "trim-liner-edge");
    const lines = waterWhen(jobState(b.ledger()), start).lines.map(({ water }) => water.check);
    expect(lines.sort()).toEqual(
      sheet.checks
        .filter(releasesWater)
        .map(({ id }) => id)
        .sort(),
    );
    expect(lines.length).toBe(2);
  });

  test("a session as it is meant: 52 °F, dry, rigid 2 in pipe takes 4 h (a pipe maker's table); the can goes before it", () => {
    const state = jobState(opened({ pipeSize: figure("2", "in") }).ledger());
    const meant = { kind: "rigid PVC", humidity: "dry", coldest: "52", can: "" } as const;
    expect(sessionOf({ coldest: " ", can: "" }, "inch")).toBeUndefined();
    const joinBy = (session: ReturnType<typeof sessionOf>) => glueBefore(state, start, session).map((line) => line.before);
    expect(joinBy(sessionOf(meant, "inch"))).toEqual([start - 4 * hour]);
    // 11 °C is 51.8 °F
    expect(joinBy(sessionOf({ ...meant, coldest: "11" }, "metric"))).toEqual([start - 4 * hour]);
    expect(joinBy(sessionOf({ ...meant, can: "90 min" }, "inch"))).toEqual([start - 1.5 * hour]);
    expect(joinBy(sessionOf({ coldest: "", can: "3", kind: "flexible PVC" }, "inch"))).toEqual([start - 3 * hour]);
  });
});

describe("leaving tonight", () => {
  const open = ["fill-trench"];
  const line = (state: "entered" | "missing" | "not so" | "look again" | "waits") => ({ state, missing: [] }) as never;
  // three in the afternoon in Chicago in summer is 20:00 UTC
  const three = Date.UTC(2026, 4, 12, 20);

  test("reminds from three by the site's clock on, while something is open and a line is not settled", () => {
    const night = { open, lines: [line("missing"), line("not so"), line("look again"), line("entered"), line("waits")] };
    expect(toSettle(night, three, "America/Chicago")).toBe(3);
    expect(toSettle(night, three - 1, "America/Chicago")).toBe(0);
    expect(toSettle(night, three, "America/Los_Angeles")).toBe(0);
    expect(toSettle({ open, lines: [line("entered"), line("waits")] }, three, "America/Chicago")).toBe(0);
    expect(toSettle({ ...night, open: [] }, three, "America/Chicago")).toBe(0);
  });

  test("of a real job: nothing said is three lines, all of it said is none", () => {
    const b = opened({
      waterInHole: figure("8", "in"),
      basinDepth: figure("30", "in"),
      basinLength: figure("45", "in"),
      basinWidth: figure("45", "in"),
      basinWeight: figure("75", "lb"),
    });
    b.enter("visit-begun", {});
    b.answer("water-in-hole", "standing-water");
    const left = () => toSettle(leavingTonight(jobState(b.ledger()), b.clock() + minute), three, "America/Chicago");
    expect(left()).toBe(3);
    b.answer("night-holes-left", "fenced-off");
    b.answer("night-pump", "pump-unplugged");
    b.read("wet-check-end", "12 0/16");
    expect(left()).toBe(0);
  });

  test("entered with its picture still missing is not drawn as all done", () => {
    expect(shapeOfNight({ state: "entered", missing: [] })).toBe("within");
    expect(shapeOfNight({ state: "entered", missing: [{ item: "night-holes-picture" }] })).toBe("apart");
    expect(shapeOfNight({ state: "not so", missing: [] })).toBe("outside");
  });
});

describe("the plan", () => {
  const foot = 304_800;
  const places = [
    { x: 0, y: 0 },
    { x: 20 * foot, y: 0 },
    { x: 8 * foot, y: 6 * foot },
  ];

  test("one scale for both ways, inside the drawing, the left of the line upwards", () => {
    const { at, scale, height } = fitted(places);
    const [a, b, p] = places.map(at) as [readonly [number, number], readonly [number, number], readonly [number, number]];
    // 340 less 30 on either side, over 20 ft
    expect(scale * foot).toBeCloseTo(14, 9);
    expect(b[0] - a[0]).toBeCloseTo(280, 6);
    expect(a[1] - p[1]).toBeCloseTo(84, 6);
    expect(Math.hypot(p[0] - a[0], p[1] - a[1])).toBeCloseTo(140, 6);
    for (const [x, y] of [a, b, p]) {
      expect(x).toBeGreaterThanOrEqual(29.9);
      expect(x).toBeLessThanOrEqual(PLAN_WIDTH - 29.9);
      expect(y).toBeGreaterThanOrEqual(29.9);
      expect(y).toBeLessThanOrEqual(height - 29.9);
    }
  });

  test("a scale bar of a round length that has room", () => {
    // 14 units a foot: 5 ft are 70, 10 ft would be 140
    expect(barOf(14 / foot, "inch")).toEqual({ length: 5, drawn: expect.closeTo(70, 9), unit: "ft" });
    // 45.93 units a metre: 2 m
    expect(barOf(14 / foot, "metric")).toMatchObject({ length: 2, unit: "m" });
  });

  test("letters keep clear of one another where two things lie close together", () => {
    const spots = lettered([
      [100, 100],
      [112, 104],
      [104, 112],
    ]);
    for (const [i, [x, y]] of spots.entries())
      for (const [ox, oy] of spots.slice(i + 1)) expect(Math.hypot(x - ox, y - oy)).toBeGreaterThan(12);
  });
});
