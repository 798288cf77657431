import type { Refusal } from "../../outcome/index.ts";
import { limitsOf } from "../check-limits.ts";
import { cureTimes, type SessionTyped } from "../design/index.ts";
import { instanceFor } from "../evaluation.ts";
import { sourceFor } from "../expected.ts";
import type { About } from "../fact.ts";
import { askedChecks, type CheckInstance } from "../instances.ts";
import { coveringHeld, seriesOf } from "../series.ts";
import { itemNamed, type ToleranceSheet, tagSetOf } from "../sheet.ts";
import type { JobState } from "../state.ts";
import type { Words } from "../words.ts";
import { type Said, said, tagWords } from "./said.ts";

/** By when the last joint of a session must be made so that the line can be run at a wanted time. Milliseconds. */
export interface GlueBefore {
  /** Absent: a session that nobody has named yet. */
  readonly tag?: string;
  readonly name?: Words;
  readonly before?: number;
  /** From the last joint until water. */
  readonly takes?: number;
  readonly missing: readonly About[];
  /** Figures of design or kit card. */
  readonly unknown: readonly string[];
  readonly refusal?: Refusal;
  readonly says: Said;
}

const notKnown = (name: Words | undefined): Said => (name ? said("glue.not-known", {}, { what: [name] }) : said("glue.any-not-known"));

function timed(runAt: number, takes: number, own: Pick<GlueBefore, "tag" | "name">): GlueBefore {
  const before = runAt - takes;
  const figures = { beforeInstant: before, runInstant: runAt, takesDuration: takes };
  const says = own.name ? said("glue.before", figures, { what: [own.name] }) : said("glue.any-before", figures);
  return { ...own, before, takes, missing: [], unknown: [], says };
}

function isGlued(state: JobState, sheet: ToleranceSheet, { check, tag }: CheckInstance): boolean {
  return check.items.some((id) => {
    const item = itemNamed(sheet, id);
    return item !== undefined && seriesOf(state, instanceFor(item, tag)).counting.length > 0;
  });
}

/** A session of the job that has no last joint yet. */
function ofSession(state: JobState, sheet: ToleranceSheet, { check, tag }: CheckInstance, runAt: number): GlueBefore {
  const set = tagSetOf(sheet.items, check);
  const own: Pick<GlueBefore, "tag" | "name"> = tag === undefined ? {} : { tag, name: tagWords(state, set, tag) };
  const { bounds, missing, unknown } = limitsOf(state, sheet, check, tag, coveringHeld(state, check, set, tag));
  if (bounds.lower !== undefined) return timed(runAt, bounds.lower, own);
  return { ...own, missing, unknown, says: notKnown(own.name) };
}

/**
 * 'Glue it before four and you can run it at seven': for each named glue session without a last joint, by when it must be made for
 * the line to be run at `runAt` (ms). `session`: a session as it is meant to be, instead: what is glued, how cold it will be.
 */
export function glueBefore(state: JobState, runAt: number, session?: SessionTyped): readonly GlueBefore[] {
  const { sheet } = state;
  if (sheet === undefined) return [];
  if (session !== undefined) {
    const times = cureTimes(sourceFor(state, undefined), { ...(sheet.cureTable && { table: sheet.cureTable }), ...session });
    if (times.ok) return [timed(runAt, times.value.cure, {})];
    return [{ missing: [], unknown: [], refusal: times.refusal, says: notKnown(undefined) }];
  }
  return askedChecks(state, sheet)
    .filter(({ check }) => typeof check.lower === "object" && check.lower.function === "cure time")
    .filter((instance) => !isGlued(state, sheet, instance))
    .map((instance) => ofSession(state, sheet, instance, runAt));
}
