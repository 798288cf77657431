import { dropAlong } from "./design/index.ts";
import { type Context, type Evaluation, entriesOf, lacking, missingOf, pointOf, readAll } from "./evaluation.ts";
import { sourceFor } from "./expected.ts";
import { figureAt } from "./limits.ts";

/** Share of the nominal voltage that is lost along the wire as it was measured. A figure to ask the electrician about, never a verdict. */
export function dropAlongTheWire(context: Context): Evaluation {
  const { check, state } = context;
  const readings = readAll(context, check.items);
  const entries = entriesOf(readings);
  const run = pointOf([...readings.values()].flat());
  if (run === undefined) return lacking(missingOf(context, check.items, readings), entries);
  const drop = dropAlong(sourceFor(state, undefined), run.value);
  if (drop.known) return { state: "value", value: drop.value, entries };
  const unknown = [...drop.needs, ...(drop.refusal ? figureAt(drop.refusal.place) : [])];
  return unknown.length > 0
    ? { state: "lacking", missing: [], entries, unknown }
    : lacking(missingOf(context, check.items, new Map()), entries);
}
