import { standardUncertainty } from "../doubt/index.ts";
import { toInteger } from "../tolerance/index.ts";
import { fixedPerSi } from "../units/index.ts";
import { designFigure } from "./design/index.ts";
import type { LimitContext, Resolved } from "./limit-context.ts";

/** Rain of a wet day by the design, micrometres, with its own doubt. */
export function rainOfADay({ figures }: LimitContext): Resolved {
  const rain = designFigure(figures, "rainPerDay");
  if (rain === undefined) return { unknown: ["rainPerDay"] };
  return { value: toInteger(rain.value * fixedPerSi("length")), doubt: standardUncertainty(rain) * fixedPerSi("length") };
}
