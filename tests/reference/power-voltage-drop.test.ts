import { describe, test } from "vitest";
import { certain } from "#core/doubt/index.ts";
import {
  type BranchRun,
  COPPER_K,
  conductors,
  NOTED_SHARES,
  publishedCovers,
  type Stranding,
  voltageDrop,
  voltageDropByArea,
  type WireSize,
} from "#core/power/index.ts";
import { feet, metres, toInches } from "#core/units/index.ts";
import { byHand, disagreement, published, same, source } from "./checked.ts";

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

const table8 = source("US NEC chapter 9 table 8", "uncoated copper at 75 °C, ohms per 1000 ft", "quoted");

describe("US NEC chapter 9 table 8, uncoated copper at 75 °C", () => {
  test.each<readonly [WireSize, Stranding, number]>([
    ["16", "stranded", 4.99],
    ["14", "solid", 3.07],
    ["12", "solid", 1.93],
    ["12", "stranded", 1.98],
    ["10", "solid", 1.21],
    ["8", "solid", 0.764],
  ])("%s AWG %s: %f ohms per 1000 ft", (wire, stranding, ohms) => {
    same(table8, "ohms per 1000 ft", conductors[wire].resistance[stranding], ohms);
  });
  test.each<readonly [WireSize, number]>([
    ["14", 3.14],
    ["10", 1.24],
    ["8", 0.778],
  ])("%s AWG stranded: %f, from memory", (wire, ohms) => {
    same(
      source("US NEC chapter 9 table 8", "stranded wire", "from memory"),
      "ohms per 1000 ft",
      conductors[wire].resistance.stranded,
      ohms,
    );
  });
  test("areas in circular mils, and K 12.9", () => {
    const course = source("A licence course on voltage drop", "circular mils and K of copper", "seen");
    const areas = (["14", "12", "10", "8"] as const).map((wire) => conductors[wire].area);
    same(course, "circular mils of 14, 12, 10, 8 AWG", areas, [4110, 6530, 10_380, 16_510]);
    same(course, "K of copper", COPPER_K, 12.9);
    same(course, "noted shares, branch and in all: notes, not rules", NOTED_SHARES, { branch: 0.03, total: 0.05 });
  });
  test("resistance times area tells stranded from solid where a page prints one for the other", () => {
    const k = byHand("resistance × circular mils");
    for (const { area, resistance } of Object.values(conductors)) {
      if (resistance.stranded !== undefined) published(k, "stranded", (resistance.stranded * area) / 1000, 12.9, { absolute: 0.06 });
      if (resistance.solid !== undefined) published(k, "solid", (resistance.solid * area) / 1000, 12.6, { absolute: 0.06 });
    }
    disagreement(
      "ohms per 1000 ft of 12 AWG stranded copper at 75 °C",
      [
        [table8, 1.98],
        [source("A voltage-drop page", "solid values printed as stranded", "seen"), 1.93],
      ],
      "1.98; the product with the area tells them apart",
    );
  });
});

describe("worked examples", () => {
  test("20 A, 100 ft, 120 V by K 12.9: 12 AWG 7.9 V, 6.6 %; 8 AWG 3.1 V, 2.6 %", () => {
    const course = source("A licence course on voltage drop", "20 A, 100 ft, 120 V", "seen");
    const [twelve, eight] = [dropped(voltageDropByArea(run(20, 100, "12"))), dropped(voltageDropByArea(run(20, 100, "8")))];
    published(course, "V and % of 12 AWG", [twelve[0], twelve[1]], [7.9, 6.6], { digits: 1 });
    published(course, "V and % of 8 AWG", [eight[0], eight[1]], [3.1, 2.6], { digits: 1 });
    published(
      byHand("2 K I L / CM, K 12.9"),
      "V and % of 12 and 8 AWG",
      [...twelve.slice(0, 2), ...eight.slice(0, 2)],
      [7.902, 6.585, 3.125, 2.604],
      {
        digits: 3,
      },
    );
  });
  test("the same with K 12: 7.35 V, 6.125 %", () => {
    const [volts, percent] = dropped(voltageDropByArea(run(20, 100, "12"), 12));
    const page = source("A question-and-answer page", "20 A, 100 ft, 12 AWG with K 12", "seen");
    published(page, "V and %", [volts, percent], [7.35, 6.125], { digits: 2 });
  });
  test("22 A, 50 ft, 1.98 ohms: 4.36 V, 3.63 % of 120 V", () => {
    const [volts, percent] = dropped(voltageDrop(run(22, 50, "12")));
    const page = source("A secondary page on voltage drop", "22 A, 50 ft, 1.98 ohms", "seen");
    published(page, "V and %", [volts, percent], [4.36, 3.63], { digits: 2 });
  });
  test("4 A, 100 ft of 16 AWG, 4.99 ohms: 4.0 V, 16.7 % of 24 V", () => {
    const [volts, percent] = dropped(voltageDrop(run(4, 100, "16", 24)));
    const course = source("An electricians' course", "4 A, 100 ft of 16 AWG on 24 V, volts rounded before the share", "seen");
    published(course, "V", volts, 4, { digits: 1 });
    published(course, "%", percent, 16.7, { absolute: 0.1 });
  });
  test("8 A pump, 100 ft: 14 AWG 5.024 V, 4.187 %, 3 % at 71.7 ft; 12 AWG 3.168 V, 2.64 %, 113.6 ft", () => {
    const two = byHand("2 L R I / 1000, stranded");
    published(two, "14 AWG: V, %, ft at 3 %", dropped(voltageDrop(run(8, 100, "14"))), [5.024, 4.187, 71.66], { digits: 2 });
    published(two, "12 AWG: V, %, ft at 3 %", dropped(voltageDrop(run(8, 100, "12"))), [3.168, 2.64, 113.64], { digits: 2 });
  });
  test("a page that takes copper at 20 °C gives 6.4 V where table 8, at 75 °C, gives 7.9 V", () => {
    const cold = source("A page with copper's resistivity at 20 °C, 0.017241", "20 A, 100 ft, 12 AWG", "seen");
    published(cold, "V, over ours as 20 over 75 °C", 6.4 / dropped(voltageDrop(run(20, 100, "12")))[0], 0.81, { digits: 2 });
    disagreement(
      "volts lost by 20 A over 100 ft of 12 AWG",
      [
        [source("A licence course on voltage drop", "20 A, 100 ft, 120 V", "seen"), 7.9],
        [cold, 6.4],
      ],
      "75 °C, as the code's table; a cooler wire drops less",
    );
  });
});

describe("US NEC table 300.5, all other locations", () => {
  test.each([
    ["direct-burial-cable", 24],
    ["rigid-metal-conduit", 6],
    ["plastic-conduit", 18],
    ["branch-120-volt-20-ampere-ground-fault", 12],
    ["low-voltage-lighting", 6],
  ] as const)("%s: %i in", (wiring, depth) => {
    const found = publishedCovers.find((one) => one.wiring === wiring);
    const table = source("US NEC table 300.5", "least cover, all other locations", "quoted");
    published(table, "in", toInches(metres(found?.cover ?? Number.NaN)), depth, { digits: 9 });
  });

  test("pages contradict each other", () => {
    disagreement(
      "least cover of 120 V direct-burial cable of 30 A, in",
      [
        [source("US NEC table 300.5", "least cover, all other locations", "quoted"), 24],
        [source("A question-and-answer page", "UF cable, 120 V, 30 A", "seen"), 18],
      ],
      "24, printed beside the sheet's own figure with 'ask the electrician'; never compared",
    );
  });
});
