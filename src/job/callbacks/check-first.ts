import type { QuantityKind } from "../../units/index.ts";
import { type Located, whereIsEverything } from "../ahead/index.ts";
import type { About } from "../fact.ts";
import type { Finding } from "../finding.ts";
import { findings } from "../findings.ts";
import { aboutOfFinding } from "../lines.ts";
import { type CallbackAsked, type CallbackLook, type Symptom, type ToleranceSheet, tagSetOf } from "../sheet.ts";
import { factsOf, type JobState, stateBefore } from "../state.ts";
import type { Words } from "../words.ts";
import type { Callback } from "./callbacks.ts";

/** How far a value lies from its nearest limit: below zero it lies beyond. Integers in the fixed unit of its kind. */
export interface Room {
  readonly kind: QuantityKind;
  readonly room: number;
  readonly limit: number;
  /** Of the way from the limit to the aim, or to the middle between two limits; of the limit itself where there is neither. */
  readonly share: number;
  /** The expanded doubt is more than the room, or than what it lies beyond. */
  readonly inDoubt: boolean;
}

/** One answer of the job's own record. */
export interface CheckFirst {
  readonly about: About;
  readonly why: Words;
  readonly finding: Finding;
  readonly room?: Room;
  /** The covering that lies over it, and what was tied to marks: itself, else what lies under the same covering. */
  readonly covering?: string;
  readonly located: readonly Located[];
}

export interface FirstLooks {
  readonly asked: CallbackAsked;
  /** The likeliest first: outside, too close to call, not known; then the one with the least room. */
  readonly lines: readonly CheckFirst[];
}

function roomOf({ kind, value, aim, lower, upper, doubt }: Finding): Room | undefined {
  if (kind === undefined || value === undefined) return undefined;
  const both = lower !== undefined && upper !== undefined ? (lower + upper) / 2 : undefined;
  const rooms = [
    ...(upper === undefined ? [] : [{ room: upper - value, limit: upper }]),
    ...(lower === undefined ? [] : [{ room: value - lower, limit: lower }]),
  ].sort((a, b) => a.room - b.room);
  const [nearest] = rooms;
  if (nearest === undefined) return undefined;
  const span = Math.abs(nearest.limit - (aim ?? both ?? 0));
  return {
    kind,
    ...nearest,
    share: nearest.room / (span === 0 ? 1 : span),
    inDoubt: doubt !== undefined && doubt > Math.abs(nearest.room),
  };
}

const ranks: Readonly<Record<Finding["verdict"], number>> = {
  outside: 0,
  "too close to call": 1,
  "could not be taken": 2,
  "not taken": 2,
  within: 3,
  "does not apply": 4,
};

function byLikelihood(a: CheckFirst, b: CheckFirst): number {
  const [first, second] = [ranks[a.finding.verdict], ranks[b.finding.verdict]];
  return first - second || (a.room?.share ?? Number.POSITIVE_INFINITY) - (b.room?.share ?? Number.POSITIVE_INFINITY) || 0;
}

/** A tag's own covering, else the one that the item or check holds. */
function coveringOf(state: JobState, set: string | undefined, { tag, holds }: Finding): string | undefined {
  const hides = state.tags.find((one) => one.set === set && one.tag === tag)?.hiddenBy;
  return hides ?? (holds === "by tag" ? undefined : holds);
}

function setOf(sheet: ToleranceSheet, { of, check }: Finding): string | undefined {
  if (of !== "check") return sheet.items.find(({ id }) => id === check)?.tags;
  const known = sheet.checks.find(({ id }) => id === check);
  return known && tagSetOf(sheet.items, known);
}

function linesOfLook(state: JobState, sheet: ToleranceSheet, all: readonly Finding[], things: readonly Located[], look: CallbackLook) {
  const own = all.filter(({ of, check }) => (of === "check" ? check === look.check : check === look.item));
  return own
    .filter(({ verdict }) => verdict !== "does not apply")
    .map((finding): CheckFirst => {
      const set = setOf(sheet, finding);
      const covering = coveringOf(state, set, finding);
      const isUnder = ({ set: of, tag }: Located): boolean =>
        covering !== undefined && state.tags.some((one) => one.set === of && one.tag === tag && one.hiddenBy === covering);
      const itself = things.filter((thing) => set !== undefined && thing.set === set && thing.tag === finding.tag);
      const room = roomOf(finding);
      return {
        about: aboutOfFinding(finding),
        why: look.why,
        finding,
        ...(room === undefined ? {} : { room }),
        ...(covering === undefined ? {} : { covering }),
        located: itself.length > 0 ? itself : things.filter(isUnder),
      };
    });
}

/** What counted when the callback's first hole was opened: what is dug up is cut off from then on. */
function stateFor(state: JobState, { position }: Pick<Callback, "position">): JobState {
  const opened = factsOf(state, "opened-up-again").find((fact) => fact.position > position);
  return opened === undefined ? state : stateBefore(state, opened.position);
}

/**
 * What the job's own record says to look at first for a symptom that its tolerance sheet knows: every reading and answer that
 * the sheet names for it, the likeliest first, with where it is buried. It is a place to begin and no proof. Undefined where the
 * sheet knows nothing of it.
 */
export function checkFirst(state: JobState, symptom: string, callback: Pick<Callback, "position">): FirstLooks | undefined {
  const { sheet } = state;
  const asked = sheet?.callbacks?.find((one) => one.symptom === (symptom as Symptom));
  if (sheet === undefined || asked === undefined) return undefined;
  const then = stateFor(state, callback);
  const all = findings(then);
  const { things } = whereIsEverything(then);
  const lines = asked.look.flatMap((look) => linesOfLook(then, sheet, all, things, look));
  return { asked, lines: [...lines].sort(byLikelihood) };
}
