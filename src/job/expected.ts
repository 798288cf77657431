import {
  type DesignSwitches,
  designSwitches,
  type Expectation,
  type ExpectationId,
  expectations,
  type Known,
  type LineAtWork,
  lineAtWork,
} from "./design/index.ts";
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
export const switchesFor = (state: JobState, covering: string | undefined): DesignSwitches => switchesOf(state, designFor(state, covering));

const switchesOf = oncePer(
  (state: JobState, design: Design): DesignSwitches => (state.sheet === undefined ? {} : designSwitches(state.sheet, design)),
);

/** What a design leads to: all of its figures, and the pump on its pipe for whoever measures the flow. */
interface Worked {
  readonly all: ReadonlyMap<ExpectationId, Expectation>;
  readonly line: () => Known<LineAtWork>;
}

/** A reading changes neither design nor kit cards: as many jobs as a phone has open keep theirs from one entry to the next. */
const worked = remembered(8, (source: FigureSource, switches: DesignSwitches): Worked => {
  let line: Known<LineAtWork> | undefined;
  return {
    all: new Map(expectations(source, switches).map((one) => [one.id, one])),
    line: () => {
      line ??= lineAtWork(source, switches);
      return line;
    },
  };
});

const workedFor = oncePer(
  (state: JobState, design: Design): Worked => worked({ design, kitCards: state.kitCards }, switchesOf(state, design)),
);

/** The pump on its pipe under that design. */
export const lineFor = (state: JobState, covering: string | undefined): Known<LineAtWork> =>
  workedFor(state, designFor(state, covering)).line();

/** What the design leads to in one figure, under the design that something is judged by. */
export function expectedOf(state: JobState, covering: string | undefined, id: ExpectationId): Expectation {
  const found = workedFor(state, designFor(state, covering)).all.get(id);
  if (found === undefined) throw new Error(`no expectation ${id}`);
  return found;
}
