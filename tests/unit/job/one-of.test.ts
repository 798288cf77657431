import { describe, expect, test } from "vitest";
import { asks, bench, book, inch, lengthItem } from "../../helpers/job.ts";

const group = (title: string, ...items: string[]) => ({ title: { en: title }, items });
const most = (id: string, item: string) => ({
  id,
  step: "step-one",
  title: { en: id },
  function: "single value" as const,
  items: [item],
  kind: "length" as const,
  weight: "holds" as const,
  holds: "bury-it",
  aim: 0,
  upper: inch,
});
const sheet = bench({
  items: ["first-a", "first-b", "first-c", "second-a", "second-b"].map((id) => lengthItem(id)),
  oneOf: [
    {
      id: "one-way",
      step: "step-one",
      title: { en: "One way or the other" },
      holds: "bury-it",
      groups: [group("first", "first-a", "first-b", "first-c"), group("second", "second-a", "second-b")],
    },
  ],
  checks: [most("first-check", "first-a"), most("second-check", "second-a")],
});
const good = "0 2/16";
const bad = "3 0/16";

describe("one of several groups", () => {
  test("nothing entered: the first group is asked for", () => {
    expect(asks(book(sheet).clearance("bury-it"))).toEqual(["first-b", "first-c", "first-a"]);
  });

  test.each([
    [["first-a", "first-b", "first-c"], "first-check"],
    [["second-a", "second-b"], "second-check"],
  ])("%j is a whole group, and enough", (items, check) => {
    const b = book(sheet);
    for (const item of items) b.read(item, good);
    expect(b.clearance("bury-it")).toEqual({ covering: "bury-it", state: "clear", lines: [] });
    // nothing is said of the way that was not gone
    expect(b.done().all.map((f) => f.check)).toEqual([...items.filter((i) => !i.endsWith("-a")), check]);
  });

  test("half of each is not, and the lines name what the group furthest on lacks", () => {
    const b = book(sheet);
    b.read("first-a", good);
    b.read("second-b", good);
    // a third of the first, half of the second
    expect(asks(b.clearance("bury-it"))).toEqual(["second-a"]);
    b.read("first-b", good);
    // two thirds of the first, half of the second
    expect(asks(b.clearance("bury-it"))).toEqual(["first-c"]);
    b.read("second-a", good);
    expect(b.clearance("bury-it").state).toBe("clear");
  });

  test("one group whole and within: what is outside in the other still shows, and holds", () => {
    const b = book(sheet);
    for (const item of ["first-a", "first-b", "first-c"]) b.read(item, good);
    expect(b.clearance("bury-it").state).toBe("clear");
    b.read("second-a", bad);
    expect(asks(b.clearance("bury-it"))).toEqual(["second-check"]);
    expect(b.finding("second-check")).toMatchObject({ verdict: "outside", holds: "bury-it" });
  });

  test("a group that could not be taken does not stand in the way of the other, and its word is kept", () => {
    const b = book(sheet);
    for (const item of ["first-a", "first-b", "first-c"]) b.enter("could-not-be-taken", { about: { item }, reason: "laser broken" });
    expect(b.clearance("bury-it").state).toBe("not yet");
    b.read("second-a", good);
    b.read("second-b", good);
    expect(b.clearance("bury-it")).toMatchObject({ state: "clear", lines: [] });
    expect(
      b
        .done()
        .all.filter((f) => f.verdict === "could not be taken")
        .map(({ check, weight }) => [check, weight]),
    ).toEqual(["first-a", "first-b", "first-c"].map((item) => [item, "if you have it"]));
  });

  test("what does not apply, by the office, counts to a whole group", () => {
    const b = book(sheet);
    b.read("second-a", good);
    b.enter("does-not-apply", { about: { item: "second-b" }, reason: "round basin", role: "crew" });
    expect(asks(b.clearance("bury-it"))).toEqual(["second-b"]);
    b.enter("does-not-apply", { about: { item: "second-b" }, reason: "round basin", role: "office" });
    expect(b.clearance("bury-it").state).toBe("clear");
  });

  test("a go-ahead for everything says nothing of a way that was not gone", () => {
    const b = book(sheet);
    b.read("second-b", good);
    const given = b.enter("go-ahead", { covering: "bury-it", reason: "rain", role: "crew" });
    expect(b.clearance("bury-it")).toMatchObject({ state: "on word", onWord: [given] });
    expect(b.done().all.map((f) => f.check)).toEqual(["second-b", "second-check"]);
  });
});
