import { describe, expect, test } from "vitest";
import { sheetFaults, standingOf, type ToleranceSheet } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { makeSayer } from "#core/record/say.ts";
import { bench, book, lengthItem } from "../../helpers/job.ts";

const words = (en: string) => ({ en });
const figure = (typed: string, unit: string) => ({ typed, unit });
const pound = 453.59237;
const sheet: ToleranceSheet = bench({
  items: [
    ...["stone-deep", "rock-long", "rock-wide", "rock-high"].map((id) => lengthItem(id, { weight: "if you have it" })),
    lengthItem("wire-long", { weight: "if you have it" }),
    lengthItem("socket-deep", { weight: "if you have it" }),
  ],
  checks: [
    {
      id: "stone-load",
      step: "step-one",
      title: words("Stone on the lid"),
      function: "stone on the lid",
      items: ["stone-deep", "rock-long", "rock-wide", "rock-high"],
      kind: "mass",
      weight: "asked",
      upper: { function: "design figure", figure: "lidLoad" },
    },
    {
      id: "wire-drop",
      step: "step-one",
      title: words("Voltage drop"),
      function: "voltage drop",
      items: ["wire-long"],
      kind: "ratio",
      weight: "asked",
      upper: 30_000,
      asks: "electrician",
    },
    {
      id: "socket-plausible",
      step: "step-one",
      title: words("Socket"),
      function: "single value",
      items: ["socket-deep"],
      kind: "length",
      weight: "asked",
      lower: { function: "standard socket depth" },
    },
  ],
  figures: [...bench().figures, { id: "lidLoad", title: words("Lid's load"), kind: "mass", unit: "lb", from: "kit card" }],
});
const basin = { basinLength: figure("48", "in"), basinWidth: figure("36", "in") };
const job = (figures: object) => {
  const b = book(sheet);
  b.enter("design-set", { figures: { ...basin, ...figures } as Json });
  return b;
};
const sayer = makeSayer({ language: "en", units: "inch", zone: "UTC", sheet });

describe("stone on the lid", () => {
  test("has no fault", () => expect(sheetFaults(sheet as unknown as Json)).toEqual([]));

  // 4 x 3 ft = 12 ft², 4 in deep: 4 ft³ x 100 lb/ft³ = 400 lb
  test("no load stated: ask the maker, with what it weighs, and no verdict", () => {
    const b = job({ lidLoad: "unknown" });
    b.read("stone-deep", "4 0/16");
    const finding = b.finding("stone-load");
    // U: 15 % of loose stone and 1/16 in of placing, 1/32 in of the mark, over √3: 2 x 400 x 0.15 / √3 = 69 lb, and little more
    expect(finding).toMatchObject({ verdict: "not taken", unknown: ["lidLoad"], says: { key: "load.ask-the-maker" } });
    expect(Number(finding.says.figures.weightMass) / pound).toBeCloseTo(400, -1);
    expect(sayer.finding(finding)).toMatch(/Stone on the lid: about 400 lb ± 70\.\d lb of stone; .*Ask its maker; no load is assumed/);
  });

  test("against a stated load: within, outside, and the boulder besides", () => {
    const loaded = (load: string, boulder = false) => {
      const b = job({ lidLoad: figure(load, "lb") });
      b.read("stone-deep", "4 0/16");
      if (boulder) for (const id of ["rock-long", "rock-wide", "rock-high"]) b.read(id, "18 0/16");
      return b.finding("stone-load");
    };
    expect(loaded("600").verdict).toBe("within");
    expect(loaded("200").verdict).toBe("outside");
    // 1.5³ ft³ x 165 x 0.6 = 334 lb more, known to 25 %: U = 2 x sqrt((400 x 0.15)² + (334 x 0.25)²) / √3 = 119 lb
    expect((loaded("600", true).value ?? 0) / pound).toBeCloseTo(734, -1);
    expect(loaded("600", true).verdict).toBe("outside");
    expect(loaded("700", true).verdict).toBe("too close to call");
    expect(loaded("900", true).verdict).toBe("within");
  });

  test("the design's depth stands until it is measured; with neither it is asked", () => {
    expect((job({ stoneDepth: figure("6", "in"), lidLoad: figure("2000", "lb") }).finding("stone-load").value ?? 0) / pound).toBeCloseTo(
      600,
      -1,
    );
    expect(job({}).finding("stone-load")).toMatchObject({ verdict: "not taken", missing: [{ item: "stone-deep" }] });
  });
});

describe("voltage drop", () => {
  const figures = { voltage: figure("120", "V"), wireSize: figure("14", "1"), pumpCurrent: figure("8", "A") };

  // 2 x 3.14 ohm/kft x 8 A x 0.1 kft = 5.02 V of 120 V: 4.19 %
  test("100 ft of 14 gauge with 8 A loses 4.2 % of 120 V: printed beside 3 %, with no word of verdict, and the electrician is asked", () => {
    const b = job(figures);
    b.read("wire-long", "100 ft", { unit: "ft" });
    const finding = b.finding("wire-drop");
    expect((finding.value ?? 0) / 10_000).toBeCloseTo(4.19, 1);
    expect(finding.asks).toBe("electrician");
    expect(sayer.verdictWord(finding)).not.toMatch(/within|outside/);
    expect(sayer.finding(finding)).toMatch(/measured 4\.\d+ % ± .*; the tolerance sheet's figure is at most 3 %.*Ask the electrician/);
  });

  test("short enough to lie below the figure it still has no word of verdict, and holds nothing", () => {
    const b = job(figures);
    b.read("wire-long", "20 ft", { unit: "ft" });
    const finding = b.finding("wire-drop");
    expect(sayer.verdictWord(finding)).not.toMatch(/within|outside/);
    expect([finding.holds, standingOf(finding, 0)]).toEqual([undefined, "clears"]);
  });

  test("what it waits for: the run, the wire, the current", () => {
    expect(job(figures).finding("wire-drop").missing).toEqual([{ item: "wire-long" }]);
    const b = job({});
    b.read("wire-long", "100 ft", { unit: "ft" });
    expect(b.finding("wire-drop").unknown).toEqual(expect.arrayContaining(["voltage", "wireSize"]));
  });
});

describe("a socket's depth beside the standard's", () => {
  // ASTM D2466: 2 in Schedule 40 at least 1.156 in
  test.each([
    ["1 6/16", "within"],
    ["1 1/16", "outside"],
    ["1 3/16", "too close to call"],
  ] as const)("%s of a 2 in socket: %s", (typed, verdict) => {
    const b = job({ pipeSize: figure("2", "in") });
    b.read("socket-deep", typed);
    expect(b.finding("socket-plausible")).toMatchObject({ verdict, lower: 29_362 });
  });

  test("the pipe's size not known: named", () => {
    const b = job({});
    b.read("socket-deep", "1 6/16");
    expect(b.finding("socket-plausible")).toMatchObject({ verdict: "not taken", unknown: ["pipeSize"] });
  });
});
