import { describe, expect, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import {
  type BranchRun,
  COPPER_K,
  conductors,
  publishedCovers,
  type Stranding,
  voltageDrop,
  voltageDropByArea,
  type WireSize,
} from "#core/power/index.ts";
import { feet, metres, toInches } from "#core/units/index.ts";

const run = (amperes: number, length: number, wire: WireSize, volts = 120): BranchRun => ({
  current: certain(amperes),
  oneWay: certain(feet(length)),
  nominal: certain(volts),
  wire,
});
function dropped(found: ReturnType<typeof voltageDrop>): readonly [number, number, number] {
  if (!found.ok) throw new Error(found.refusal.code);
  const { drop, share, runAtNotedShare } = found.value;
  return [drop.value, share.value * 100, toInches(metres(runAtNotedShare.value)) / 12];
}

describe("US NEC chapter 9 table 8, uncoated copper at 75 °C", () => {
  test.each<readonly [WireSize, Stranding, number]>([
    ["16", "stranded", 4.99],
    ["14", "solid", 3.07],
    ["12", "solid", 1.93],
    ["12", "stranded", 1.98],
    ["10", "solid", 1.21],
    ["8", "solid", 0.764],
  ])("%s AWG %s: %f ohms per 1000 ft (SEEN, quoted)", (wire, stranding, ohms) => {
    expect(conductors[wire].resistance[stranding]).toBe(ohms);
  });
  test.each<readonly [WireSize, number]>([
    ["14", 3.14],
    ["10", 1.24],
    ["8", 0.778],
  ])("%s AWG stranded: %f (from memory)", (wire, ohms) => {
    expect(conductors[wire].resistance.stranded).toBe(ohms);
  });
  test("resistance times area tells stranded from solid where a page prints one for the other: 12.9 and 12.6", () => {
    for (const { area, resistance } of Object.values(conductors)) {
      if (resistance.stranded !== undefined) expect(Math.abs((resistance.stranded * area) / 1000 - COPPER_K)).toBeLessThan(0.06);
      if (resistance.solid !== undefined) expect(Math.abs((resistance.solid * area) / 1000 - 12.6)).toBeLessThan(0.06);
    }
  });
});

describe("worked examples", () => {
  test("20 A, 100 ft, 120 V by K 12.9: 12 AWG 7.9 V, 6.6 %; 8 AWG 3.1 V, 2.6 % (SEEN in a licence course)", () => {
    const [twelve, eight] = [dropped(voltageDropByArea(run(20, 100, "12"))), dropped(voltageDropByArea(run(20, 100, "8")))];
    expect([twelve[0], twelve[1]]).toEqual([expect.closeTo(7.9, 1), expect.closeTo(6.6, 1)]);
    expect([eight[0], eight[1]]).toEqual([expect.closeTo(3.1, 1), expect.closeTo(2.6, 1)]);
  });
  test("the same with K 12: 7.35 V, 6.125 % (SEEN in a question-and-answer page)", () => {
    const [volts, percent] = dropped(voltageDropByArea(run(20, 100, "12"), 12));
    expect([volts, percent]).toEqual([expect.closeTo(7.35, 2), expect.closeTo(6.125, 2)]);
  });
  test("22 A, 50 ft, 1.98 ohms: 4.36 V, 3.63 % of 120 V (SEEN on a secondary page)", () => {
    const [volts, percent] = dropped(voltageDrop(run(22, 50, "12")));
    expect([volts, percent]).toEqual([expect.closeTo(4.36, 2), expect.closeTo(3.63, 2)]);
  });
  test("4 A, 100 ft of 16 AWG, 4.99 ohms: 4.0 V, 16.7 % of 24 V (SEEN in an electricians' course)", () => {
    const [volts, percent] = dropped(voltageDrop(run(4, 100, "16", 24)));
    expect([volts, percent]).toEqual([expect.closeTo(4, 1), expect.closeTo(16.6, 1)]);
  });
  test("8 A pump, 100 ft: 14 AWG 5.024 V, 4.187 %, 3 % at 71.7 ft; 12 AWG 3.168 V, 2.64 %, 113.6 ft (worked out)", () => {
    expect(dropped(voltageDrop(run(8, 100, "14")))).toEqual([5.024, 4.187, 71.66].map((n) => expect.closeTo(n, 2)));
    expect(dropped(voltageDrop(run(8, 100, "12")))).toEqual([3.168, 2.64, 113.64].map((n) => expect.closeTo(n, 2)));
  });
  test("a page that takes copper at 20 °C gives 6.4 V where table 8, at 75 °C, gives 7.9 V (both SEEN): 0.81 of it", () => {
    expect(6.4 / dropped(voltageDrop(run(20, 100, "12")))[0]).toBeCloseTo(0.81, 2);
  });
});

describe("US NEC table 300.5, all other locations, least cover in inches (SEEN, quoted)", () => {
  test.each([
    ["direct-burial-cable", 24],
    ["rigid-metal-conduit", 6],
    ["plastic-conduit", 18],
    ["branch-120-volt-20-ampere-ground-fault", 12],
    ["low-voltage-lighting", 6],
  ] as const)("%s: %i", (wiring, depth) => {
    const found = publishedCovers.find((one) => one.wiring === wiring);
    expect(toInches(metres(found?.cover ?? Number.NaN))).toBeCloseTo(depth, 10);
  });
});
