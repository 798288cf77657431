import { expanded, type Uncertain } from "../doubt/index.ts";
import type { FurtherMark, MeasuredMarks, SideSaid, Tie } from "../geometry/index.ts";
import type { Refusal } from "../outcome/index.ts";
import { type SitePlan, sitePlan } from "./design/index.ts";
import { oncePer } from "./once-per.ts";
import { remembered } from "./remembered.ts";
import type { JobState, Tag } from "./state.ts";
import { type TiedThing, type TieTaken, tiedThings } from "./tied-things.ts";

/** A mark as the ties call it. */
export interface SiteMark {
  readonly name: string;
  /** Its own tag, where one of them is what the ties call it. */
  readonly tag?: Tag;
  /** The mark's own ties to other marks, where it has any. */
  readonly tied?: TiedThing;
}

/** A distance between two marks, whichever of the two was tied to the other. */
export interface MarkDistance {
  readonly from: string;
  readonly to: string;
  readonly tie: TieTaken;
}

/** The marks and points of a site, placed as far as their distances go. */
export interface SitePlaced {
  readonly marks: readonly SiteMark[];
  readonly distances: readonly MarkDistance[];
  readonly points: readonly TiedThing[];
  /** Its points are named by their keys, its marks by their names. */
  readonly plan?: SitePlan;
  /** Marks that were left out, each with why. */
  readonly left: readonly { readonly mark: string; readonly refusal: Refusal }[];
  /** Why there is no plan, where distances between marks are there. */
  readonly refusal?: Refusal;
}

const plain = (text: string): string => text.trim().toLowerCase();

/** The ways in which a tie may call a tag that is a mark. */
const namesOf = ({ tag, description }: Tag): readonly string[] =>
  (description === undefined ? [tag] : [tag, description, `${tag}, ${description}`, `${tag}: ${description}`]).map(plain);

/** The tags that can be a mark: their own set is tied. One of another set may bear the same letter. */
function tiedTags({ sheet, tags }: JobState): readonly Tag[] {
  const sets = new Set((sheet?.items ?? []).flatMap((item) => (item.fromMark === true && item.tags !== undefined ? [item.tags] : [])));
  return tags.filter(({ set }) => sets.has(set));
}

/** One name for a mark however its ties spell it: as it was first called. */
function spelling(things: readonly TiedThing[], tags: readonly Tag[]): (mark: string) => string {
  const called = [...new Set(things.flatMap(({ ties }) => ties.map(({ mark }) => mark)))];
  const keyOf = (mark: string): string => {
    const found = tags.filter((tag) => namesOf(tag).includes(plain(mark)));
    const [only] = found;
    return only !== undefined && found.length === 1 ? `${only.set}/${only.tag}` : plain(mark);
  };
  const firsts = new Map<string, string>();
  const spelt = new Map<string, string>();
  for (const mark of called) {
    const key = keyOf(mark);
    if (!firsts.has(key)) firsts.set(key, mark);
    spelt.set(mark, firsts.get(key) ?? mark);
  }
  return (mark) => spelt.get(mark) ?? mark;
}

/** Ties under one spelling of their marks. The better of two that then are to the same mark stands. */
function respelt(thing: TiedThing, spelt: (mark: string) => string): TiedThing {
  const ties = new Map<string, TieTaken>();
  for (const tie of thing.ties) {
    const mark = spelt(tie.mark);
    const known = ties.get(mark);
    if (known === undefined || expanded(tie.distance) < expanded(known.distance)) ties.set(mark, { ...tie, mark });
  }
  const { side } = thing;
  return { ...thing, ties: [...ties.values()], ...(side ? { side: { ...side, from: spelt(side.from), to: spelt(side.to) } } : {}) };
}

const isCalled = ({ tag }: TiedThing, mark: string): boolean => tag !== undefined && namesOf(tag).includes(plain(mark));

function marksOf(things: readonly TiedThing[], tags: readonly Tag[]): readonly SiteMark[] {
  const names = [...new Set(things.flatMap(({ ties }) => ties.map(({ mark }) => mark)))];
  return names.map((name) => {
    const own = things.filter((thing) => isCalled(thing, name));
    const called = tags.filter((tag) => namesOf(tag).includes(plain(name)));
    const [tied, tag] = [own.length === 1 ? own[0] : undefined, called.length === 1 ? called[0] : undefined];
    return { name, ...(tied ? { tied } : {}), ...(tag ? { tag } : {}) };
  });
}

const distancesOf = (marks: readonly SiteMark[]): readonly MarkDistance[] =>
  marks.flatMap(({ name, tied }) =>
    (tied?.ties ?? []).filter(({ mark }) => mark !== name).map((tie) => ({ from: tie.mark, to: name, tie })),
  );

/** A side between two marks that are both there. */
const sideAmong = (side: SideSaid | undefined, without: ReadonlySet<string>): { readonly side?: SideSaid } =>
  side === undefined || without.has(side.from) || without.has(side.to) ? {} : { side };

/** The measured marks, from the first two that were measured to each other; undefined where no two were. */
function measuredMarks(marks: readonly SiteMark[], all: readonly MarkDistance[], without: ReadonlySet<string>): MeasuredMarks | undefined {
  const distances = all.filter(({ from, to }) => !without.has(from) && !without.has(to));
  const [base] = distances;
  if (base === undefined) return undefined;
  const between = (a: string, b: string): Uncertain | undefined =>
    distances
      .filter(({ from, to }) => (from === a && to === b) || (from === b && to === a))
      .map(({ tie }) => tie.distance)
      .sort((one, other) => expanded(one) - expanded(other))[0];
  const further = marks
    .filter(({ name }) => name !== base.from && name !== base.to && !without.has(name))
    .map(({ name, tied }): FurtherMark => {
      const ties = marks.flatMap((other) => {
        const distance = other.name === name ? undefined : between(name, other.name);
        return distance ? [{ mark: other.name, distance }] : [];
      });
      return { name, ties, ...sideAmong(tied?.side, without) };
    });
  return { first: base.from, second: { name: base.to, distance: base.tie.distance }, further };
}

/** A distance with its doubt as rows, which a text can hold. */
const inRows = ({ value, parts }: Uncertain): readonly unknown[] => [value, ...parts];
const tiesInRows = (ties: readonly Tie[]): readonly unknown[] => ties.map(({ mark, distance }) => [mark, inRows(distance)]);

/** Most entries tie nothing: as many jobs as a phone has open, each with a few marks left out, keep their plan from one to the next. */
const planned = remembered(16, sitePlan, ([{ first, second, further = [] }, points]) =>
  JSON.stringify([
    [first, second.name, inRows(second.distance)],
    further.map(({ name, ties, side }) => [name, tiesInRows(ties), side]),
    points.map(({ name, ties, side }) => [name, tiesInRows(ties), side]),
  ]),
);

/** The plan of as many marks as can be placed: one that cannot is left out, with what it lacks. */
export const sitePlaced = oncePer((state: JobState, _: "all"): SitePlaced => {
  const raw = tiedThings(state);
  const tags = tiedTags(state);
  const spelt = spelling(raw, tags);
  const things = raw.map((thing) => respelt(thing, spelt));
  const marks = marksOf(things, tags);
  const distances = distancesOf(marks);
  const points = things.filter((thing) => !marks.some(({ tied }) => tied === thing));
  const site = { marks, distances, points };
  const isTied = (name: string): boolean => distances.some(({ from, to }) => from === name || to === name);
  const without = new Set(marks.map(({ name }) => name).filter((name) => !isTied(name)));
  const left: { readonly mark: string; readonly refusal: Refusal }[] = [];
  for (;;) {
    const measured = measuredMarks(marks, distances, without);
    if (measured === undefined) return { ...site, left };
    const plan = planned(
      measured,
      points.map(({ key, ties, side }) => ({
        name: key,
        ties: ties.filter(({ mark }) => !without.has(mark)),
        ...sideAmong(side, without),
      })),
    );
    if (plan.ok) return { ...site, plan: plan.value, left };
    const { refusal } = plan;
    const further = measured.further ?? [];
    const failing = further.find(({ name }) => refusal.figures.mark === name || refusal.place.endsWith(`/${name}`)) ?? further.at(-1);
    if (failing === undefined) return { ...site, left, refusal };
    without.add(failing.name);
    left.push({ mark: failing.name, refusal });
  }
});
