import { type BeforehandState, type Clearance, factsOf, type HandingOver, type Line } from "../job/index.ts";
import type { Context } from "./context.ts";
import type { CoveringView, DueView, Tone } from "./model.ts";
import { fill } from "./speaking.ts";

/** What became of a covering, as a reader of the record has to know it. */
export type CoveringState = "open" | "clear" | "on word" | "not yet" | "later doubted" | "nobody said" | "before record";

/** A covering that only follows from a later entry was shown no clearance: it is neither clear nor a not yet. */
export function coveringState({ covered }: Clearance): CoveringState {
  if (covered === undefined) return "open";
  if (covered.beforeRecord) return "before record";
  if (covered.noLaterThan || covered.shown === undefined) return "nobody said";
  if (covered.shown === "not yet") return "not yet";
  return covered.laterDoubted ? "later doubted" : covered.shown;
}

const tones: Readonly<Record<Exclude<CoveringState, "open">, Tone>> = {
  clear: "within",
  "on word": "within",
  "not yet": "outside",
  "later doubted": "undecided",
  "nobody said": "undecided",
  "before record": "apart",
};

function toneOf(clearance: Clearance): Tone {
  const state = coveringState(clearance);
  if (state === "open") return clearance.state === "not yet" ? "missing" : "within";
  // covered on a clearance that all that is now known no longer gives
  return tones[state] === "within" && clearance.state === "not yet" ? "undecided" : tones[state];
}

function whenOf({ sayer, texts }: Context, { covered }: Clearance): string {
  if (covered === undefined) return texts("covering-open");
  if (covered.beforeRecord) return fill(texts("covered-before-record"), { when: sayer.moment(covered.at) });
  return fill(texts(covered.noLaterThan ? "covered-no-later" : "covered-said"), { when: sayer.moment(covered.at) });
}

/** On whose word the phone showed it clear: the go-aheads that there were when it was covered. */
function onWhoseWord({ state, nameOf, texts }: Context, { covering, covered }: Clearance): string {
  const position = state.facts.find(({ id }) => id === covered?.entry)?.position ?? -1;
  const words = factsOf(state, "go-ahead").filter(
    (f) => f.what.covering === covering && f.what.confirms === undefined && f.position < position,
  );
  return [...new Set(words.map(nameOf))].join("; ") || texts("somebody");
}

function stateText(context: Context, clearance: Clearance): string {
  const state = coveringState(clearance);
  if (state === "open") return context.sayer.clearance(clearance);
  if (state === "on word") return fill(context.texts("shown-on word"), { name: onWhoseWord(context, clearance) });
  return context.texts(state === "later doubted" ? "later-doubted" : `shown-${state}`);
}

/** What was covered when, on what clearance, and what is known now: the two are kept apart. */
export function coveringViews(context: Context, all: readonly Clearance[]): readonly CoveringView[] {
  const { sayer, sheet, texts, state } = context;
  return all.map((clearance) => {
    const covering = sheet.coverings.find((c) => c.id === clearance.covering);
    const covered = clearance.covered;
    const now = sayer.clearance(clearance);
    const opened = factsOf(state, "opened-up-again").filter((f) => f.what.covering === clearance.covering);
    return {
      title: sayer.words(covered ? covering?.done : covering?.title),
      state: stateText(context, clearance),
      tone: toneOf(clearance),
      when: whenOf(context, clearance),
      clearance: covered?.beforeRecord ? "" : covered ? fill(texts("now-reads"), { state: now }) : now,
      lines: [
        ...(covered?.shownLines ?? []).map((line) => fill(texts("held-then"), { line })),
        ...clearance.lines.map((line) => sayer.line(line)),
        ...opened.map((f) => fill(texts("opened-up"), { when: sayer.moment(f.at), reason: f.what.reason })),
      ],
    };
  });
}

/** What is due besides coverings reads 'everything entered' or 'missing', and is never called clear. */
export function dueViews(context: Context, beforehand: readonly BeforehandState[], handing: HandingOver): readonly DueView[] {
  const { sayer, sheet, texts } = context;
  const view = (title: string, missing: readonly Line[]): DueView => ({
    title,
    state: texts(missing.length === 0 ? "due-entered" : "due-missing"),
    tone: missing.length === 0 ? "within" : "missing",
    lines: missing.map((line) => sayer.line(line)),
  });
  const titled = (id: string): string => sayer.words((sheet.beforehand ?? []).find((due) => due.id === id)?.title) || id;
  return [...beforehand.map(({ id, missing }) => view(titled(id), missing)), view(texts("handing-over"), handing.missing)];
}
