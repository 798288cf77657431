import { type Clearance, type Finding, factsOf } from "../job/index.ts";
import type { Context } from "./context.ts";
import { coveringState } from "./coverings-view.ts";
import type { LabelledText } from "./model.ts";
import { fill } from "./speaking.ts";
import type { RecordText } from "./words/record-en.ts";

type Group = "limit" | "answer" | "picture" | "reading" | "beside";

/** What a finding is measured against decides what it may be counted as: only a value with a limit is ever 'within'. */
function groupOf({ sayer }: Context, finding: Finding): Group {
  if (sayer.isAsked(finding)) return "beside";
  if (finding.of === "check") return finding.says.key.startsWith("check.") ? "answer" : "limit";
  return finding.of === "tag set" ? "answer" : finding.of;
}

const settled: ReadonlySet<Finding["verdict"]> = new Set(["within", "outside", "too close to call"]);

/** The job in numbers: what was measured against a limit, what was answered, seen, and only read, each by itself. */
export function numbersOf(context: Context, entries: number): readonly LabelledText[] {
  const { findings, state, texts, sayer } = context;
  const count = (verdict: Finding["verdict"]): string => String(findings.filter((f) => f.verdict === verdict).length);
  const group = (wanted: Group): readonly Finding[] => findings.filter((f) => settled.has(f.verdict) && groupOf(context, f) === wanted);
  const facts = (kind: string): number => (state.byKind.get(kind) ?? []).length;
  const of = (list: readonly Finding[], verdict: Finding["verdict"]): string => String(list.filter((f) => f.verdict === verdict).length);
  const [measured, answers] = [group("limit"), group("answer")];
  const pictures = [...(state.byKind.get("picture-taken") ?? []), ...(state.byKind.get("received-otherwise") ?? [])];
  const seen = pictures.filter(({ id }) => context.lookedAt.has(id)).length;
  const reworkMinutes = factsOf(state, "reworked").reduce((sum, f) => sum + f.what.minutes, 0);
  const limits = { within: of(measured, "within"), outside: of(measured, "outside"), close: of(measured, "too close to call") };
  const asAsked = answers.filter((f) => f.verdict === "within").length;
  const rows: readonly (readonly [RecordText, string])[] = [
    ["number-limits", fill(texts("number-limits-are"), { count: String(measured.length), ...limits })],
    ["number-answers", fill(texts("number-answers-are"), { asked: String(asAsked), other: String(answers.length - asAsked) })],
    [
      "number-seen",
      fill(texts("number-seen-are"), { all: String(pictures.length), seen: String(seen), unseen: String(pictures.length - seen) }),
    ],
    ["number-plain", String(group("reading").length)],
    ["number-beside", String(group("beside").length)],
    ["number-missing", count("not taken")],
    ["number-could-not", count("could not be taken")],
    ["number-apart", count("does not apply")],
    ["number-readings", String(facts("reading-taken"))],
    ["number-visits", String(facts("visit-begun"))],
    ["number-rework", sayer.quantity("duration", Math.round(reworkMinutes * 60_000))],
    ["number-entries", String(entries)],
  ];
  return rows.map(([label, text]) => ({ label: texts(label), text }));
}

/** In one sentence or two: every covering and how it stood when it was covered, what is missing, what to read first. */
export function standingText(context: Context, all: readonly Clearance[], missing: number, exceptions: number): string {
  const { texts } = context;
  const states = all.map(coveringState);
  const count = (state: ReturnType<typeof coveringState>): number => states.filter((s) => s === state).length;
  const covered = all.length - count("open");
  const parts = (["clear", "on word", "not yet", "later doubted", "nobody said", "before record"] as const)
    .filter((state) => count(state) > 0)
    .map((state) => fill(texts(`standing-${state}`), { count: String(count(state)) }));
  const first =
    all.length > 0 && count("clear") === all.length
      ? texts("standing-all-clear")
      : fill(texts(parts.length === 0 ? "standing-none" : "standing-covered"), {
          covered: String(covered),
          all: String(all.length),
          parts: parts.join(", "),
        });
  return [
    first,
    missing === 0 ? texts("handed-everything") : fill(texts("handed-missing"), { count: String(missing) }),
    ...(exceptions === 0 ? [] : [fill(texts("standing-exceptions"), { count: String(exceptions) })]),
  ].join(" ");
}
