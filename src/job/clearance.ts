import { standingOf, waysOutOf } from "./clears.ts";
import { coveredOf, lastOpened } from "./covered.ts";
import type { About } from "./fact.ts";
import type { Clearance, CoveredState, Finding, HandingOver, Line } from "./finding.ts";
import { whatOf } from "./live.ts";
import { sameAbout } from "./series.ts";
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

/** What is known of a covering that happened: what the phone showed then, and whether it still holds. */
function coveredState(state: JobState, covering: string, clearNow: boolean): CoveredState | undefined {
  const covered = coveredOf(state, covering);
  if (covered === undefined) return undefined;
  const { fact, at, noLaterThan } = covered;
  if (noLaterThan) return { entry: fact.id, at, noLaterThan, laterDoubted: false };
  const { shown, lines } = whatOf(fact, "covered");
  return { entry: fact.id, at, noLaterThan, shown, shownLines: lines, laterDoubted: shown !== "not yet" && !clearNow };
}

function announcedOf(state: JobState, covering: string): Clearance["announced"] {
  const since = lastOpened(state, covering);
  const last = factsOf(state, "covering-announced")
    .filter((f) => f.what.covering === covering && f.position > since)
    .at(-1);
  return last && { entry: last.id, about: last.what.about };
}

/** Whether a covering is clear, as of `now` (ms). Only this and the screens' lists know the present. */
export function clearance(state: JobState, all: readonly Finding[], covering: string, now: number): Clearance {
  const { sheet } = state;
  const held = all.filter((finding) => finding.holds === covering);
  const holding = held.filter((finding) => standingOf(finding, now) === "holds");
  const onWord = held.filter((finding) => standingOf(finding, now) === "on word").flatMap((finding) => finding.by?.entry ?? []);
  // a covering that the sheet does not have is held by nothing, and yet not clear
  const clear = holding.length === 0 && sheet?.coverings.some((c) => c.id === covering) === true;
  const covered = coveredState(state, covering, clear);
  const announced = covered ? undefined : announcedOf(state, covering);
  return {
    covering,
    state: !clear ? "not yet" : onWord.length > 0 ? "on word" : "clear",
    ...(onWord.length > 0 ? { onWord: [...new Set(onWord)] } : {}),
    lines: sheet === undefined ? [] : linesOf(sheet, holding, now),
    ...(announced ? { announced } : {}),
    ...(covered ? { covered } : {}),
  };
}

/** The clearance of every covering of the sheet, in its order. */
export function clearances(state: JobState, all: readonly Finding[], now: number): readonly Clearance[] {
  return (state.sheet?.coverings ?? []).map(({ id }) => clearance(state, all, id, now));
}

/** What is neither entered nor ruled on. What was entered and is bad is no less entered: the record shows it. */
function isMissing({ weight, verdict, by }: Finding): boolean {
  if (by !== undefined) return false;
  if (verdict === "not taken") return weight === "holds" || weight === "asked";
  return verdict === "could not be taken" && weight === "holds";
}

/** Handing over is never called clear: everything that was asked is entered, or named as left to do with a date. */
export function handingOver(state: JobState, all: readonly Finding[], now: number): HandingOver {
  const { sheet } = state;
  const done = new Set(factsOf(state, "left-to-do-done").map((f) => f.what.entry.id));
  const left = factsOf(state, "left-to-do");
  const isNamed = (own: About): boolean => left.some(({ what }) => what.about !== undefined && sameAbout(what.about, own));
  const open = all.filter((finding) => isMissing(finding) && !isNamed(aboutOf(finding)));
  const missing = sheet === undefined ? [] : linesOf(sheet, open, now).filter((line) => !isNamed(line.about));
  return {
    state: sheet !== undefined && missing.length === 0 ? "everything entered" : "missing",
    missing,
    leftToDo: left.map(({ id, what }) => ({ entry: id, text: what.text, by: what.by, done: done.has(id) })),
  };
}
