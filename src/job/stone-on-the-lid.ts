import type { Uncertain } from "../doubt/index.ts";
import { leaveCore } from "../tolerance/index.ts";
import { fixedPerSi } from "../units/index.ts";
import { type FigureKey, stoneOnLid } from "./design/index.ts";
import { type Context, disagree, type Evaluation, entriesOf, instancesOf, lacking, pointOf, readAll } from "./evaluation.ts";
import { sourceFor, switchesFor } from "./expected.ts";
import { message } from "./finding.ts";
import { figureAt } from "./limits.ts";

/** What the items read, in their order; each goes before the design's own figure. */
const figures = ["stoneDepth", "boulderLength", "boulderWidth", "boulderHeight"] as const satisfies readonly FigureKey[];

/** Weight of the stone on the lid, kg, to be compared with the load that the lid's maker states. None stated: the maker is asked. */
export function stoneOnTheLid(context: Context): Evaluation {
  const { check, state } = context;
  const readings = readAll(context, check.items);
  const entries = entriesOf(readings);
  const points = check.items.map((id) => pointOf(readings.get(id) ?? []));
  const measured = Object.fromEntries(
    figures.flatMap((key, i): readonly (readonly [string, Uncertain])[] => {
      const point = points[i];
      return point ? [[key, point.value]] : [];
    }),
  );
  const on = stoneOnLid(sourceFor(state, undefined), switchesFor(state, undefined), measured);
  if (!on.known) {
    const needs = [...on.needs, ...(on.refusal ? figureAt(on.refusal.place) : [])];
    const depth = needs.includes("stoneDepth") ? instancesOf(context, check.items.slice(0, 1)) : [];
    const unknown = needs.filter((key) => key !== "stoneDepth");
    return { ...lacking(depth, entries), ...(unknown.length > 0 ? { unknown } : {}) };
  }
  const { mass, answer } = on.value;
  if (answer === "ask the maker") {
    const { value, expanded } = leaveCore(mass, fixedPerSi("mass"));
    return {
      state: "does not count",
      says: message("load.ask-the-maker", { weightMass: value, doubtMass: expanded }),
      entries,
      unknown: ["lidLoad"],
    };
  }
  const agrees = points.every((point) => point?.agrees !== false);
  return { state: "value", value: mass, entries, ...(agrees ? {} : { unsettled: disagree }) };
}
