import { checkFinding } from "./check-finding.ts";
import { tagSetOf } from "./evaluate.ts";
import type { About } from "./fact.ts";
import type { Finding } from "./finding.ts";
import { askedChecks, askedItems, type CheckInstance, chosenGroup, inGroupNotChosen, isEntered } from "./instances.ts";
import { itemFinding, weightOf } from "./item-finding.ts";
import { aboutOf, coveringHeld, type Instance } from "./series.ts";
import type { ToleranceSheet } from "./sheet.ts";
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
      says: { key: "tags.too-few", figures: { named, least: set.least } },
    }));
  });
}

/** Whether a check that holds the same covering reads this reading, so that the check's finding speaks for it. */
function spokenForByCheck(state: JobState, sheet: ToleranceSheet, instance: Instance, checks: readonly CheckInstance[]): boolean {
  if (instance.item.kind !== "reading") return false;
  const { weight, holds } = weightOf(state, instance);
  return checks.some(({ check, tag }) => {
    if (tag !== undefined && instance.item.tags !== undefined && tag !== instance.tag) return false;
    if (![...check.items, ...(check.minus ?? [])].includes(instance.item.id)) return false;
    if (weight !== "holds") return true;
    return check.weight === "holds" && coveringHeld(state, check, tagSetOf(sheet.items, check), tag) === holds;
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
  const ofItem = (about: About): Finding | undefined => byAbout.get(keyOf(about)) ?? byAbout.get(keyOf({ item: about.item ?? "" }));
  const settled = new Set(
    items
      .filter(({ finding }) => finding.verdict === "does not apply" || finding.verdict === "could not be taken")
      .map(({ instance }) => instance.item.id),
  );
  const chosen = new Map(sheet.oneOf.map((one) => [one.id, chosenGroup(state, sheet, one, (item) => settled.has(item.id))]));
  const checks = askedChecks(state, sheet);
  const ofChecks = checks.flatMap((instance) => {
    const finding = checkFinding(state, sheet, instance, ofItem);
    const idle = finding.verdict === "not taken" && inGroupNotChosen(sheet, instance.check.items, chosen);
    return idle ? [] : [finding];
  });
  const ofItems = items
    .filter(
      ({ instance }) => isEntered(state, instance) || !inGroupNotChosen(sheet, [instance.item.id], chosen) || settled.has(instance.item.id),
    )
    .filter(({ instance }) => !spokenForByCheck(state, sheet, instance, checks))
    .map(({ finding }) => finding);
  const stepOrder = new Map(sheet.steps.map((step, i) => [step.id, i]));
  const place = (finding: Finding): number => stepOrder.get(finding.step) ?? sheet.steps.length;
  return [...shortTagSets(state, sheet), ...ofItems, ...ofChecks].sort((a, b) => place(a) - place(b));
}
