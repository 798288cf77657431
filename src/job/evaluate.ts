import { certain, expanded, magnitude, mean, type NonEmpty, repeated, subtract, type Uncertain, withSource } from "../doubt/index.ts";
import { fitPlane, fourthPlace, heightFromRod, lipOutOfLevel, movedSince, risesAcross } from "../geometry/index.ts";
import type { About } from "./fact.ts";
import type { Message } from "./finding.ts";
import type { Live } from "./live.ts";
import { type Arrangement, closingOf, type Reading, readingsOf } from "./measured.ts";
import { aboutOf, type Instance, seriesOf } from "./series.ts";
import type { Check, CheckFunction, Item } from "./sheet.ts";
import type { JobState } from "./state.ts";

/** What a check comes to before its limits: a value with its doubt, or what it waits for. */
export type Evaluation =
  | {
      readonly state: "value";
      /** SI of the check's kind. */
      readonly value: Uncertain;
      readonly entries: readonly Live[];
      readonly soFar?: boolean;
      /** Something that no limit can settle: the mark did not close, two readings disagree. */
      readonly unsettled?: Message;
      readonly times?: { readonly since: number; readonly until?: number };
    }
  | { readonly state: "lacking"; readonly missing: readonly About[]; readonly entries: readonly Live[] }
  | { readonly state: "answered"; readonly met: boolean; readonly entries: readonly Live[] };

interface Context {
  readonly state: JobState;
  readonly check: Check;
  readonly tag: string | undefined;
}

type ByItem = ReadonlyMap<string, readonly Reading[]>;

function instanceOf({ state, tag }: Context, id: string): Instance | undefined {
  const item = state.sheet?.items.find((i) => i.id === id);
  if (item === undefined) return undefined;
  return item.tags === undefined || tag === undefined ? { item } : { item, tag };
}

function instancesOf(context: Context, ids: readonly string[]): readonly Instance[] {
  return ids.map((id) => instanceOf(context, id)).filter((i) => i !== undefined);
}

const lacking = (instances: readonly Instance[], entries: readonly Live[] = []): Evaluation => ({
  state: "lacking",
  missing: instances.map(aboutOf),
  entries,
});

function readAll(context: Context, ids: readonly string[], arrange?: (index: number) => Arrangement): ByItem {
  return new Map(instancesOf(context, ids).map((instance, i) => [instance.item.id, readingsOf(context.state, instance, arrange?.(i))]));
}

/** The mean of the readings of one point, and whether they agree with each other. */
function pointOf(readings: readonly Reading[]): { readonly value: Uncertain; readonly agrees: boolean } | undefined {
  const [first, ...rest] = readings.map((r) => r.value);
  if (first === undefined) return undefined;
  const point = repeated([first, ...rest]);
  return { value: point.mean, agrees: readings.length !== 2 || point.agrees };
}

type Compute = (points: ReadonlyMap<string, Uncertain>) => Uncertain | undefined;

/** Points of all items, from the readings handed in. */
function compute(
  ids: readonly string[],
  readings: ByItem,
  of: Compute,
): { readonly value: Uncertain; readonly agrees: boolean } | undefined {
  const points = new Map<string, Uncertain>();
  let agrees = true;
  for (const id of ids) {
    const point = pointOf(readings.get(id) ?? []);
    if (point === undefined) return undefined;
    points.set(id, point.value);
    agrees &&= point.agrees;
  }
  const value = of(points);
  return value === undefined ? undefined : { value, agrees };
}

const disagree: Message = { key: "reason.readings-disagree", figures: {} };

function missingOf(context: Context, ids: readonly string[], readings: ByItem): readonly Instance[] {
  return instancesOf(context, ids).filter(({ item }) => (readings.get(item.id) ?? []).length === 0);
}

/** Readings that stand by themselves. */
function plain(context: Context, ids: readonly string[], readings: ByItem, of: Compute): Evaluation {
  const entries = [...readings.values()].flat().map((r) => r.fact);
  const result = compute(ids, readings, of);
  if (result === undefined) return lacking(missingOf(context, ids, readings), entries);
  return { state: "value", value: result.value, entries, ...(result.agrees ? {} : { unsettled: disagree }) };
}

const setUpsIn = (readings: ByItem): readonly string[] => [...new Set([...readings.values()].flat().flatMap((r) => r.setUp ?? []))];

const inSetUp = (readings: ByItem, setUp: string): ByItem =>
  new Map([...readings].map(([id, list]) => [id, list.filter((r) => r.setUp === setUp)]));

interface FromSetUp {
  readonly setUp: string;
  readonly value: Uncertain;
  readonly agrees: boolean;
  readonly closing: ReturnType<typeof closingOf>;
}

/** The value from each set-up that has read all places; a set-up that did not close counts only while there is no better. */
function bySetUp(context: Context, ids: readonly string[], readings: ByItem, of: Compute): readonly FromSetUp[] {
  const all = setUpsIn(readings).flatMap((setUp) => {
    const result = compute(ids, inSetUp(readings, setUp), of);
    return result === undefined ? [] : [{ setUp, ...result, closing: closingOf(context.state, setUp) }];
  });
  const standing = all.filter(({ closing }) => closing.state !== "does not close");
  return standing.length > 0 ? standing : all;
}

function fromSetUps(context: Context, ids: readonly string[], readings: ByItem, of: Compute): Evaluation {
  const entries = [...readings.values()].flat().map((r) => r.fact);
  const values = bySetUp(context, ids, readings, of);
  const [first, ...rest] = values.map((v) => v.value);
  if (first === undefined) {
    const newest = setUpsIn(readings).at(-1);
    return lacking(missingOf(context, ids, newest === undefined ? readings : inSetUp(readings, newest)), entries);
  }
  const together = repeated([first, ...rest]);
  const open = values.find(({ closing }) => closing.state === "does not close");
  const unsettled: Message | undefined = open
    ? { key: "reason.mark-not-closed", figures: { difference: open.closing.difference ?? 0, allowed: open.closing.allowed ?? 0 } }
    : values.every((v) => v.agrees) && (values.length !== 2 || together.agrees)
      ? undefined
      : disagree;
  return {
    state: "value",
    value: together.mean,
    entries,
    ...(values.every(({ closing }) => closing.state === "closed") ? {} : { soFar: true }),
    ...(unsettled ? { unsettled } : {}),
  };
}

const usesSetUp = (context: Context, ids: readonly string[]): boolean =>
  instancesOf(context, ids).some(({ item }) => item.inSetUp === true);

function computed(context: Context, ids: readonly string[], of: Compute): Evaluation {
  const readings = readAll(context, ids);
  return usesSetUp(context, ids) ? fromSetUps(context, ids, readings, of) : plain(context, ids, readings, of);
}

const pick = (points: ReadonlyMap<string, Uncertain>, ids: readonly string[]): NonEmpty<Uncertain> | undefined => {
  const [first, ...rest] = ids.map((id) => points.get(id)).filter((p) => p !== undefined);
  return first === undefined ? undefined : [first, ...rest];
};

/** Places in order around the rim, on axes whose unit is the basin's own extent: a tilt then is the rise across the basin. */
const placesAround = {
  corners: [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ],
  "quarter points": [
    [-0.5, 0],
    [0, -0.5],
    [0.5, 0],
    [0, 0.5],
  ],
} as const;

function rim(check: Check, points: ReadonlyMap<string, Uncertain>) {
  const around = placesAround[check.places ?? "corners"];
  return check.items.flatMap((id, i) => {
    const [x, y] = around[i] ?? [0, 0];
    const rod = points.get(id);
    return rod === undefined ? [] : [{ x, y, height: heightFromRod(rod) }];
  });
}

/** Moves of several places: the largest stands for all, so that one corner that sank is not averaged away. */
function largest(moves: readonly Uncertain[]): Uncertain | undefined {
  return moves.reduce<Uncertain | undefined>(
    (worst, move) => (worst === undefined || Math.abs(move.value) > Math.abs(worst.value) ? move : worst),
    undefined,
  );
}

interface PlaceMeasured {
  readonly height: Uncertain;
  readonly soFar: boolean;
  readonly open: boolean;
}

/** Height of one place over the height mark, from the newest set-up that read both. */
function overMark(context: Context, readings: readonly Reading[]): PlaceMeasured | undefined {
  const newest = [...readings].reverse();
  const closed = newest.find((r) => r.setUp !== undefined && closingOf(context.state, r.setUp).state === "closed");
  const reading = closed ?? newest.find((r) => r.setUp !== undefined);
  if (reading?.setUp === undefined) return undefined;
  const point = pointOf(readings.filter((r) => r.setUp === reading.setUp));
  const closing = closingOf(context.state, reading.setUp);
  if (point === undefined || closing.mark === undefined) return undefined;
  return { height: subtract(closing.mark, point.value), soFar: closing.state === "so far", open: closing.state === "does not close" };
}

function moved(context: Context): Evaluation {
  const { check } = context;
  const before = check.minus ?? [];
  const readings = readAll(context, [...check.items, ...before]);
  const entries = [...readings.values()].flat().map((r) => r.fact);
  const pairs = check.items.map(
    (id, i) => [overMark(context, readings.get(id) ?? []), overMark(context, readings.get(before[i] ?? "") ?? [])] as const,
  );
  const whole = pairs.flatMap(([now, then]) => (now && then ? [{ now, then }] : []));
  const move = largest(whole.map(({ now, then }) => movedSince(then.height, now.height)));
  if (whole.length < pairs.length || move === undefined) return lacking(missingOf(context, [...check.items, ...before], readings), entries);
  const places = whole.flatMap(({ now, then }) => [now, then]);
  return {
    state: "value",
    value: move,
    entries,
    ...(places.some((p) => p.soFar) ? { soFar: true } : {}),
    ...(places.some((p) => p.open) ? { unsettled: { key: "reason.mark-not-closed", figures: {} } } : {}),
  };
}

function lip(context: Context): Evaluation {
  const { check, tag } = context;
  // each end of the level in turn is one set-up: its own error changes sign and drops out of the mean
  const readings = readAll(context, check.items, (index) => ({ setUp: `${check.id} ${tag ?? ""}`, lay: index === 0 ? "first" : "turned" }));
  return plain(context, check.items, readings, (points) => {
    const [first, turned] = check.items.map((id) => points.get(id));
    return first && turned ? magnitude(lipOutOfLevel([first, turned])) : undefined;
  });
}

function steady(context: Context): Evaluation {
  const { check } = context;
  const readings = readAll(context, check.items);
  const [first, second] = check.items.map((id) => readings.get(id)?.at(-1));
  const entries = [first, second].flatMap((r) => (r ? [r.fact] : []));
  if (first === undefined || second === undefined) return lacking(missingOf(context, check.items, readings), entries);
  const apart = Math.abs(readAt(second.fact) - readAt(first.fact));
  return {
    state: "value",
    value: magnitude(subtract(second.value, first.value)),
    entries,
    ...(apart < (check.apart ?? 0)
      ? { unsettled: { key: "reason.too-soon", figures: { apartDuration: apart, leastDuration: check.apart ?? 0 } } }
      : {}),
  };
}

/** When something was read: as typed, else when it was entered. */
const readAt = (fact: Live): number => (typeof fact.what.at === "number" ? fact.what.at : fact.at);

function timePassed(context: Context): Evaluation {
  const { check, state } = context;
  const readings = readAll(context, check.items);
  const since = [...readings.values()]
    .flat()
    .sort((a, b) => a.value.value - b.value.value)
    .at(-1);
  if (since === undefined) return lacking(missingOf(context, check.items, readings));
  const sinceMs = Math.round(since.value.value * 1000);
  const untilInstance = check.until === undefined ? undefined : instanceOf(context, check.until);
  const until = untilInstance && seriesOf(state, untilInstance).counting.at(-1);
  if (until === undefined) return { state: "value", value: certain(0), entries: [since.fact], times: { since: sinceMs } };
  const untilMs = readAt(until);
  const passed = withSource(certain((untilMs - sinceMs) / 1000), "clocks", Math.max(until.doubt, since.fact.doubt) / 1000);
  return { state: "value", value: passed, entries: [since.fact, until], times: { since: sinceMs, until: untilMs } };
}

function atLeastOne(context: Context): Evaluation {
  const instances = instancesOf(context, context.check.items);
  const entered = instances.map((instance) => seriesOf(context.state, instance).counting.at(-1)).filter((f) => f !== undefined);
  if (entered.length === 0) return lacking(instances);
  const accepted = entered.filter((fact) => {
    const item = instances.find((i) => i.item.id === fact.what.item)?.item;
    return item?.kind !== "answer" || item.choices?.find((c) => c.id === fact.what.choice)?.accepts === true;
  });
  return { state: "answered", met: accepted.length > 0, entries: entered };
}

const functions: Readonly<Record<CheckFunction, (context: Context) => Evaluation>> = {
  "single value": (context) => {
    const { items, minus = [] } = context.check;
    return computed(context, [...items, ...minus], (points) => {
      const of = pick(points, items);
      const off = pick(points, minus);
      if (of === undefined) return undefined;
      return off === undefined ? mean(of) : subtract(mean(of), mean(off));
    });
  },
  "out of level": (context) =>
    computed(context, context.check.items, (points) => {
      const fitted = fitPlane(rim(context.check, points));
      if (!fitted.ok) return undefined;
      const rises = risesAcross(fitted.value.plane, 1, 1);
      return magnitude(context.check.way === "across" ? rises.y : rises.x);
    }),
  "fourth place": (context) =>
    computed(context, context.check.items, (points) => {
      const gap = fourthPlace(rim(context.check, points));
      return gap.ok ? gap.value : undefined;
    }),
  "moved since": moved,
  steady,
  "level along a lip": lip,
  "at least one of": atLeastOne,
  "time passed since": timePassed,
};

/** What a check comes to on this job, for one tag where it repeats. */
export function evaluate(state: JobState, check: Check, tag: string | undefined): Evaluation {
  return functions[check.function]({ state, check, tag });
}

/** The limit of `steady` is the doubt of the difference itself, SI. */
export const steadyLimit = (value: Uncertain): number => expanded(value);

/** The tag set whose tags repeat a check: that of the items it reads. */
export function tagSetOf(items: readonly Item[], check: Check): string | undefined {
  return items.find((item) => check.items.includes(item.id) && item.tags !== undefined)?.tags;
}
