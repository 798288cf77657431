import { describe, expect, test } from "vitest";
import { type Design, designCheck, expectations, type KitCard } from "#core/job/index.ts";
import { kitCards } from "#infra/demo/company.ts";
import { courtyard } from "#infra/demo/courtyard.ts";
import { GPM, INCH } from "./planned.ts";

const design = { figures: courtyard.figures, switches: courtyard.switches } as unknown as Design;
const typed = (number: string, unit: string) => ({ typed: number, unit });

/** The demo's job, with the pump's curve and what else the flow needs, whatever its own kit cards say by now. */
function demo(pumpCurve: string, more: Readonly<Record<string, { typed: string; unit: string }>> = {}) {
  const cards = (kitCards as unknown as readonly KitCard[]).map((card) => ({
    ...card,
    facts: { ...card.facts, ...("pumpPower" in card.facts ? { pumpCurve } : {}) },
  }));
  return { design: { ...design, figures: { ...design.figures, flowPerInch: typed("80", "gph/in"), ...more } }, kitCards: cards };
}

const weak = "0 gpm 11 ft; 10 gpm 9.6 ft; 20 gpm 7.4 ft; 30 gpm 4 ft; 37 gpm 0 ft";
const strong = "0 gpm 16 ft; 20 gpm 13 ft; 40 gpm 8 ft; 60 gpm 0 ft";
const switches = { roundBasin: true, checkValve: true };

describe("the demo's job", () => {
  const of = (from: ReturnType<typeof demo>) => new Map(expectations(from, switches).map((one) => [one.id, one]));

  test("its round tank: 52 in across, 28 in deep, 46 lb", () => {
    const found = of(demo(weak));
    expect((found.get("basinGross")?.value ?? 0) / GPM).toBeCloseTo(((Math.PI / 4) * 52 * 52 * 28) / 231, 1);
    expect((found.get("floatsOn")?.value ?? 0) / INCH).toBeCloseTo((12 * 46) / (62.3 * (Math.PI / 4) * (52 / 12) ** 2), 2);
    expect(found.get("waterBelowIntake")?.value).toBeDefined();
  });

  test("changing the pump's curve on the kit card changes the expected flow and its line", () => {
    const [before, after] = [of(demo(weak)).get("flow"), of(demo(strong)).get("flow")];
    expect((before?.value ?? 0) / GPM).toBeLessThan(29.3);
    expect((after?.value ?? 0) / GPM).toBeGreaterThan(35);
    const line = (curve: string) => designCheck(demo(curve), switches)[0];
    expect(line(weak)?.state).not.toBe("enough");
    expect(line(strong)?.state).toBe("enough");
    expect(line(weak)?.advice.length).toBeGreaterThan(0);
  });

  test("its lid: unknown on the kit card, so the maker is asked", () => {
    expect(of(demo(weak, { stoneDepth: typed("4", "in") })).get("lidLoadLeft")).toMatchObject({ answer: "ask the maker" });
  });
});
