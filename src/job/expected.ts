import { designSwitches, type Expectation, type ExpectationId, expectations } from "./design/index.ts";
import type { FigureSource } from "./figures.ts";
import { designFor } from "./instances.ts";
import { oncePer } from "./once-per.ts";
import type { JobState } from "./state.ts";

/** Design and kit cards by which something is judged. */
export const sourceFor = (state: JobState, covering: string | undefined): FigureSource => ({
  design: designFor(state, covering),
  kitCards: state.kitCards,
});

const allOf = oncePer((state: JobState, covering: string | undefined): ReadonlyMap<ExpectationId, Expectation> => {
  const source = sourceFor(state, covering);
  const switches = state.sheet === undefined ? {} : designSwitches(state.sheet, source.design);
  return new Map(expectations(source, switches).map((one) => [one.id, one]));
});

/** What the design leads to in one figure, under the design that something is judged by. */
export function expectedOf(state: JobState, covering: string | undefined, id: ExpectationId): Expectation {
  const found = allOf(state, covering).get(id);
  if (found === undefined) throw new Error(`no expectation ${id}`);
  return found;
}
