import { overflow, SECONDS_PER_DAY } from "../water/index.ts";
import { designFigure } from "./design/index.ts";
import { type Context, disagree, type Evaluation, instancesOf, lacking, pointOf, readAll } from "./evaluation.ts";
import { sourceFor } from "./expected.ts";
import { type Message, message } from "./finding.ts";
import type { Live } from "./live.ts";
import { seriesOf } from "./series.ts";
import { waterPerDepth } from "./water-per-depth.ts";

/**
 * Rain that the water at rest still has room for, metres over the lined area: freeboard × water per depth ÷ area. The place that the
 * water leaves by is an answer besides; without it the room is not known, for nobody has said to what edge it was measured.
 */
export function roomForRain(context: Context): Evaluation {
  const { check, state } = context;
  const readings = readAll(context, check.items);
  const read = [...readings.values()].flat();
  const leaves = instancesOf(context, check.conditions ?? []);
  const answers = leaves.map((instance) => seriesOf(state, instance).counting.at(-1));
  const entries: readonly Live[] = [...read.map(({ fact }) => fact), ...answers.flatMap((fact) => fact ?? [])];
  const open = leaves.filter((_, i) => answers[i] === undefined);
  const point = pointOf(read);
  if (point === undefined) return lacking([...instancesOf(context, check.items), ...open], entries);
  if (open.length > 0) return lacking(open, entries);
  const [water, linedArea] = [waterPerDepth(state), designFigure(sourceFor(state, undefined), "linedArea")];
  const isArea = linedArea !== undefined && linedArea.value > 0;
  if ("unknown" in water || !isArea) {
    const unknown = [...("unknown" in water ? water.unknown : []), ...(isArea ? [] : ["linedArea"])];
    return { state: "lacking", missing: [], entries, unknown };
  }
  const room = overflow({ perDepth: water.value, freeboard: point.value, linedArea });
  // a freeboard that cannot be: the reading is taken again
  if (!room.ok || room.value.answer !== "room for rain") return lacking(instancesOf(context, check.items), entries);
  return { state: "value", value: room.value.rainToOverflow, entries, ...(point.agrees ? {} : { unsettled: disagree }) };
}

const HOURS_PER_DAY = 24;
const MS_PER_HOUR = (1000 * SECONDS_PER_DAY) / HOURS_PER_DAY;
const keys = { within: "rain.within", outside: "rain.outside", "too close to call": "rain.too-close" } as const;

/** The sentence of a room for rain: how long it lasts at the rain of a day that it is compared with, in whole hours. Nothing taken off for what evaporates. */
export function roomSays(verdict: keyof typeof keys, value: number, perDay: number | undefined, by: number): Message {
  const lasts =
    perDay === undefined || perDay <= 0 ? {} : { perDay, overflowDuration: Math.round((value / perDay) * HOURS_PER_DAY) * MS_PER_HOUR };
  return message(keys[verdict], { by, ...lasts });
}
