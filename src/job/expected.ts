import { type DesignSwitches, designSwitches, type Expectation, type ExpectationId, expectations } from "./design/index.ts";
import type { FigureSource } from "./figures.ts";
import { designFor } from "./instances.ts";
import { oncePer } from "./once-per.ts";
import type { JobState } from "./state.ts";

/** Design and kit cards by which something is judged. */
export const sourceFor = (state: JobState, covering: string | undefined): FigureSource => ({
  design: designFor(state, covering),
  kitCards: state.kitCards,
});

/** What that design says yes or no to, as far as the arithmetic asks. */
export const switchesFor = (state: JobState, covering: string | undefined): DesignSwitches =>
  state.sheet === undefined ? {} : designSwitches(state.sheet, designFor(state, covering));

const allOf = oncePer((state: JobState, covering: string | undefined): ReadonlyMap<ExpectationId, Expectation> => {
  const source = sourceFor(state, covering);
  return new Map(expectations(source, switchesFor(state, covering)).map((one) => [one.id, one]));
});

/** What the design leads to in one figure, under the design that something is judged by. */
export function expectedOf(state: JobState, covering: string | undefined, id: ExpectationId): Expectation {
  const found = allOf(state, covering).get(id);
  if (found === undefined) throw new Error(`no expectation ${id}`);
  return found;
}
