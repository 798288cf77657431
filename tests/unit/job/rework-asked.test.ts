import { describe, expect, test } from "vitest";
import { reworkAsked, reworkAskedOf } from "#core/job/index.ts";
import { answerItem, bench, book, lengthItem } from "../../helpers/job.ts";

const sheet = bench({
  tagSets: [{ id: "any-joint", title: { en: "Joint" }, least: 1, coverings: ["bury-it"] }],
  items: [lengthItem("depth-a"), lengthItem("depth-b"), answerItem("joint-dry", { tags: "any-joint" })],
  checks: [
    {
      id: "depth-right",
      step: "step-one",
      title: { en: "Depth" },
      function: "single value",
      items: ["depth-a", "depth-b"],
      kind: "length",
      weight: "holds",
      holds: "bury-it",
      aim: 254_000,
      upper: 300_000,
    },
  ],
});

const opened = () => {
  const b = book(sheet);
  b.tag("any-joint", "A", "bury-it");
  b.tag("any-joint", "B", "bury-it");
  const entries = () => reworkAsked(b.done().state).map(({ entry }) => entry);
  const of = (item: string, tag?: string) => {
    const { state } = b.done();
    const found = sheet.items.find(({ id }) => id === item);
    if (found === undefined) throw new Error(item);
    return reworkAskedOf(state, tag === undefined ? { item: found } : { item: found, tag }).map(({ reason }) => reason);
  };
  const ask = (about: object, reason = "uneven") => b.enter("rework-asked", { about: about as never, reason }, { phone: "desk" });
  return { b, entries, of, ask };
};

describe("rework that is asked for", () => {
  test("stands at the item, and at every item of the check, until it is entered as reworked", () => {
    const { b, entries, of, ask } = opened();
    const first = ask({ check: "depth-right" }, "too deep");
    expect(entries()).toEqual([first]);
    expect([of("depth-a"), of("depth-b"), of("joint-dry", "A")]).toEqual([["too deep"], ["too deep"], []]);
    b.enter("reworked", { about: { check: "depth-right" }, done: "filled up", minutes: 20 });
    expect(entries()).toEqual([]);
  });

  test("entered for one of the items that the check reads it is answered too; for another thing it is not", () => {
    const { b, entries, ask } = opened();
    const first = ask({ check: "depth-right" });
    b.enter("reworked", { about: { item: "joint-dry", tag: "A" }, done: "dried", minutes: 5 });
    expect(entries()).toEqual([first]);
    b.enter("reworked", { about: { item: "depth-b" }, done: "filled up", minutes: 20 });
    expect(entries()).toEqual([]);
  });

  test("of one tag is not of another; accepted as built instead, it is asked for no more; asked again, the newer counts", () => {
    const { b, entries, of, ask } = opened();
    const [a, other] = [ask({ item: "joint-dry", tag: "A" }), ask({ item: "joint-dry", tag: "B" })];
    expect(of("joint-dry", "A")).toHaveLength(1);
    b.enter("concession", { about: { item: "joint-dry", tag: "B" }, extent: "this joint", reason: "seen" }, { phone: "desk" });
    expect(entries()).toEqual([a]);
    expect(entries()).not.toContain(other);
    const again = ask({ item: "joint-dry", tag: "A" }, "still wet");
    expect(entries()).toEqual([again]);
  });

  test("what was done over before it was asked for answers nothing", () => {
    const { b, entries, ask } = opened();
    b.enter("reworked", { about: { item: "depth-a" }, done: "filled up", minutes: 20 });
    const first = ask({ item: "depth-a" });
    expect(entries()).toEqual([first]);
  });
});
