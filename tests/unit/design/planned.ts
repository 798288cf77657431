import type { Design, DesignLine, DesignQuestion, Expectation, ExpectationId, KitCard } from "#core/job/index.ts";
import { type DesignSwitches, designCheck, expectationOf, type Instead } from "#core/job/index.ts";

type Written = Readonly<Record<string, string>>;
export interface Source {
  readonly design: Design;
  readonly kitCards: readonly KitCard[];
}

/** `4 ft` as the office types it: the number, and the unit beside it. */
const typed = (text: string) => {
  const [, number = "", unit = ""] = /^([\d./ -]+?)\s*([\p{L}%°].*)?$/u.exec(text) ?? [];
  return { typed: number, unit: unit === "" ? "1" : unit };
};

export function source(figures: Written, card: Written = {}, texts: Written = {}): Source {
  const facts = Object.entries(card).map(([key, text]) => [key, typed(text)] as const);
  return {
    design: { figures: Object.fromEntries(Object.entries(figures).map(([key, text]) => [key, typed(text)])), switches: {} },
    kitCards: [{ id: "card", part: "a part", facts: { ...Object.fromEntries(facts), ...texts } }],
  };
}

/** H = 24 − 0.004 q² ft. */
export const parabola = [0, 10, 20, 30, 40, 50, 60, 70, 77].map((q) => `${q} gpm ${(24 - 0.004 * q * q).toFixed(3)} ft`).join("; ");

/** A whole design in inches, and the same one in metric, digit for digit. */
export const inch = {
  figures: {
    staticHead: "72 in",
    pipeRun: "40 ft",
    pipeSize: "1 1/4 in",
    elbows90: "4",
    elbows45: "0",
    spillwayWidth: "24.0 in",
    flowPerInch: "125 gph/in",
    streamLength: "10 ft",
    streamWidth: "24 in",
    streamDepth: "1.0 in",
    poolLength: "3.0 ft",
    poolWidth: "2.0 ft",
    rainExpected: "2 in",
    cordRoute: "14 ft",
    stoneDepth: "4 in",
    reserveWanted: "250 %",
    linedArea: "80 ft²",
    freeboard: "4.0 in",
    rainPerDay: "1.0 in",
  },
  card: {
    basinLength: "36.0 in",
    basinWidth: "24.0 in",
    basinDepth: "20.0 in",
    displacedShare: "5 %",
    basinWeight: "40 lb",
    lidLoad: "250 lb",
    cordLength: "20.0 ft",
    intakeHeight: "3.0 in",
  },
} as const;

export const metric = {
  figures: {
    staticHead: "1828.8 mm",
    pipeRun: "12.192 m",
    pipeSize: "31.75 mm",
    elbows90: "4",
    elbows45: "0",
    spillwayWidth: "609.6 mm",
    flowPerInch: "310.483 L/min/m",
    streamLength: "3.048 m",
    streamWidth: "609.6 mm",
    streamDepth: "25.4 mm",
    poolLength: "0.9144 m",
    poolWidth: "0.6096 m",
    rainExpected: "50.8 mm",
    cordRoute: "4.2672 m",
    stoneDepth: "101.6 mm",
    reserveWanted: "250 %",
    linedArea: "7.43224 m²",
    freeboard: "101.6 mm",
    rainPerDay: "25.4 mm",
  },
  card: {
    basinLength: "914.4 mm",
    basinWidth: "609.6 mm",
    basinDepth: "508 mm",
    displacedShare: "5 %",
    basinWeight: "18.144 kg",
    lidLoad: "113.398 kg",
    cordLength: "6.096 m",
    intakeHeight: "76.2 mm",
  },
} as const;

export const metricParabola = [0, 10, 20, 30, 40, 50, 60, 70, 77]
  .map((q) => `${(q * 3.785411784).toFixed(4)} L/min ${((24 - 0.004 * q * q) * 0.3048).toFixed(5)} m`)
  .join("; ");

export const planned = (figures: Written = {}, card: Written = {}): Source =>
  source({ ...inch.figures, ...figures }, { ...inch.card, ...card }, { pumpCurve: parabola, pipeKind: "rigid" });

export const expected = (id: ExpectationId, from: Source, switches: DesignSwitches = {}, instead: Instead = {}): Expectation =>
  expectationOf(id, from, switches, instead);

/** The value in inches, gallons, gpm ... by the size of one of them in fixed units. */
export function worth(id: ExpectationId, from: Source, one: number, switches: DesignSwitches = {}): number {
  const { value, needs, refusal } = expected(id, from, switches);
  if (value === undefined) throw new Error(`${id}: ${needs ?? refusal?.code ?? "no value"}`);
  return value / one;
}

export const GPM = 3785.411784;
export const GALLON = 3785.411784;
export const INCH = 25_400;
export const FOOT = 304_800;
export const POUND = 453.59237;

export function line(id: DesignQuestion, from: Source, switches: DesignSwitches = {}): DesignLine {
  const found = designCheck(from, switches).find((one) => one.id === id);
  if (found === undefined) throw new Error(id);
  return found;
}

export const advice = (of: DesignLine, key: string) => of.advice.find((one) => one.key === `design.advice.${key}`)?.figures;
