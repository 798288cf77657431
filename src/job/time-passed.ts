import { certain, withSource } from "../doubt/index.ts";
import { coveredOf } from "./covered.ts";
import { type Context, type Evaluation, entriesOf, instancesOf, lacking, missingOf, readAll } from "./evaluation.ts";
import { happenedAt, type Live } from "./live.ts";
import { momentOf } from "./moments.ts";
import { coveringHeld, seriesOf } from "./series.ts";
import { tagSetOf } from "./sheet.ts";

interface Until {
  readonly fact: Live;
  /** Milliseconds. */
  readonly at: number;
}

/** The entry of the item that must come after. */
function untilItem(context: Context, id: string): Until | undefined {
  const [instance] = instancesOf(context, [id]);
  const fact = instance && seriesOf(context.state, instance).counting.at(-1);
  return fact && { fact, at: happenedAt(fact) };
}

/** The covering that is held, where somebody said that it happened: what is only inferred accuses nobody. */
function untilCovered({ state, check, tag }: Context): Until | undefined {
  const covering = coveringHeld(state, check, state.sheet && tagSetOf(state.sheet.items, check), tag);
  const covered = coveredOf(state, covering);
  return covered === undefined || covered.noLaterThan ? undefined : { fact: covered.fact, at: covered.at };
}

/** The moment of the job, where it did not come before the instant: mending what the water ran over is waited for anew. */
function untilMoment({ state }: Context, since: number): Until | undefined {
  const moment = momentOf(state, "first running");
  const fact = moment && state.facts.find(({ id }) => id === moment.entry);
  return moment === undefined || fact === undefined || moment.at < since ? undefined : { fact, at: moment.at };
}

/** Time from the last of the instants to what must come after it; while that has not come, only since when. */
export function timePassed(context: Context): Evaluation {
  const { check } = context;
  const readings = readAll(context, check.items);
  const lacks = missingOf(context, check.items, readings);
  const [since] = [...readings.values()].flat().sort((a, b) => b.value.value - a.value.value);
  if (since === undefined || lacks.length > 0) return lacking(lacks, entriesOf(readings));
  const from = Math.round(since.value.value * 1000);
  const byItem = check.until === undefined ? undefined : untilItem(context, check.until);
  const byMoment = check.before === "covering" ? untilCovered(context) : check.before && untilMoment(context, from);
  const until = byItem ?? byMoment;
  if (until === undefined) return { state: "value", value: certain(0), entries: entriesOf(readings), times: { since: from } };
  const passed = withSource(certain((until.at - from) / 1000), "clocks", Math.max(until.fact.doubt, since.fact.doubt) / 1000);
  const entries = entriesOf(readings);
  return {
    state: "value",
    value: passed,
    // the covering and the moment are no evidence of their own: what was decided before them still counts
    ...(byItem ? { entries: [...entries, until.fact] } : { entries, marks: [until.fact] }),
    times: { since: from, until: until.at },
  };
}
