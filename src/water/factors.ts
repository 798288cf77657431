import { certain, rectangular, type Uncertain, withSource } from "../doubt/index.ts";
import { feet } from "../units/index.ts";

/** One figure that the formulas bring along, with where it comes from. The half-width is that of a rectangle (u = a/√3). */
export interface Factor {
  readonly name: string;
  readonly value: number;
  readonly halfWidth: number;
  readonly unit: string;
  /** 'own', 'common practice', 'from memory', or the publication. */
  readonly source: string;
}

/** International pound, exact (1959). */
export const KILOGRAMS_PER_POUND = 0.45359237;
const cubicFoot = feet(1) * feet(1) * feet(1);
/** lb/ft³ in kg/m³. */
const poundsPerCubicFoot = (n: number): number => (n * KILOGRAMS_PER_POUND) / cubicFoot;

/** Standard gravity, m/s², exact (3rd CGPM, 1901; from memory). */
export const STANDARD_GRAVITY = 9.80665;
export const SECONDS_PER_DAY = 86_400;

export const waterFactors = {
  /** Fresh water from ice-cold to 30 °C (1000 to 995.7); salt or silt in it makes it heavier. 62.3 lb/ft³. */
  waterDensity: { name: "water-density", value: 998, halfWidth: 3, unit: "kg/m³", source: "from memory; ± own" },
  /** A layer of washed stone as it lies, voids included: about 100 lb/ft³. */
  looseStone: {
    name: "loose-stone-weight",
    value: poundsPerCubicFoot(100),
    halfWidth: poundsPerCubicFoot(15),
    unit: "kg/m³",
    source: "own, from memory; ± own",
  },
  /** Solid rock, 165 lb/ft³: granite and limestone lie near it. Its doubt is in `boulderShape`. */
  solidStone: { name: "solid-stone-weight", value: poundsPerCubicFoot(165), halfWidth: 0, unit: "kg/m³", source: "own, from memory" },
  /** Boulder over the block that its three sizes make; an ellipsoid has 0.52. ± 25 % of it, rock and shape together. */
  boulderShape: { name: "boulder-shape", value: 0.6, halfWidth: 0.15, unit: "1", source: "own, from memory" },
  /** Share of an open block matrix that water can fill. */
  blockVoids: { name: "block-voids", value: 0.95, halfWidth: 0.02, unit: "1", source: "common practice; ± own" },
  /** Share of a stone-filled basin that water can fill, 0.30 to 0.40: measure it, do not assume it. */
  stoneVoids: { name: "stone-voids", value: 0.35, halfWidth: 0.05, unit: "1", source: "common practice" },
  /** What a head by formula is worth over a landscape lip: the sheet clings and surface tension matters, ± 20 % or worse. */
  lipHead: { name: "lip-head-estimate", value: 1, halfWidth: 0.2, unit: "1", source: "own" },
  /** Depth of the sheet at the brink over its critical depth. */
  brink: { name: "brink-depth", value: 0.715, halfWidth: 0, unit: "1", source: "from memory" },
  /** Open water under 2 m deep over the grass of FAO-56. The ± also carries what the model itself is worth in a garden. */
  openWater: { name: "open-water-coefficient", value: 1.05, halfWidth: 0.3, unit: "1", source: "FAO-56 Table 12, from memory; ± own" },
  /** An undisturbed pool over the Carrier/ASHRAE formula: 74 % (seen in the abstract of an ASHRAE paper). */
  stillPool: { name: "still-pool", value: 0.74, halfWidth: 0.1, unit: "1", source: "ASHRAE paper 4146, abstract; ± own" },
  /** Least reserve over what is in transit; 2 to 3 is usual. Never a limit of the program's own: the company sets one. */
  reserveRatio: { name: "reserve-ratio", value: 2.5, halfWidth: 0.5, unit: "1", source: "common practice" },
} as const satisfies Record<string, Factor>;

/** A factor as a figure with its doubt, under the source `factor:<name>`. */
export const ofFactor = (factor: Factor): Uncertain =>
  withSource(certain(factor.value), `factor:${factor.name}`, rectangular(factor.halfWidth));

/** A figure from a kit card, a forecast or an estimate: value ± half-width, both in SI, under the source `figure:<name>`. */
export const figure = (name: string, value: number, halfWidth = 0): Uncertain =>
  withSource(certain(value), `figure:${name}`, rectangular(halfWidth));
