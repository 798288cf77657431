import { type Clearance, factsOf } from "../job/index.ts";
import type { Context } from "./context.ts";
import type { CoveringView, Tone } from "./model.ts";
import { fill } from "./say.ts";

const toneOf = (clearance: Clearance): Tone => {
  const covered = clearance.covered;
  if (covered?.shown === "not yet") return "outside";
  if (covered?.laterDoubted) return "undecided";
  if (covered === undefined) return clearance.state === "not yet" ? "missing" : "within";
  return clearance.state === "not yet" ? "undecided" : "within";
};

function whenOf({ sayer, texts }: Context, clearance: Clearance): string {
  const covered = clearance.covered;
  if (covered === undefined) return texts("covering-open");
  return fill(texts(covered.noLaterThan ? "covered-no-later" : "covered-said"), { when: sayer.moment(covered.at) });
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
      state:
        covered?.shown === "not yet"
          ? texts("shown-not yet")
          : covered?.laterDoubted
            ? texts("later-doubted")
            : covered
              ? texts(`shown-${covered.shown ?? "not yet"}`)
              : now,
      tone: toneOf(clearance),
      when: whenOf(context, clearance),
      clearance: covered ? fill(texts("now-reads"), { state: now }) : now,
      lines: [
        ...(covered?.shownLines ?? []).map((line) => fill(texts("held-then"), { line })),
        ...clearance.lines.map((line) => sayer.line(line)),
        ...opened.map((f) => fill(texts("opened-up"), { when: sayer.moment(f.at), reason: f.what.reason })),
      ],
    };
  });
}
