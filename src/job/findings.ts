import { withoutWhatCameBefore } from "./before-record.ts";
import { checkFinding } from "./check-finding.ts";
import type { About } from "./fact.ts";
import { type Finding, message } from "./finding.ts";
import { chosenGroups, idleFinding, isIdle } from "./groups.ts";
import { askedChecks, askedItems, type CheckInstance } from "./instances.ts";
import { itemFinding } from "./item-finding.ts";
import { oncePer } from "./once-per.ts";
import { aboutOf, type Instance, oneOfHolding } from "./series.ts";
import { type Check, itemNamed, type ToleranceSheet } from "./sheet.ts";
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

/** The things that a sheet asks of a state, each judged once, and only when somebody asks for it. */
interface Judging {
  readonly items: readonly Instance[];
  readonly checks: readonly CheckInstance[];
  readonly ofItem: (instance: Instance) => Finding;
  /** Undefined where it belongs to a way that was not gone, and has nothing to show for itself. */
  readonly ofCheck: (instance: CheckInstance) => Checked | undefined;
  /** Whether what reads these items belongs to a way that was not gone. */
  readonly isIdle: (ids: readonly string[]) => boolean;
}

function eachOnce<Asked, Value>(judge: (asked: Asked) => Value): (asked: Asked) => Value {
  const known = new Map<Asked, Value>();
  return (asked) => {
    if (!known.has(asked)) known.set(asked, judge(asked));
    return known.get(asked) as Value;
  };
}

const judging = oncePer((state: JobState, sheet: ToleranceSheet): Judging => {
  const items = askedItems(state, sheet);
  const named = new Map(items.map((instance) => [keyOf(aboutOf(instance)), instance]));
  const ofItem = eachOnce((instance: Instance) => itemFinding(state, instance));
  const inGroups = items.filter(({ item }) => oneOfHolding(sheet, item.id) !== undefined);
  const chosen = eachOnce((_: "all") =>
    chosenGroups(
      sheet,
      inGroups.map((instance) => ({ instance, finding: ofItem(instance) })),
    ),
  );
  const idle = (ids: readonly string[]): boolean => isIdle(sheet, ids, chosen("all"));
  const ofCheck = eachOnce((instance: CheckInstance): Checked | undefined => {
    const finding = checkFinding(state, sheet, instance, (about) => {
      const item = named.get(keyOf(about));
      return item && ofItem(item);
    });
    const isEvidence = finding.value !== undefined || finding.verdict === "within" || finding.verdict === "outside";
    return idle(readBy(instance.check)) && !isEvidence ? undefined : { ...instance, finding };
  });
  return { items, checks: askedChecks(state, sheet), ofItem, ofCheck, isIdle: idle };
});

interface Asked {
  readonly items: readonly Instance[];
  readonly checks: readonly CheckInstance[];
  readonly tagSets: readonly Finding[];
}

/** The findings of what is asked, in the order of the sheet's steps. `checks` hold every one that reads an item of `items`. */
function findingsOf(state: JobState, sheet: ToleranceSheet, asked: Asked): readonly Finding[] {
  const { ofItem, ofCheck, isIdle: idle } = judging(state, sheet);
  const checks = asked.checks.flatMap((instance) => ofCheck(instance) ?? []);
  const reading = byReading(checks);
  const ofItems = asked.items
    .filter((instance) => !isSpokenFor(instance, ofItem(instance), reading.get(instance.item.id)))
    .flatMap((instance) => (idle([instance.item.id]) ? idleFinding(ofItem(instance)) : [ofItem(instance)]));
  const stepOrder = new Map(sheet.steps.map((step, i) => [step.id, i]));
  const place = (finding: Finding): number => stepOrder.get(finding.step) ?? sheet.steps.length;
  const all = [...asked.tagSets, ...ofItems, ...checks.map((c) => c.finding)].sort((a, b) => place(a) - place(b));
  return withoutWhatCameBefore(state, sheet, all);
}

/**
 * The findings of a job: one for each check and for each item that no check speaks for, in the order of the sheet's steps.
 * A function of the state alone: never of the present.
 */
export function findings(state: JobState): readonly Finding[] {
  const { sheet } = state;
  if (sheet === undefined) return [];
  const { items, checks } = judging(state, sheet);
  return findingsOf(state, sheet, { items, checks, tagSets: shortTagSets(state, sheet) });
}

/**
 * Those of `findings` that an item's entries decide, for one tag where it repeats: its own, and those of the checks that read it.
 * They are judged without the rest, so that an old phone says at once what a reading comes to.
 */
export function findingsOn(state: JobState, item: string, tag: string | undefined): readonly Finding[] {
  const { sheet } = state;
  if (sheet === undefined) return [];
  const { items, checks } = judging(state, sheet);
  const isOwn = (own: string | undefined): boolean => own === undefined || own === tag;
  const repeats = itemNamed(sheet, item)?.tags !== undefined;
  const found = findingsOf(state, sheet, {
    items: items.filter((instance) => instance.item.id === item && isOwn(instance.tag)),
    // one item read by a check for every tag is spoken for by each of them
    checks: checks.filter((instance) => readBy(instance.check).includes(item) && (!repeats || isOwn(instance.tag))),
    tagSets: [],
  });
  return found.filter((finding) => finding.tag === undefined || finding.tag === tag);
}
