import { figureValue, type PlaceOnPlan, type SitePlaced } from "../job/index.ts";
import type { Context } from "./context.ts";
import { designOf } from "./designed.ts";
import type { DrawnBasin } from "./drawing/plan-basin.ts";
import type { ArithmeticWord } from "./words/arithmetic-en.ts";

/** What a figure of design or kit card says of the plan, and is no figure of the arithmetic. */
const figures = { lineBearing: "markBearing", basinBearing: "basinBearing", lidOff: "lidOffCentre" } as const;

const sourceOf = (context: Context) => ({ design: designOf(context), kitCards: context.state.kitCards });

/** Degrees clockwise from north, as the compass showed it, from the first mark to the second; undefined where nobody said. */
export const lineBearing = (context: Context): number | undefined => figureValue(sourceOf(context), figures.lineBearing, "count");

/** The direction at so many degrees counter-clockwise from the line of the first two marks. */
export function directionAt(degrees: number): { readonly x: number; readonly y: number } {
  const angle = (degrees * Math.PI) / 180;
  return { x: Math.cos(angle), y: Math.sin(angle) };
}

/** Where the basin's middle is: tied itself, or under the middle of the lid where its paper says so. */
function middleOf({ plan, points }: SitePlaced, lidOff: number | undefined): PlaceOnPlan | undefined {
  const at = (kind: "basin" | "lid"): PlaceOnPlan | undefined => {
    const place = plan?.points.find(({ name }) => points.find(({ key }) => key === name)?.item.drawnAs === kind);
    return place?.state === "placed" ? place : undefined;
  };
  return at("basin") ?? (lidOff === 0 ? at("lid") : undefined);
}

/** The basin's outline as far as its middle, size and turn are known, and what is missing of it. */
export function basinOutline(
  context: Context,
  site: SitePlaced,
): { readonly basin?: DrawnBasin; readonly note?: Extract<ArithmeticWord, `plan.basin-${string}`> } {
  if (!context.sheet.items.some(({ drawnAs }) => drawnAs === "basin" || drawnAs === "lid")) return {};
  const source = sourceOf(context);
  const length = (key: string): number | undefined => figureValue(source, key, "length");
  const middle = middleOf(site, length(figures.lidOff));
  if (middle === undefined) return { note: "plan.basin-no-middle" };
  const { x, y } = middle;
  const [diameter, long, wide] = [length("basinDiameter"), length("basinLength"), length("basinWidth")];
  if (diameter !== undefined) return { basin: { x, y, diameter } };
  if (long === undefined || wide === undefined) return { note: "plan.basin-no-size" };
  const [line, own] = [lineBearing(context), figureValue(source, figures.basinBearing, "count")];
  if (line === undefined || own === undefined) return { basin: { x, y, length: long, width: wide }, note: "plan.basin-no-turn" };
  return { basin: { x, y, length: long, width: wide, along: directionAt(line - own) } };
}
