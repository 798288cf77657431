import { type DesignSwitches, designSwitches, type Expectation, type ExpectationId, expectations } from "./design/index.ts";
import type { Design, FigureSource } from "./figures.ts";
import { designFor } from "./instances.ts";
import { oncePer } from "./once-per.ts";
import { remembered } from "./remembered.ts";
import type { JobState } from "./state.ts";

/** Design and kit cards by which something is judged. */
export const sourceFor = (state: JobState, covering: string | undefined): FigureSource => ({
  design: designFor(state, covering),
  kitCards: state.kitCards,
});

/** What that design says yes or no to, as far as the arithmetic asks. */
export const switchesFor = (state: JobState, covering: string | undefined): DesignSwitches =>
  state.sheet === undefined ? {} : designSwitches(state.sheet, designFor(state, covering));

type All = ReadonlyMap<ExpectationId, Expectation>;

/** A reading changes neither design nor kit cards: as many jobs as a phone has open keep theirs from one entry to the next. */
const worked = remembered(
  8,
  (source: FigureSource, switches: DesignSwitches): All => new Map(expectations(source, switches).map((one) => [one.id, one])),
);

const allOf = oncePer(
  (state: JobState, design: Design): All =>
    worked({ design, kitCards: state.kitCards }, state.sheet === undefined ? {} : designSwitches(state.sheet, design)),
);

/** What the design leads to in one figure, under the design that something is judged by. */
export function expectedOf(state: JobState, covering: string | undefined, id: ExpectationId): Expectation {
  const found = allOf(state, designFor(state, covering)).get(id);
  if (found === undefined) throw new Error(`no expectation ${id}`);
  return found;
}
