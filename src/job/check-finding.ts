import { limitsOf } from "./check-limits.ts";
import { valuePart } from "./check-value.ts";
import { evaluate } from "./evaluate.ts";
import { type Context, type Evaluation, instanceFor, instancesOf } from "./evaluation.ts";
import type { About } from "./fact.ts";
import { type CheckPart, type Finding, message, type Passage } from "./finding.ts";
import type { CheckInstance } from "./instances.ts";
import type { Live } from "./live.ts";
import { meaningOf } from "./meaning.ts";
import { passageOf } from "./passages.ts";
import { concerns, coveringHeld, type Instance, lastWord, sameAbout, seriesOf, type Word, wordPart } from "./series.ts";
import { type Check, itemNamed, type ToleranceSheet, tagSetOf } from "./sheet.ts";
import { type JobState, stateBefore } from "./state.ts";
import { occasionOf, toLeaveOn } from "./water-to-leave.ts";

/** The findings of the items that a check reads, whether or not they are listed themselves. */
export type ItemFindings = (about: About) => Finding | undefined;

interface Asked extends CheckInstance {
  readonly state: JobState;
  readonly sheet: ToleranceSheet;
  /** The check as a fact names it. */
  readonly own: About;
  readonly holds: string | undefined;
}

/** Somebody decided on each item that the check waits for: the decision is the check's too, the weakest first. */
function decidedPassage(decided: readonly (Passage | undefined)[]): Passage | undefined {
  return decided.find((by) => by?.way === "go-ahead" && !by.confirmed) ?? decided.find((by) => by !== undefined);
}

/** The items that a check waits for have a word of their own: then the check has it too. */
function lackingPart(missing: readonly About[], items: ItemFindings): CheckPart {
  const waitsFor = missing.map((about) => ({ about, verdict: items(about)?.verdict ?? "not taken", by: items(about)?.by }));
  const applying = waitsFor.filter(({ verdict }) => verdict !== "does not apply");
  if (missing.length > 0 && applying.length === 0) return { verdict: "does not apply", says: message("check.does-not-apply") };
  const undecided = applying.filter(({ by }) => by === undefined);
  const open = undecided.length > 0 ? undecided : applying;
  const passage = undecided.length > 0 ? undefined : decidedPassage(applying.map(({ by }) => by));
  const named = { missing: open.map(({ about }) => about), ...(passage ? { by: passage } : {}) };
  return open.length > 0 && open.every(({ verdict }) => verdict === "could not be taken")
    ? { verdict: "could not be taken", says: message("check.could-not-be-taken"), ...named }
    : { verdict: "not taken", says: message("check.not-taken"), ...named };
}

/** What is not taken, and the figures that would do instead or are wanted besides. */
function waitingPart(missing: readonly About[], unknown: readonly string[], items: ItemFindings, says?: string): CheckPart {
  if (missing.length === 0) return { verdict: "not taken", says: message(says ?? "check.limit-unknown"), unknown };
  const lacking = lackingPart(missing, items);
  const own = says ?? (unknown.length > 0 ? "check.not-taken-unknown" : undefined);
  const sentence = own !== undefined && lacking.verdict === "not taken" ? { says: message(own) } : {};
  return { ...lacking, ...(unknown.length > 0 ? { unknown } : {}), ...sentence };
}

function evaluatedPart({ state, sheet, check, tag, holds }: Asked, evaluation: Evaluation, items: ItemFindings): CheckPart {
  if (evaluation.state === "lacking") {
    const { missing, unknown = [], says } = evaluation;
    return missing.length === 0 && unknown.length === 0 ? lackingPart(missing, items) : waitingPart(missing, unknown, items, says);
  }
  if (evaluation.state === "does not count") {
    const { says, unknown = [] } = evaluation;
    return { verdict: "not taken", says, ...(unknown.length > 0 ? { unknown } : {}) };
  }
  if (evaluation.state === "answered") {
    return evaluation.met
      ? { verdict: "within", says: message("check.one-of-them") }
      : { verdict: "outside", says: message("check.none-of-them") };
  }
  const limits = limitsOf(state, sheet, check, tag, holds);
  const { bounds, unknown, missing } = limits;
  if (missing.length > 0 || unknown.length > 0) return waitingPart(missing, unknown, items);
  const { times } = evaluation;
  if (times === undefined || bounds.lower === undefined) return valuePart(state, check, evaluation, limits, holds);
  const from = times.since + bounds.lower;
  if (times.until === undefined) return { verdict: "within", from, says: message("time.from", { fromInstant: from }) };
  return { ...valuePart(state, check, evaluation, limits, holds), from };
}

interface Earlier {
  readonly values: NonNullable<Finding["beforeRework"]>;
  /** The last rework. */
  readonly entry?: string;
}

const readBy = (context: Context): readonly Instance[] => instancesOf(context, [...context.check.items, ...(context.check.minus ?? [])]);

/** The values that counted before rework, with the verdicts that they had. */
function beforeRework({ state, sheet, check, tag, holds }: Asked): Earlier {
  const instances = readBy({ state, check, tag });
  const reworks = state.cuts.filter(({ why, about }) => why === "reworked" && instances.some((read) => concerns(state, about, read)));
  const values = reworks.flatMap((cut) => {
    const earlier = stateBefore(state, cut.position);
    const evaluation = evaluate(earlier, check, tag);
    if (evaluation.state !== "value") return [];
    const { value, verdict } = valuePart(earlier, check, evaluation, limitsOf(earlier, sheet, check, tag, holds), holds);
    return value === undefined ? [] : [{ value, verdict }];
  });
  const entry = reworks.at(-1)?.entry;
  return { values, ...(entry === undefined ? {} : { entry }) };
}

/** Place in the work from which decisions about a check count: its newest reading, or what last set its readings aside. */
function newestOf({ state, check, tag }: Asked, entries: readonly Live[]): number {
  const cuts = readBy({ state, check, tag }).map((instance) => seriesOf(state, instance).cut?.position ?? -1);
  return Math.max(-1, ...entries.map(({ position }) => position), ...cuts);
}

function passage({ state, own, holds }: Asked, part: CheckPart, newest: number): Passage | undefined {
  const open = part.from !== undefined || (part.verdict !== "within" && part.verdict !== "does not apply");
  if (!open) return undefined;
  return passageOf(state, { names: (about) => sameAbout(about, own), holds, newest, value: part.value, doubt: part.doubt });
}

function ruledBy(asked: Asked, part: CheckPart, word: Word | undefined, earlier: Earlier, newest: number): Passage | undefined {
  const by = passage(asked, part, newest) ?? part.by;
  if (by) return by;
  if (part.verdict === "does not apply" && word) return { way: "does not apply", entry: word.fact.id };
  return part.verdict === "within" && earlier.entry !== undefined && earlier.values.length > 0
    ? { way: "rework", entry: earlier.entry }
    : undefined;
}

/** How much water to leave inside, whether or not it was read yet what is left. */
function leavesOf({ state, sheet, check, tag, holds }: Asked): Pick<Finding, "leaves"> {
  const { costs, upper } = check;
  if (costs !== "water to leave inside" || typeof upper !== "object") return {};
  const answers = (upper.items ?? []).flatMap((id) => {
    const item = itemNamed(sheet, id);
    return item ? [instanceFor(item, tag)] : [];
  });
  const occasion = occasionOf(upper, meaningOf(state, answers));
  const leaves = occasion && toLeaveOn(state, holds, occasion);
  return leaves ? { leaves } : {};
}

/** Ids in the order of the work, each once. */
const idsOf = (facts: readonly Live[]): readonly string[] =>
  facts.length < 2 ? facts.map(({ id }) => id) : [...new Set([...facts].sort((a, b) => a.position - b.position).map(({ id }) => id))];

/** The finding of one check, for one tag where it repeats. */
export function checkFinding(state: JobState, sheet: ToleranceSheet, instance: CheckInstance, items: ItemFindings): Finding {
  const { check, tag } = instance;
  const own: About = tag === undefined ? { check: check.id } : { check: check.id, tag };
  const holds = holdsOf(state, sheet, check, tag);
  const asked: Asked = { ...instance, state, sheet, own, holds };
  const evaluation = evaluate(state, check, tag);
  const newest = newestOf(asked, evaluation.entries);
  const word = lastWord(state, (about) => sameAbout(about, own), false, newest);
  const part: CheckPart = word ? wordPart(word) : evaluatedPart(asked, evaluation, items);
  const earlier = beforeRework(asked);
  const by = ruledBy(asked, part, word, earlier, Math.max(newest, word?.fact.position ?? -1));
  const { marks = [], aside = [] } = evaluation.state === "value" ? evaluation : {};
  return {
    step: check.step,
    check: check.id,
    of: "check",
    ...(tag === undefined ? {} : { tag }),
    weight: check.weight,
    ...(holds === undefined ? {} : { holds }),
    ...part,
    ...leavesOf(asked),
    ...(check.asks === undefined ? {} : { asks: check.asks }),
    entries: idsOf([...evaluation.entries, ...marks, ...(word ? [word.fact] : [])]),
    ...(aside.length > 0 ? { aside: idsOf(aside) } : {}),
    ...(earlier.values.length > 0 ? { beforeRework: earlier.values } : {}),
    ...(by ? { by } : {}),
  };
}

const holdsOf = (state: JobState, sheet: ToleranceSheet, check: Check, tag: string | undefined): string | undefined =>
  check.weight === "holds" ? coveringHeld(state, check, tagSetOf(sheet.items, check), tag) : undefined;
