import {
  askedItems,
  coveredOf,
  type Finding,
  factsOf,
  type Instance,
  type JobState,
  type Live,
  measured,
  seriesOf,
  whatOf,
} from "../job/index.ts";
import { readQuantity } from "../reading/index.ts";
import { fixedPerSi } from "../units/index.ts";
import type { PictureObserved, ReadingObserved } from "./observation.ts";
import { instrumentOf } from "./observe-findings.ts";

/** The checks that read one item alone, and take nothing off it: their aim is what the reading should come to. */
function nominalOf(state: JobState, { item, tag }: Instance, all: readonly Finding[]): number | undefined {
  const alone = state.sheet?.checks.find(
    ({ function: by, items, minus }) => by === "single value" && items.length === 1 && items[0] === item.id && minus === undefined,
  );
  return all.find((finding) => finding.of === "check" && finding.check === alone?.id && finding.tag === tag)?.aim;
}

/** The check that reads an item as one of the places around a rim. */
const aroundOf = (state: JobState, { item }: Instance): string | undefined =>
  state.sheet?.checks.find((check) => check.function === "fourth place" && check.items.includes(item.id))?.id;

/** The covering that hides an item: that which it holds, itself or through a check. */
function coveringOver(state: JobState, { item, tag }: Instance, all: readonly Finding[]): string | undefined {
  const checks = state.sheet?.checks.filter(({ items }) => items.includes(item.id)).map(({ id }) => id) ?? [];
  return all.find(
    ({ check, tag: own, holds }) =>
      holds !== undefined && (check === item.id || checks.includes(check)) && (own === undefined || own === tag),
  )?.holds;
}

function isAfter(state: JobState, fact: Live, covering: string | undefined): boolean {
  const covered = coveredOf(state, covering);
  return covered !== undefined && !covered.noLaterThan && fact.position > covered.position;
}

/** Every reading that was entered and counts, whether or not a later one set it aside. */
export function readingsObserved(state: JobState, all: readonly Finding[]): readonly ReadingObserved[] {
  const { sheet } = state;
  if (sheet === undefined) return [];
  return askedItems(state, sheet)
    .filter(({ item }) => item.kind === "reading" && item.quantity !== "instant")
    .flatMap((instance) => {
      const { item, tag } = instance;
      const { counting, beforeRework } = seriesOf(state, instance);
      const facts = [...new Set([...beforeRework, ...counting])];
      const nominal = facts.length === 0 ? undefined : nominalOf(state, instance, all);
      const covering = facts.length === 0 ? undefined : coveringOver(state, instance, all);
      const around = aroundOf(state, instance);
      return facts.map((fact): ReadingObserved => {
        const { typed, unit, setUp } = whatOf(fact, "reading-taken");
        const kind = item.quantity ?? "length";
        const read = readQuantity(typed, { kind, unit, signed: true });
        const doubt = measured(state, item, fact);
        const u = doubt && Math.round(Math.hypot(...doubt.parts.values()) * fixedPerSi(kind));
        const instrument = instrumentOf(state, fact);
        return {
          entry: fact.id,
          item: item.id,
          step: item.step,
          typed,
          unit,
          kind,
          at: fact.at,
          person: fact.entry.author.person,
          phone: fact.entry.author.phone,
          afterCovering: isAfter(state, fact, covering),
          ...(tag === undefined ? {} : { tag }),
          ...(read.ok ? { value: read.value.value, resolution: read.value.resolution } : {}),
          ...(u === undefined ? {} : { u }),
          ...(instrument === undefined ? {} : { instrument }),
          ...(setUp === undefined ? {} : { setUp }),
          ...(around === undefined ? {} : { around }),
          ...(nominal === undefined ? {} : { nominal }),
        };
      });
    });
}

/** What someone else read again, beside the reading that it repeats; its doubt is that of the first, which it was read like. */
export function readAgainObserved(state: JobState, first: readonly ReadingObserved[]): readonly ReadingObserved[] {
  const byEntry = new Map(first.map((reading) => [reading.entry, reading]));
  return factsOf(state, "read-again").flatMap((fact): readonly ReadingObserved[] => {
    const { reading, typed, unit, setUp } = fact.what;
    const own = byEntry.get(reading);
    if (own === undefined) return [];
    const read = readQuantity(typed, { kind: own.kind, unit, signed: true });
    const { value: _, resolution: __, setUp: ___, around: ____, ...more } = own;
    const instrument = instrumentOf(state, fact);
    const { person, phone } = fact.entry.author;
    return [
      {
        ...more,
        entry: fact.id,
        typed,
        unit,
        at: fact.at,
        person,
        phone,
        blindOf: reading,
        ...(read.ok ? { value: read.value.value, resolution: read.value.resolution } : {}),
        ...(setUp === undefined ? {} : { setUp }),
        ...(instrument === undefined ? {} : { instrument }),
      },
    ];
  });
}

/** Every picture that the crew took. `likenesses`: by the photo's hash, where media has found one. */
export function picturesObserved(
  state: JobState,
  all: readonly Finding[],
  likenesses: ReadonlyMap<string, string>,
): readonly PictureObserved[] {
  const { sheet } = state;
  if (sheet === undefined) return [];
  return askedItems(state, sheet)
    .filter(({ item }) => item.kind === "picture")
    .flatMap((instance) => {
      const facts = seriesOf(state, instance).counting.filter(({ kind }) => kind === "picture-taken");
      const covering = facts.length === 0 ? undefined : coveringOver(state, instance, all);
      return facts.map((fact): PictureObserved => {
        const { photo } = whatOf(fact, "picture-taken");
        const likeness = likenesses.get(photo);
        return {
          entry: fact.id,
          item: instance.item.id,
          step: instance.item.step,
          photo,
          at: fact.at,
          person: fact.entry.author.person,
          afterCovering: isAfter(state, fact, covering),
          ...(likeness === undefined ? {} : { likeness }),
        };
      });
    });
}
