import { describe, expect, test } from "vitest";
import { asks, bench, book, inch, lengthItem, pictureItem } from "../../helpers/job.ts";

const sheet = bench({
  tagSets: [{ id: "pipe-joint", title: { en: "Joint" }, least: 0, coverings: ["bury-it", "close-it"] }],
  items: [
    lengthItem("depth-read"),
    lengthItem("width-read", { weight: "asked" }),
    pictureItem("joint-seen", { tags: "pipe-joint", holds: "by tag" }),
    pictureItem("joint-dry", { tags: "pipe-joint", holds: "by tag" }),
  ],
  checks: [
    {
      id: "depth-check",
      step: "step-one",
      title: { en: "Depth" },
      function: "single value",
      items: ["depth-read"],
      kind: "length",
      weight: "holds",
      holds: "bury-it",
      aim: 10 * inch,
      lower: 8 * inch,
    },
  ],
});
const names = (id: string) => ({ id, digest: id });
const correct = (id: string, replace: Record<string, string>) => ({ entry: names(id), reason: "misread", replace });
const withdraw = (id: string) => ({ entry: names(id), reason: "never taken", withdrawn: true });

function withDepth() {
  const b = book(sheet);
  b.read("depth-read", "10 0/16", {}, { id: "the-depth" });
  return b;
}

describe("corrections", () => {
  test("a value: the new one counts, both entries stay", () => {
    const b = withDepth();
    b.enter("corrected", correct("the-depth", { typed: "6 0/16" }), { id: "first" });
    expect(b.finding("depth-check")).toMatchObject({ value: 6 * inch, verdict: "outside", entries: ["the-depth"] });
    const { facts } = b.done().state;
    expect(facts.find((f) => f.id === "the-depth")).toMatchObject({ standing: "counts", correctedBy: "first", what: { typed: "6 0/16" } });
    expect(facts.find((f) => f.id === "the-depth")?.entry.what).toMatchObject({ typed: "10 0/16" });
    expect(facts.map((f) => f.kind)).toContain("corrected");
  });

  test("two corrections of one entry: the last word on each field", () => {
    const b = withDepth();
    b.enter("corrected", correct("the-depth", { typed: "6 0/16", placing: "soft-place" }));
    b.enter("corrected", correct("the-depth", { typed: "9 0/16" }), { id: "second" });
    expect(b.done().state.facts.find((f) => f.id === "the-depth")).toMatchObject({
      what: { typed: "9 0/16", placing: "soft-place" },
      correctedBy: "second",
    });
  });

  test("a correction of a correction goes on correcting the entry", () => {
    const b = withDepth();
    b.enter("corrected", correct("the-depth", { typed: "6 0/16" }), { id: "first" });
    b.enter("corrected", correct("first", { typed: "9 0/16" }), { id: "second" });
    expect(b.finding("depth-check")).toMatchObject({ value: 9 * inch });
    expect(b.done().state.facts.find((f) => f.id === "the-depth")?.correctedBy).toBe("second");
  });

  test("a correction that is withdrawn leaves the entry as it was", () => {
    const b = withDepth();
    b.enter("corrected", correct("the-depth", { typed: "6 0/16" }), { id: "first" });
    b.enter("corrected", withdraw("first"));
    expect(b.finding("depth-check")).toMatchObject({ value: 10 * inch });
  });

  test("two corrections that name each other change nothing and end", () => {
    const b = withDepth();
    b.enter("corrected", correct("second", { typed: "6 0/16" }), { id: "first" });
    b.enter("corrected", correct("first", { typed: "6 0/16" }), { id: "second" });
    expect(b.finding("depth-check")).toMatchObject({ value: 10 * inch });
  });

  test("withdrawn: not taken again, and the entry stays", () => {
    const b = withDepth();
    b.enter("corrected", withdraw("the-depth"));
    expect(asks(b.clearance("bury-it"))).toEqual(["depth-read"]);
    expect(b.done().state.facts.find((f) => f.id === "the-depth")?.standing).toBe("withdrawn");
  });

  test("the place: a reading moved to another item", () => {
    const b = withDepth();
    b.enter("corrected", correct("the-depth", { item: "width-read" }));
    expect(asks(b.clearance("bury-it"))).toEqual(["depth-read"]);
    expect(b.finding("width-read")).toMatchObject({ verdict: "within", entries: ["the-depth"] });
  });

  test("the tag: a picture moved from one joint to the other", () => {
    const b = withDepth();
    b.tag("pipe-joint", "A", "bury-it");
    b.tag("pipe-joint", "B", "close-it");
    for (const item of ["joint-seen", "joint-dry"]) b.picture({ item, tag: "A" }, {}, { id: item });
    expect(b.done().clearances.map(asks)).toEqual([[], ["joint-seen B", "joint-dry B"]]);
    b.enter("corrected", correct("joint-seen", { tag: "B" }));
    expect(b.done().clearances.map(asks)).toEqual([["joint-seen A"], ["joint-dry B"]]);
  });

  test("no correction changes whose word it was", () => {
    const b = book(sheet);
    b.enter("does-not-apply", { about: { item: "depth-read" }, reason: "no depth", role: "crew" }, { id: "word" });
    b.enter("corrected", correct("word", { role: "office" }));
    expect(b.clearance("bury-it").state).toBe("not yet");
  });

  test("words that leave the shape of their kind take the entry out of the count, and nothing else", () => {
    const b = withDepth();
    b.enter("corrected", { entry: names("the-depth"), reason: "nonsense", replace: { typed: 5 } });
    expect(b.done().state.facts.find((f) => f.id === "the-depth")?.standing).toBe("not understood");
    expect(asks(b.clearance("bury-it"))).toEqual(["depth-read"]);
  });
});

describe("moved", () => {
  const moved = (more: object = {}) => ({
    from: "other-job",
    reason: "wrong job",
    entries: [
      {
        id: "foreign",
        kind: "reading-taken",
        author: { person: "person of phone-one", phone: "phone-one" },
        run: 0,
        made: 1_780_000_000_000,
        what: { item: "depth-read", typed: "10 0/16", unit: "in" },
        ...more,
      },
    ],
  });

  test("out: it counts no longer, and stays", () => {
    const b = withDepth();
    b.enter("moved-out", { entries: [names("the-depth")], to: "other-job", reason: "wrong job" });
    expect(asks(b.clearance("bury-it"))).toEqual(["depth-read"]);
    expect(b.done().state.facts.find((f) => f.id === "the-depth")?.standing).toBe("moved out");
  });

  test("in: it counts under its own id, at its own time, and says where from", () => {
    const b = book(sheet);
    b.enter("moved-in", moved(), { phone: "the program" });
    expect(b.finding("depth-check")).toMatchObject({ verdict: "within", entries: ["foreign"] });
    expect(b.done().state.facts.find((f) => f.id === "foreign")).toMatchObject({ movedFrom: "other-job", at: 1_780_000_000_000 });
  });

  test("in with a phone that is three years ahead: corrected as that phone is here, and never later than it came", () => {
    const b = book(sheet);
    const three = 3 * 365 * 24 * 3600 * 1000;
    b.enter("moved-in", moved({ made: b.clock() + three, author: { person: "p", phone: "phone-ahead" } }), { phone: "the program" });
    const came = b.done().state.facts.find((f) => f.kind === "moved-in");
    expect(b.done().state.facts.find((f) => f.id === "foreign")?.at).toBe(came?.at);
    b.enter("concession", { about: { check: "depth-check" }, extent: "all", reason: "as is" }, { phone: "the office" });
    b.enter("corrected", correct("foreign", { typed: "6 0/16" }));
    // the concession came after the reading, for all that the phone's clock said
    expect(b.clearance("bury-it").state).toBe("clear");
  });

  test("out and in again: it counts once", () => {
    const b = withDepth();
    b.enter("moved-out", { entries: [names("the-depth")], to: "other-job", reason: "wrong job" }, { phone: "the program" });
    b.enter("moved-in", moved({ id: "the-depth" }), { phone: "the program" });
    expect(b.finding("depth-check").entries).toEqual(["the-depth"]);
    b.enter("moved-out", { entries: [names("the-depth")], to: "other-job", reason: "wrong again" }, { phone: "the program" });
    expect(b.clearance("bury-it").state).toBe("not yet");
  });

  test("what refers to a moved entry by its id goes on doing so", () => {
    const b = book(sheet);
    b.enter("moved-in", moved(), { phone: "the program" });
    b.enter("corrected", correct("foreign", { typed: "6 0/16" }));
    expect(b.finding("depth-check")).toMatchObject({ value: 6 * inch });
  });

  test("what speaks of its own job alone means nothing in another", () => {
    const b = withDepth();
    const what = { thing: "sheet", name: "another", number: 1, digest: "c".repeat(64) };
    b.enter("moved-in", moved({ kind: "version-taken-over", what }), { phone: "the program" });
    expect(b.finding("depth-check").verdict).toBe("within");
    expect(b.done().state.facts.find((f) => f.id === "foreign")?.standing).toBe("not understood");
  });

  test("in, and the move itself withdrawn", () => {
    const b = book(sheet);
    b.enter("moved-in", moved(), { phone: "the program", id: "move" });
    b.enter("corrected", withdraw("move"));
    expect(b.clearance("bury-it").state).toBe("not yet");
  });
});

describe("what is not there, or not known", () => {
  test("an unknown kind is kept in its place and changes nothing", () => {
    const b = withDepth();
    const before = b.done().all;
    b.enter("drone-flown", { item: "depth-read", whatever: [1, null] }, { id: "new-kind" });
    expect(b.done().all).toEqual(before);
    expect(b.done().state.facts.find((f) => f.id === "new-kind")).toMatchObject({ kind: "drone-flown", standing: "counts" });
  });

  test("a withheld body takes its own entry out of the count, and nothing else", () => {
    const b = withDepth();
    b.enter("reading-taken", undefined, { id: "gone" });
    b.enter("corrected", undefined);
    expect(b.done().state.facts.find((f) => f.id === "gone")).toMatchObject({ standing: "withheld", what: {} });
    expect(b.finding("depth-check")).toMatchObject({ value: 10 * inch, entries: ["the-depth"] });
  });

  test("a job without its sheet has no findings and no clearance, and says so by having none", () => {
    const b = withDepth();
    b.enter("version-taken-over", { thing: "sheet", name: "lost", number: 2, digest: "c".repeat(64) });
    const { state, all, clearances } = b.done();
    expect([state.sheet, all, clearances]).toEqual([undefined, [], []]);
    expect(b.handingOver().state).toBe("missing");
  });
});
