import { describe, expect, test } from "vitest";
import type { Check, Finding } from "#core/job/index.ts";
import { type Book, bench, book, inch, lengthItem } from "../../helpers/job.ts";

const words = (en: string) => ({ en });
const tie = (id: string, tags: string) => lengthItem(id, { weight: "asked", tags, fromMark: true });
const ties = (name: string): readonly string[] => [1, 2, 3].map((n) => `${name}-tie-${n}`);
const found = (id: string, name: string): Check => ({
  id,
  step: "step-one",
  title: words(id),
  function: "found by ties",
  items: ties(name),
  kind: "length",
  weight: "asked",
  upper: 4 * inch,
});
const sheet = bench({
  tagSets: [
    { id: "other-thing", title: words("Thing"), least: 0, coverings: ["bury-it"] },
    { id: "fixed-mark", title: words("Mark"), least: 0, coverings: ["bury-it"] },
    { id: "buried-thing", title: words("Buried"), least: 0, coverings: ["bury-it"] },
  ],
  items: [...ties("mark").map((id) => tie(id, "fixed-mark")), ...ties("thing").map((id) => tie(id, "buried-thing"))],
  checks: [found("mark-found", "mark"), found("thing-found", "thing")],
});

const sill = "A, sill";
const post = "B, post";
const wall = "C, wall";
type Side = "left" | "right";

const mark = (b: Book, tag: string, description: string): void => {
  b.enter("tag-named", { set: "fixed-mark", tag, hiddenBy: "bury-it", description });
};
const taken = (b: Book, item: string, tag: string, from: string | undefined, typed: string, side?: Side): void => {
  b.read({ item, tag }, typed, { ...(from === undefined ? {} : { mark: from }), ...(side ? { side } : {}) });
};

/** A at the origin and B so far along, inches. */
function marks(between = "40 0/16"): Book {
  const b = book(sheet);
  mark(b, "A", "sill");
  mark(b, "B", "post");
  taken(b, "mark-tie-1", "B", sill, between);
  b.enter("tag-named", { set: "buried-thing", tag: "1", hiddenBy: "bury-it" });
  return b;
}

/** C at (0, 30), on the left for someone at A who looks to B. */
function withThird(b: Book): Book {
  mark(b, "C", "wall");
  taken(b, "mark-tie-1", "C", sill, "30 0/16", "left");
  taken(b, "mark-tie-2", "C", post, "50 0/16");
  return b;
}

const thing = (b: Book): Finding => b.finding("thing-found", "1");

// u² of a tie in mm²: step of 1/16 in, hard edge 1.588 mm, class II tape of 0.3 mm and 0.2 mm for each metre begun
const square = (metresBegun: number): number => (1.5875 ** 2 / 4 + 1.588 ** 2 + (0.3 + 0.2 * metresBegun) ** 2) / 3;
const HOLDS_95 = Math.sqrt(5.991464547);

describe("how near a tied point is found again", () => {
  test("two tapes that cross squarely: a 30-40-50 triangle by hand", () => {
    // B at (50, 0), the point at (18, 24): 30 from A along (3, 4)/5, 40 from B along (-4, 3)/5, which stand square
    const b = marks("50 0/16");
    taken(b, "thing-tie-1", "1", sill, "30 0/16", "left");
    taken(b, "thing-tie-2", "1", post, "40 0/16");
    // along A's tape dA; along B's dB - 4/5 dAB
    const [a, across] = [square(1), square(2) + (16 / 25) * square(2)];
    const finding = thing(b);
    expect(finding.verdict).toBe("within");
    expect(finding.value).toBeCloseTo(HOLDS_95 * Math.sqrt(Math.max(a, across)) * 1000, -1);
  });

  test("a poor crossing is named before the crew leaves: 41, 41 and 18 cross at 25 degrees", () => {
    const b = marks("18 0/16");
    taken(b, "thing-tie-1", "1", sill, "41 0/16", "left");
    taken(b, "thing-tie-2", "1", post, "41 0/16");
    // at (9, 40): dx = 41/18 (dA - dB) + 1/2 dAB, dy = 41/80 (dA + dB) - 9/80 dAB; 2 arctan(9 / 40) = 25.4 degrees
    const [tape, base] = [square(2), square(1)];
    const xx = (41 / 18) ** 2 * 2 * tape + base / 4;
    const yy = (41 / 80) ** 2 * 2 * tape + (9 / 80) ** 2 * base;
    const xy = (-9 / 160) * base;
    const largest = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
    const finding = thing(b);
    expect(finding.value).toBeCloseTo(HOLDS_95 * Math.sqrt(largest) * 1000, -1);
    expect(finding.verdict).toBe("too close to call");
    expect(finding.says).toEqual({ key: "ties.poor-crossing", figures: { first: sill, second: post, angle: "25" } });
  });

  test("a third mark off to the side takes that away", () => {
    // C at (60, 40) would see it from the side; here by its own distances: 51 from (9, 40)
    const b = marks("18 0/16");
    mark(b, "C", "wall");
    // √(60² + 40²) = 72.111, √(42² + 40²) = 58.0
    taken(b, "mark-tie-1", "C", sill, "72 2/16", "left");
    taken(b, "mark-tie-2", "C", post, "58 0/16");
    taken(b, "thing-tie-1", "1", sill, "41 0/16");
    taken(b, "thing-tie-2", "1", post, "41 0/16");
    taken(b, "thing-tie-3", "1", wall, "51 0/16");
    expect(thing(b).verdict).toBe("within");
  });

  test.each([
    ["too short together", "10 0/16", "10 0/16", 20],
    ["one far longer", "60 0/16", "10 0/16", 10],
  ])("%s: they cannot meet, with the miss by hand", (_, first, second, miss) => {
    const b = marks();
    taken(b, "thing-tie-1", "1", sill, first);
    taken(b, "thing-tie-2", "1", post, second);
    const finding = thing(b);
    expect([finding.verdict, finding.value]).toEqual(["not taken", undefined]);
    expect(finding.says).toEqual({ key: "ties.cannot-meet", figures: { first: sill, second: post, miss: miss * inch } });
  });

  test("two places that fit are asked about and never chosen from", () => {
    // 50 from A, 41 1/4 from B (40, 0): (30, 40) or (30, -40)
    const sided = (side?: Side): Finding => {
      const b = marks();
      taken(b, "thing-tie-1", "1", sill, "50 0/16");
      taken(b, "thing-tie-2", "1", post, "41 4/16", side);
      return thing(b);
    };
    expect(sided()).toMatchObject({ verdict: "not taken", says: { key: "ties.side-missing", figures: { first: sill, second: post } } });
    expect(sided("left").verdict).toBe("within");
    expect(sided("right").value).toBe(sided("left").value);
  });

  test("three distances that place it by themselves contradict a side that was said wrongly", () => {
    const sided = (side: Side): Finding => {
      const b = withThird(marks());
      taken(b, "thing-tie-1", "1", sill, "50 0/16", side);
      taken(b, "thing-tie-2", "1", post, "41 4/16");
      // from C (0, 30) to (30, 40): √1000 = 31.62
      taken(b, "thing-tie-3", "1", wall, "31 10/16");
      return thing(b);
    };
    expect(sided("left").verdict).toBe("within");
    expect(sided("right")).toMatchObject({ verdict: "too close to call", says: { key: "ties.side-differs" } });
  });

  test("a third distance that was misread by 2 in does not fit, and says by how much", () => {
    const b = withThird(marks());
    taken(b, "thing-tie-1", "1", sill, "50 0/16");
    taken(b, "thing-tie-2", "1", post, "41 4/16");
    taken(b, "thing-tie-3", "1", wall, "33 10/16");
    const finding = thing(b);
    expect([finding.verdict, finding.says.key]).toEqual(["too close to call", "ties.disagree"]);
    // of 2 in that three tapes share, none is left with more
    expect(Number(finding.says.figures.off)).toBeGreaterThan(inch / 2);
    expect(Number(finding.says.figures.off)).toBeLessThan(2 * inch);
  });

  test("in line with its marks the distances say nothing across", () => {
    const b = marks();
    taken(b, "thing-tie-1", "1", sill, "60 0/16", "left");
    taken(b, "thing-tie-2", "1", post, "20 0/16");
    expect(thing(b)).toMatchObject({ verdict: "not taken", says: { key: "ties.in-line" } });
  });

  test("what is wanted first: the mark's name, the distances between the marks", () => {
    const unsaid = marks();
    taken(unsaid, "thing-tie-1", "1", sill, "50 0/16", "left");
    taken(unsaid, "thing-tie-2", "1", undefined, "41 4/16");
    expect(thing(unsaid).says.key).toBe("ties.mark-unsaid");
    const b = book(sheet);
    b.enter("tag-named", { set: "buried-thing", tag: "1", hiddenBy: "bury-it" });
    taken(b, "thing-tie-1", "1", sill, "50 0/16", "left");
    taken(b, "thing-tie-2", "1", post, "41 4/16");
    expect(thing(b).says.key).toBe("ties.no-distances");
  });
});

describe("marks", () => {
  test("the first two begin the plan; one whose distances cannot meet is left out, and the rest is placed", () => {
    const b = marks();
    mark(b, "C", "wall");
    taken(b, "mark-tie-1", "C", sill, "10 0/16", "left");
    taken(b, "mark-tie-2", "C", post, "25 0/16");
    taken(b, "thing-tie-1", "1", sill, "50 0/16", "left");
    taken(b, "thing-tie-2", "1", post, "41 4/16");
    expect(["A", "B"].map((tag) => b.finding("mark-found", tag).says.key)).toEqual(["check.one-of-them", "check.one-of-them"]);
    expect(b.finding("mark-found", "C").says).toEqual({
      key: "ties.cannot-meet",
      figures: { first: sill, second: post, miss: 5 * inch },
    });
    expect(thing(b).verdict).toBe("within");
  });

  test("are one mark whether called by letter or in full, also where another thing bears the letter", () => {
    const b = marks();
    b.enter("tag-named", { set: "other-thing", tag: "A", hiddenBy: "bury-it" });
    taken(b, "thing-tie-1", "1", "A", "50 0/16", "left");
    taken(b, "thing-tie-2", "1", "post", "41 4/16");
    expect(thing(b).verdict).toBe("within");
  });
});

describe("ties that were not taken", () => {
  const missed = (b: Book): readonly string[] =>
    b
      .done()
      .all.filter(({ verdict, tag }) => verdict === "not taken" && tag === "1")
      .map(({ check }) => check);

  test("are missed once: the check names the two that it needs", () => {
    const b = marks();
    expect(missed(b)).toEqual(["thing-tie-3", "thing-found"]);
    expect(thing(b).missing).toEqual([
      { item: "thing-tie-1", tag: "1" },
      { item: "thing-tie-2", tag: "1" },
    ]);
  });

  test("a third that is asked is missed by itself, though two place the point", () => {
    const b = marks();
    taken(b, "thing-tie-1", "1", sill, "50 0/16", "left");
    taken(b, "thing-tie-2", "1", post, "41 4/16");
    expect(missed(b)).toEqual(["thing-tie-3"]);
  });
});

test("a plan is kept from one entry to the next only while nothing that it is made of changed: neither a distance nor its doubt", () => {
  const found = (typed: string, placing: string): number | undefined => {
    const b = marks("50 0/16");
    taken(b, "thing-tie-1", "1", sill, "30 0/16", "left");
    b.read({ item: "thing-tie-2", tag: "1" }, typed, { mark: post, placing });
    return thing(b).value;
  };
  const [edge, turf, farther, again] = [
    found("40 0/16", "hard-place"),
    found("40 0/16", "soft-place"),
    found("41 0/16", "hard-place"),
    found("40 0/16", "hard-place"),
  ];
  expect(again).toBe(edge);
  expect(turf).toBeGreaterThan(2 * (edge ?? 0));
  expect(farther).not.toBe(edge);
});
