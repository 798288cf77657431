import { certain, withSource } from "../doubt/index.ts";
import { type Context, type Evaluation, entriesOf, lacking, missingOf, readAll } from "./evaluation.ts";
import { type Line, message } from "./finding.ts";
import { happenedAt, type Live } from "./live.ts";
import { entersItem } from "./series.ts";
import type { Beforehand, Check, ToleranceSheet } from "./sheet.ts";
import type { JobState } from "./state.ts";

/** The entry that was made or read first in a step. Rework undoes no beginning. */
function firstIn(state: JobState, step: string | undefined): Live | undefined {
  const items = (state.sheet?.items ?? []).filter((item) => item.step === step);
  return items
    .flatMap((item) => (state.byItem.get(item.id) ?? []).filter(entersItem))
    .reduce<Live | undefined>((first, fact) => (first === undefined || happenedAt(fact) < happenedAt(first) ? fact : first), undefined);
}

interface Instants {
  readonly from: number;
  readonly until: number;
}

/** How far a moment lies inside, below zero: outside. */
const inside = ({ from, until }: Instants, moment: number): number => Math.min(moment - from, until - moment);

function instantsOf(context: Context): { readonly entries: readonly Live[]; readonly missing: Evaluation; readonly found?: Instants } {
  const readings = readAll(context, context.check.items);
  const entries = entriesOf(readings);
  const missing = lacking(missingOf(context, context.check.items, readings), entries);
  const [from, until] = context.check.items.map((id) => readings.get(id)?.at(-1)?.value.value);
  if (from === undefined || until === undefined) return { entries, missing };
  return { entries, missing, found: { from: Math.round(from * 1000), until: Math.round(until * 1000) } };
}

/** How far inside two typed instants a step was begun; until it is, the check waits for what the step asks first. */
export function betweenInstants(context: Context): Evaluation {
  const { state, check } = context;
  const { entries, missing, found } = instantsOf(context);
  if (found === undefined) return missing;
  const begun = firstIn(state, check.begins);
  if (begun === undefined) {
    const [first] = (state.sheet?.items ?? []).filter((item) => item.step === check.begins && item.tags === undefined && !item.switches);
    return lacking(first === undefined ? [] : [{ item: first }], entries);
  }
  const value = withSource(certain(inside(found, happenedAt(begun)) / 1000), "clocks", begun.doubt / 1000);
  return { state: "value", value, entries: [...entries, begun] };
}

/** Whether the two instants of a check were asked in these steps, which come before the one that it waits for. */
function isDue(sheet: ToleranceSheet, check: Check, due: Beforehand): boolean {
  const asked = sheet.items.filter((item) => check.items.includes(item.id));
  return check.function === "between two instants" && asked.every(({ step }) => due.steps.includes(step));
}

/** Checks whose step has not begun, and would lie outside its two instants if it began now (ms). */
export function outsideNow(state: JobState, sheet: ToleranceSheet, due: Beforehand, now: number): readonly Line[] {
  return sheet.checks.flatMap((check): readonly Line[] => {
    if (!isDue(sheet, check, due) || firstIn(state, check.begins) !== undefined) return [];
    const { found } = instantsOf({ state, check, tag: undefined });
    if (found === undefined || inside(found, now) >= 0) return [];
    const reason = message("instants.outside-now", { fromInstant: found.from, untilInstant: found.until });
    const opens = now < found.from ? { from: found.from } : {};
    return [{ about: { check: check.id }, step: check.step, verdict: "outside", reason, waysOut: ["call the office"], ...opens }];
  });
}
