import { describe, expect, it } from "vitest";
import type { Check, ToleranceSheet } from "#core/job/index.ts";
import type { DrawingView } from "#core/record/index.ts";
import { answerItem, type Book, bench, book, inch, lengthItem } from "../../helpers/job.ts";
import { recordOf } from "../../helpers/record.ts";

const words = (en: string) => ({ en });
const asked = { weight: "asked" } as const;
const check = (id: string, more: Partial<Check> & Pick<Check, "function" | "items">): Check => ({
  id,
  step: "step-one",
  title: words(`${id} title`),
  kind: "length",
  ...asked,
  ...more,
});
const sheet: ToleranceSheet = bench({
  switches: [{ id: "round-basin", title: words("Round"), standard: true }],
  tagSets: [{ id: "glue-session", title: words("Session"), least: 0, coverings: ["bury-it"] }],
  items: [
    lengthItem("rim-down", asked),
    lengthItem("water-rest", asked),
    lengthItem("water-runs", asked),
    lengthItem("cover-read", asked),
    lengthItem("last-joint", { ...asked, quantity: "instant", tags: "glue-session" }),
    lengthItem("how-cold", { ...asked, quantity: "temperature", tags: "glue-session" }),
    lengthItem("can-time", { ...asked, quantity: "duration" }),
    answerItem("glued-what", {
      ...asked,
      tags: "glue-session",
      choices: [{ id: "rigid-pipe", title: words("rigid"), accepts: true, means: ["rigid PVC"] }],
    }),
    answerItem("joints-dry", { ...asked, tags: "glue-session" }),
  ],
  checks: [
    check("rim-height", {
      function: "single value",
      items: ["rim-down"],
      aim: { function: "rim below finished grade" },
      upper: { function: "rim below finished grade", offset: inch },
    }),
    check("draws-down", {
      function: "single value",
      items: ["water-runs"],
      minus: ["water-rest"],
      aim: { function: "expected draw-down" },
      upper: { function: "expected draw-down", offset: inch },
    }),
    check("cover-deep", { function: "single value", items: ["cover-read"], lower: 8 * inch, shows: "depth of cover" }),
    check("cured-yet", {
      function: "time passed since",
      items: ["last-joint"],
      until: "joints-dry",
      kind: "duration",
      lower: { function: "cure time", item: "can-time", items: ["how-cold", "glued-what"] },
    }),
  ],
});

const figures = (typed: Readonly<Record<string, string>>) =>
  Object.fromEntries(
    Object.entries(typed).map(([key, text]) => {
      const [, value = "", unit = ""] = /^(\S+(?: \d+\/\d+)?) ?(\S*)$/.exec(text) ?? [];
      return [key, { typed: value, unit }];
    }),
  );
const whole = {
  basinDiameter: "52 in",
  basinDepth: "28 in",
  intakeHeight: "2 3/4 in",
  rimBelowGrade: "4 in",
  staticHead: "4 ft",
  pipeRun: "18 ft",
  pipeSize: "2 in",
  spillwayWidth: "24 in",
  flowPerInch: "100 gph/in",
  streamLength: "8 ft",
  streamWidth: "20 in",
  streamDepth: "1 1/2 in",
};
const job = (design: Readonly<Record<string, string>> = whole): Book => {
  const b = book(sheet);
  b.enter("design-set", { figures: figures(design) });
  return b;
};
const lettering = (view: DrawingView | undefined): readonly string[] =>
  (view?.shapes ?? []).flatMap((one) => (one.shape === "words" ? [one.text] : []));

describe("the design beside the as-measured", () => {
  it("has both, and by how much they differ", () => {
    const b = job();
    b.read("rim-down", "4 9/16");
    const { compared } = recordOf(b.ledger());
    expect(compared).toHaveLength(1);
    expect(compared[0]).toMatchObject({ title: "rim-height title", expected: "4 in", measured: "4 9/16 in" });
    expect(compared[0]?.difference).toMatch(/^9\/16 in more ± \d/);
  });

  it("is not there before anything was measured", () => {
    expect(recordOf(job().ledger()).compared).toEqual([]);
  });
});

describe("the water budget", () => {
  it("names for each line where most of its doubt comes from, and what it cannot work out", () => {
    const { budget } = recordOf(job().ledger());
    const line = (title: string) => budget?.lines.find((one) => one.title === title);
    // a cylinder 52 in across and 28 in deep: pi/4 52² 28 = 59,465 in³ = 257 gal of 231 in³ (own arithmetic)
    expect(line("Water in the full basin")?.value).toMatch(/^257 gal ± \d/);
    expect(line("Water in the full basin")?.most).toMatch(/^Basin: (depth|diameter)$/);
    expect(line("Water above the lip")?.beside).toBe("below the least head of every formula: an estimate");
    expect(budget?.notes.join(" ")).toContain("Time without make-up water. It waits for: ");
  });

  it("is not there without a figure to begin with", () => {
    expect(recordOf(book(sheet).ledger()).budget).toBeUndefined();
  });
});

describe("the section", () => {
  it("carries design and measured figures with where each is from, and names what is missing", () => {
    const b = job();
    b.read("rim-down", "5 1/16");
    b.read("water-rest", "3 1/2");
    const { section } = recordOf(b.ledger());
    expect(lettering(section?.drawing)).toEqual(
      expect.arrayContaining([
        "5 1/16 in (measured)",
        "28 in (design)",
        "water at rest 3 1/2 in below the rim",
        "pipe run 18 ft 0 in (design)",
      ]),
    );
    expect(section?.notes).toEqual(["Missing for this drawing: water running; least depth of cover."]);
    expect(section?.drawing.scale).toContain("are not to scale");
  });

  it("puts the lip a static head above the running water, to the scale of its heights", () => {
    const b = job();
    b.read("water-rest", "3 1/2");
    b.read("water-runs", "7 1/2");
    const drawing = recordOf(b.ledger()).section?.drawing;
    const ratio = Number(/1 : (\d+)/.exec(drawing?.scale ?? "")?.[1]);
    const upright = (drawing?.shapes ?? []).flatMap((one) => {
      const [from, to] = one.shape === "line" && one.stroke === "dimension" ? one.points : [];
      return from && to && from.x === to.x ? [Math.round((Math.abs(to.y - from.y) * ratio) / 25.4)] : [];
    });
    expect(upright.toSorted((a, b) => a - b)).toEqual([3, 4, 28, 48]);
  });

  it("draws the top of the pipe under its least depth of cover, to the scale of its heights", () => {
    const b = job();
    b.read("water-rest", "3 1/2");
    b.read("water-runs", "7 1/2");
    b.read("cover-read", "11 1/2");
    const { section } = recordOf(b.ledger());
    expect(section?.notes).toEqual([]);
    expect(lettering(section?.drawing)).toEqual(expect.arrayContaining(["least depth of cover", "11 1/2 in (measured)"]));
    const ratio = Number(/1 : (\d+)/.exec(section?.drawing.scale ?? "")?.[1]);
    const lines = (stroke: string) =>
      (section?.drawing.shapes ?? []).flatMap((one) => (one.shape === "line" && one.stroke === stroke ? [one.points] : []));
    const [grade] = lines("ground");
    const [pipe] = lines("buried");
    expect((((pipe?.[0]?.y ?? 0) - (grade?.[0]?.y ?? 0)) * ratio) / 25.4).toBeCloseTo(11.5, 1);
  });

  it("is not there without rim and depth", () => {
    const { basinDepth: _, ...rest } = whole;
    expect(recordOf(job(rest).ledger()).section).toBeUndefined();
  });
});

describe("glue sessions", () => {
  const glued = (can?: string) => {
    const b = job();
    b.enter("tag-named", { set: "glue-session", tag: "1", hiddenBy: "bury-it", description: "joints 1 to 4" });
    b.enter("reading-taken", { item: "how-cold", tag: "1", typed: "70 °F", unit: "°F" });
    b.enter("reading-taken", { item: "last-joint", tag: "1", typed: "2026-06-01T15:00Z", unit: "" });
    b.enter("answered", { item: "glued-what", tag: "1", choice: "rigid-pipe" });
    if (can !== undefined) b.enter("reading-taken", { item: "can-time", typed: can, unit: "h" });
    return recordOf(b.ledger(), { settings: {} }).glueSessions[0];
  };

  it("say until when they set and cure, and by which table", () => {
    const session = glued();
    expect(session).toMatchObject({ session: "Session 1: joints 1 to 4", pipe: "2 in, rigid", coldest: "70 °F", dryAt: "not entered" });
    expect(session?.by).toBe("a pipe maker's manual (table A), half as much again for damp air");
    expect(session?.setUntil).toMatch(/2026/);
    expect(session?.cureUntil).toMatch(/2026/);
  });

  it("go by the can where its time was typed", () => {
    expect(glued("6")).toMatchObject({ by: "the can's own time", setUntil: "the can gives one time only" });
  });
});

it("a count of the design prints without a unit", () => {
  const b = book(sheet);
  b.enter("design-set", { figures: { elbows90: { typed: "2", unit: "1" } } });
  expect(recordOf(b.ledger()).design[0]?.text).toBe("2");
});

describe("start-up", () => {
  it("has its readings, its value and its sentence; what nobody began is left out", () => {
    const b = job();
    expect(recordOf(b.ledger()).tried).toEqual([]);
    b.read("water-rest", "3 1/2");
    b.read("water-runs", "7 1/2");
    const [drawn] = recordOf(b.ledger()).tried;
    expect(drawn?.readings).toBe("water-rest: 3 1/2 in; water-runs: 7 1/2 in");
    expect(drawn?.says).toContain("draws-down title");
  });
});
