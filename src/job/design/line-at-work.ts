import type { OperatingOutcome, OperatingPoint, PumpCurve, SystemCurve } from "../../plumbing/index.ts";
import type { FigureSource } from "../figures.ts";
import { type Known, pick, together } from "./known.ts";
import { curve, system, working } from "./line-figures.ts";
import { statedBy } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";

/** The pump on its pipe, and where it works by the design. */
export interface LineAtWork {
  readonly curve: PumpCurve;
  readonly system: SystemCurve;
  readonly outcome: OperatingOutcome["kind"];
  /** The one flow to expect; absent where the design gives none, and `outcome` says why. */
  readonly point?: OperatingPoint;
}

/** What a measured flow is compared with, or the figures that it waits for. SI. */
export function lineAtWork(source: FigureSource, switches: DesignSwitches): Known<LineAtWork> {
  const stated = statedBy(source);
  const checkValve = switches.checkValve === true;
  const parts = together({ curve: curve(stated), system: system(stated, checkValve), works: working(stated, checkValve) });
  return pick(parts, ({ curve: card, system: against, works: { outcome, flow, head } }): LineAtWork => {
    const line = { curve: card, system: against, outcome: outcome.kind };
    if (outcome.kind === "one point") return { ...line, point: outcome.point };
    return outcome.kind === "on a vertical piece" && flow && head ? { ...line, point: { flow, head, stable: true } } : line;
  });
}
