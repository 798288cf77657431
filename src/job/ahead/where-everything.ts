import type { Uncertain } from "../../doubt/index.ts";
import { leaveCore } from "../../tolerance/index.ts";
import { fixedPerSi } from "../../units/index.ts";
import type { PlacedPoint, PlaceOnPlan, PointOnPlan } from "../design/index.ts";
import { instanceFor, pointOf } from "../evaluation.ts";
import { happenedAt, type Live } from "../live.ts";
import { readingsOf } from "../measured.ts";
import type { DrawnAs } from "../sheet.ts";
import { type MarkDistance, sitePlaced } from "../site-placed.ts";
import type { JobState } from "../state.ts";
import type { TieTaken } from "../tied-things.ts";
import type { Words } from "../words.ts";
import { itemsWhere, type Said, said, tagWords } from "./said.ts";

/** A length as it was read, micrometres, with its expanded doubt, by which entries and when last (ms). */
export interface Known {
  readonly value: number;
  readonly doubt: number;
  readonly entries: readonly string[];
  readonly at: number;
}

/** Something in the ground, or the mark that it was tied to. */
export interface Located {
  /** Alike for all ties of one thing, and for no others. */
  readonly key: string;
  readonly name: Words;
  readonly set?: string;
  readonly tag?: string;
  readonly drawnAs?: DrawnAs;
  readonly ties: readonly (Known & { readonly mark: string; readonly disagree: boolean })[];
  /** Micrometres from the first mark; absent where its ties place it nowhere or in two places. */
  readonly place?: PlacedPoint;
  readonly state: PointOnPlan["state"] | "not tied" | "no plan";
  /** Under the ground: its own, else the shallowest of the whole run, which says least. */
  readonly depth?: Known & { readonly of: "itself" | "the whole run" };
  readonly says: Said;
}

export interface WhereIsEverything {
  readonly marks: readonly {
    readonly name: string;
    readonly place?: PlaceOnPlan;
    readonly distances: readonly (Known & { readonly mark: string })[];
  }[];
  readonly things: readonly Located[];
}

function known(of: Uncertain, facts: readonly Live[]): Known {
  const { value, expanded: doubt } = leaveCore(of, fixedPerSi("length"));
  return { value, doubt, entries: facts.map(({ id }) => id), at: Math.max(...facts.map(happenedAt)) };
}

function depthRead(state: JobState, set: string | undefined, tag: string | undefined): Known | undefined {
  const items = itemsWhere(state, (item) => item.buriedDepth === true && item.tags === set);
  const readings = items.flatMap((item) => readingsOf(state, instanceFor(item, tag)));
  const point = pointOf(readings);
  return (
    point &&
    known(
      point.value,
      readings.map(({ fact }) => fact),
    )
  );
}

/** Only what lies in the run has the run's depth. */
function depthOf(state: JobState, set: string | undefined, tag: string | undefined): Located["depth"] {
  if (set === undefined) return undefined;
  const own = depthRead(state, set, tag);
  if (own) return { ...own, of: "itself" };
  const isAsked = itemsWhere(state, (item) => item.buriedDepth === true && item.tags === set).length > 0;
  const run = isAsked ? depthRead(state, undefined, undefined) : undefined;
  return run && { ...run, of: "the whole run" };
}

const tieView = (tie: TieTaken): Located["ties"][number] => ({
  ...known(tie.distance, tie.facts),
  mark: tie.mark,
  disagree: tie.disagree,
});

function sentence({ name, ties, depth, state }: Omit<Located, "says">): Said {
  const key =
    state === "not tied" ? "where.not-tied" : depth === undefined ? "where.tied" : `where.tied-${depth.of === "itself" ? "deep" : "run"}`;
  return said(key, { ties: ties.length, ...(depth ? { depthLength: depth.value } : {}) }, { what: [name] });
}

const complete = (thing: Omit<Located, "says">): Located => ({ ...thing, says: sentence(thing) });

/** Tags whose set is tied and that nobody tied, marks apart. */
function untied(state: JobState, isKnown: (set: string, tag: string) => boolean): readonly Located[] {
  const sets = new Set(itemsWhere(state, ({ fromMark }) => fromMark === true).flatMap(({ tags }) => tags ?? []));
  return state.tags
    .filter(({ set, tag }) => sets.has(set) && !isKnown(set, tag))
    .map(({ set, tag }) => {
      const depth = depthOf(state, set, tag);
      const name = tagWords(state, set, tag);
      return complete({ key: `${set} ${tag}`, name, set, tag, ties: [], state: "not tied", ...(depth ? { depth } : {}) });
    });
}

const between = ({ from, to, tie }: MarkDistance, name: string): Known & { readonly mark: string } => ({
  ...known(tie.distance, tie.facts),
  mark: from === name ? to : from,
});

/**
 * The last known places: fixed marks with the distances between them, and everything that was tied to them or is still to be tied,
 * each with its ties, its place on the plan and how deep it lies. Nothing is left out for want of a plan.
 */
export function whereIsEverything(state: JobState): WhereIsEverything {
  const site = sitePlaced(state, "all");
  const marks = site.marks.map(({ name }) => {
    const place = site.plan?.marks.find((mark) => mark.name === name);
    const distances = site.distances.filter(({ from, to }) => from === name || to === name).map((distance) => between(distance, name));
    return { name, ...(place ? { place } : {}), distances };
  });
  const tied = site.points.map(({ key, item, tag, ties }): Located => {
    const point = site.plan?.points.find(({ name }) => name === key);
    const depth = depthOf(state, tag?.set, tag?.tag);
    return complete({
      key,
      name: tag ? tagWords(state, tag.set, tag.tag) : (item.locates ?? item.title),
      ...(tag ? { set: tag.set, tag: tag.tag } : {}),
      ...(item.drawnAs ? { drawnAs: item.drawnAs } : {}),
      ties: ties.map(tieView),
      state: point?.state ?? "no plan",
      ...(point?.state === "placed" ? { place: point } : {}),
      ...(depth ? { depth } : {}),
    });
  });
  const isMark = (set: string, tag: string): boolean => site.marks.some((mark) => mark.tag?.set === set && mark.tag.tag === tag);
  const isTied = (set: string, tag: string): boolean => tied.some((thing) => thing.set === set && thing.tag === tag);
  return { marks, things: [...tied, ...untied(state, (set, tag) => isMark(set, tag) || isTied(set, tag))] };
}
