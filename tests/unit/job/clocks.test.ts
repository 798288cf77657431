import { describe, expect, test } from "vitest";
import { type Check, clearances, findings, type Item, jobState, type ToleranceSheet } from "#core/job/index.ts";
import { answerItem, type Book, bench, book, computed, lengthItem, minute, start } from "../../helpers/job.ts";

const hour = 60 * minute;
const words = (en: string) => ({ en });
const glued: Partial<Item> = { tags: "glue-session", holds: "by tag" };
const set: Check = {
  id: "set-over",
  step: "step-one",
  title: words("Set"),
  function: "time passed since",
  items: ["last-joint"],
  kind: "duration",
  weight: "holds",
  holds: "by tag",
  before: "covering",
  lower: { function: "set time", item: "can-set", items: ["air-cold", "what-glued", "air-damp", "can-cure"] },
};
const cure: Check = {
  ...set,
  id: "cure-over",
  title: words("Cure"),
  lower: { function: "cure time", item: "can-cure", items: ["air-cold", "what-glued", "air-damp"] },
};
const { before: _, ...afterRun } = { ...cure, until: "line-run" };
const duration: Partial<Item> = { weight: "if you have it", quantity: "duration", unit: { inch: "h", metric: "h" } };
const sheet: ToleranceSheet = bench({
  tagSets: [{ id: "glue-session", title: words("Glue session"), least: 0, coverings: ["bury-it", "close-it"] }],
  items: [
    lengthItem("can-set", duration),
    lengthItem("can-cure", duration),
    lengthItem("air-cold", { ...glued, weight: "asked", quantity: "temperature", unit: { inch: "°F", metric: "°C" } }),
    answerItem("what-glued", {
      ...glued,
      weight: "asked",
      choices: [
        { id: "is-rigid", title: words("rigid"), accepts: true, means: ["rigid PVC"] },
        { id: "is-flexible", title: words("flexible"), accepts: true, means: ["flexible PVC"] },
      ],
    }),
    answerItem("air-damp", {
      ...glued,
      weight: "asked",
      choices: [{ id: "is-dry", title: words("dry"), accepts: true, means: ["dry air"] }],
    }),
    lengthItem("last-joint", { ...glued, quantity: "instant", unit: { inch: "instant", metric: "instant" } }),
    answerItem("line-run", { ...glued, choices: [{ id: "all-dry", title: words("dry"), accepts: true }] }),
  ],
  checks: [set, afterRun],
});

/** One session hidden by bury-it, rigid 2 in, 52 °F, dry; the last joint at `start`. */
function session(of: ToleranceSheet = sheet, glue: "is-rigid" | "is-flexible" = "is-rigid"): Book {
  const b = book(of);
  b.enter("design-set", { figures: { pipeSize: { typed: "2", unit: "in" } } });
  b.tag("glue-session", "1", "bury-it");
  b.read({ item: "last-joint", tag: "1" }, new Date(start).toISOString());
  b.answer({ item: "what-glued", tag: "1" }, glue);
  b.read({ item: "air-cold", tag: "1" }, "52 °F", { unit: "°F" });
  b.answer({ item: "air-damp", tag: "1" }, "is-dry");
  return b;
}
const fromIn = (b: Book, check: string): number | undefined => {
  const { from } = b.finding(check, "1");
  return from === undefined ? undefined : (from - start) / hour;
};

describe("the company's table", () => {
  // 2 in, 52 °F, dry, low pressure. A: a pipe maker's manual, page 96: set 2 h, cure 4 h. B: a cement maker's schedule: set 10 min, cure
  // 45 min. C: another maker's leaflet: no set time, cure 4 h, which then stands for the set.
  test.each([
    [undefined, 2, 4],
    ["A", 2, 4],
    ["B", 1 / 6, 3 / 4],
    ["C", 4, 4],
  ] as const)("%s: set after %d h, cured after %d h", (cureTable, sets, cures) => {
    const b = session({ ...sheet, ...(cureTable && { cureTable }) });
    expect(fromIn(b, "set-over")).toBeCloseTo(sets, 9);
    expect(fromIn(b, "cure-over")).toBeCloseTo(cures, 9);
  });
});

describe("the can rules", () => {
  test("its own set and cure go before the table, each where it gives one", () => {
    const b = session();
    b.read("can-set", "1 h", { unit: "h" });
    expect([fromIn(b, "set-over"), fromIn(b, "cure-over")]).toEqual([1, 4]);
    b.read("can-cure", "6 h", { unit: "h" });
    expect([fromIn(b, "set-over"), fromIn(b, "cure-over")]).toEqual([1, 6]);
  });

  test("a can that cures sooner than the table sets: set by then too", () => {
    const b = session();
    b.read("can-cure", "30 min", { unit: "h" });
    expect([fromIn(b, "set-over"), fromIn(b, "cure-over")]).toEqual([0.5, 0.5]);
  });

  test("flexible pipe has no table: both wait for the can's one time, and it stands for both", () => {
    const b = session(sheet, "is-flexible");
    for (const check of ["set-over", "cure-over"])
      expect(b.finding(check, "1")).toMatchObject({ verdict: "not taken", missing: [{ item: "can-cure" }] });
    b.read("can-cure", "5 h", { unit: "h" });
    expect([fromIn(b, "set-over"), fromIn(b, "cure-over")]).toEqual([5, 5]);
    b.read("can-set", "45 min", { unit: "h" });
    expect([fromIn(b, "set-over"), fromIn(b, "cure-over")]).toEqual([0.75, 5]);
  });
});

describe("what set and cure release", () => {
  const covering = (b: Book, now: number) => {
    const state = jobState(b.ledger());
    return clearances(state, findings(state), now)[0];
  };

  test("each holds its covering until its own instant, and the line carries it: the phone counts down", () => {
    const b = session();
    b.answer({ item: "line-run", tag: "1" }, "all-dry", { at: start + 5 * hour });
    const at = (now: number) => covering(b, now)?.lines.map(({ about, from }) => [about.check, from]);
    expect(at(start + hour)).toEqual([
      ["set-over", start + 2 * hour],
      ["cure-over", start + 4 * hour],
    ]);
    // an hour and a half is left of the cure at 2 h 30
    const [line] = covering(b, start + 2.5 * hour)?.lines ?? [];
    expect([line?.about.check, (line?.from ?? 0) - (start + 2.5 * hour)]).toEqual(["cure-over", 1.5 * hour]);
    expect(covering(b, start + 4 * hour)?.state).toBe("clear");
  });

  test("a word by telephone on the cure does not release the backfill before it has set", () => {
    const b = session();
    b.answer({ item: "line-run", tag: "1" }, "all-dry", { at: start + hour });
    const about = [{ check: "cure-over", tag: "1" }];
    b.enter("go-ahead", { covering: "bury-it", reason: "rain is coming", role: "crew", about });
    expect(covering(b, start + 1.5 * hour)).toMatchObject({ state: "not yet", lines: [{ about: { check: "set-over" } }] });
    expect(covering(b, start + 2 * hour)?.state).toBe("on word");
  });

  test("covered too soon is outside by how much, in time is within", () => {
    const soon = session();
    soon.covered("bury-it", "not yet", {}, { at: start + hour });
    expect(soon.finding("set-over", "1")).toMatchObject({ verdict: "outside", value: hour, lower: 2 * hour, from: start + 2 * hour });
    const late = session();
    late.covered("bury-it", "clear", {}, { at: start + 3 * hour });
    expect(late.finding("set-over", "1")).toMatchObject({ verdict: "within", value: 3 * hour });
  });

  test("what was decided before it was covered still counts afterwards", () => {
    const b = session();
    b.enter("go-ahead", { covering: "bury-it", reason: "held by a clamp", role: "office", about: [{ check: "set-over", tag: "1" }] });
    b.covered("bury-it", "clear", {}, { at: start + hour });
    expect(b.finding("set-over", "1")).toMatchObject({ verdict: "outside", by: { way: "go-ahead" } });
  });
});

describe("by its label", () => {
  const label: Partial<Item> = { tags: "label-wait", weight: "asked" };
  const labelled = bench({
    tagSets: [{ id: "label-wait", title: words("Waits by its label"), least: 0, coverings: ["bury-it"] }],
    items: [
      lengthItem("label-time", { ...label, quantity: "duration", unit: { inch: "min", metric: "min" } }),
      lengthItem("put-on", { ...label, quantity: "instant", unit: { inch: "instant", metric: "instant" } }),
      answerItem("first-water", { marks: "first running" }),
    ],
    checks: [
      {
        id: "label-over",
        step: "step-one",
        title: words("Label"),
        function: "time passed since",
        items: ["put-on"],
        kind: "duration",
        weight: "asked",
        before: "first running",
        lower: { function: "as typed", item: "label-time" },
      },
    ],
  });
  const foamed = (time: string): Book => {
    const b = book(labelled);
    b.tag("label-wait", "foam", "bury-it");
    b.read({ item: "label-time", tag: "foam" }, time, { unit: "min" });
    b.read({ item: "put-on", tag: "foam" }, new Date(start + hour).toISOString());
    return b;
  };

  test("minutes and hours alike, from the instant that it was put on", () => {
    for (const typed of ["90", "90 min", "1 h 30 min"]) {
      expect(foamed(typed).finding("label-over", "foam")).toMatchObject({ verdict: "within", from: start + 2.5 * hour });
    }
  });

  test("water sooner is outside; water before it was put on is of another day, and waited for anew", () => {
    const b = foamed("90 min");
    b.answer("first-water", "is-dry", { at: start + 2 * hour });
    expect(b.finding("label-over", "foam")).toMatchObject({ verdict: "outside", value: hour, lower: 1.5 * hour });
    const mended = foamed("90 min");
    mended.answer("first-water", "is-dry", { at: start + hour / 2 });
    expect(mended.finding("label-over", "foam")).toMatchObject({ verdict: "within", from: start + 2.5 * hour });
    expect(mended.finding("label-over", "foam").value).toBeUndefined();
  });
});

test("no finding of a clock depends on the present: the same ledger, the same instants", () => {
  const { all } = computed(session().ledger(), start);
  expect(all.filter(({ from }) => from !== undefined).map(({ check, from }) => [check, from])).toEqual([
    ["set-over", start + 2 * hour],
    ["cure-over", start + 4 * hour],
  ]);
});
