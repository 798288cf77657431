import { certain, type Uncertain } from "../../doubt/index.ts";
import { flowForLip, flowPerLip, type LipFlow, lipFlowRatio, outOfLevelForRatio, type Sheet, sheetOverLip } from "../../water/index.ts";
import { andThen, type Known, known, orElse, statedOr, together, waiting, work } from "./known.ts";
import { working } from "./line-figures.ts";
import type { Stated } from "./stated.ts";
import { LIP_RATIO_SEEN } from "./vocabulary.ts";

/** The flow that the spillway wants, m³/s: for the whole lip, or its width times the flow per inch. */
export const wanted = (stated: Stated): Known<Uncertain> =>
  statedOr(stated.number("flowWanted"), () =>
    work(together({ perLip: stated.number("flowPerInch"), width: stated.number("spillwayWidth") }), ({ perLip, width }) =>
      flowForLip(perLip, certain(width.value)),
    ),
  );

/** The flow to reckon with, m³/s: where the pump works; without its curve, the flow that is wanted. */
export function reckonedFlow(stated: Stated, checkValve: boolean): Known<Uncertain> {
  const works = andThen(working(stated, checkValve), ({ flow }) =>
    flow !== undefined && flow.value > 0 ? known(flow) : waiting("pumpCurve"),
  );
  return orElse(works, () => andThen(wanted(stated), (flow) => known(flow, ["pumpCurve"])));
}

const onLip = (stated: Stated, checkValve: boolean) =>
  together({ flow: reckonedFlow(stated, checkValve), width: stated.number("spillwayWidth") });

export const perLip = (stated: Stated, checkValve: boolean): Known<Uncertain> =>
  work(onLip(stated, checkValve), ({ flow, width }) => flowPerLip(flow, width));

export const sheet = (stated: Stated, checkValve: boolean): Known<Sheet> =>
  work(onLip(stated, checkValve), ({ flow, width }) => sheetOverLip(flow, width));

/** Low end over high end at the tilt that the design or the tape gives. */
export const lipFlow = (stated: Stated, checkValve: boolean): Known<LipFlow> =>
  work(together({ water: sheet(stated, checkValve), tilt: stated.number("lipOutOfLevel") }), ({ water, tilt }) =>
    lipFlowRatio(water.head, tilt),
  );

/** The tilt from which customers see it, m. */
export const tiltSeen = (stated: Stated, checkValve: boolean): Known<Uncertain> =>
  work(sheet(stated, checkValve), ({ head }) => outOfLevelForRatio(head, LIP_RATIO_SEEN));
