import fc from "fast-check";
import { expect, it } from "vitest";
import { designCheck, designFigures, expectations, type FigureSource, pumpPoints, switchesBySheetId } from "#core/job/index.ts";
import { canonical, type Json } from "#core/ledger/index.ts";
import { kitCard, plannedDesign, read } from "#core/wire/index.ts";
import { damagedText, damagedValue } from "../../helpers/damage.ts";
import { valuesOf } from "../../helpers/from-schema.ts";
import { expectRefusal, fuzz, patience, RUNS } from "../../helpers/fuzz.ts";

/** The parts of a made-up job, each as its own paper says it. */
const cards = [
  {
    id: "pump-a",
    part: "Pump, 4,500 gph",
    source: "its own paper",
    facts: {
      pumpCurve: "0 gpm 16 ft; 20 gpm 13 ft; 45 gpm 5.84 ft; 58 gpm 0 ft",
      pumpPower: { typed: "300", unit: "W" },
      pumpCurrent: { typed: "3.2 A", unit: "A" },
      cordLength: { typed: "20", unit: "ft" },
      intakeHeight: { typed: "3 in", unit: "in" },
      turns: "clockwise loosens",
    },
  },
  {
    id: "basin-a",
    part: "Basin, square",
    notes: "read on the lid",
    facts: {
      basinDepth: { typed: "24", unit: "in" },
      basinLength: { typed: "60", unit: "in" },
      basinWidth: { typed: "4 ft", unit: "in" },
      basinWeight: { typed: "75", unit: "lb" },
      voidShare: "unknown",
    },
  },
];
const figures = Object.keys(designFigures);
const typedTexts = [
  "24",
  "60 in",
  "4 ft",
  "1.5 m",
  "0",
  "-3",
  "1e999",
  "20 gpm",
  "2 h",
  "300 W",
  "50 %",
  "unknown",
  "",
  "3/0",
  "99999999",
  "1/64",
];
const units = ["in", "ft", "gpm", "W", "lb", "%", "°F", "min", "V", "A", "mm", "gal", "", "x"];

/** What the office and the phone make of it: every figure an integer or named as missing, every line with its state. */
function workedOut(source: FigureSource, switches: Readonly<Record<string, boolean>>): void {
  const by = switchesBySheetId(switches);
  const worked = { expectations: expectations(source, by), lines: designCheck(source, by) };
  for (const { value, doubt, refusal } of worked.expectations) {
    if (value !== undefined) expect([Number.isSafeInteger(value), Number.isSafeInteger(doubt ?? 0)]).toEqual([true, true]);
    if (refusal) expectRefusal(refusal);
  }
  for (const { refusal } of worked.lines) if (refusal) expectRefusal(refusal);
  expect(canonical(worked as unknown as Json).ok).toBe(true);
}

it(
  "kit cards with damaged fields, read and worked with",
  async () => {
    await fuzz({
      kind: "kit cards",
      inputs: fc.tuple(damagedValue(cards, 2), damagedValue(cards, 1)),
      read([one, other]) {
        const card = read(kitCard, one, "request-shape");
        if (!card.ok) return card.refusal;
        const second = read(kitCard, other, "request-shape");
        const kitCards = [card.value, ...(second.ok ? [second.value] : [])] as FigureSource["kitCards"];
        workedOut({ design: { figures: {}, switches: {} }, kitCards }, {});
        return "taken";
      },
      least: { taken: 0.2, refused: 0.1 },
    });
  },
  patience(10),
);

it(
  "designs made by chance from their own shape",
  async () => {
    const typed = fc.record({ typed: fc.constantFrom(...typedTexts), unit: fc.constantFrom(...units) });
    const figure = fc.dictionary(
      fc.constantFrom(...figures),
      fc.oneof({ weight: 9, arbitrary: typed }, { weight: 1, arbitrary: fc.constant("unknown") }),
      {
        maxKeys: 40,
      },
    );
    const made = fc.tuple(valuesOf(plannedDesign, { texts: [...figures, ...typedTexts, ...units] }), figure, fc.boolean());
    await fuzz({
      kind: "designs",
      inputs: made.map(([design, more, whole]) => (whole ? { ...(design as object), figures: more } : design)),
      read(design) {
        const planned = read(plannedDesign, design, "request-shape");
        if (!planned.ok) return planned.refusal;
        const { figures: own, switches = {}, kitCards = [] } = planned.value;
        const source = { design: { figures: own, switches }, kitCards: kitCards.map((card, i) => ({ id: String(i), ...card })) };
        workedOut(source as FigureSource, switches);
        return "taken";
      },
      least: { taken: 0.5, refused: 0 },
      runs: Math.ceil(RUNS / 4),
    });
  },
  patience(10),
);

it(
  "the points of a pump's curve",
  async () => {
    await fuzz({
      kind: "pump curves",
      inputs: damagedText(
        ["0 gpm 24 ft; 20 gpm 21 ft; 77 gpm 0 ft", "0 L/min 7.3 m\n100 L/min at 5 m", "24 ft a 0 gpm; 21 ft, 20 gpm"],
        ["gpm", "ft", ";", " at ", "1", "@"],
        6,
      ),
      read(text) {
        const points = pumpPoints(text);
        if (!points.ok) return points.refusal;
        for (const { flow, head } of points.value) expect([Number.isFinite(flow), Number.isFinite(head)]).toEqual([true, true]);
        return "taken";
      },
      least: { taken: 0.1, refused: 0.2 },
    });
  },
  patience(5),
);
