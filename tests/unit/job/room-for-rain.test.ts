import { describe, expect, test } from "vitest";
import { type Check, sheetFaults } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { answerItem, bench, book, inch, lengthItem, pictureItem } from "../../helpers/job.ts";

const words = (en: string) => ({ en });
const own = { weight: "if you have it" } as const;
const check: Check = {
  id: "rain-room",
  step: "step-one",
  title: words("Room"),
  function: "room for rain",
  items: ["to-the-edge"],
  conditions: ["leaves-by", "leaves-picture"],
  kind: "length",
  lower: { function: "rain of a day" },
  ...own,
};
const sheet = bench({
  items: [lengthItem("to-the-edge", own), answerItem("leaves-by", own), pictureItem("leaves-picture", own)],
  checks: [check],
});
/** Micrometres: water per inch leaves the design in whole millilitres, and 7.432 m² are 80 ft² to a hundred-thousandth. */
const ROUNDED = 2;
const figure = (typed: string, unit: string) => ({ typed, unit });
/** 60 x 48 in is 20 ft² of water; 80 ft² of liner: an inch of rain is four inches of water. */
const design = {
  basinLength: figure("60.0", "in"),
  basinWidth: figure("48.0", "in"),
  basinDepth: figure("24.0", "in"),
  linedArea: figure("80.0", "ft²"),
  rainPerDay: figure("1.00", "in"),
};
function room(typed: string, more: object = {}, besides: readonly string[] = ["leaves-by", "leaves-picture"]) {
  const b = book(sheet);
  b.enter("design-set", { figures: { ...design, ...more } as Json, switches: {} });
  if (typed !== "") b.read("to-the-edge", typed);
  if (besides.includes("leaves-by")) b.answer("leaves-by", "is-dry");
  if (besides.includes("leaves-picture")) b.picture("leaves-picture");
  return b.finding("rain-room");
}

describe("room for rain", () => {
  test("the sheet has no fault, and asks by which place the water leaves", () => {
    const faults = (more: object) => sheetFaults({ ...sheet, checks: [{ ...check, ...more }] } as never).map(({ place }) => place);
    expect(faults({})).toEqual([]);
    expect(faults({ conditions: [] })).toEqual(["sheet/checks/rain-room/conditions"]);
    expect(faults({ conditions: ["leaves-nowhere"] })).toEqual(["sheet/checks/rain-room/items"]);
  });

  test("8 in over 20 ft² of water take 2 in of rain on 80 ft² of liner, two days of an inch", () => {
    const { value, lower, verdict, says, doubt, contributors } = room("8 0/16");
    expect(Math.abs((value ?? 0) - 2 * inch)).toBeLessThanOrEqual(ROUNDED);
    expect([lower, verdict, says.key]).toEqual([inch, "within", "rain.within"]);
    expect(says.figures.overflowDuration).toBe(48 * 3_600_000);
    // rain ± 25 % of 1 in; liner ± 10 %; basin ± 1/4 in on 60 and on 48; the reading's 1405 µm on 8 in, sqrt(458.3² + 916.8² + 288.7²) here
    const u = Math.hypot(
      (0.25 * inch) / Math.sqrt(3),
      (0.1 * 2 * inch) / Math.sqrt(3),
      ((0.25 / 60) * 2 * inch) / Math.sqrt(3),
      ((0.25 / 48) * 2 * inch) / Math.sqrt(3),
      Math.hypot(458.3, 916.8, 288.7) / 4,
    );
    expect((doubt ?? 0) / (2 * u)).toBeCloseTo(1, 3);
    expect(contributors?.map(({ name }) => name)).toEqual(["design:limit", "figure:linedArea", "placing"]);
  });

  test.each([
    ["2 0/16", "outside", "rain.outside", 0.5, 12],
    ["3 0/16", "too close to call", "rain.too-close", 0.75, 18],
    ["4 0/16", "too close to call", "rain.too-close", 1, 24],
    ["0", "outside", "rain.outside", 0, 0],
  ] as const)("%s in: %s", (typed, verdict, key, rain, hours) => {
    const found = room(typed);
    expect([found.verdict, found.says.key]).toEqual([verdict, key]);
    expect(Math.abs((found.value ?? Number.NaN) - rain * inch)).toBeLessThanOrEqual(ROUNDED);
    expect(found.says.figures.overflowDuration).toBe(hours * 3_600_000);
  });

  test("a larger lined area leaves less room, more rain by the design asks for more", () => {
    expect(room("8 0/16", { linedArea: figure("160.0", "ft²") }).verdict).toBe("too close to call");
    expect(room("8 0/16", { rainPerDay: figure("3.00", "in") })).toMatchObject({ lower: 3 * inch, verdict: "outside" });
  });

  test("inches and metric are the same room", () => {
    const metric = room("8 0/16", { linedArea: figure("7.432", "m²"), rainPerDay: figure("25.40", "mm") });
    expect(Math.abs((metric.value ?? 0) - 2 * inch)).toBeLessThanOrEqual(ROUNDED);
    expect([metric.lower, metric.verdict]).toEqual([inch, "within"]);
  });

  test.each(["linedArea", "rainPerDay", "basinWidth"])("%s unknown: the finding names it", (key) => {
    expect(room("8", { [key]: "unknown" })).toMatchObject({ verdict: "not taken", unknown: [key] });
  });

  test("a lined area of nothing is not known either", () => {
    expect(room("8", { linedArea: figure("0", "ft²") })).toMatchObject({ verdict: "not taken", unknown: ["linedArea"] });
  });

  test("without the place, its picture or the reading it waits for them by name", () => {
    expect(room("8", {}, []).missing).toEqual([{ item: "leaves-by" }, { item: "leaves-picture" }]);
    expect(room("8", {}, ["leaves-by"]).missing).toEqual([{ item: "leaves-picture" }]);
    expect(room("").missing).toEqual([{ item: "to-the-edge" }]);
  });
});
