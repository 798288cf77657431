import { describe, expect, test } from "vitest";
import { limitStanding, readSheet, sheetFaults, type ToleranceSheet, usualUncertainty } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { defaultSheet, oldPondSheet, oldPondSheetJson } from "#infra/sheets/index.ts";
import { book } from "../../helpers/job.ts";

const sheet = oldPondSheet();
const inch = 25_400;

/** Every wording of the sheet, by its place. */
const worded = (value: unknown, at = ""): readonly { readonly at: string; readonly en: string; readonly es?: unknown }[] => {
  if (Array.isArray(value)) return value.flatMap((one, i) => worded(one, `${at}/${i}`));
  if (typeof value !== "object" || value === null) return [];
  const fields = value as Record<string, unknown>;
  if (typeof fields.en === "string") return [{ at, en: fields.en, es: fields.es }];
  return Object.entries(fields).flatMap(([key, one]) => worded(one, `${at}/${key}`));
};

const changed = (id: string, more: object): ToleranceSheet => ({
  ...sheet,
  checks: sheet.checks.map((check) => (check.id === id ? { ...check, ...more } : check)),
});

describe("the sheet of an old pond taken over", () => {
  test("is without a fault, and every limit that can hold can be decided", () => {
    expect(sheetFaults(oldPondSheetJson)).toEqual([]);
    expect(readSheet(oldPondSheetJson).ok).toBe(true);
    const held = sheet.checks.filter(({ weight, function: name }) => weight === "holds" && name === "single value");
    expect(held.map(({ id }) => id)).toEqual(
      expect.arrayContaining(["fill-layer-thickness", "fill-firm", "straight-edge-along", "cover-depth"]),
    );
    for (const { id } of held.filter(({ aim }) => typeof aim === "number")) {
      const standing = limitStanding(sheet, id);
      expect([id, standing.is]).toEqual([id, "decided"]);
      if (standing.is === "decided") expect(standing.room).toBeGreaterThanOrEqual(standing.needed);
    }
  });

  // tape to 1/16 in on rough fill (1/2 in): u² = (1.588/(2√3))² + (12.7/√3)² and the tape's own share, 7.35 mm; 3.65 u = 26.8 mm,
  // and from an aim of 1/2 in to a limit of 2 in lie 38.1 mm, to one of 1 1/2 in 25.4 mm
  test("that test bites: with a limit of 1 1/2 in the rod pushed into the fill could not be told", () => {
    const check = sheet.checks.find(({ id }) => id === "fill-firm");
    if (check === undefined) throw new Error("no check fill-firm");
    expect(usualUncertainty(sheet, check) ?? 0).toBeCloseTo(Math.hypot(1588 / Math.sqrt(12), 12_700 / Math.sqrt(3)), -2);
    expect(sheetFaults(changed("fill-firm", { upper: 1.5 * inch }) as unknown as Json).map(({ code, place }) => [code, place])).toEqual([
      ["sheet-limit-undecidable", "sheet/checks/fill-firm"],
    ]);
  });

  test("every word stands in both languages, every caution says who decides, every figure whence it comes", () => {
    expect(worded(sheet).filter(({ es }) => typeof es !== "string" || es === "")).toEqual([]);
    const silent = sheet.cautions.filter(
      ({ text }) =>
        !/Local code and a licensed person decide/.test(text.en) ||
        !/Deciden el código local y una persona con licencia/.test(text.es ?? ""),
    );
    expect(silent).toEqual([]);
    expect(sheet.checks.filter(({ source }) => source === undefined)).toEqual([]);
  });

  test("has a step of its own for what was found, old wiring, fish, what is kept and the old hole, and names nothing that the first sheet lacks but these", () => {
    const first = new Set(defaultSheet().steps.map(({ id }) => id));
    expect(sheet.steps.filter(({ id }) => !first.has(id)).map(({ id }) => id)).toEqual([
      "pond-as-found",
      "old-wiring",
      "fish-held-elsewhere",
      "what-is-kept",
      "the-old-hole",
    ]);
  });

  test("the old hole is filled on a clear only when wiring, fish and bottom are told; built over only layer by layer", () => {
    const b = book(sheet);
    const state = (covering: string) => b.clearance(covering).state;
    b.picture("old-hole-emptied");
    for (const [item, choice] of [
      ["old-liner-out", "liner-out"],
      ["mud-and-roots-out", "all-done"],
      ["old-pipes-ended", "pipes-capped"],
      ["old-wires-ends", "ends-by-electrician"],
      ["wiring-known", "feed-unknown"],
    ] as const)
      b.answer(item, choice);
    expect(b.clearance("fill-old-hole").lines.map(({ about, verdict }) => [about.item, verdict])).toEqual([
      ["wiring-known", "outside"],
      ["fish-held", "not taken"],
    ]);
    b.answer("wiring-known", "feed-made-dead");
    b.answer("fish-held", "held-on-site");
    expect(state("fill-old-hole")).toBe("clear");
    b.covered("fill-old-hole");
    // no layer named: never an empty yes
    expect(state("build-over-fill")).toBe("not yet");
    b.tag("fill-layer", "1", "build-over-fill");
    const layer = (item: string) => ({ item, tag: "1" });
    b.picture(layer("fill-layer-seen"));
    b.answer(layer("fill-layer-compacted"), "all-done");
    b.read(layer("fill-layer-thick"), "4 8/16");
    b.read(layer("fill-probe"), "2 8/16");
    // 2 1/2 in, limit 2 in, U = 2 × 7.35 mm = 0.58 in: its band holds the limit
    expect(b.finding("fill-firm", "1").verdict).toBe("too close to call");
    expect(b.finding("fill-layer-thickness", "1").verdict).toBe("within");
    expect(state("build-over-fill")).toBe("not yet");
    b.enter("reworked", { about: { check: "fill-firm", tag: "1" }, done: "compacted again, wetted", minutes: 20 });
    b.read(layer("fill-probe"), "0 8/16");
    expect(state("build-over-fill")).toBe("clear");
  });
});
