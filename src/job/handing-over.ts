import { outsideNow } from "./between-instants.ts";
import type { About } from "./fact.ts";
import { type BeforehandState, type Finding, type HandingOver, type LeftToDo, type Line, message } from "./finding.ts";
import { aboutOfFinding, linesOf } from "./lines.ts";
import { sameAbout } from "./series.ts";
import type { Beforehand, ToleranceSheet } from "./sheet.ts";
import { factsOf, type JobState } from "./state.ts";

/** What is neither entered nor ruled on. What was entered and is bad is no less entered: the record shows it. */
function isMissing({ weight, verdict, by }: Finding): boolean {
  if (by !== undefined) return false;
  if (verdict === "not taken") return weight !== "if you have it";
  return verdict === "could not be taken" && weight === "holds";
}

function leftToDo(state: JobState): readonly LeftToDo[] {
  const done = new Set(factsOf(state, "left-to-do-done").map((f) => f.what.entry.id));
  return factsOf(state, "left-to-do").map(({ id, what: { text, by, about } }) => ({
    entry: id,
    text,
    by,
    ...(about === undefined ? {} : { about }),
    done: done.has(id),
  }));
}

/** Whether what is left to do names something of a step: itself, for all tags or its own, or its whole step. */
const names = ({ about }: LeftToDo, own: About, step: string): boolean =>
  about !== undefined && (about.step === undefined ? sameAbout(about, own) : about.step === step);

/** The entry of what is still left to do that names a finding, itself or with its whole step. */
export function leftToDoFor(state: JobState, finding: Finding): string | undefined {
  return leftToDo(state).find((left) => !left.done && names(left, aboutOfFinding(finding), finding.step))?.entry;
}

/** What is missing among findings and not named as left to do. */
function missingOf(state: JobState, sheet: ToleranceSheet, found: readonly Finding[], now: number): readonly Line[] {
  const open = leftToDo(state).filter(({ done }) => !done);
  const isNamed = (about: About, step: string): boolean => open.some((left) => names(left, about, step));
  const missing = found.filter((finding) => isMissing(finding) && !isNamed(aboutOfFinding(finding), finding.step));
  return linesOf(sheet, missing, now).filter((line) => !isNamed(line.about, line.step));
}

/** The customer signed, declined, was not reached, or it was delivered without a signature: one of them is entered, or it is missing. */
function signatureMissing(state: JobState, sheet: ToleranceSheet): readonly Line[] {
  const said = (["signed", "declined", "not-reached", "delivered-unsigned"] as const).flatMap((kind) => factsOf(state, kind));
  const step = sheet.steps.find(({ signed }) => signed)?.id ?? "";
  const isNamed = leftToDo(state).some((left) => !left.done && left.about?.step === step);
  return said.length > 0 || isNamed
    ? []
    : [{ about: {}, step, verdict: "not taken", reason: message("signature.missing"), waysOut: ["take it"] }];
}

const stateOf = (missing: readonly Line[]): HandingOver["state"] => (missing.length === 0 ? "everything entered" : "missing");

/** Handing over is never called clear: everything that was asked is entered, or named as left to do with a date. */
export function handingOver(state: JobState, all: readonly Finding[], now: number): HandingOver {
  const { sheet } = state;
  if (sheet === undefined) return { state: "missing", missing: [], leftToDo: leftToDo(state) };
  const missing = [...missingOf(state, sheet, all, now), ...signatureMissing(state, sheet)];
  return { state: stateOf(missing), missing, leftToDo: leftToDo(state) };
}

function beforehand(state: JobState, sheet: ToleranceSheet, due: Beforehand, all: readonly Finding[], now: number): BeforehandState {
  const own = all.filter(({ step }) => due.steps.includes(step));
  const missing = [...missingOf(state, sheet, own, now), ...outsideNow(state, sheet, due, now)];
  return { id: due.id, state: stateOf(missing), missing };
}

/**
 * What is due before something that is no covering, such as digging: everything of its steps is entered, or what is
 * missing. Never called clear. `now` in ms.
 */
export function beforehandOf(state: JobState, all: readonly Finding[], now: number): readonly BeforehandState[] {
  const { sheet } = state;
  return sheet === undefined ? [] : (sheet.beforehand ?? []).map((due) => beforehand(state, sheet, due, all, now));
}
