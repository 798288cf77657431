import { describe, expect, it } from "vitest";
import type { ToleranceSheet } from "#core/job/index.ts";
import type { DrawingView, PlanView } from "#core/record/index.ts";
import { type Book, bench, book, lengthItem } from "../../helpers/job.ts";
import { recordOf } from "../../helpers/record.ts";

const words = (en: string) => ({ en });
const tie = (id: string, tags: string) => lengthItem(id, { weight: "asked", tags, fromMark: true });
const sheet: ToleranceSheet = bench({
  figures: [{ id: "markBearing", title: words("Bearing"), kind: "count", unit: "1", from: "design" }],
  tagSets: [
    { id: "tie-mark", title: words("Mark"), least: 0, coverings: ["bury-it"] },
    { id: "buried-point", title: words("Point"), least: 0, coverings: ["bury-it"] },
  ],
  items: [
    ...["mark-tie-1", "mark-tie-2"].map((id) => tie(id, "tie-mark")),
    ...["point-tie-1", "point-tie-2", "point-tie-3"].map((id) => tie(id, "buried-point")),
  ],
  checks: [
    {
      id: "point-found",
      step: "step-one",
      title: words("Place"),
      function: "found by ties",
      items: ["point-tie-1", "point-tie-2", "point-tie-3"],
      kind: "length",
      weight: "asked",
      upper: 101_600,
    },
  ],
});

const named = { A: "A, sill", B: "B, post", C: "C, wall" } as const;
const mark = (b: Book, tag: keyof typeof named): void => {
  b.enter("tag-named", { set: "tie-mark", tag, hiddenBy: "bury-it", description: named[tag].slice(3) });
};
const taken = (b: Book, item: string, tag: string, from: keyof typeof named, typed: string, side?: "left" | "right"): void => {
  b.enter("reading-taken", { item, tag, typed, unit: "in", mark: named[from], ...(side ? { side } : {}) });
};
const point = (b: Book, tag = "1"): void => {
  b.enter("tag-named", { set: "buried-point", tag, hiddenBy: "bury-it", description: "union" });
};

/** A at the origin, B 40 in along, C 30 in up on the left of A to B; the point lies 30 in along and 40 in to the right. */
const site = (side?: "left" | "right", third = true): Book => {
  const b = book(sheet);
  for (const tag of ["A", "B", "C"] as const) mark(b, tag);
  taken(b, "mark-tie-1", "B", "A", "40");
  if (third) {
    taken(b, "mark-tie-1", "C", "A", "30", "left");
    taken(b, "mark-tie-2", "C", "B", "50");
  }
  point(b);
  taken(b, "point-tie-1", "1", "A", "50", side);
  taken(b, "point-tie-2", "1", "B", "41 1/4");
  if (third) taken(b, "point-tie-3", "1", "C", "76 1/8");
  return b;
};

const planOf = (b: Book): PlanView => {
  const { plan } = recordOf(b.ledger());
  if (plan === undefined) throw new Error("no plan");
  return plan;
};
const drawn = (plan: PlanView): DrawingView => {
  if (plan.drawing === undefined) throw new Error(plan.notes.join(" "));
  return plan.drawing;
};
const lettering = (view: DrawingView): readonly string[] => view.shapes.flatMap((one) => (one.shape === "words" ? [one.text] : []));
/** The middle of the balloon that bears a letter or number, paper millimetres. */
const signAt = (view: DrawingView, sign: string): readonly [number, number] => {
  const found = view.shapes.find((one) => one.shape === "words" && one.heavy && one.text === sign);
  if (found?.shape !== "words") throw new Error(`no ${sign}`);
  return [found.placed[4], found.placed[5]];
};

describe("the plan", () => {
  it("is drawn to a usual scale, marks, point and every distance on it", () => {
    const plan = planOf(site());
    const view = drawn(plan);
    expect(plan.notes).toEqual([]);
    expect(view.scale).toMatch(/^Scale \S+( 1\/2)? in = 1 ft \(1 : \d+\)\. North is not known: the line from A to B is drawn level\./);
    expect(lettering(view)).toEqual(expect.arrayContaining(["A", "B", "C", "1", "40 in", "30 in", "50 in", "41 1/4 in", "76 1/8 in"]));
    expect(view.says).toBe("Plan to scale. Marks: A; B; C. Buried points: 1 Point 1: union.");
    for (const shape of view.shapes.filter((one) => one.shape === "line"))
      for (const { x, y } of shape.points) expect(x >= 0 && x <= view.width && y >= 0 && y <= view.height).toBe(true);
  });

  it("has the third mark above the line of the first two, and the point on the other side of it", () => {
    const view = drawn(planOf(site()));
    const [a, c, one] = ["A", "C", "1"].map((sign) => signAt(view, sign)[1]) as [number, number, number];
    expect(c).toBeLessThan(a);
    expect(one).toBeGreaterThan(a);
  });

  it("holds the lengths of its lines to its scale", () => {
    const view = drawn(planOf(site()));
    const ratio = Number(/1 : (\d+)/.exec(view.scale)?.[1]);
    const lengths = view.shapes.flatMap((one) => {
      const [from, to] = one.shape === "line" && one.stroke === "dimension" ? one.points : [];
      return from && to ? [Math.hypot(to.x - from.x, to.y - from.y) * ratio] : [];
    });
    // 40, 30, 50, 50 in as typed; the point's two others within the step of its tape
    const typed = [40, 30, 50, 50, 41.25, 76.125].map((inches) => inches * 25.4);
    expect(lengths).toHaveLength(typed.length);
    for (const [i, length] of lengths.entries()) expect(Math.abs(length - (typed[i] ?? 0))).toBeLessThan(8);
  });

  it("carries a distance as it counts once it was corrected", () => {
    const b = site();
    const [tie] = b.ledger().entries.filter(({ what }) => (what as { typed?: string }).typed === "41 1/4");
    b.enter("corrected", { entry: { id: tie?.id ?? "", digest: tie?.digest ?? "" }, reason: "misread", replace: { typed: "41 3/16" } });
    const plan = planOf(b);
    expect(lettering(drawn(plan))).toContain("41 3/16 in");
    expect(plan.tied.find(({ sign }) => sign === "1")?.ties).toBe("A 50 in; B 41 3/16 in; C 76 1/8 in");
  });

  it("says in its finding what it says in its table: rounded up, with no doubt beside a doubt", () => {
    const { plan, findings } = recordOf(site().ledger());
    const finding = findings.find(({ check }) => check === "point-found");
    expect(plan?.tied[3]?.place).toContain(`± ${finding?.value} the worse way`);
    expect(finding?.says).toContain(`found again within ${finding?.value} of where it was tied`);
    expect(finding?.doubt).toBeUndefined();
  });

  it("keeps the north arrow off marks, signs and lines", () => {
    const b = site();
    b.enter("design-set", { figures: { markBearing: { typed: "112", unit: "1" } } });
    const view = drawn(planOf(b));
    expect(view.scale).toContain("North by compass: the line from A to B bears 112°.");
    const [x, y] = signAt(view, "N");
    for (const sign of ["A", "B", "C", "1"]) {
      const [atX, atY] = signAt(view, sign);
      expect(Math.hypot(x - atX, y - atY), sign).toBeGreaterThan(5);
    }
  });

  it("names what two ties leave open, and draws it once the side is said", () => {
    const open = planOf(site(undefined, false));
    expect(open.notes).toEqual([
      "Point 1: union: two places fit. It is drawn once somebody has entered whether it lies left or right for someone at A who looks to B.",
    ]);
    expect(lettering(drawn(open))).not.toContain("50 in");
    const heights = (["left", "right"] as const).map((side) => {
      const view = drawn(planOf(site(side, false)));
      return signAt(view, "1")[1] - signAt(view, "A")[1];
    });
    expect(heights[0]).toBeLessThan(0);
    expect(heights[1]).toBeGreaterThan(0);
  });

  it("is not guessed at: without distances between marks nothing is drawn and the ties stand in the table", () => {
    const b = book(sheet);
    point(b);
    taken(b, "point-tie-1", "1", "A", "50");
    taken(b, "point-tie-2", "1", "B", "41 1/4");
    const plan = planOf(b);
    expect(plan.drawing).toBeUndefined();
    expect(plan.notes).toEqual(["Not drawn: distances between the marks are missing."]);
    expect(plan.tied.map(({ sign, name, ties, place }) => [sign, name, ties, place])).toEqual([
      ["A", "A, sill", "", "not drawn"],
      ["B", "B, post", "", "not drawn"],
      ["1", "Point 1: union", "A 50 in; B 41 1/4 in", "not drawn"],
    ]);
  });

  it("says by how much distances miss each other, as a length", () => {
    const b = book(sheet);
    for (const tag of ["A", "B"] as const) mark(b, tag);
    taken(b, "mark-tie-1", "B", "A", "40");
    point(b);
    taken(b, "point-tie-1", "1", "A", "10");
    taken(b, "point-tie-2", "1", "B", "10");
    expect(planOf(b).notes[0]).toMatch(
      /^Point 1: union: The distances from A, sill and from B, post cannot meet: they miss each other by 20 in\./,
    );
  });

  it("is not there where nothing was tied", () => {
    expect(recordOf(book(sheet).ledger()).plan).toBeUndefined();
  });

  it("speaks Spanish in metric units", () => {
    const { entries, versions } = site().ledger();
    const spanish = entries.map((entry) =>
      entry.kind === "job-opened" ? { ...entry, what: { ...(entry.what as object), language: "es", units: "metric" } } : entry,
    );
    const { plan } = recordOf({ entries: spanish, versions });
    expect(plan?.drawing?.scale).toMatch(/^Escala 1 : \d+\. No se conoce el norte/);
    expect(plan?.tied[3]?.place).toMatch(/^± \d+(\.\d)? mm en el peor sentido/);
  });
});
