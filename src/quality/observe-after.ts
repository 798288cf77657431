import { callbacksOf, factsOf, type JobState } from "../job/index.ts";
import { dayText } from "./days.ts";
import type { CallbackObserved, PartObserved, ReworkObserved } from "./observation.ts";

/** What was done again, and how long it took. */
export function reworksObserved(state: JobState): readonly ReworkObserved[] {
  const { sheet } = state;
  return factsOf(state, "reworked").map(({ at, entry, what: { about, minutes } }) => {
    const thing = sheet?.checks.find(({ id }) => id === about.check) ?? sheet?.items.find(({ id }) => id === about.item);
    return {
      about: about.check ?? about.item ?? "",
      step: thing?.step ?? "",
      at,
      person: entry.author.person,
      minutes: Number.isFinite(minutes) ? minutes : 0,
    };
  });
}

export function callbacksObserved(state: JobState, zone: string): readonly CallbackObserved[] {
  const days = new Map(factsOf(state, "callback-opened").map(({ id, at, what }) => [id, what.day ?? dayText(at, zone)]));
  return callbacksOf(state).map(({ entry, symptom, at, closed }) => {
    const { cause, confirmed = false, part, borneBy, minutes, travelMinutes, partsCost, recovered } = closed ?? {};
    const known = { cause, part, borneBy, minutes, travelMinutes, partsCost, recovered };
    const said = Object.entries(known).filter(([, value]) => value !== undefined);
    return { entry, symptom, day: days.get(entry) ?? dayText(at, zone), confirmed, ...Object.fromEntries(said) };
  });
}

/** A word of a kit card, such as the maker's lot. */
const wordOf = (facts: Readonly<Record<string, unknown>>, name: string): string | undefined => {
  const word = facts[name];
  return typeof word === "string" && word !== "unknown" ? word : undefined;
};

/** Every bought part from the day that its cover begins, and what ended it. A replacement is watched as a part of its own. */
export function partsObserved(
  state: JobState,
  installed: string | undefined,
  callbacks: readonly CallbackObserved[],
): readonly PartObserved[] {
  if (installed === undefined) return [];
  const replaced = factsOf(state, "part-replaced").map(({ what }) => what);
  return state.kitCards.flatMap((card): readonly PartObserved[] => {
    const { part } = card;
    const called = callbacks.filter((callback) => callback.confirmed && callback.part === part);
    const own = replaced.filter((what) => what.part === part).sort((a, b) => (a.day < b.day ? -1 : 1));
    const ends = [
      ...own.map(({ day, why, serial }) => ({ day, why, serial })),
      ...(own.length > 0 ? [] : called.slice(0, 1).map(({ day }) => ({ day, why: "callback" as const, serial: undefined }))),
    ];
    const [lot, serial] = [wordOf(card.facts, "lot"), wordOf(card.facts, "serial")];
    const parts: PartObserved[] = [];
    let from = { day: installed, serial, lot };
    for (const { day, why, serial: next } of ends) {
      parts.push({ ...named(part, from), failed: day, why });
      from = { day, serial: next, lot: undefined };
    }
    return ends.at(-1)?.why === "callback" ? parts : [...parts, named(part, from)];
  });
}

const named = (
  part: string,
  from: { readonly day: string; readonly serial: string | undefined; readonly lot: string | undefined },
): PartObserved => ({
  part,
  from: from.day,
  ...(from.serial === undefined ? {} : { serial: from.serial }),
  ...(from.lot === undefined ? {} : { lot: from.lot }),
});
