import type { About } from "./fact.ts";
import { type Finding, message } from "./finding.ts";
import type { Live } from "./live.ts";
import { oncePer } from "./once-per.ts";
import { itemNamed, type ToleranceSheet } from "./sheet.ts";
import { factsOf, type JobState } from "./state.ts";

/** The key of what is said of a finding whose step had been done before the record began. */
export const BEFORE_RECORD = "before-record";
export const isBeforeRecord = ({ says }: Pick<Finding, "says">): boolean => says.key === BEFORE_RECORD;

/** The steps that had been done before the record began, each with the entry that says so; empty unless the job was opened late. */
const stepsBefore = oncePer(
  (state: JobState, _: string): ReadonlyMap<string, string> =>
    new Map(factsOf(state, "opened-late").flatMap(({ id, what }) => (what.steps ?? []).map((step) => [step, id] as const))),
);

/** That a covering had happened before the record began, where the office said so. */
export const coveredBefore = (state: JobState, covering: string): Live | undefined =>
  factsOf(state, "opened-late").find(({ what }) => what.coverings?.includes(covering));

function entryBefore(sheet: ToleranceSheet, steps: ReadonlyMap<string, string>, finding: Finding): string | undefined {
  const own = steps.get(finding.step);
  if (own !== undefined) return own;
  // a check of a later step that waits for nothing but earlier ones cannot be taken either
  const stepOf = (about: About): string | undefined => (about.item === undefined ? undefined : itemNamed(sheet, about.item)?.step);
  const waits = (finding.missing ?? []).map((about) => steps.get(stepOf(about) ?? ""));
  return waits.length > 0 && waits.every((entry) => entry !== undefined) ? waits[0] : undefined;
}

/**
 * A job that was opened late is not missing what came before: it reads 'before this record began' and holds nothing. What was
 * entered of it all the same counts as it stands.
 */
export function withoutWhatCameBefore(state: JobState, sheet: ToleranceSheet, found: readonly Finding[]): readonly Finding[] {
  const steps = stepsBefore(state, "");
  if (steps.size === 0) return found;
  return found.map((finding) => {
    const entry = finding.verdict === "not taken" && finding.by === undefined ? entryBefore(sheet, steps, finding) : undefined;
    if (entry === undefined) return finding;
    const { missing: _, unknown: __, from: ___, ...rest } = finding;
    return { ...rest, verdict: "does not apply", by: { way: "does not apply", entry }, says: message(BEFORE_RECORD) };
  });
}
