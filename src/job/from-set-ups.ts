import {
  agreeWithinDoubt,
  mean,
  type NonEmpty,
  ofSetUp,
  roleOfSource,
  sourceRoles,
  subtract,
  total,
  type Uncertain,
} from "../doubt/index.ts";
import { movedSince } from "../geometry/index.ts";
import {
  type ByItem,
  type Compute,
  type Context,
  compute,
  disagree,
  type Evaluation,
  entriesOf,
  instancesOf,
  lacking,
  missingOf,
  type Point,
  plain,
  pointOf,
  readAll,
} from "./evaluation.ts";
import type { About } from "./fact.ts";
import type { Message } from "./finding.ts";
import type { Live } from "./live.ts";
import { type Closing, closingOf, type Reading } from "./measured.ts";

/** The set-ups that readings came from, the newest last. */
const setUpsIn = (readings: ByItem): readonly string[] => {
  const newest = new Map<string, number>();
  for (const { setUp, fact } of [...readings.values()].flat())
    if (setUp !== undefined) newest.set(setUp, Math.max(newest.get(setUp) ?? -1, fact.position));
  return [...newest].sort(([, a], [, b]) => a - b).map(([setUp]) => setUp);
};

/** What was read from one set-up; what needs none stands beside it. */
function inSetUp(context: Context, readings: ByItem, setUp: string): ByItem {
  const free = new Set(instancesOf(context, [...readings.keys()]).flatMap(({ item }) => (item.inSetUp ? [] : [item.id])));
  return new Map([...readings].map(([id, list]) => [id, list.filter((r) => free.has(id) || r.setUp === setUp)]));
}

const notClosed = (closing: Closing | undefined): Message => ({
  key: "reason.mark-not-closed",
  figures: { difference: closing?.difference ?? 0, allowed: closing?.allowed ?? 0 },
});

interface FromSetUp {
  readonly setUp: string;
  readonly value: Uncertain;
  readonly agrees: boolean;
  readonly closing: Closing;
}

/** The value from each set-up that has read all places; one that did not close counts only while there is no better. */
function bySetUp(context: Context, ids: readonly string[], readings: ByItem, of: Compute): readonly FromSetUp[] {
  const all = setUpsIn(readings).flatMap((setUp) => {
    const result = compute(ids, inSetUp(context, readings, setUp), of);
    return result === undefined ? [] : [{ ...result, setUp, closing: closingOf(context.state, setUp) }];
  });
  const standing = all.filter(({ closing }) => closing.state !== "does not close");
  return standing.length > 0 ? standing : all;
}

/**
 * The same value from several set-ups as one. As with readings of one point, resolution and placing go down with √n and
 * the rest stays whole; but within each value the places' parts stand in quadrature, as they did.
 */
function meanOfSetUps([first, ...rest]: readonly Uncertain[]): Point | undefined {
  if (first === undefined) return undefined;
  const [second, third] = rest;
  if (second === undefined) return { value: first, agrees: true };
  const values: NonEmpty<Uncertain> = [first, ...rest];
  const byChance = (source: string): boolean => ["resolution", "placing"].includes(roleOfSource(source) ?? "");
  const parts = new Map([...mean(values).parts].filter(([source]) => byChance(source)));
  for (const role of sourceRoles.filter((r) => !byChance(`/${r}`))) {
    const whole = values.map((value) =>
      total([...value.parts].flatMap(([source, part]) => (roleOfSource(source) === role ? [part * part] : []))),
    );
    const u = total(whole.map(Math.sqrt)) / values.length;
    if (u > 0) parts.set(ofSetUp("all", role), u);
  }
  return { value: { value: mean(values).value, parts }, agrees: third !== undefined || agreeWithinDoubt(first, second).agrees };
}

/** Readings off a level line from set-ups that do not count. */
function notFrom(context: Context, readings: ByItem, setUps: ReadonlySet<string | undefined>): readonly Live[] {
  return instancesOf(context, [...readings.keys()])
    .filter(({ item }) => item.inSetUp)
    .flatMap(({ item }) => (readings.get(item.id) ?? []).filter((r) => !setUps.has(r.setUp)).map((r) => r.fact));
}

function fromSetUps(context: Context, ids: readonly string[], readings: ByItem, of: Compute): Evaluation {
  const entries = entriesOf(readings);
  const values = bySetUp(context, ids, readings, of);
  const point = meanOfSetUps(values.map((v) => v.value));
  if (point === undefined) {
    const newest = setUpsIn(readings).at(-1);
    return lacking(missingOf(context, ids, newest === undefined ? readings : inSetUp(context, readings, newest)), entries);
  }
  const open = values.find(({ closing }) => closing.state === "does not close");
  const agrees = point.agrees && values.every((v) => v.agrees);
  const unsettled = open ? notClosed(open.closing) : agrees ? undefined : disagree;
  return {
    state: "value",
    value: point.value,
    entries,
    marks: values.flatMap(({ closing }) => closing.reads),
    aside: notFrom(context, readings, new Set(values.map(({ setUp }) => setUp))),
    ...(values.some(({ closing }) => closing.state === "so far") ? { soFar: true } : {}),
    ...(unsettled ? { unsettled } : {}),
  };
}

/** A value from readings of one set-up each, so that the line's own height drops out of it; else from plain readings. */
export function computed(context: Context, ids: readonly string[], of: Compute): Evaluation {
  const readings = readAll(context, ids);
  const usesSetUp = instancesOf(context, ids).some(({ item }) => item.inSetUp === true);
  return (usesSetUp ? fromSetUps : plain)(context, ids, readings, of);
}

interface PlaceMeasured {
  readonly setUp: string;
  readonly height: Uncertain;
  readonly agrees: boolean;
  readonly closing: Closing;
}

/** Height of one place over the height mark, from the newest set-up that closed, else the newest that read both. */
function overMark(context: Context, readings: readonly Reading[]): PlaceMeasured | undefined {
  const set = setUpsIn(new Map([["", readings]])).map((setUp) => ({ setUp, closing: closingOf(context.state, setUp) }));
  const read = set.filter(({ closing }) => closing.mark !== undefined);
  const used = read.filter(({ closing }) => closing.state === "closed").at(-1) ?? read.at(-1);
  const point = used && pointOf(readings.filter((r) => r.setUp === used.setUp));
  if (point === undefined || used?.closing.mark === undefined) return undefined;
  return { height: subtract(used.closing.mark, point.value), agrees: point.agrees, closing: used.closing, setUp: used.setUp };
}

interface Moved {
  readonly place: About;
  readonly now: PlaceMeasured;
  readonly then: PlaceMeasured;
  readonly by: Uncertain;
}

/** The largest move stands for all places, so that one corner that sank is not averaged away. */
const largest = (moves: readonly Moved[]): Moved | undefined =>
  moves.reduce<Moved | undefined>(
    (worst, move) => (worst === undefined || Math.abs(move.by.value) > Math.abs(worst.by.value) ? move : worst),
    undefined,
  );

/** How far the place that moved most went up or down since it was first read, each time over the height mark. */
export function movedOverMark(context: Context): Evaluation {
  const { items, minus: before = [] } = context.check;
  const readings = readAll(context, [...items, ...before]);
  const entries = entriesOf(readings);
  const pairs = items.flatMap((id, i): readonly Moved[] => {
    const now = overMark(context, readings.get(id) ?? []);
    const then = overMark(context, readings.get(before[i] ?? "") ?? []);
    return now && then ? [{ place: { item: id }, now, then, by: movedSince(then.height, now.height) }] : [];
  });
  const move = largest(pairs);
  if (pairs.length < items.length || move === undefined) return lacking(missingOf(context, [...items, ...before], readings), entries);
  const closings = pairs.flatMap(({ now, then }) => [now.closing, then.closing]);
  const open = closings.find((closing) => closing.state === "does not close");
  const marks = new Map<string, Live>(closings.flatMap(({ reads }) => reads.map((fact) => [fact.id, fact])));
  return {
    state: "value",
    value: move.by,
    place: move.place,
    entries,
    aside: pairs
      .flatMap(({ place, now, then }, i) => [
        ...(readings.get(place.item ?? "") ?? []).filter((r) => r.setUp !== now.setUp),
        ...(readings.get(before[i] ?? "") ?? []).filter((r) => r.setUp !== then.setUp),
      ])
      .map((r) => r.fact),
    marks: [...marks.values()],
    ...(closings.some((closing) => closing.state === "so far") ? { soFar: true } : {}),
    ...(open ? { unsettled: notClosed(open) } : pairs.every(({ now, then }) => now.agrees && then.agrees) ? {} : { unsettled: disagree }),
  };
}
