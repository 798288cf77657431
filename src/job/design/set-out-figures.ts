import type { Uncertain } from "../../doubt/index.ts";
import {
  type DesignHeights,
  heightsFromDesign,
  type SetOut,
  type SetOutDesign,
  type SetOutFigure,
  type SetOutLimits,
  type SetOutPlace,
  setOut,
} from "../../geometry/index.ts";
import type { Outcome } from "../../outcome/index.ts";
import type { FigureSource } from "../figures.ts";
import { basinHeight } from "./basin-figures.ts";
import { fromOutcome, ifKnown, type Known, pick } from "./known.ts";
import { type Stated, statedBy } from "./stated.ts";
import type { Instead, NumberKey } from "./vocabulary.ts";

const figureOf: Readonly<Record<SetOutFigure, NumberKey>> = {
  rimBelowGrade: "rimBelowGrade",
  basinHeight: "basinHeight",
  bedThickness: "bedThickness",
  fittingBelowRim: "fittingBelowRim",
  lipOverGrade: "lipOverGrade",
  linerEdgeOverLip: "linerEdgeOverLip",
};

export const keyOfSetOut = (figure: SetOutFigure): NumberKey => figureOf[figure];

function designOf(stated: Stated): SetOutDesign {
  const figures = Object.entries(figureOf).flatMap(([name, key]) => {
    const value = ifKnown(name === "basinHeight" ? basinHeight(stated) : stated.number(key))?.value;
    return value === undefined ? [] : [[name, value] as const];
  });
  return Object.fromEntries(figures);
}

/** Heights over finished grade that the design leads to, with what each missing one waits for. */
export const heights = (stated: Stated, limits?: SetOutLimits): Known<DesignHeights> =>
  fromOutcome(heightsFromDesign(designOf(stated), limits));

/**
 * Rod readings to work to, from one reading on the height mark of the set-up in use and, for heights over finished grade, the
 * mark's own height over it (metres, up positive).
 */
export function rodTargets(
  source: FigureSource,
  markReading: Uncertain,
  markOverGrade?: Uncertain,
  limits?: SetOutLimits,
  instead?: Instead,
): Outcome<SetOut> {
  const design = heightsFromDesign(designOf(statedBy(source, instead)), limits);
  return design.ok ? setOut(design.value.heights, markReading, markOverGrade) : design;
}

/** Heights over finished grade by the design, and the figures that each missing place waits for. */
export const setOutHeights = (
  source: FigureSource,
  limits?: SetOutLimits,
): Known<{
  readonly heights: DesignHeights["heights"];
  readonly missing: readonly { place: SetOutPlace; figures: readonly NumberKey[] }[];
}> =>
  pick(heights(statedBy(source), limits), ({ heights: known, missing }) => ({
    heights: known,
    missing: missing.map(({ place, figures }) => ({ place, figures: figures.map(keyOfSetOut) })),
  }));

/** A figure of design or kit card with its doubt, SI; undefined where nobody said it or it does not read. */
export const designFigure = (source: FigureSource, key: NumberKey): Uncertain | undefined => ifKnown(statedBy(source).number(key));
