import { describe, expect, test } from "vitest";
import { type Check, jobState } from "#core/job/index.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";
import { answerItem, bench, book, lengthItem, pictureItem } from "../../helpers/job.ts";

const inch = 25_400;
/** Exact by definition: 231 cubic inches. */
const GALLON_ML = 3_785.411_784;
const words = (en: string) => ({ en });
const check = (id: string, more: Partial<Check> & Pick<Check, "function" | "items">): Check => ({
  id,
  step: "step-one",
  title: words(id),
  kind: "length",
  weight: "asked",
  ...more,
});

describe("what an item wins", () => {
  const sheet = bench({
    items: [answerItem("intake-low", { weight: "asked", holds: undefined as never, wins: { lower: 1.5 * inch, upper: 2 * inch } })],
  });
  const square = { figures: { basinLength: { typed: "45", unit: "in" }, basinWidth: { typed: "45", unit: "in" } } };

  test("a basin 45 in square loses 13 to 17.5 gal below 1 1/2 to 2 in (common practice, no source)", () => {
    const b = book(sheet);
    expect(b.finding("intake-low").wins).toBeUndefined();
    b.enter("design-set", square);
    const { wins } = b.finding("intake-low");
    expect(wins?.kind).toBe("volume");
    // 45 x 45 x 1.5 / 231 = 13.149 gal, 45 x 45 x 2 / 231 = 17.532 gal
    expect((wins?.lower ?? 0) / GALLON_ML).toBeCloseTo(13.149, 2);
    expect((wins?.upper ?? 0) / GALLON_ML).toBeCloseTo(17.532, 2);
    b.answer("intake-low", "is-wet");
    expect(b.finding("intake-low")).toMatchObject({ verdict: "outside", wins });
  });

  test("the default sheet says so of the low intake: 1 1/2 to 2 in, common practice", () => {
    expect(
      defaultSheet()
        .items.filter(({ wins }) => wins)
        .map(({ wins, source }) => [wins, source]),
    ).toEqual([[{ lower: 1.5 * inch, upper: 2 * inch }, "common practice"]]);
  });
});

test("the straight-edge costs water as the set-up does: 45 in square, 1/4 in across, half of it", () => {
  const sheet = bench({
    items: [lengthItem("gap-low", { weight: "asked", holds: undefined as never })],
    checks: [check("gap-check", { function: "single value", items: ["gap-low"], upper: inch / 2, costs: "water lost to tilt" })],
  });
  const b = book(sheet);
  b.enter("design-set", { figures: { basinLength: { typed: "45", unit: "in" }, basinWidth: { typed: "45", unit: "in" } } });
  b.read("gap-low", "1/4");
  // 45 x 45 x 1/4 / 2 / 231 = 1.0958 gal
  expect((b.finding("gap-check").costs?.value ?? 0) / GALLON_ML).toBeCloseTo(1.0958, 3);
  const own = defaultSheet()
    .checks.filter(({ costs }) => costs === "water lost to tilt")
    .map(({ id }) => id);
  expect(own).toEqual([
    "level-along",
    "level-across",
    "level-along-round",
    "level-across-round",
    "straight-edge-along",
    "straight-edge-across",
  ]);
});

test("whom a check asks stands in its finding", () => {
  const sheet = bench({
    items: [lengthItem("cord-run", { weight: "asked", holds: undefined as never }), lengthItem("other-run")],
    checks: [
      check("cord-check", { function: "single value", items: ["cord-run"], upper: 100 * inch, asks: "electrician" }),
      check("other-check", { function: "single value", items: ["other-run"], upper: 100 * inch }),
    ],
  });
  const b = book(sheet);
  b.read("cord-run", "12");
  b.read("other-run", "12");
  expect(b.finding("cord-check").asks).toBe("electrician");
  expect(b.finding("other-check")).not.toHaveProperty("asks");
});

describe("the set-up that counts", () => {
  const places = [1, 2, 3, 4].map((n) => `rim-${n}`);
  const onLaser = { instrument: "bench-laser", inSetUp: true } as const;
  const sheet = bench({
    items: [
      lengthItem("mark-first", { ...onLaser, heightMark: true }),
      ...places.map((id) => lengthItem(id, onLaser)),
      lengthItem("mark-last", { ...onLaser, heightMark: true }),
      ...[1, 3].map((n) => lengthItem(`after-${n}`, onLaser)),
    ],
    checks: [
      check("tilt-check", { function: "out of level", items: places, way: "along", aim: inch / 4, upper: inch / 2 }),
      check("moved-check", {
        function: "moved since",
        items: ["after-1", "after-3"],
        minus: ["rim-1", "rim-3"],
        aim: 0,
        lower: -inch,
        upper: inch,
      }),
    ],
  });
  const round = (b: ReturnType<typeof book>, setUp: string, mark: readonly [string, string], rim = "30 0/16") => {
    const first = b.read("mark-first", mark[0], { setUp });
    const read = places.map((id) => b.read(id, rim, { setUp }));
    return [first, ...read, b.read("mark-last", mark[1], { setUp })];
  };

  test("the mark's finding speaks of the one that closed; the other is kept as evidence, aside", () => {
    const b = book(sheet);
    const moved = round(b, b.setUp(), ["12 0/16", "13 0/16"]);
    const stood = round(b, b.setUp(), ["14 0/16", "14 1/16"]);
    expect(b.finding("mark-first")).toMatchObject({
      verdict: "within",
      says: { key: "mark.closed", figures: { typed: "14 0/16 in" } },
      entries: [moved[0], stood[0]],
      aside: [moved[0]],
    });
    expect(b.finding("mark-last")).toMatchObject({ says: { figures: { typed: "14 1/16 in" } }, aside: [moved.at(-1)] });
    const tilt = b.finding("tilt-check");
    expect(tilt.entries).toEqual(expect.arrayContaining(moved.slice(1, -1)));
    expect(tilt.aside).toEqual(moved.slice(1, -1));
  });

  test("while none closed the newest speaks; a single set-up has nothing aside", () => {
    const b = book(sheet);
    round(b, b.setUp(), ["12 0/16", "13 0/16"]);
    expect(b.finding("mark-first")).not.toHaveProperty("aside");
    expect(b.finding("tilt-check")).not.toHaveProperty("aside");
    round(b, b.setUp(), ["14 0/16", "15 0/16"]);
    expect(b.finding("mark-first")).toMatchObject({ verdict: "too close to call", says: { figures: { typed: "14 0/16 in" } } });
  });

  test("the place that moved most is named, below zero where it went down", () => {
    const b = book(sheet);
    round(b, b.setUp(), ["12 0/16", "12 0/16"]);
    const setUp = b.setUp();
    b.read("mark-first", "10 0/16", { setUp });
    // the mark reads 2 in less, so a place that stood still reads 28 in: the first went up by 1/8, the third down by 1/2
    b.read("after-1", "27 14/16", { setUp });
    b.read("after-3", "28 8/16", { setUp });
    b.read("mark-last", "10 0/16", { setUp });
    expect(b.finding("moved-check")).toMatchObject({ value: -inch / 2, place: { item: "after-3" } });
  });
});

test("a tag keeps what it is called, and a tie the mark that it was taken from", () => {
  const sheet = bench({
    tagSets: [{ id: "buried-thing", title: words("Thing"), least: 1, coverings: ["bury-it"] }],
    items: [pictureItem("thing-seen", { tags: "buried-thing" }), lengthItem("tie-one", { tags: "buried-thing", fromMark: true })],
  });
  const b = book(sheet);
  b.enter("tag-named", { set: "buried-thing", tag: "1", hiddenBy: "bury-it", description: "joint group behind the basin" });
  const tie = b.read({ item: "tie-one", tag: "1" }, "8 ft 4", { mark: "nail in the sill" });
  const { state } = b.done();
  expect(state.tags).toMatchObject([{ tag: "1", description: "joint group behind the basin" }]);
  expect(state.facts.find(({ id }) => id === tie)).toMatchObject({ standing: "counts", what: { mark: "nail in the sill" } });
  const odd = book(sheet);
  odd.enter("tag-named", { set: "buried-thing", tag: "1", hiddenBy: "bury-it", description: 7 });
  expect(jobState(odd.ledger()).tags).toEqual([]);
});
