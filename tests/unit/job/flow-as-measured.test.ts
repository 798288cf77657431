import { describe, expect, test } from "vitest";
import { type Check, type FlowWay, sheetFaults, type ToleranceSheet } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { bench, book, lengthItem } from "../../helpers/job.ts";

const words = (en: string) => ({ en });
const own = { weight: "if you have it" } as const;
const volume = { ...own, quantity: "volume", unit: { inch: "gal", metric: "L" } } as const;
const time = { ...own, quantity: "duration", unit: { inch: "s", metric: "s" } } as const;
const ways: readonly FlowWay[] = [
  { by: "bin", items: ["bin-volume", "bin-time"] },
  { by: "basin going down", items: ["basin-drop", "basin-time"] },
  { by: "meter", items: ["meter-shown"] },
  { by: "meter", items: ["meter-counted", "meter-time"] },
];
const sheet = bench({
  items: [
    lengthItem("bin-volume", volume),
    lengthItem("bin-time", time),
    lengthItem("basin-drop", own),
    lengthItem("basin-time", time),
    lengthItem("meter-shown", { ...own, quantity: "flow", unit: { inch: "gpm", metric: "L/min" } }),
    lengthItem("meter-counted", volume),
    lengthItem("meter-time", time),
  ],
  checks: [
    {
      id: "flow-found",
      step: "step-one",
      title: words("Flow"),
      function: "flow as measured",
      items: ways.flatMap(({ items }) => items),
      ways,
      kind: "flow",
      aim: { function: "expected flow" },
      ...own,
    },
  ],
});
const [only] = sheet.checks as [Check];
const faultsOf = (of: ToleranceSheet) => sheetFaults(of as unknown as Json).map(({ place }) => place);
const figure = (typed: string, unit: string) => ({ typed, unit });

/** Litres a minute in a gallon a minute, thousandths as stored. */
const GPM = 3785.411784;

/**
 * A pump whose head falls in a line, H = 20 ft - q/3, on 10 ft of 2 in rigid pipe (bore by average wall 2.047 in) of C 150 to a lip
 * 10 ft up. Friction, Hazen-Williams: 0.2083 / 100 x (100/150)^1.852 x q^1.852 / 2.047^4.8655 x 10 ft = 0.117 ft at 25 gpm.
 * 20 - q/3 = 10 + 0.117 (q/25)^1.852 at q = 29.523 gpm.
 */
const line = {
  pumpCurve: figure("0 gpm 20 ft; 60 gpm 0 ft", ""),
  staticHead: figure("10", "ft"),
  pipeRun: figure("10", "ft"),
  pipeSize: figure("2", "in"),
  pipeCoefficient: figure("150", "1"),
  basinLength: figure("60", "in"),
  basinWidth: figure("48", "in"),
  basinDepth: figure("24", "in"),
};
const measured = (readings: Readonly<Record<string, readonly [string, string]>>, more: object = {}) => {
  const b = book(sheet);
  b.enter("design-set", { figures: { ...line, ...more } as Json, switches: {} });
  for (const [item, [typed, unit]] of Object.entries(readings)) b.read(item, typed, { unit });
  return b.finding("flow-found");
};
const bin = (gallons: string, seconds: string, more: object = {}) =>
  measured({ "bin-volume": [gallons, "gal"], "bin-time": [seconds, "s"] }, more);

describe("the sheet", () => {
  test("has no fault; each way reads what it needs, out of the check's own items", () => {
    expect(faultsOf(sheet)).toEqual([]);
    const other = (more: Partial<Check>) => faultsOf({ ...sheet, checks: [{ ...only, ...more }] });
    expect(other({ ways: [] })).toEqual(["sheet/checks/flow-found/ways"]);
    expect(other({ ways: [{ by: "bin", items: ["bin-volume"] }] })).toEqual(["sheet/checks/flow-found/ways/0"]);
    expect(other({ ways: [{ by: "basin going down", items: ["bin-volume", "bin-time"] }] })).toEqual(["sheet/checks/flow-found/ways/0"]);
    expect(other({ items: ["bin-volume"] })).toContain("sheet/checks/flow-found/ways/3");
    expect(other({ kind: "volume" })).toContain("sheet/checks/flow-found/kind");
  });

  test("an item of a way that the sheet does not have is a fault", () => {
    expect(faultsOf({ ...sheet, checks: [{ ...only, ways: [{ by: "meter", items: ["meter-lost"] }] }] })).toContain(
      "sheet/checks/flow-found/items",
    );
  });
});

describe("a bin of known volume at the open pipe end", () => {
  test("20.0 gal in 40.0 s is 30 gpm, as the design's 29.5 gpm: within", () => {
    const { value, aim, verdict, says, contributors } = bin("20.0", "40.0");
    expect((value ?? 0) / GPM).toBeCloseTo(30, 3);
    expect((aim ?? 0) / GPM).toBeCloseTo(29.523, 2);
    expect([verdict, says.key]).toEqual(["within", "flow.as-expected"]);
    // mark 3 %, half-widths of 0.05 gal and 0.05 s read, the hand's half second at each end
    const share = (2 / Math.sqrt(3)) * Math.hypot(0.03, 0.05 / 20, 0.05 / 40, 0.5 / 40, 0.5 / 40);
    expect((says.figures.measuredDoubtFlow as number) / GPM).toBeCloseTo(30 * share, 2);
    expect(contributors).toHaveLength(3);
  });

  test("a 5 gal bucket at 50 gpm is full in 6 s: it does not count, and 16.7 gal would do", () => {
    const { verdict, value, says, entries } = bin("5", "6");
    expect([verdict, value, says.key]).toEqual(["not taken", undefined, "flow.bin-too-fast"]);
    expect(says.figures).toMatchObject({ tookDuration: 6000, leastDuration: 20_000 });
    expect((says.figures.enoughVolume as number) / GPM).toBeCloseTo(50 / 3, 2);
    expect(entries).toHaveLength(2);
  });

  test("exactly 20 s counts, and a little less does not", () => {
    expect(bin("10.0", "20.0").value).toBeDefined();
    expect(bin("10.0", "19.9").value).toBeUndefined();
  });

  test("half of it taken: the other reading is waited for", () => {
    expect(measured({ "bin-volume": ["20", "gal"] })).toMatchObject({ verdict: "not taken", missing: [{ item: "bin-time" }] });
    expect(measured({}).verdict).toBe("not taken");
  });
});

describe("the other ways", () => {
  test("draw-down: 2880 in² going down 2 in in 48.0 s is 31.2 gpm", () => {
    // 5760 in³ / 231 = 24.935 gal in 0.8 min
    const { value, verdict } = measured({ "basin-drop": ["2 0/16", "in"], "basin-time": ["48.0", "s"] });
    expect((value ?? 0) / GPM).toBeCloseTo(5760 / 231 / 0.8, 2);
    expect(verdict).toBe("within");
  });

  test("draw-down needs the basin's size, and nothing else does", () => {
    const gone = { basinWidth: "unknown" };
    expect(measured({ "basin-drop": ["2", "in"], "basin-time": ["48", "s"] }, gone)).toMatchObject({ unknown: ["basinWidth"] });
    expect(bin("20.0", "40.0", gone).verdict).toBe("within");
  });

  test("a meter by what it shows and by its counter: 90.0 gal in 3 min is 30 gpm, ± 5 % of it and more", () => {
    const shown = measured({ "meter-shown": ["30.0", "gpm"] });
    const counted = measured({ "meter-counted": ["90.0", "gal"], "meter-time": ["180.0", "s"] });
    for (const { value } of [shown, counted]) expect((value ?? 0) / GPM).toBeCloseTo(30, 3);
    const meter = (2 / Math.sqrt(3)) * 1.5;
    expect((shown.says.figures.measuredDoubtFlow as number) / GPM).toBeCloseTo(meter, 2);
    expect((counted.says.figures.measuredDoubtFlow as number) / GPM).toBeGreaterThan(meter);
  });

  test("of two ways the newest counts, and the other is evidence aside", () => {
    const b = book(sheet);
    b.enter("design-set", { figures: line as unknown as Json, switches: {} });
    b.read("meter-shown", "20.0", { unit: "gpm" });
    const [first, second] = [b.read("bin-volume", "20.0", { unit: "gal" }), b.read("bin-time", "40.0", { unit: "s" })];
    const { value, aside, entries } = b.finding("flow-found");
    expect((value ?? 0) / GPM).toBeCloseTo(30, 3);
    expect(entries).toEqual(expect.arrayContaining([first, second]));
    expect(aside).toHaveLength(1);
    b.read("meter-shown", "29.0", { unit: "gpm" });
    expect(b.finding("flow-found").says.key).toBe("reason.readings-disagree");
  });
});

describe("less or more than expected", () => {
  // at 20 gpm the pump gives 13.333 ft, the line takes 10 + 0.077 ft: 3.256 ft are missing
  const found = bin("20.0", "60.0");
  const by = new Map((found.explains ?? []).map((one) => [one.cause, one]));
  const FOOT = 304_800;

  test("20 gpm of 29.5: less, outside what the doubt of the two would let it differ by", () => {
    expect([found.verdict, found.says.key]).toEqual(["outside", "flow.less"]);
    expect((found.lower ?? 0) + (found.upper ?? 0)).toBe(2 * (found.aim ?? 0));
    expect((found.upper ?? 0) - (found.aim ?? 0)).toBe(found.doubt);
    expect(found.contributors).toHaveLength(3);
  });

  test("the causes by hand, each with how far off it would have to be, in the size of what is ordinary", () => {
    // card ± 5 % of 13.333 ft of head and ± 8 % of 20 gpm by 1/3 ft a gpm: U = 2/√3 x hypot(0.6667, 0.5333) = 0.986 ft
    expect(by.get("wrong curve")).toMatchObject({ kind: "ratio" });
    expect((by.get("wrong curve")?.wouldBe ?? 0) / 1e6).toBeCloseTo((13.333 - 3.256) / 13.333, 3);
    expect((by.get("wrong curve")?.times ?? 0) / 1e6).toBeCloseTo(3.256 / 0.986, 1);
    // friction of 0.077 ft grown to 3.333 ft: bore by the power of 4.8655, over 10 % of the bore
    const narrowed = (0.0773 / 3.333) ** (1 / 4.8655);
    expect((by.get("blockage")?.boreShare ?? 0) / 1e6).toBeCloseTo(narrowed, 2);
    expect((by.get("blockage")?.times ?? 0) / 1e6).toBeCloseTo((1 - narrowed) / 0.1, 1);
    // ± 6 in of head as typed to the foot: U = 2/√3 x 0.5 ft
    expect((by.get("static head")?.wouldBe ?? 0) / FOOT).toBeCloseTo(13.256, 2);
    expect((by.get("static head")?.times ?? 0) / 1e6).toBeCloseTo(3.256 / ((2 / Math.sqrt(3)) * 0.5), 1);
    expect((by.get("air")?.wouldBe ?? 0) / 1e6).toBeCloseTo(1 - 20 / 29.523, 3);
    expect((by.get("air")?.times ?? 0) / 1e6).toBeCloseTo((1 - 20 / 29.523) / 0.05, 1);
    // C by the power of 1.852, ± 10 as the pipe's paper has it: U = 2/√3 x 10
    const rough = 150 * (0.0773 / 3.333) ** (1 / 1.852);
    expect(by.get("C")?.wouldBe).toBe(Math.round(rough));
    expect((by.get("C")?.times ?? 0) / 1e6).toBeCloseTo((150 - rough) / (20 / Math.sqrt(3)), 1);
  });

  test("ranked by that", () => {
    expect(found.explains?.map(({ cause }) => cause)).toEqual(["wrong curve", "blockage", "static head", "air", "C"]);
  });

  test("more than expected: what only takes water away cannot explain it and stands last", () => {
    const more = bin("25.0", "37.5");
    expect([more.verdict, more.says.key]).toEqual(["outside", "flow.more"]);
    const unable = more.explains?.filter(({ cannot }) => cannot !== undefined).map(({ cause }) => cause) ?? [];
    expect(unable).toEqual(expect.arrayContaining(["blockage", "air", "C"]));
    expect(more.explains?.slice(-unable.length).map(({ cause }) => cause)).toEqual(unable);
  });

  test("more than the card's last point: said so, with no ranking", () => {
    const off = bin("70.0", "60.0");
    expect([off.verdict, off.says.key, off.explains]).toEqual(["outside", "flow.off-card", undefined]);
  });
});

describe("nothing to compare with", () => {
  test.each(["staticHead", "pipeRun", "pumpCurve"])("%s unknown: the measured flow stands alone and the figure is named", (key) => {
    const { verdict, says, unknown } = bin("20.0", "40.0", { [key]: "unknown" });
    expect([verdict, says.key, unknown]).toEqual(["not taken", "flow.alone", [key]]);
    expect((says.figures.measuredFlow as number) / GPM).toBeCloseTo(30, 3);
  });

  test.each([
    ["0 gpm 8 ft; 60 gpm 0 ft", "flow.curve-below-static-head"],
    ["0 gpm 20 ft; 20 gpm 15 ft", "flow.beyond-the-last-point"],
    ["40 gpm 5 ft; 60 gpm 0 ft", "flow.before-the-first-point"],
  ])("a card of %s: %s", (pumpCurve, key) => {
    expect(bin("20.0", "40.0", { pumpCurve: figure(pumpCurve, "") })).toMatchObject({ verdict: "not taken", says: { key } });
  });

  test("another pump on the kit card, another expected flow", () => {
    const stronger = bin("20.0", "40.0", { pumpCurve: figure("0 gpm 40 ft; 60 gpm 0 ft", "") });
    expect(stronger.aim).toBeGreaterThan((bin("20.0", "40.0").aim ?? 0) * 1.3);
    expect(stronger.says.key).toBe("flow.less");
  });
});
