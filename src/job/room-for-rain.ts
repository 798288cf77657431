import { rectangular, type Uncertain, withSource } from "../doubt/index.ts";
import { fixedPerSi } from "../units/index.ts";
import { overflow } from "../water/index.ts";
import { designFigures } from "./design/index.ts";
import { type Context, disagree, type Evaluation, instancesOf, lacking, pointOf, readAll } from "./evaluation.ts";
import { sourceFor } from "./expected.ts";
import { figureValue } from "./figures.ts";
import { message } from "./finding.ts";
import type { Live } from "./live.ts";
import { seriesOf } from "./series.ts";
import { waterPerDepth } from "./water-per-depth.ts";

/** The area that drains into the basin, m², with what it is known to on paper. */
function linedArea(context: Context): Uncertain | undefined {
  const stored = figureValue(sourceFor(context.state, undefined), "linedArea", "area");
  if (stored === undefined) return undefined;
  const value = stored / fixedPerSi("area");
  const share = designFigures.linedArea.doubt?.share ?? 0;
  return withSource({ value, parts: new Map() }, "figure:linedArea", rectangular(share * value));
}

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
  const [water, area] = [waterPerDepth(state), linedArea(context)];
  const unknown = [...("unknown" in water ? water.unknown : []), ...(area === undefined ? ["linedArea"] : [])];
  if ("unknown" in water || area === undefined) return { state: "lacking", missing: [], entries, unknown };
  const room = overflow({ perDepth: water.value, freeboard: point.value, linedArea: area });
  // an area or a freeboard that cannot be: the reading is taken again
  if (!room.ok) return lacking(instancesOf(context, check.items), entries);
  if (room.value.answer !== "room for rain") return { state: "does not count", says: message("rain.no-room"), entries };
  return { state: "value", value: room.value.rainToOverflow, entries, ...(point.agrees ? {} : { unsettled: disagree }) };
}
