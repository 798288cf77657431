import { standingOf, waysOutOf } from "./clears.ts";
import type { About } from "./fact.ts";
import type { Clearance, CoveredState, Finding, HandingOver, Line } from "./finding.ts";
import type { ToleranceSheet } from "./sheet.ts";
import { factsOf, type JobState } from "./state.ts";

const aboutOf = (finding: Finding): About => ({
  ...(finding.of === "check" ? { check: finding.check } : { item: finding.check }),
  ...(finding.tag === undefined ? {} : { tag: finding.tag }),
});

const lineKey = (about: About): string => `${about.check ?? ""} ${about.item ?? ""} ${about.tag ?? ""}`;

function lineOf(sheet: ToleranceSheet, finding: Finding, about: About, now: number): Line {
  const item = sheet.items.find((i) => i.id === about.item);
  return {
    about,
    step: item?.step ?? finding.step,
    verdict: finding.verdict,
    reason: finding.says,
    waysOut: waysOutOf(finding, item?.mayNotApply === true),
    ...(finding.from !== undefined && finding.from > now ? { from: finding.from } : {}),
  };
}

/** A check that waits for items is shown as those items: each once, however many checks wait for it. */
function linesOf(sheet: ToleranceSheet, holding: readonly Finding[], now: number): readonly Line[] {
  const lines = new Map<string, Line>();
  for (const finding of holding) {
    const waitsFor =
      finding.of === "check" && finding.missing !== undefined && finding.missing.length > 0 ? finding.missing : [aboutOf(finding)];
    for (const about of waitsFor) {
      const key = lineKey(about);
      if (!lines.has(key)) lines.set(key, lineOf(sheet, finding, about, now));
    }
  }
  return [...lines.values()];
}

/** When a covering happened: as said, or no later than the first entry of something that needs it hidden. */
export function coveredState(state: JobState, sheet: ToleranceSheet, covering: string, clearNow: boolean): CoveredState | undefined {
  const opened =
    factsOf(state, "opened-up-again")
      .filter((f) => f.what.covering === covering)
      .at(-1)?.position ?? -1;
  const said = factsOf(state, "covered")
    .filter((f) => f.what.covering === covering && f.position > opened)
    .at(-1);
  if (said) {
    const { shown, lines, at } = said.what;
    return {
      entry: said.id,
      at: at ?? said.at,
      noLaterThan: false,
      shown,
      shownLines: lines,
      laterDoubted: shown !== "not yet" && !clearNow,
    };
  }
  const afterwards = new Set(sheet.items.filter((item) => item.needsHidden === covering).map((item) => item.id));
  const first = state.facts.find(
    (f) => f.standing === "counts" && f.position > opened && typeof f.what.item === "string" && afterwards.has(f.what.item),
  );
  return first && { entry: first.id, at: first.at, noLaterThan: true, laterDoubted: false };
}

/** Whether a covering is clear, as of `now` (ms). Only this and the screens' lists know the present. */
export function clearance(state: JobState, all: readonly Finding[], covering: string, now: number): Clearance {
  const { sheet } = state;
  const held = all.filter((finding) => finding.holds === covering);
  const holding = held.filter((finding) => standingOf(finding, now) === "holds");
  const onWord = held.filter((finding) => standingOf(finding, now) === "on word").flatMap((finding) => finding.by?.entry ?? []);
  const clear = sheet !== undefined && holding.length === 0;
  const covered = sheet && coveredState(state, sheet, covering, clear);
  return {
    covering,
    state: !clear ? "not yet" : onWord.length > 0 ? "on word" : "clear",
    ...(onWord.length > 0 ? { onWord: [...new Set(onWord)] } : {}),
    lines: sheet === undefined ? [] : linesOf(sheet, holding, now),
    ...(covered ? { covered } : {}),
  };
}

/** The clearance of every covering of the sheet, in its order. */
export function clearances(state: JobState, all: readonly Finding[], now: number): readonly Clearance[] {
  return (state.sheet?.coverings ?? []).map(({ id }) => clearance(state, all, id, now));
}

/** Handing over is never called clear: everything that was asked is entered, or named as left to do with a date. */
export function handingOver(state: JobState, all: readonly Finding[], now: number): HandingOver {
  const { sheet } = state;
  const done = new Set(factsOf(state, "left-to-do-done").map((f) => f.what.entry.id));
  const open = factsOf(state, "left-to-do").map((f) => ({ fact: f, done: done.has(f.id) }));
  const named = new Set(open.map(({ fact }) => lineKey(fact.what.about ?? {})));
  const missing = all.filter((f) => (f.weight === "holds" || f.weight === "asked") && standingOf(f, now) === "holds");
  const lines = sheet === undefined ? [] : linesOf(sheet, missing, now).filter((line) => !named.has(lineKey(line.about)));
  return {
    state: sheet !== undefined && lines.length === 0 ? "everything entered" : "missing",
    missing: lines,
    leftToDo: open.map(({ fact, done: isDone }) => ({ entry: fact.id, text: fact.what.text, by: fact.what.by, done: isDone })),
  };
}
