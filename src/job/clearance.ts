import { standingOf } from "./clears.ts";
import { coveredOf, lastOpened } from "./covered.ts";
import type { Clearance, CoveredState, Finding } from "./finding.ts";
import { linesOf } from "./lines.ts";
import { whatOf } from "./live.ts";
import { factsOf, type JobState } from "./state.ts";

/** What is known of a covering that happened: what the phone showed then, and whether it still holds. */
function coveredState(state: JobState, covering: string, clearNow: boolean): CoveredState | undefined {
  const covered = coveredOf(state, covering);
  if (covered === undefined) return undefined;
  const { fact, at, noLaterThan, beforeRecord } = covered;
  if (noLaterThan) return { entry: fact.id, at, noLaterThan, laterDoubted: false, ...(beforeRecord && { beforeRecord }) };
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
