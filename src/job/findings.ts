import { withoutWhatCameBefore } from "./before-record.ts";
import { checkFinding } from "./check-finding.ts";
import type { About } from "./fact.ts";
import { type Finding, message } from "./finding.ts";
import { chosenGroups, idleFinding, isIdle } from "./groups.ts";
import { askedChecks, askedItems, type CheckInstance } from "./instances.ts";
import { itemFinding } from "./item-finding.ts";
import { aboutOf, type Instance } from "./series.ts";
import type { Check, ToleranceSheet } from "./sheet.ts";
import type { JobState } from "./state.ts";

const keyOf = (about: About): string => `${about.item ?? about.check ?? ""} ${about.tag ?? ""}`;

/** A tag set with fewer tags than its least is never an empty yes: it holds every covering that could hide one of them. */
function shortTagSets(state: JobState, sheet: ToleranceSheet): readonly Finding[] {
  return sheet.tagSets.flatMap((set) => {
    const named = state.tags.filter((t) => t.set === set.id).length;
    if (named >= set.least) return [];
    const step = sheet.items.find((item) => item.tags === set.id)?.step ?? sheet.steps[0]?.id ?? "";
    return set.coverings.map((covering) => ({
      step,
      check: set.id,
      of: "tag set" as const,
      verdict: "not taken" as const,
      weight: "holds" as const,
      holds: covering,
      entries: [],
      says: message("tags.too-few", { named, least: set.least }),
    }));
  });
}

/** Every item that a check reads a value or a picture of. */
const readBy = (check: Check): readonly string[] => [...check.items, ...(check.minus ?? [])];

interface Checked extends CheckInstance {
  readonly finding: Finding;
}

/** The checks that read an item. */
function byReading(checks: readonly Checked[]): ReadonlyMap<string, readonly Checked[]> {
  const reading = new Map<string, Checked[]>();
  for (const checked of checks) for (const id of readBy(checked.check)) reading.set(id, [...(reading.get(id) ?? []), checked]);
  return reading;
}

/** Whether the finding of a check that reads it speaks for this reading: it is missed or holds wherever the reading would be. */
function isSpokenFor({ item, tag }: Instance, finding: Finding, checks: readonly Checked[] = []): boolean {
  if (item.kind !== "reading") return false;
  return checks.some((checked) => {
    // two instants are words of a paper, to be seen themselves
    if (checked.check.function === "between two instants") return false;
    if (checked.tag !== undefined && item.tags !== undefined && checked.tag !== tag) return false;
    const { weight, holds, missing = [] } = checked.finding;
    // two ties place a point: a further one that is asked is missed by itself
    if (checked.check.function === "found by ties" && finding.weight === "asked" && finding.verdict === "not taken")
      return missing.some((about) => about.item === item.id);
    if (finding.weight === "holds") return weight === "holds" && holds === finding.holds;
    return finding.weight !== "asked" || weight === "holds" || weight === "asked";
  });
}

/**
 * The findings of a job: one for each check and for each item that no check speaks for, in the order of the sheet's steps.
 * A function of the state alone: never of the present.
 */
export function findings(state: JobState): readonly Finding[] {
  const { sheet } = state;
  if (sheet === undefined) return [];
  const items = askedItems(state, sheet).map((instance) => ({ instance, finding: itemFinding(state, instance) }));
  const byAbout = new Map(items.map(({ instance, finding }) => [keyOf(aboutOf(instance)), finding]));
  const chosen = chosenGroups(sheet, items);
  const checks = askedChecks(state, sheet).flatMap((instance): readonly Checked[] => {
    const finding = checkFinding(state, sheet, instance, (about) => byAbout.get(keyOf(about)));
    const isEvidence = finding.value !== undefined || finding.verdict === "within" || finding.verdict === "outside";
    return isIdle(sheet, readBy(instance.check), chosen) && !isEvidence ? [] : [{ ...instance, finding }];
  });
  const reading = byReading(checks);
  const ofItems = items
    .filter(({ instance, finding }) => !isSpokenFor(instance, finding, reading.get(instance.item.id)))
    .flatMap(({ instance, finding }) => (isIdle(sheet, [instance.item.id], chosen) ? idleFinding(finding) : [finding]));
  const stepOrder = new Map(sheet.steps.map((step, i) => [step.id, i]));
  const place = (finding: Finding): number => stepOrder.get(finding.step) ?? sheet.steps.length;
  const all = [...shortTagSets(state, sheet), ...ofItems, ...checks.map((c) => c.finding)].sort((a, b) => place(a) - place(b));
  return withoutWhatCameBefore(state, sheet, all);
}
