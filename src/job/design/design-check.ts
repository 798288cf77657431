import type { FigureSource } from "../figures.ts";
import { cordLine, floatLine, reserveLine, stoneLine } from "./basin-questions.ts";
import type { DesignLine } from "./design-line.ts";
import { flowLine, velocityLine } from "./line-questions.ts";
import { type Stated, statedBy } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";
import type { Instead } from "./vocabulary.ts";

/** The lines of `designCheck` over figures that are stated already. */
export function designLines(stated: Stated, switches: DesignSwitches): readonly DesignLine[] {
  const checkValve = switches.checkValve === true;
  return [
    flowLine(stated, checkValve),
    velocityLine(stated, checkValve),
    reserveLine(stated, switches),
    cordLine(stated),
    floatLine(stated, switches),
    stoneLine(stated, switches),
  ];
}

/**
 * Before the dig: will this pump, pipe and head give the flow that the spillway wants, how fast does the water run, is the reserve
 * enough, does the cord reach, will the empty basin float after tonight's rain, does the lid carry its stone. One line each in the
 * order of `designQuestions`, with what to change and by how much, worked out anew from the design.
 */
export const designCheck = (source: FigureSource, switches: DesignSwitches, instead: Instead = {}): readonly DesignLine[] =>
  designLines(statedBy(source, instead), switches);
