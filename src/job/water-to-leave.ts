import { rectangular } from "../doubt/index.ts";
import { toInteger } from "../tolerance/index.ts";
import { fixedPerSi } from "../units/index.ts";
import type { FloatOccasion, WaterToLeave } from "../water/index.ts";
import { designFigures, type ExpectationId } from "./design/index.ts";
import { expectedOf } from "./expected.ts";
import { figureValue } from "./figures.ts";
import type { ToLeave } from "./finding.ts";
import { derived, type LimitContext, type NamedLimit, type Resolved } from "./limit-context.ts";
import type { ChoiceMeaning } from "./sheet.ts";
import type { JobState } from "./state.ts";
import { waterPerDepth } from "./water-per-depth.ts";

const expectationOn: Readonly<Record<FloatOccasion, ExpectationId>> = {
  "water seen in the hole": "leaveForWaterSeen",
  "rain before backfill": "leaveForRain",
  "washing in": "leaveForWashingIn",
  "winter emptying": "leaveForWinter",
};

/** What the water is left in for: as the sheet says, else water outside where an answer says so, else rain; undefined while nobody answered. */
export const occasionOf = (
  { occasion }: Pick<NamedLimit, "occasion">,
  means: readonly ChoiceMeaning[] | undefined,
): FloatOccasion | undefined =>
  occasion ?? (means && (means.includes("water outside") ? "water seen in the hole" : "rain before backfill"));

/** How far down from the rim the water may stand inside, so that what is left holds the basin down: micrometres. */
export function waterLeftInside(context: LimitContext, limit: NamedLimit): Resolved {
  const { items = [] } = limit;
  const occasion = occasionOf(limit, context.meaning(items));
  if (occasion === undefined) return { missing: items };
  const leave = derived(context.expected(expectationOn[occasion]));
  const depth = figureValue(context.figures, "basinDepth", "length");
  const unknown = [...("value" in leave ? [] : (leave.unknown ?? [])), ...(depth === undefined ? ["basinDepth"] : [])];
  if (!("value" in leave) || depth === undefined) return { unknown };
  // the depth to leave has its doubt in it already
  return { value: depth - leave.value, doubt: rectangular(designFigures.basinDepth.doubt?.halfWidth ?? 0) * fixedPerSi("length") };
}

const answers: readonly WaterToLeave["answer"][] = ["none needed", "leave water", "full is not enough"];

/** How much that is by the design that something is judged by; undefined while the design does not say. */
export function toLeaveOn(state: JobState, covering: string | undefined, occasion: FloatOccasion): ToLeave | undefined {
  const { value: depth, answer } = expectedOf(state, covering, expectationOn[occasion]);
  const known = answers.find((one) => one === answer);
  if (depth === undefined || known === undefined) return undefined;
  const area = waterPerDepth(state);
  const volume = "unknown" in area ? undefined : toInteger(((area.value.value * depth) / fixedPerSi("length")) * fixedPerSi("volume"));
  return { occasion, answer: known, depth, ...(volume === undefined ? {} : { volume }) };
}
