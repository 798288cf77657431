import type { Uncertain } from "../../doubt/index.ts";
import type { Refusal } from "../../outcome/index.ts";
import {
  type CurveTolerance,
  curveAt,
  type OperatingOutcome,
  type OperatingPoint,
  type PipeSize,
  type PumpCurve,
  type PumpPoint,
  type SystemCurve,
  systemAt,
} from "../../plumbing/index.ts";
import type { FigureSource } from "../figures.ts";
import { ifKnown, type Known } from "./known.ts";
import { advisedSize } from "./line-advice.ts";
import { curve, system, working } from "./line-figures.ts";
import { wanted } from "./spillway-figures.ts";
import { statedBy } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";
import type { FigureKey } from "./vocabulary.ts";

/** Head over flow, m and m³/s, in order of flow. */
export type HeadOverFlow = readonly PumpPoint[];

/** The pump's curve and what it works against, as far as the design knows them: SI, for a drawing and nothing else. */
export interface LineCurves {
  readonly pump?: {
    /** The points that the kit card gives. */
    readonly card: HeadOverFlow;
    /** The curve through them; a straight drop lies between the end of one stretch and the beginning of the next. */
    readonly stretches: readonly HeadOverFlow[];
    readonly tolerance: CurveTolerance;
  };
  readonly system?: { readonly staticHead: Uncertain; readonly curve: HeadOverFlow };
  /** The same in the pipe size that the check advises. */
  readonly advised?: { readonly size: PipeSize; readonly curve: HeadOverFlow };
  /** Where the pump works: none, one or several points. */
  readonly works: readonly Pick<OperatingPoint, "flow" | "head">[];
  readonly outcome?: OperatingOutcome["kind"];
  readonly wanted?: Uncertain;
  /** What a curve that is not there waits for. */
  readonly needs: readonly FigureKey[];
  readonly refusal?: Refusal;
}

const PIECES = 48;

const steps = (from: number, to: number): readonly number[] =>
  Array.from({ length: PIECES + 1 }, (_, i) => (i === PIECES ? to : from + ((to - from) * i) / PIECES));

function stretchesOf({ stretches }: PumpCurve): readonly HeadOverFlow[] {
  return stretches.map((stretch) => {
    const [first, last] = [stretch.knots[0], stretch.knots.at(-1)];
    if (first === undefined || last === undefined) return [];
    if (first.x === last.x) return [{ flow: first.x, head: first.y }];
    return steps(first.x, last.x).map((flow) => ({ flow, head: curveAt(stretch, flow).y }));
  });
}

const against = (of: SystemCurve, most: number): HeadOverFlow => steps(0, most).map((flow) => ({ flow, head: systemAt(of, flow).head }));

function worksAt(outcome: OperatingOutcome | undefined): LineCurves["works"] {
  switch (outcome?.kind) {
    case "one point":
      return [outcome.point];
    case "several crossings":
      return outcome.points;
    case "on a vertical piece":
      return [{ flow: { value: outcome.piece.flow, parts: new Map() }, head: outcome.head }];
    default:
      return [];
  }
}

/** How much further than the card or the wish the curves are drawn. */
const BEYOND = 1.1;

/** The curves of a design's pump and pipe. `most` of the flow axis: what card or spillway asks, and a tenth more. */
export function lineCurves(source: FigureSource, switches: DesignSwitches): LineCurves {
  const stated = statedBy(source);
  const checkValve = switches.checkValve === true;
  const [pump, pipe, asked] = [curve(stated), system(stated, checkValve), wanted(stated)];
  const works = ifKnown(working(stated, checkValve))?.outcome;
  const most = BEYOND * Math.max(ifKnown(pump)?.last.flow ?? 0, ifKnown(asked)?.value ?? 0);
  const advice = advisedSize(stated, checkValve);
  const larger = advice && ifKnown(system(advice.design, checkValve));
  const missing: readonly Known<unknown>[] = [pump, pipe, asked].filter((one) => !one.known);
  const refusal = missing.map((one) => (one.known ? undefined : one.refusal)).find((one) => one !== undefined);
  return {
    ...(pump.known && { pump: { card: pump.value.points, stretches: stretchesOf(pump.value), tolerance: pump.value.tolerance } }),
    ...(pipe.known && most > 0 && { system: { staticHead: pipe.value.staticHead, curve: against(pipe.value, most) } }),
    ...(advice && larger && most > 0 && { advised: { size: advice.name, curve: against(larger, most) } }),
    works: worksAt(works),
    ...(works && { outcome: works.kind }),
    ...(asked.known && { wanted: asked.value }),
    needs: [...new Set(missing.flatMap((one) => (one.known ? [] : one.needs)))],
    ...(refusal && { refusal }),
  };
}
