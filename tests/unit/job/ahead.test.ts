import { describe, expect, test } from "vitest";
import {
  glueBefore,
  jobState,
  leavingTonight,
  type Said,
  setOutCard,
  type ToleranceSheet,
  waterWhen,
  whereIsEverything,
} from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { makeSayer } from "#core/record/say.ts";
import { aheadEn } from "#core/record/words/ahead-en.ts";
import { defaultSheet } from "#infra/sheets/index.ts";
import { type Book, book, inch, minute, start } from "../../helpers/job.ts";

const hour = 60 * minute;
const figure = (typed: string, unit: string) => ({ typed, unit });
const sheet = defaultSheet();
const opened = (figures: object = {}, of: ToleranceSheet = sheet): Book => {
  const b = book(of);
  b.enter("design-set", { figures: figures as Json });
  return b;
};
const laser = { instrument: "rotary-laser", receiver: "fine" };
const instant = (at: number): string => new Date(at).toISOString();

/** Rim 5 in down, basin 24 in, bed 3 in, fitting 8 in under the rim, lip 30 in up, edge 4 in over it; the mark 10 in over grade. */
const design = {
  rimBelowGrade: figure("5", "in"),
  basinDepth: figure("24", "in"),
  bedThickness: figure("3", "in"),
  fittingBelowRim: figure("8", "in"),
  lipOverGrade: figure("30", "in"),
  linerEdgeOverLip: figure("4", "in"),
  markOverGrade: figure("10", "in"),
};
const inInches = (micrometres: number | undefined): number => (micrometres ?? Number.NaN) / inch;

describe("the set-out card", () => {
  const levelled = (mark: string, figures: object = design) => {
    const b = opened(figures);
    const setUp = b.setUp("fine", laser);
    b.read("mark-first", mark, { setUp });
    return { b, setUp, card: () => setOutCard(jobState(b.ledger())) };
  };

  // mark read 40 in, the mark 10 in over grade: the line stands 50 in over grade, and the rod reads 50 in less each height
  test.each([
    ["dug bottom", -32, 82],
    ["top of bed", -29, 79],
    ["rim", -5, 55],
    ["wall fitting", -13, 63],
    ["spillway lip", 30, 20],
    ["liner edge", 34, 16],
  ] as const)("%s, %d in over grade: the rod is to read %d in", (place, overGrade, aim) => {
    const row = levelled("40")
      .card()
      .rows.find((one) => one.place === place);
    expect(inInches(row?.overGrade)).toBeCloseTo(overGrade, 3);
    expect(inInches(row?.aim)).toBeCloseTo(aim, 3);
  });

  test("a mark read 1 in too high moves every aim by 1 in, and the card says which reading it rests on", () => {
    const [right, wrong] = [levelled("40").card(), levelled("41").card()];
    const moved = right.rows.map((row, i) => inInches(wrong.rows[i]?.aim) - inInches(row.aim));
    expect(moved).toEqual(right.rows.map(() => expect.closeTo(1, 4)));
    expect(wrong.mark).toMatchObject({ value: 41 * inch, closing: "so far", entries: [expect.stringContaining("reading-taken")] });
    expect(wrong.markOverGrade).toMatchObject({ by: "the design", value: 10 * inch });
  });

  test("the rim's limit is the sheet's, 1 in to either side; a place without one has none", () => {
    const [rim, bed] = ["rim", "top of bed"].map((place) =>
      levelled("40")
        .card()
        .rows.find((row) => row.place === place),
    );
    expect([inInches(rim?.lower), inInches(rim?.upper)]).toEqual([expect.closeTo(54, 3), expect.closeTo(56, 3)]);
    expect([bed?.lower, bed?.upper]).toEqual([undefined, undefined]);
  });

  test("what is then read lands in its row: raise, lower or leave, and its verdict", () => {
    const { b, setUp, card } = levelled("40 0/16");
    b.read("rim-place-1", "55 6/16", { setUp });
    b.read("rim-place-2", "54 12/16", { setUp });
    b.read("rim-place-3", "55 0/16", { setUp });
    b.read("rim-place-4", "57 0/16", { setUp });
    b.read("rod-bed-top", "79 4/16", { setUp });
    const { rows } = card();
    const rim = rows.find(({ place }) => place === "rim");
    expect(rim?.readings.map(({ item, move, by, verdict }) => [item, move, inInches(by), verdict])).toEqual([
      ["rim-place-1", "raise", expect.closeTo(0.375, 3), "within"],
      ["rim-place-2", "lower", expect.closeTo(0.25, 3), "within"],
      ["rim-place-3", "leave", expect.closeTo(0, 3), "within"],
      ["rim-place-4", "raise", expect.closeTo(2, 3), "outside"],
    ]);
    expect(rim?.latest?.item).toBe("rim-place-4");
    const bed = rows.find(({ place }) => place === "top of bed")?.latest;
    expect([bed?.move, inInches(bed?.by), bed?.verdict]).toEqual(["raise", expect.closeTo(0.25, 3), undefined]);
  });

  test("the stake read in the same set-up goes before the design's figure, and then the mark's error drops out", () => {
    const staked = (mark: string) => {
      const { b, setUp, card } = levelled(mark);
      b.read("stake-at-grade", "50 8/16", { setUp });
      return card();
    };
    const [one, other] = [staked("40"), staked("41")];
    expect(one.markOverGrade).toMatchObject({ by: "this set-up", value: 10.5 * inch });
    // 50.5 + 5
    for (const { rows } of [one, other]) expect(inInches(rows.find(({ place }) => place === "rim")?.aim)).toBeCloseTo(55.5, 3);
  });

  test("the mark's height from an earlier set-up serves the one in use", () => {
    const { b, setUp, card } = levelled("40", { ...design, markOverGrade: "unknown" });
    b.read("stake-at-grade", "50", { setUp });
    const next = b.setUp("fine", laser);
    expect(card()).toMatchObject({ setUp: next, missing: [{ item: "mark-first" }] });
    expect(card().rows.every(({ aim }) => aim === undefined)).toBe(true);
    b.read("mark-first", "31", { setUp: next });
    expect(card().markOverGrade).toMatchObject({ by: "an earlier set-up", value: 10 * inch, setUp });
    expect(inInches(card().rows.find(({ place }) => place === "rim")?.aim)).toBeCloseTo(46, 3);
  });

  test("what is missing is named, and the rest stands", () => {
    expect(setOutCard(jobState(opened().ledger()))).toMatchObject({
      missing: [{ item: "mark-first" }, { item: "stake-at-grade" }],
      unknown: ["markOverGrade"],
    });
    const { rows } = levelled("40", { ...design, bedThickness: "unknown" }).card();
    expect(rows.filter(({ unknown }) => unknown.length > 0).map(({ place, unknown, aim }) => [place, unknown, aim])).toEqual([
      ["dug bottom", ["bedThickness"], undefined],
    ]);
    const gradeless = levelled("40", { ...design, markOverGrade: "unknown" }).card();
    expect([gradeless.missing, gradeless.unknown]).toEqual([[{ item: "stake-at-grade" }], ["markOverGrade"]]);
    expect(gradeless.rows.map(({ overGrade }) => overGrade === undefined)).toEqual(gradeless.rows.map(() => false));
  });
});

/** A glue session of rigid 2 in pipe at 64 °F and dry: set 30 min, cure 2 h (a pipe maker's manual, page 96). */
function glue(b: Book, tag: string, at: number | undefined, hiddenBy = "fill-trench"): void {
  b.tag("glue-session", tag, hiddenBy);
  b.read({ item: "coldest-temperature", tag }, "64 °F", { unit: "°F" });
  b.answer({ item: "cement-for-pipe", tag }, "for-rigid");
  b.answer({ item: "air-damp", tag }, "air-is-dry");
  if (at !== undefined) b.read({ item: "last-joint-made", tag }, instant(at));
}
const pipe = { pipeSize: figure("2", "in") };

describe("how long till water", () => {
  test("each session's set and cure, and the one that decides", () => {
    const b = opened(pipe);
    glue(b, "1", start);
    glue(b, "2", start + hour, "set-rock");
    const when = waterWhen(jobState(b.ledger()), start + 2.5 * hour);
    expect(when.lines.map(({ tag, set, water }) => [tag, set?.from, set?.passed, water.from, water.passed])).toEqual([
      ["1", start + hour / 2, true, start + 2 * hour, true],
      ["2", start + 1.5 * hour, true, start + 3 * hour, false],
    ]);
    expect([when.decides?.tag, when.from, when.passed]).toEqual(["2", start + 3 * hour, false]);
    expect(when.says).toMatchObject({ key: "water.from", figures: { fromInstant: start + 3 * hour } });
    expect(waterWhen(jobState(b.ledger()), start + 3 * hour)).toMatchObject({ passed: true, says: { key: "water.over" } });
  });

  test("what waits by its label counts with it", () => {
    const b = opened(pipe);
    glue(b, "1", start);
    b.tag("label-wait", "F", "trim-liner-edge");
    b.answer({ item: "label-product", tag: "F" }, "foam-used");
    b.read({ item: "label-time", tag: "F" }, "1 h", { unit: "min" });
    b.read({ item: "label-applied", tag: "F" }, instant(start + 4 * hour));
    const when = waterWhen(jobState(b.ledger()), start);
    expect(when.decides).toMatchObject({ of: "label", product: "foam", since: start + 4 * hour });
    expect(when.from).toBe(start + 5 * hour);
  });

  test("one time not known: no instant, and what is missing is named", () => {
    const b = opened(pipe);
    glue(b, "1", start);
    glue(b, "2", undefined);
    const when = waterWhen(jobState(b.ledger()), start + 9 * hour);
    expect([when.from, when.passed, when.says.key]).toEqual([undefined, false, "water.not-known"]);
    expect(when.lines[1]?.water.missing).toEqual([{ item: "last-joint-made", tag: "2" }]);
    expect(waterWhen(jobState(opened().ledger()), start).says.key).toBe("water.nothing-waits");
  });

  test("glue it before four and you can run it at six", () => {
    const b = opened(pipe);
    glue(b, "1", undefined);
    const runAt = start + 6 * hour;
    expect(glueBefore(jobState(b.ledger()), runAt)).toMatchObject([{ tag: "1", before: start + 4 * hour, takes: 2 * hour }]);
    b.read({ item: "last-joint-made", tag: "1" }, instant(start));
    expect(glueBefore(jobState(b.ledger()), runAt)).toEqual([]);
  });

  test("a session that nobody has named: by what is said of it, and by the company's table", () => {
    const meant = { kind: "rigid PVC", coldest: figure("52 °F", "°F"), humidity: "dry" } as const;
    const state = (of: ToleranceSheet) => jobState(opened(pipe, of).ledger());
    // 40 to 60 °F, 2 in: A 4 h, B 45 min
    expect(glueBefore(state(sheet), start, meant)).toMatchObject([{ before: start - 4 * hour }]);
    expect(glueBefore(state({ ...sheet, cureTable: "B" }), start, meant)).toMatchObject([{ before: start - 45 * minute }]);
    expect(glueBefore(state(sheet), start, { kind: "flexible PVC" })).toMatchObject([{ says: { key: "glue.any-not-known" } }]);
    const b = opened(pipe);
    b.tag("glue-session", "1", "fill-trench");
    expect(glueBefore(jobState(b.ledger()), start)).toMatchObject([{ tag: "1", missing: [{ item: "cure-time" }], unknown: ["pipeKind"] }]);
  });
});

describe("leaving tonight", () => {
  const basin = {
    basinLength: figure("45", "in"),
    basinWidth: figure("45", "in"),
    basinDepth: figure("30", "in"),
    basinWeight: figure("75", "lb"),
    waterInHole: figure("8", "in"),
    ...pipe,
  };
  const states = (b: Book, now: number) => leavingTonight(jobState(b.ledger()), now).lines.map(({ about, state }) => [about, state]);

  test("nothing open, nothing fresh: no line", () => {
    expect(leavingTonight(jobState(opened(basin).ledger()), start + hour)).toMatchObject({ open: [], lines: [] });
  });

  test("a hole begun stands open until it is covered; holes, pump and water are missing until entered", () => {
    const b = opened(basin);
    b.enter("visit-begun", {});
    b.answer("water-in-hole", "standing-water");
    expect(leavingTonight(jobState(b.ledger()), b.clock() + hour).open).toEqual(["backfill-basin"]);
    expect(states(b, b.clock() + hour)).toEqual([
      ["holes", "missing"],
      ["pump", "missing"],
      ["water in the basin", "missing"],
    ]);
    b.answer("night-holes-left", "fenced-off");
    b.answer("night-pump", "left-plugged-in");
    // 30 - 7.55 = 22.45 in down at most
    b.read("wet-check-end", "26 0/16");
    expect(states(b, b.clock() + minute)).toEqual([
      ["holes", "entered"],
      ["pump", "not so"],
      ["water in the basin", "not so"],
    ]);
    b.answer("night-pump", "pump-unplugged");
    b.read("wet-check-end", "12 0/16", {}, { at: b.clock() + minute });
    b.covered("backfill-basin");
    expect(leavingTonight(jobState(b.ledger()), b.clock() + minute).open).toEqual([]);
  });

  test("yesterday's fence and yesterday's reading do not count for tonight", () => {
    const b = opened(basin);
    b.enter("visit-begun", {});
    b.answer("water-in-hole", "standing-water");
    b.read("wet-check-end", "12 0/16");
    b.picture("night-holes-picture");
    b.answer("night-pump", "pump-unplugged");
    expect(states(b, b.clock() + minute)).toEqual([
      ["holes", "entered"],
      ["pump", "entered"],
      ["water in the basin", "entered"],
    ]);
    b.enter("visit-begun", {}, { at: start + 24 * hour });
    const next = leavingTonight(jobState(b.ledger()), start + 30 * hour);
    expect(next.since).toBe(start + 24 * hour);
    expect(next.lines.map(({ state }) => state)).toEqual(["missing", "missing", "look again"]);
    expect(next.lines[0]?.missing).toEqual([{ item: "night-holes-picture" }, { item: "night-holes-left" }]);
    expect(next.lines[2]?.missing).toEqual([{ item: "wet-check-end" }]);
  });

  test("glue made today and when it may be wetted; the trench of its joints is open", () => {
    const b = opened(basin);
    b.enter("visit-begun", {});
    glue(b, "1", start + hour);
    const lines = () => leavingTonight(jobState(b.ledger()), start + 2 * hour);
    expect(lines().open).toEqual(["fill-trench"]);
    expect(lines().lines.filter(({ about }) => about === "glue")).toMatchObject([{ state: "waits", from: start + 3 * hour }]);
    const after = leavingTonight(jobState(b.ledger()), start + 4 * hour).lines.filter(({ about }) => about === "glue");
    expect(after).toMatchObject([{ state: "entered" }]);
  });
});

describe("where is everything", () => {
  test("marks with their distances, things with ties, place and depth; what was named and not tied is there too", () => {
    const b = opened();
    // marks A at (0, 0), B at (20, 0) ft; the point at (8, 6): 10 ft from A, sqrt(144 + 36) = 13 ft 5 in from B
    for (const tag of ["A", "B"]) b.tag("tie-mark", tag, "fill-trench");
    b.read({ item: "mark-tie-1", tag: "B" }, "20 ft", { mark: "A" });
    for (const tag of ["1", "2"]) b.tag("buried-point", tag, "fill-trench");
    b.read({ item: "point-tie-1", tag: "1" }, "10 ft", { mark: "A", side: "left" });
    b.read({ item: "point-tie-2", tag: "1" }, "13 ft 5 in", { mark: "B", side: "left" });
    b.read("cover-shallowest", "11 1/2");
    const where = () => whereIsEverything(jobState(b.ledger()));
    expect(where().marks.map(({ name, distances }) => [name, distances.map(({ mark, value }) => [mark, inInches(value)])])).toEqual([
      ["A", [["B", 240]]],
      ["B", [["A", 240]]],
    ]);
    const [first, second] = where().things;
    expect(first).toMatchObject({ set: "buried-point", tag: "1", state: "placed", depth: { of: "the whole run", value: 11.5 * inch } });
    expect(first?.ties.map(({ mark, value }) => [mark, inInches(value)])).toEqual([
      ["A", 120],
      ["B", 161],
    ]);
    expect([inInches(first?.place?.x) / 12, inInches(first?.place?.y) / 12]).toEqual([expect.closeTo(8, 1), expect.closeTo(6, 1)]);
    expect(second).toMatchObject({ tag: "2", state: "not tied", says: { key: "where.not-tied" } });
    b.read({ item: "point-depth", tag: "1" }, "14");
    expect(where().things[0]?.depth).toMatchObject({ of: "itself", value: 14 * inch });
  });
});

describe("its sentences", () => {
  const b = opened({ ...pipe, waterInHole: figure("8", "in"), basinLength: figure("45", "in"), basinWidth: figure("45", "in") });
  b.enter("visit-begun", {});
  b.answer("water-in-hole", "standing-water");
  glue(b, "1", start + hour);
  glue(b, "2", undefined);
  const state = jobState(b.ledger());
  const all: readonly Said[] = [
    waterWhen(state, start).says,
    ...waterWhen(state, start).lines.flatMap(({ says }) => says),
    ...glueBefore(state, start + 9 * hour).map(({ says }) => says),
    ...leavingTonight(state, start + 2 * hour).lines.map(({ says }) => says),
    ...whereIsEverything(state).things.map(({ says }) => says),
  ];

  test.each(["en", "es"] as const)("%s: each has its words, and no place in it stays open", (language) => {
    const sayer = makeSayer({ language, units: "inch", zone: "America/Chicago", sheet });
    expect(all.length).toBeGreaterThan(8);
    expect(all.filter(({ key }) => !(key in aheadEn)).map(({ key }) => key)).toEqual([]);
    expect(all.map((said) => sayer.ahead(said)).filter((text) => /[{}]|undefined|NaN| ;| \.|^:/.test(text))).toEqual([]);
  });

  test("in English and Spanish, with clock and names", () => {
    const sayer = (language: "en" | "es") => makeSayer({ language, units: "inch", zone: "UTC", sheet });
    const [before] = glueBefore(state, start + 9 * hour);
    // 12:00 + 9 h - 2 h
    expect(before && sayer("en").ahead(before.says)).toMatch(
      /^Glue session 2: glue the last joint before 1 June 2026, 19:00 UTC, and its cure time of 2 h is over/,
    );
    expect(before && sayer("es").ahead(before.says)).toMatch(/^Sesión de pegado 2: pegue la última unión antes de/);
  });
});
