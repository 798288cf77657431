import { describe, expect, test } from "vitest";
import { designCheck, designQuestions, designStates } from "#core/job/index.ts";
import { advice, FOOT, GALLON, INCH, inch, line, metric, metricParabola, POUND, parabola, planned, source } from "./planned.ts";

const text = (micrometres: unknown, one: number): number => Number(micrometres) / one;

describe("before the dig", () => {
  test("one line for each question, in order, each with a state of the list", () => {
    for (const design of [planned(), source({})]) {
      const lines = designCheck(design, {});
      expect(lines.map(({ id }) => id)).toEqual(designQuestions);
      for (const { state, says } of lines) {
        expect(designStates).toContain(state);
        expect(Object.keys(says.kinds).filter((name) => !Object.hasOwn(says.figures, name))).toEqual([]);
      }
    }
  });

  test("nothing given: nothing known, each says what it waits for, and nothing is advised", () => {
    for (const { state, needs, advice: changes } of designCheck(source({}), {})) {
      expect(state).toBe("not known");
      expect(needs?.length).toBeGreaterThan(0);
      expect(changes).toEqual([]);
    }
  });

  test("a figure that cannot be read: not known, with its refusal", () => {
    const design = source(inch.figures, inch.card, { pumpCurve: "a curve" });
    expect(line("flow", design)).toMatchObject({ state: "not known", refusal: { code: "pump-curve-text" } });
  });
});

describe("will this pump, pipe and head give the flow", () => {
  test("enough asks for no change", () => {
    expect(line("flow", planned({ pipeSize: "3 in" }))).toMatchObject({ state: "enough", advice: [] });
  });

  test("not enough: the next size with its flow, and the size that is enough", () => {
    const found = line("flow", planned());
    expect(found.state).toBe("not enough");
    expect(advice(found, "next-size")?.size ?? advice(found, "size-enough")?.size).toBe("1-1/2 in");
    const { size, flow } = advice(found, "size-enough") ?? {};
    const next = line("flow", planned({ pipeSize: String(size) }));
    expect(next.state).toBe("enough");
    expect(next.says.figures.expected).toBe(flow);
  });

  test("halving the pipe's bore changes the advised size", () => {
    const advised = (pipeSize: string) => {
      const found = line("flow", planned({ pipeSize, flowWanted: "58 gpm" }));
      return found.advice.map(({ figures }) => figures.size).filter((size) => size !== undefined);
    };
    expect(advised("2 in")[0]).toBe("2-1/2 in");
    expect(advised("1 in")[0]).toBe("1-1/4 in");
    // and where only the bore was typed, the size that takes its place comes without it
    const halved = line("flow", planned({ pipeSize: "2 in", flowWanted: "50 gpm", pipeBore: "1.02 in" }));
    expect(line("flow", planned({ pipeSize: "2 in", flowWanted: "50 gpm" })).state).toBe("enough");
    expect(halved.state).toBe("not enough");
    expect(advice(halved, "size-enough")?.size).toBe("2-1/2 in");
  });

  test("the advised run is just enough: 1 % more of it is not", () => {
    const { run, shorter } = advice(line("flow", planned()), "shorter-run") ?? {};
    const feet = text(run, FOOT);
    expect(feet + text(shorter, FOOT)).toBeCloseTo(40, 4);
    expect(line("flow", planned({ pipeRun: `${(feet - 0.002).toFixed(3)} ft` })).state).toBe("enough");
    expect(line("flow", planned({ pipeRun: `${(feet * 1.01 + 0.05).toFixed(3)} ft` })).state).toBe("too close to call");
  });

  test("the advised static head is just enough, and the advised width asks for no more than comes", () => {
    const found = line("flow", planned({ pipeSize: "1 1/2 in", flowWanted: "50 gpm", staticHead: "96 in" }));
    const inches = text(advice(found, "lower-lip")?.head, INCH);
    expect(
      line("flow", planned({ pipeSize: "1 1/2 in", flowWanted: "50 gpm", staticHead: `${(inches - 0.01).toFixed(2)} in` })).state,
    ).toBe("enough");
    const width = text(advice(line("flow", planned()), "narrower-lip")?.width, INCH);
    expect(line("flow", planned({ spillwayWidth: `${width.toFixed(2)} in` })).state).toMatch(/^(enough|too close to call)$/);
    expect(line("flow", planned({ spillwayWidth: `${(width * 0.99).toFixed(2)} in` })).state).toBe("enough");
  });

  test("a static head above shut-off: not enough, by how much, and no run or pipe can help", () => {
    const found = line("flow", planned({ staticHead: "30 ft", pipeSize: "2 in" }));
    expect(found).toMatchObject({ state: "not enough", says: { key: "design.flow.below-static-head" } });
    expect(text(found.says.figures.lacks, FOOT)).toBeCloseTo(6, 3);
    expect(found.advice.map(({ key }) => key)).toEqual(["design.advice.lower-lip"]);
  });

  test("a card that ends early: at least that much", () => {
    const card = (wanted: string) =>
      line("flow", source({ ...inch.figures, flowWanted: wanted }, inch.card, { pumpCurve: "0 gpm 24 ft; 10 gpm 23 ft" }));
    expect(card("9 gpm")).toMatchObject({ state: "enough", says: { key: "design.flow.beyond-the-card-enough" } });
    expect(card("12 gpm")).toMatchObject({ state: "not known", says: { key: "design.flow.beyond-the-card-not-known" } });
  });

  test("changing the pump's curve changes what is expected", () => {
    const weaker = source(inch.figures, inch.card, { pumpCurve: "0 gpm 12 ft; 20 gpm 10 ft; 40 gpm 4 ft; 50 gpm 0 ft", pipeKind: "rigid" });
    expect(Number(line("flow", weaker).says.figures.expected)).toBeLessThan(0.8 * Number(line("flow", planned()).says.figures.expected));
  });
});

describe("the other questions", () => {
  test("velocity: the advised size keeps below 5 ft/s", () => {
    const found = line("velocity", planned());
    expect(found.state).toBe("not enough");
    const { size } = advice(found, "size-for-velocity") ?? {};
    expect(line("velocity", planned({ pipeSize: String(size) })).state).toBe("enough");
  });

  test("reserve: the advised basin is just enough, the check valve's water is what the pipe holds", () => {
    const design = planned({ streamWidth: "40 in", streamDepth: "2.0 in" });
    const found = line("reserve", design);
    expect(found).toMatchObject({ state: "not enough", says: { key: "design.reserve.wanted-not-enough", figures: { wanted: "2.5" } } });
    const { depth, deeper } = advice(found, "deeper-basin") ?? {};
    expect(text(depth, INCH) - text(deeper, INCH)).toBeCloseTo(20, 3);
    const figures = { streamWidth: "40 in", streamDepth: "2.0 in" };
    expect(line("reserve", planned(figures, { basinDepth: `${(text(depth, INCH) + 0.01).toFixed(2)} in` })).state).toBe("enough");
    expect(line("reserve", planned(figures, { basinDepth: `${(text(depth, INCH) - 0.5).toFixed(2)} in` })).state).toBe("too close to call");
    const { width } = advice(found, "wider-basin") ?? {};
    expect(line("reserve", planned(figures, { basinWidth: `${(text(width, INCH) + 0.01).toFixed(2)} in` })).state).toBe("enough");
    expect(text(advice(found, "check-valve")?.volume, GALLON)).toBeCloseTo(40 * 0.0408 * 1.36 * 1.36, 1);
    expect(advice(line("reserve", design, { checkValve: true }), "check-valve")).toBeUndefined();
  });

  test("reserve of a round, rated tank: by its diameter", () => {
    const figures = { ...inch.figures, streamDepth: "3.0 in" };
    const tank = (across: number, volume: number) =>
      source(
        figures,
        {
          basinDiameter: `${across.toFixed(2)} in`,
          basinDepth: "20.0 in",
          basinVolume: `${volume.toFixed(2)} gal`,
          intakeHeight: "3.0 in",
        },
        { pumpCurve: parabola, pipeKind: "rigid" },
      );
    const found = line("reserve", tank(36, 80), { roundBasin: true });
    const across = text(advice(found, "larger-diameter")?.width, INCH);
    expect(across).toBeGreaterThan(36);
    expect(line("reserve", tank(across + 0.1, (80 * (across + 0.1) ** 2) / 36 ** 2), { roundBasin: true }).state).toMatch(
      /enough|too close/,
    );
  });

  test("no reserve wanted by the company: the intake must keep water, and that is all that is asked", () => {
    const { reserveWanted: _, ...figures } = inch.figures;
    expect(line("reserve", source(figures, inch.card, { pumpCurve: parabola, pipeKind: "rigid" }))).toMatchObject({
      state: "enough",
      says: { key: "design.reserve.enough" },
    });
  });

  test("cord: always figures, never a verdict; too short names the cord that it takes", () => {
    expect(line("cord", planned())).toMatchObject({
      state: "ask the electrician",
      caution: "ask-the-electrician",
      says: { key: "design.cord.left" },
    });
    const short = line("cord", planned({ cordRoute: "18 ft" }));
    expect(short).toMatchObject({ state: "ask the electrician", says: { key: "design.cord.short" } });
    expect(text(advice(short, "nearer-outlet")?.needed, FOOT)).toBeGreaterThan(18 + 20 / 12 + 3);
  });

  test("float: 2 in of rain in a hole a foot wider all round, drained by itself, stand at hole/(hole − basin) of it", () => {
    const found = line("float", planned());
    const hole = (36 + 24) * (24 + 24);
    expect(text(found.says.figures.outside, INCH)).toBeCloseTo((2 * hole) / (hole - 36 * 24), 2);
    expect(found).toMatchObject({ state: "not enough", assumes: ["holeArea", "catchArea"] });
    const { depth, volume } = advice(found, "leave-water") ?? {};
    expect(text(volume, GALLON)).toBeCloseTo((text(depth, INCH) * 36 * 24 * 0.95) / 231, 2);
    expect(line("float", planned({ rainExpected: "0.2 in" })).state).toBe("enough");
  });

  test("float without the rain: not known, and how much rain it would take", () => {
    const { rainExpected: _, ...figures } = inch.figures;
    const found = line("float", source(figures, inch.card));
    expect(found).toMatchObject({ state: "not known", needs: ["rainExpected"], says: { key: "design.float.rain-not-known" } });
    const hole = (36 + 24) * (24 + 24);
    expect(text(found.says.figures.rain, INCH)).toBeCloseTo((((12 * 40) / (62.3 * 6)) * (hole - 36 * 24)) / hole, 2);
  });

  test("stone: the advised depth is just enough; no load, ask the maker, never a capacity", () => {
    const heavy = line("stone", planned({ stoneDepth: "8 in" }));
    expect(heavy.state).toBe("not enough");
    const depth = text(advice(heavy, "thinner-stone")?.depth, INCH);
    expect(line("stone", planned({ stoneDepth: `${(depth - 0.01).toFixed(2)} in` })).state).toBe("enough");
    const { lidLoad: _, ...card } = inch.card;
    const unknown = line("stone", source(inch.figures, card));
    expect(unknown).toMatchObject({ state: "ask the maker", advice: [] });
    expect(text(unknown.says.figures.stone, POUND)).toBeCloseTo(200, 0);
    expect(line("stone", planned({}, { lidLoad: "10 lb" })).advice.map(({ key }) => key)).toEqual(["design.advice.lid-too-weak"]);
  });
});

test("inches and metric give the same answers and the same advice", () => {
  for (const switches of [{}, { checkValve: true }]) {
    const one = designCheck(planned(), switches);
    const two = designCheck(source(metric.figures, metric.card, { pumpCurve: metricParabola, pipeKind: "rigid" }), switches);
    const shape = (lines: typeof one) =>
      lines.map(({ id, state, says, advice: changes }) => [id, state, says.key, changes.map(({ key, figures }) => [key, figures.size])]);
    expect(shape(two)).toEqual(shape(one));
    for (const [i, { advice: changes }] of one.entries()) {
      for (const [j, { figures }] of changes.entries()) {
        for (const [name, value] of Object.entries(figures)) {
          const other = two[i]?.advice[j]?.figures[name];
          if (typeof value === "number") expect(Math.abs(Number(other) / value - 1), `${i} ${name}`).toBeLessThan(0.01);
        }
      }
    }
  }
});
