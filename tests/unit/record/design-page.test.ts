import { describe, expect, it } from "vitest";
import { designQuestions } from "#core/job/index.ts";
import type { DesignPageModel, DrawnShape } from "#core/record/index.ts";
import { designPageEn } from "#core/record/words/design-page-en.ts";
import { designCheckPage } from "#templates/design-check/index.ts";
import { companySettings, demoJob, designPage, type PlannedJob, wholeJob } from "../../helpers/design-page.ts";

const typed = (text: string, unit: string) => ({ typed: text, unit });
const changed = (job: PlannedJob, figures: PlannedJob["figures"]): PlannedJob => ({ ...job, figures: { ...job.figures, ...figures } });
const question = (model: DesignPageModel, number: number) => {
  const found = model.questions.find((one) => one.number === number);
  if (found === undefined) throw new Error(`no question ${number}`);
  return found;
};
const wordsOf = (shapes: readonly DrawnShape[] = []) => shapes.flatMap((one) => (one.shape === "words" ? [one.text] : []));

describe("the model of the design check's page", () => {
  const model = designPage(wholeJob);

  it("answers every question, and says which come to what", () => {
    expect(model.questions.map(({ number }) => number)).toEqual(designQuestions.map((_, i) => i + 1));
    expect(model.questions.map(({ missing }) => missing)).toEqual(designQuestions.map(() => ""));
    expect(model.standing).toBe("To change: 2. Too close to call: 1, 3, 5, 6. To ask: 4.");
  });

  it("gives each figure with its doubt and no more than three sources, the largest first, by their shares of the variance", () => {
    const figures = model.questions.flatMap((one) => one.figures);
    expect(figures.length).toBeGreaterThan(9);
    for (const { value, most } of figures) {
      expect(value).toMatch(/ ± /);
      const shares = [...most.matchAll(/ (\d+) %/g)].map(([, share]) => Number(share));
      expect(shares.length).toBeGreaterThan(0);
      expect(shares.length).toBeLessThanOrEqual(3);
      expect([...shares].sort((a, b) => b - a)).toEqual(shares);
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThanOrEqual(101);
    }
  });

  it("prints a band that holds what was worked out: a length to marks no coarser than its doubt", () => {
    // 46 lb over a 52 in round plan: 12 × 46 / (62.3 × 14.748) = 0.601 in, of which 19/32 is the nearest mark
    expect(question(model, 5).figures[0]?.value).toBe("19/32 in ± 3/64 in");
  });

  it("tells what to change and by how much; a pipe of half the bore is advised another size", () => {
    const sizes = (pipeSize: string) =>
      question(designPage(changed(wholeJob, { pipeSize: typed(pipeSize, "in") })), 1)
        .changes.join(" ")
        .match(/\d(?:-\d\/\d)? in,? would bring/g);
    expect(sizes("1 1/2")).toEqual(["2 in would bring"]);
    expect(sizes("3/4")).toEqual(["1 in, would bring", "2 in would bring"]);
    expect(sizes("3")).toBeNull();
  });

  it("gives the same answers in inches and in metric", () => {
    const metric = designPage({ ...wholeJob, units: "metric" });
    expect(metric.standing).toBe(model.standing);
    expect(metric.questions.map(({ state, changes }) => [state, changes.length])).toEqual(
      model.questions.map(({ state, changes }) => [state, changes.length]),
    );
    expect(question(model, 1).figures[0]?.value).toBe("35 gpm ± 3.2 gpm");
    // 35.1 gpm × 3.785 = 133 L/min
    expect(question(metric, 1).figures[0]?.value).toBe("133 L/min ± 12 L/min");
    expect(question(metric, 1).figures[1]?.value).toMatch(/^\d\.\d\d m ± 0\.\d\d m$/);
  });

  it("names what is missing, and the rest still computes", () => {
    const demo = designPage(demoJob);
    expect(demo.standing).toBe("To change: 5. Not known yet: 4, 6. Enough: 1, 2, 3.");
    expect(question(demo, 4)).toMatchObject({ says: "", missing: "Missing: Cord's way from outlet to pump.", figures: [] });
    expect(question(demo, 6).missing).toBe("Missing: Stone on the basin: depth.");
    const bare = designPage();
    expect(bare.drawing).toBeUndefined();
    expect(bare.notes.join(" ")).toContain("Pump: points of its curve");
    for (const { missing } of bare.questions) expect(missing).not.toBe("");
  });

  it("says where each number came from", () => {
    expect(model.numbers.map(({ from, source }) => [from, source])).toEqual([
      ["Design of this job", ""],
      ["Kit card: Round tank 52", "invented for the demo"],
      ["Kit card: Pump 140 W", "invented for the demo"],
      ["Kit card: Flexible pipe 2 in", "invented for the demo"],
    ]);
    expect(model.numbers[0]?.numbers).toContainEqual({ label: "Pipe run", text: "40 ft" });
    expect(model.numbers[0]?.numbers).toContainEqual({ label: "Check valve", text: "yes" });
    expect(model.numbers[1]?.numbers).toContainEqual({ label: "Basin: diameter", text: "52 in" });
  });

  it("draws both curves, the card's points and where they meet, in strokes that differ without colour", () => {
    const { shapes = [], says = "" } = model.drawing ?? {};
    const strokes = new Set(shapes.flatMap((one) => (one.shape === "words" ? [] : [one.stroke])));
    for (const stroke of ["ground", "buried", "advised", "wish", "grid"]) expect(strokes).toContain(stroke);
    // four points of the card, one in the legend, the working point and its sample
    expect(shapes.filter((one) => one.shape === "ellipse")).toHaveLength(7);
    expect(wordsOf(shapes)).toContain("works at 35 gpm ± 3.2 gpm, 9 ft 2 3/4 in ± 11 1/4 in");
    expect(wordsOf(shapes)).toContain("the same in 2 in pipe");
    expect(says).toContain("works at 35 gpm");
  });

  it("keeps every stroke inside the drawing", () => {
    for (const job of [
      wholeJob,
      demoJob,
      changed(wholeJob, { staticHead: typed("30", "ft") }),
      changed(wholeJob, { pipeSize: typed("1/2", "in") }),
    ]) {
      const { drawing } = designPage(job);
      expect(drawing).toBeDefined();
      for (const one of drawing?.shapes ?? []) {
        const points = one.shape === "line" ? one.points : [{ x: one.placed[4], y: one.placed[5] }];
        for (const { x, y } of points) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(drawing?.width ?? 0);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(drawing?.height ?? 0);
        }
      }
    }
  });

  it("is a function of the job: another design later has another date, the same one the same page", () => {
    expect(designPage(wholeJob)).toEqual(model);
    expect(model.title.lines.at(-1)).toEqual({ label: "As of", text: "1 June 2026, 8:06 EDT, entry 7" });
    expect(model.title.at).toBe(Date.UTC(2026, 5, 1, 12, 6));
  });

  it("says that local code and licensed people decide, and never that anything is to code", () => {
    const texts = (language: "en" | "es") => JSON.stringify(designPage({ ...wholeJob, language }));
    expect(texts("en")).toContain("Local code and licensed people decide.");
    expect(texts("es")).toContain("Deciden el código local y las personas con licencia.");
    expect(texts("en")).not.toMatch(/\bsafe|complies|compliant/i);
    expect(texts("es")).not.toMatch(/segur[oa]|cumple/i);
    expect(question(model, 4).tone).toBe("apart");
  });
});

describe("designCheckPage", () => {
  const page = (model: DesignPageModel) => designCheckPage(model, { fonts: "", size: 1 });

  it("prints nothing that somebody typed as an element", () => {
    const hostile = "<script>document.title='x'</script></style>";
    const text = page(
      designPage(
        {
          ...wholeJob,
          title: hostile,
          address: hostile,
          kitCards: [{ id: "a", part: hostile, facts: { basinDepth: hostile }, source: hostile }],
        },
        { ...companySettings, name: hostile, lines: [hostile] },
      ),
    );
    expect(text.match(/<script/g)).toBeNull();
    expect(text.match(/<\/style>/g)).toHaveLength(2);
  });

  it("gives every question its heading, and the drawing its words for whoever cannot see it", () => {
    const text = page(designPage(wholeJob));
    expect(text.match(/<h1/g)).toHaveLength(1);
    expect(text.match(/<h2/g)).toHaveLength(8);
    expect(text).toMatch(/<svg role="img" aria-labelledby="curve-title curve-says"/);
    expect(text).toContain(designPageEn["heading.cautions"]);
  });
});
