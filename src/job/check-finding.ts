import { contributingRoles, type Uncertain } from "../doubt/index.ts";
import { readQuantity } from "../reading/index.ts";
import { judge, leaveCore } from "../tolerance/index.ts";
import { fixedPerSi, type QuantityKind } from "../units/index.ts";
import { type Evaluation, evaluate, steadyLimit, tagSetOf } from "./evaluate.ts";
import type { About } from "./fact.ts";
import { figureValue } from "./figures.ts";
import type { Finding, Message, Passage, Verdict } from "./finding.ts";
import { type CheckInstance, designFor } from "./instances.ts";
import { sameAbout } from "./item-finding.ts";
import { type Resolved, resolveLimit } from "./limits.ts";
import type { Live } from "./live.ts";
import { passageOf } from "./passages.ts";
import { coveringHeld, lastWord, seriesOf } from "./series.ts";
import type { Check, ToleranceSheet } from "./sheet.ts";
import { type JobState, stateBefore } from "./state.ts";

type Bounds = { readonly [B in "aim" | "lower" | "upper"]?: number };

interface LimitsFound {
  readonly bounds: Bounds;
  readonly unknown: readonly string[];
  readonly missing: readonly string[];
}

const message = (key: string, figures: Message["figures"] = {}): Message => ({ key, figures });

function typedValue(state: JobState, sheet: ToleranceSheet, id: string, tag: string | undefined): number | undefined {
  const item = sheet.items.find((i) => i.id === id);
  if (item === undefined) return undefined;
  const instance = item.tags === undefined || tag === undefined ? { item } : { item, tag };
  const what = seriesOf(state, instance).counting.at(-1)?.what;
  if (typeof what?.typed !== "string" || typeof what.unit !== "string") return undefined;
  const read = readQuantity(what.typed, { kind: item.quantity ?? "length", unit: what.unit, signed: item.signed === true });
  return read.ok ? read.value.value : undefined;
}

function limitsOf(state: JobState, sheet: ToleranceSheet, check: Check, tag: string | undefined, holds: string | undefined): LimitsFound {
  const figures = { design: designFor(state, holds), kitCards: state.kitCards };
  const bounds: { aim?: number; lower?: number; upper?: number } = {};
  const unknown: string[] = [];
  const missing: string[] = [];
  for (const bound of ["aim", "lower", "upper"] as const) {
    const limit = check[bound];
    if (limit === undefined) continue;
    const resolved: Resolved = resolveLimit(limit, { figures, kind: check.kind, typed: (item) => typedValue(state, sheet, item, tag) });
    if ("value" in resolved) bounds[bound] = resolved.value;
    else if ("unknown" in resolved) unknown.push(...resolved.unknown);
    else missing.push(resolved.missing);
  }
  return { bounds, unknown: [...new Set(unknown)], missing: [...new Set(missing)] };
}

/** The findings of the items that a check reads, whether or not they are listed themselves. */
export type ItemFindings = (about: About) => Finding | undefined;

type Part = Pick<Finding, "verdict" | "says"> & Partial<Finding>;

/** The items that a check waits for have a word of their own: then the check has it too. */
function lackingPart(missing: readonly About[], items: ItemFindings): Part {
  const verdictOf = (about: About): Verdict => items(about)?.verdict ?? "not taken";
  const open = missing.filter((about) => verdictOf(about) === "not taken");
  if (open.length > 0 || missing.length === 0) return { verdict: "not taken", says: message("check.not-taken"), missing: open };
  const could = missing.filter((about) => verdictOf(about) === "could not be taken");
  if (could.length > 0) return { verdict: "could not be taken", says: message("check.could-not-be-taken"), missing: could };
  return { verdict: "does not apply", says: message("check.does-not-apply") };
}

function timePart(times: { readonly since: number; readonly until?: number }, least: number | undefined): Part | undefined {
  if (least === undefined || times.until !== undefined) return undefined;
  return { verdict: "within", from: times.since + least, says: message("time.from", { fromInstant: times.since + least }) };
}

/** Water that stands above the low end: plan area × half the tilt. Rectangular or round, from the basin's figures. */
function waterLost(state: JobState, holds: string | undefined, tilt: number): number | undefined {
  const figures = { design: designFor(state, holds), kitCards: state.kitCards };
  const side = (key: string): number | undefined => {
    const value = figureValue(figures, key, "length");
    return value === undefined ? undefined : value / fixedPerSi("length");
  };
  const diameter = side("basinDiameter");
  const [length, width] = [side("basinLength"), side("basinWidth")];
  const area =
    length !== undefined && width !== undefined ? length * width : diameter === undefined ? undefined : (Math.PI / 4) * diameter * diameter;
  return area === undefined ? undefined : Math.round(((area * tilt) / fixedPerSi("length") / 2) * fixedPerSi("volume"));
}

const rules = { guarded: "guarded", "simple acceptance": "simple" } as const;
const saysOf: Readonly<Record<"within" | "outside" | "too close to call", string>> = {
  within: "value.within",
  outside: "value.outside",
  "too close to call": "value.too-close",
};

function valuePart(
  state: JobState,
  check: Check,
  evaluation: Extract<Evaluation, { state: "value" }>,
  bounds: Bounds,
  holds: string | undefined,
): Part {
  const { value, expanded: doubt } = leaveCore(evaluation.value, fixedPerSi(check.kind));
  const limits: Bounds =
    check.function === "steady"
      ? { aim: 0, upper: leaveCore({ value: steadyLimit(evaluation.value), parts: new Map() }, fixedPerSi(check.kind)).value }
      : bounds;
  const steady = check.function === "steady";
  const judged = judge({ value, expanded: steady ? 0 : doubt, rule: rules[check.rule ?? "guarded"], ...limits });
  if (!judged.ok) return { verdict: "not taken", says: message("check.limit-unknown"), unknown: [] };
  const { verdict, by } = judged.value;
  const costs = check.costs === "water lost to tilt" ? waterLost(state, holds, value) : undefined;
  const measured = {
    kind: check.kind,
    value,
    doubt,
    ...limits,
    contributors: contributors(evaluation.value, check.kind),
    ...(evaluation.soFar ? { soFar: true } : {}),
    ...(costs === undefined ? {} : { costs: { kind: "volume" as const, value: costs } }),
  };
  // what nothing can settle but another reading never reads as better than too close to call
  if (evaluation.unsettled) return { ...measured, verdict: "too close to call", says: evaluation.unsettled };
  return {
    ...measured,
    verdict,
    says: message(saysOf[verdict], { by, ...("needed" in judged.value ? { needed: judged.value.needed } : {}) }),
  };
}

const contributors = (value: Uncertain, kind: QuantityKind): NonNullable<Finding["contributors"]> =>
  contributingRoles(value, 3).map(({ source, u }) => ({ name: source, u: Math.round(u * fixedPerSi(kind)) }));

function evaluatedPart(
  state: JobState,
  instance: CheckInstance,
  evaluation: Evaluation,
  limits: LimitsFound,
  holds: string | undefined,
  items: ItemFindings,
): Part {
  const { check } = instance;
  if (evaluation.state === "lacking") return lackingPart(evaluation.missing, items);
  if (evaluation.state === "answered") {
    return evaluation.met
      ? { verdict: "within", says: message("check.one-of-them") }
      : { verdict: "outside", says: message("check.none-of-them") };
  }
  if (limits.missing.length > 0)
    return lackingPart(
      limits.missing.map((item) => ({ item })),
      items,
    );
  if (limits.unknown.length > 0) return { verdict: "not taken", says: message("check.limit-unknown"), unknown: limits.unknown };
  const waits = evaluation.times && timePart(evaluation.times, limits.bounds.lower);
  if (waits) return waits;
  const part = valuePart(state, check, evaluation, limits.bounds, holds);
  const from = evaluation.times && limits.bounds.lower !== undefined ? { from: evaluation.times.since + limits.bounds.lower } : {};
  return { ...part, ...from };
}

function newestOf(entries: readonly Live[]): number {
  return entries.reduce((newest, entry) => Math.max(newest, entry.position), -1);
}

/** The values that counted before rework, with the verdicts that they had. */
function beforeRework(
  state: JobState,
  sheet: ToleranceSheet,
  instance: CheckInstance,
  own: About,
  holds: string | undefined,
): { readonly values: NonNullable<Finding["beforeRework"]>; readonly entry?: string } {
  const reads = new Set([...instance.check.items, ...(instance.check.minus ?? [])]);
  const reworks = state.cuts.filter(
    (cut) =>
      cut.why === "reworked" &&
      (sameAbout(cut.about, own) ||
        (cut.about.item !== undefined && reads.has(cut.about.item) && (cut.about.tag === undefined || cut.about.tag === instance.tag))),
  );
  const values = reworks.flatMap((cut) => {
    const earlier = stateBefore(state, cut.position);
    const evaluation = evaluate(earlier, instance.check, instance.tag);
    if (evaluation.state !== "value") return [];
    const limits = limitsOf(earlier, sheet, instance.check, instance.tag, holds);
    const part = valuePart(earlier, instance.check, evaluation, limits.bounds, holds);
    return part.value === undefined ? [] : [{ value: part.value, verdict: part.verdict }];
  });
  const entry = reworks.at(-1)?.entry;
  return { values, ...(entry === undefined ? {} : { entry }) };
}

/** The finding of one check, for one tag where it repeats. */
export function checkFinding(state: JobState, sheet: ToleranceSheet, instance: CheckInstance, items: ItemFindings): Finding {
  const { check, tag } = instance;
  const own: About = tag === undefined ? { check: check.id } : { check: check.id, tag };
  const holds = check.weight === "holds" ? coveringHeld(state, check, tagSetOf(sheet.items, check), tag) : undefined;
  const evaluation = evaluate(state, check, tag);
  const entries = "entries" in evaluation ? evaluation.entries : [];
  const word = lastWord(state, (about) => sameAbout(about, own), false, newestOf(entries));
  const limits = limitsOf(state, sheet, check, tag, holds);
  const part: Part = word
    ? {
        verdict: word.way,
        says: message(word.way === "does not apply" ? "item.does-not-apply" : "item.could-not-be-taken", { reason: word.reason }),
      }
    : evaluatedPart(state, instance, evaluation, limits, holds, items);
  const earlier = beforeRework(state, sheet, instance, own, holds);
  const by =
    passage(state, own, part, holds, Math.max(newestOf(entries), word?.fact.position ?? -1)) ??
    passageOfItems(part, items) ??
    (part.verdict === "does not apply" && word ? { way: "does not apply" as const, entry: word.fact.id } : undefined);
  const reworked: Passage | undefined =
    part.verdict === "within" && earlier.entry !== undefined && earlier.values.length > 0
      ? { way: "rework", entry: earlier.entry }
      : undefined;
  return {
    step: check.step,
    check: check.id,
    of: "check",
    ...(tag === undefined ? {} : { tag }),
    weight: check.weight,
    ...(holds === undefined ? {} : { holds }),
    ...part,
    entries: [...new Set([...entries.map((e) => e.id), ...(word ? [word.fact.id] : [])])],
    ...(earlier.values.length > 0 ? { beforeRework: earlier.values } : {}),
    ...(by ? { by } : reworked ? { by: reworked } : {}),
  };
}

/** A check that waits only for items on which somebody has decided has that decision too. */
function passageOfItems(part: Part, items: ItemFindings): Passage | undefined {
  const decided = (part.missing ?? []).map((about) => items(about)?.by);
  const word = decided.find((by) => by?.way === "go-ahead" && !by.confirmed);
  return decided.every((by) => by !== undefined) ? (word ?? decided[0]) : undefined;
}

function passage(state: JobState, own: About, part: Part, holds: string | undefined, newest: number): Passage | undefined {
  if (part.verdict === "within" || part.verdict === "does not apply") return undefined;
  return passageOf(state, { names: (about) => sameAbout(about, own), holds, newest, value: part.value, doubt: part.doubt });
}
