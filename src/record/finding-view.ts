import { type Finding, type Live, leftToDoFor, type ToleranceSheet } from "../job/index.ts";
import type { Context } from "./context.ts";
import type { FindingView, Tone } from "./model.ts";
import { fill } from "./speaking.ts";

const tones: Readonly<Record<Finding["verdict"], Tone>> = {
  within: "within",
  outside: "outside",
  "too close to call": "undecided",
  "not taken": "missing",
  "could not be taken": "missing",
  "does not apply": "apart",
};

/** What nobody has looked at yet, or what the program does not judge, is drawn apart from what is within. */
export const toneOf = (context: Context, finding: Finding): Tone =>
  context.sayer.isAsked(finding) || finding.says.key === "picture.not-looked-at" ? "apart" : tones[finding.verdict];

const sourceOf = (sheet: ToleranceSheet, { check }: Finding): string | undefined =>
  (sheet.checks.find((c) => c.id === check) ?? sheet.items.find((i) => i.id === check))?.source;

/** Who does what is left, and by when: 'crew, N. B., by 20 May 2026'. */
export function whoAndWhen({ texts, nameTyped, day }: Context, fact: Live): string {
  return fill(texts("left-by"), { name: nameTyped(fact) ?? texts("left-nobody"), day: day(String(fact.what.by ?? "")) });
}

/** The mark that a tie was taken from, where its entry names it. */
function fromMark({ state, texts }: Context, finding: Finding): string {
  if (finding.of !== "reading") return "";
  const entries = new Set(finding.entries);
  const marks = state.facts.filter((f) => entries.has(f.id) && typeof f.what.mark === "string").map((f) => String(f.what.mark));
  return marks.length === 0 ? "" : fill(texts("from-mark-says"), { mark: [...new Set(marks)].join("; ") });
}

/** Dates that something lies between are limits of their own; how far inside has none. */
const hasLimit = ({ sheet }: Context, { check, lower, upper }: Finding): boolean =>
  (lower !== undefined || upper !== undefined) && sheet.checks.find(({ id }) => id === check)?.function !== "between two instants";

/** How near something is found again is a doubt itself: it has none besides. */
const isDoubtItself = ({ sheet }: Context, { check }: Finding): boolean =>
  sheet.checks.find(({ id }) => id === check)?.function === "found by ties";

const shownOf = ({ kind, value, lower, upper, of, verdict }: Finding): FindingView["shown"] =>
  (kind !== undefined && (value !== undefined || lower !== undefined || upper !== undefined)) || verdict !== "within" || of === "check"
    ? "table"
    : "list";

/** One finding as it prints. */
export function findingView(context: Context, finding: Finding): FindingView {
  const { sayer, sheet, state, numberOf, texts } = context;
  const step = sheet.steps.find((s) => s.id === finding.step);
  const { kind, value, doubt, aim } = finding;
  const source = sourceOf(sheet, finding);
  const leftBy = finding.verdict === "not taken" ? leftToDoFor(state, finding) : undefined;
  const left = state.facts.find(({ id }) => id === leftBy);
  const says = [
    sayer.finding(finding),
    fromMark(context, finding),
    left === undefined ? "" : fill(texts("left-says"), { who: whoAndWhen(context, left) }),
  ];
  return {
    step: finding.step,
    stepTitle: sayer.words(step?.title),
    check: finding.check,
    title: sayer.titleOf(finding),
    ...(finding.tag === undefined ? {} : { tag: finding.tag }),
    verdict: finding.verdict,
    verdictWord: sayer.verdictWord(finding),
    tone: toneOf(context, finding),
    shown: shownOf(finding),
    says: says.filter((part) => part !== "").join(" "),
    ...(kind === undefined || value === undefined ? {} : { value: sayer.value(finding) }),
    ...(kind === undefined || doubt === undefined || isDoubtItself(context, finding) ? {} : { doubt: `± ${sayer.doubt(kind, doubt)}` }),
    ...(kind === undefined || aim === undefined ? {} : { aim: sayer.quantity(kind, aim, sayer.marks(finding)) }),
    ...(kind === undefined || !hasLimit(context, finding) ? {} : { limit: sayer.limit(finding) }),
    ...(source === undefined ? {} : { source: sayer.origin(source) }),
    entries: finding.entries
      .filter((id) => finding.aside?.includes(id) !== true)
      .map((id) => numberOf(id))
      .filter((n) => n !== undefined),
  };
}
