import { type Correction, correctionFor, type SetOutPlace, type SetOutTarget } from "../../geometry/index.ts";
import { judge, leaveCore, toInteger } from "../../tolerance/index.ts";
import { fixedPerSi } from "../../units/index.ts";
import { pointOf } from "../evaluation.ts";
import type { Verdict } from "../finding.ts";
import { askedItems } from "../instances.ts";
import { readingsOf } from "../measured.ts";
import type { JobState } from "../state.ts";

/** A rod reading beside its aim. Lengths in micrometres. */
export interface SetOutReading {
  readonly item: string;
  readonly tag?: string;
  /** Entries of this set-up that it is the mean of. */
  readonly entries: readonly string[];
  /** Place in the work of the newest of them. */
  readonly position: number;
  readonly value: number;
  readonly move: Correction["move"];
  /** How much to raise or lower, not negative. */
  readonly by: number;
  /** Height of what is there over the aim, with its expanded doubt: what the set-up shares has dropped out. */
  readonly overAim: number;
  readonly doubt: number;
  /** Against the sheet's limits, where it has any for this place. */
  readonly verdict?: Extract<Verdict, "within" | "outside" | "too close to call">;
}

const perMetre = fixedPerSi("length");

/** What was read of a place in the set-up in use, each item and tag by itself. */
export function setOutReadings(state: JobState, place: SetOutPlace, setUp: string, target: SetOutTarget): readonly SetOutReading[] {
  const { sheet } = state;
  if (sheet === undefined) return [];
  return askedItems(state, sheet).flatMap((instance): readonly SetOutReading[] => {
    if (instance.item.setOut !== place) return [];
    const readings = readingsOf(state, instance).filter((reading) => reading.setUp === setUp);
    const point = pointOf(readings);
    const corrected = point && correctionFor(target, point.value);
    if (point === undefined || !corrected?.ok) return [];
    const { move, by, overAim } = corrected.value;
    const { value, expanded: doubt } = leaveCore(overAim, perMetre);
    const { lowBy, highBy } = target;
    const bounds = {
      ...(lowBy === undefined ? {} : { lower: -toInteger(lowBy * perMetre) }),
      ...(highBy === undefined ? {} : { upper: toInteger(highBy * perMetre) }),
    };
    const judged = lowBy === undefined && highBy === undefined ? undefined : judge({ value, expanded: doubt, rule: "guarded", ...bounds });
    return [
      {
        item: instance.item.id,
        ...(instance.tag === undefined ? {} : { tag: instance.tag }),
        entries: readings.map(({ fact }) => fact.id),
        position: Math.max(...readings.map(({ fact }) => fact.position)),
        value: leaveCore(point.value, perMetre).value,
        move,
        by: leaveCore(by, perMetre).value,
        overAim: value,
        doubt,
        ...(judged?.ok ? { verdict: judged.value.verdict } : {}),
      },
    ];
  });
}
