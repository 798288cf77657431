import type { Uncertain } from "../../doubt/index.ts";
import { feet, inches, type QuantityKind } from "../../units/index.ts";

/** How well a figure on paper is known, half-width of a rectangle: so much (SI), or a share of it; the larger counts. All own values. */
export interface PaperDoubt {
  readonly halfWidth?: number;
  readonly share?: number;
}

/** One figure that the arithmetic of a design knows by its key. */
export interface DesignFigure {
  /** `text`: a fact in words that has a meaning here: a pump's curve, a kind of pipe, a wire's size. */
  readonly kind: QuantityKind | "text";
  /** The unit in which it is asked where nothing else is said. */
  readonly unit?: { readonly inch: string; readonly metric: string };
  readonly from: "design" | "kit card";
  readonly doubt?: PaperDoubt;
}

const inch = { inch: "in", metric: "mm" } as const;
const foot = { inch: "ft", metric: "m" } as const;
const square = { inch: "ft²", metric: "m²" } as const;
const gallon = { inch: "gal", metric: "L" } as const;
const pound = { inch: "lb", metric: "kg" } as const;
const flow = { inch: "gpm", metric: "L/min" } as const;
const percent = { inch: "%", metric: "%" } as const;
const pieces = { inch: "1", metric: "1" } as const;

/** A size that a kit card or a drawing gives: ± 1/4 in. */
const size: PaperDoubt = { halfWidth: inches(1 / 4) };
/** A length of pipe, cord or trench before it lies: ± 5 %. */
const run: PaperDoubt = { share: 0.05 };
/** A length paced off or drawn by eye: ± 10 %. */
const byEye: PaperDoubt = { share: 0.1 };

const card = (kind: QuantityKind, unit: DesignFigure["unit"], doubt?: PaperDoubt): DesignFigure => ({
  kind,
  from: "kit card",
  ...(unit && { unit }),
  ...(doubt && { doubt }),
});
const planned = (kind: QuantityKind, unit: DesignFigure["unit"], doubt?: PaperDoubt): DesignFigure => ({
  kind,
  from: "design",
  ...(unit && { unit }),
  ...(doubt && { doubt }),
});
const words = (from: DesignFigure["from"]): DesignFigure & { readonly kind: "text" } => ({ kind: "text", from });

/**
 * The keys of design and kit cards that the arithmetic uses. A figure is looked for in the design first and then on the kit cards,
 * whatever `from` says; `from` and `unit` tell a tolerance sheet where to ask for it and how. The doubts are own: a design is
 * drawn, not measured. Heights and depths positive; a static head from the basin's water while running up to the lip's.
 */
export const designFigures = {
  // basin
  basinLength: card("length", inch, size),
  basinWidth: card("length", inch, size),
  basinDiameter: card("length", inch, size),
  basinDepth: card("length", inch, size),
  /** Underside of the floor to the rim; taken from `basinDepth` where absent. */
  basinHeight: card("length", inch, size),
  /** The maker's rating; goes before the dimensions. */
  basinVolume: card("volume", gallon, { share: 0.05 }),
  basinWeight: card("mass", pound, { share: 0.05 }),
  displacedShare: card("ratio", percent, { halfWidth: 0.02 }),
  lidLoad: card("mass", pound),
  outOfLevel: planned("length", inch, { halfWidth: inches(1 / 16) }),
  reserveWanted: planned("ratio", percent),
  // stone on the lid
  stoneDepth: planned("length", inch, { halfWidth: inches(1 / 2) }),
  /** Plan of the stone on the lid; the basin's plan where absent. */
  stoneArea: planned("area", square, byEye),
  boulderLength: planned("length", inch, size),
  boulderWidth: planned("length", inch, size),
  boulderHeight: planned("length", inch, size),
  // pump
  intakeHeight: card("length", inch, size),
  /** Points of the card: `0 gpm 24 ft; 20 gpm 21 ft; 77 gpm 0 ft`, or in L/min and m. See `pumpPoints`. */
  pumpCurve: words("kit card"),
  pumpPower: card("power", { inch: "W", metric: "W" }, { share: 0.1 }),
  pumpCurrent: card("current", { inch: "A", metric: "A" }, { share: 0.1 }),
  cordLength: card("length", foot, { halfWidth: inches(2) }),
  // pipe
  staticHead: planned("length", foot, { halfWidth: inches(6) }),
  pipeRun: planned("length", foot, run),
  pipeSize: planned("length", inch),
  /** `rigid`, `flexible`, `ribbed`; rigid PVC where nothing is said. */
  pipeKind: words("design"),
  pipeBore: card("length", inch, { halfWidth: inches(1 / 32) }),
  /** Hazen-Williams C, from the pipe's own paper. */
  pipeCoefficient: card("count", pieces),
  elbows90: planned("count", pieces),
  elbows45: planned("count", pieces),
  teesRun: planned("count", pieces),
  teesBranch: planned("count", pieces),
  gateValves: planned("count", pieces),
  adapters: planned("count", pieces),
  /** What a part without length takes, from its paper, at `knownLossFlow`: a filter box, a strainer. */
  knownLoss: card("length", foot, { share: 0.1 }),
  knownLossFlow: card("flow", flow),
  checkValveDistance: planned("length", foot, run),
  /** The part of the run that lies below the basin's water at rest. */
  pipeBelowWater: planned("length", foot, run),
  // spillway
  spillwayWidth: planned("length", inch, size),
  /** Flow wanted per length of lip; or `flowWanted` for the whole lip, which goes before it. */
  flowPerInch: planned("flowPerLength", { inch: "gph/in", metric: "L/min/m" }),
  flowWanted: planned("flow", flow),
  lipOutOfLevel: planned("length", inch, { halfWidth: inches(1 / 16) }),
  // water in transit
  streamLength: planned("length", foot, byEye),
  streamWidth: planned("length", inch, byEye),
  streamDepth: planned("length", inch, { share: 0.3 }),
  poolLength: planned("length", foot, byEye),
  poolWidth: planned("length", foot, byEye),
  /** Loss a day in all, or what evaporates a day from `openWaterArea`. */
  lossPerDay: planned("volume", gallon, { share: 0.3 }),
  evaporationPerDay: planned("length", inch, { share: 0.3 }),
  openWaterArea: planned("area", square, byEye),
  /** Of the site; north above zero. The weather of a leak test needs it. */
  latitude: planned("angle", { inch: "°", metric: "°" }),
  /** Above the sea. */
  elevation: planned("length", foot),
  // water outside the basin
  rimBelowGrade: planned("length", inch, { halfWidth: inches(1 / 2) }),
  groundwaterDepth: planned("length", foot, { halfWidth: inches(6) }),
  waterInHole: planned("length", inch, { halfWidth: inches(1 / 2) }),
  /** Rain to be expected while the hole is open. */
  rainExpected: planned("length", inch, { share: 0.25 }),
  holeArea: planned("area", square, byEye),
  /** What drains into the hole, itself included; the hole alone where absent. */
  catchArea: planned("area", square, { share: 0.25 }),
  /** Top of the layer that is washed in, above the basin's underside. */
  layerTop: planned("length", inch, { halfWidth: inches(1) }),
  // overflow
  linedArea: planned("area", square, byEye),
  /** Water at rest to the place it leaves by. */
  freeboard: planned("length", inch, size),
  rainPerDay: planned("length", inch, { share: 0.25 }),
  // power
  /** The cord's way from outlet to pump. */
  cordRoute: planned("length", foot, run),
  voltage: planned("voltage", { inch: "V", metric: "V" }, { share: 0.05 }),
  /** American Wire Gauge: `14`, `12 AWG`. */
  wireSize: words("design"),
  wireRun: planned("length", foot, run),
  // sockets and set-out
  socketDepth: card("length", inch, { halfWidth: inches(1 / 32) }),
  bedThickness: planned("length", inch),
  fittingBelowRim: planned("length", inch),
  lipOverGrade: planned("length", inch),
  linerEdgeOverLip: planned("length", inch),
  /** The height mark above finished grade; below it, less than zero. A reading of both from one set-up goes before it. */
  markOverGrade: planned("length", inch),
} as const satisfies Readonly<Record<string, DesignFigure>>;

export type FigureKey = keyof typeof designFigures;
export type TextKey = { [K in FigureKey]: (typeof designFigures)[K]["kind"] extends "text" ? K : never }[FigureKey];
export type NumberKey = Exclude<FigureKey, TextKey>;

/** Figures that took the place of the design's, such as what was measured: SI with their doubt. */
export type Instead = Readonly<Partial<Record<NumberKey, Uncertain>>>;

/** Room to tamp all round a basin, metres: the hole's plan where `holeArea` is absent (own). */
export const WORKING_ROOM = feet(1);
export const WORKING_ROOM_HALF_WIDTH = inches(4);
/** Power over volts × amperes of a small pump's motor where the card gives no current (own). */
export const POWER_FACTOR = 0.8;
export const POWER_FACTOR_HALF_WIDTH = 0.15;
/** A flexible pipe's bore where its paper gives none: that of rigid pipe of its size, ± 3 % of it (own). */
export const FLEXIBLE_BORE_SHARE = 0.03;
/** How many times the low end of a lip may run what its high end runs before customers see it (own). */
export const LIP_RATIO_SEEN = 1.25;
