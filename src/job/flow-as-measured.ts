import { certain, rectangular, type Uncertain, withSource } from "../doubt/index.ts";
import type { Outcome } from "../outcome/index.ts";
import { BIN_MARK_SHARE, flowByCounter, flowByMeter, flowFromBin, flowFromDrawDown, WATCH_HALF_WIDTH } from "../plumbing/index.ts";
import { leaveCore } from "../tolerance/index.ts";
import { fixedPerSi, type QuantityKind } from "../units/index.ts";
import {
  type ByItem,
  type Context,
  disagree,
  type Evaluation,
  entriesOf,
  instancesOf,
  lacking,
  type Point,
  pointOf,
  readAll,
} from "./evaluation.ts";
import { lineFor } from "./expected.ts";
import { message } from "./finding.ts";
import { figureAt } from "./limits.ts";
import type { Live } from "./live.ts";
import type { Reading } from "./measured.ts";
import type { FlowWay } from "./sheet.ts";
import { waterPerDepth } from "./water-per-depth.ts";

/** A reading with the doubt that its way brings besides: the hand on the watch, the bin's mark. New at each reading. */
function asRead(way: FlowWay, { fact, value }: Reading, kind: QuantityKind): Reading {
  if (kind === "duration") {
    const u = rectangular(WATCH_HALF_WIDTH);
    const started = withSource(value, `reading:${fact.id}/watch-start`, u);
    return { fact, value: withSource(started, `reading:${fact.id}/watch-stop`, u) };
  }
  return kind === "volume" && way.by === "bin"
    ? { fact, value: withSource(value, "bin/mark", rectangular(BIN_MARK_SHARE * value.value)) }
    : { fact, value };
}

interface Taken {
  readonly way: FlowWay;
  /** By the kind of what was read. */
  readonly points: ReadonlyMap<QuantityKind, Point>;
  readonly entries: readonly Live[];
  /** Place in the work of its newest reading. */
  readonly newest: number;
}

/** One way with its readings; undefined while one of them is missing. */
function takenBy(context: Context, readings: ByItem, way: FlowWay): Taken | undefined {
  const points = new Map<QuantityKind, Point>();
  const entries: Live[] = [];
  for (const { item } of instancesOf(context, way.items)) {
    const kind = item.quantity ?? "length";
    const read = readings.get(item.id) ?? [];
    const point = pointOf(read.map((reading) => asRead(way, reading, kind)));
    if (point === undefined) return undefined;
    points.set(kind, point);
    entries.push(...read.map(({ fact }) => fact));
  }
  return entries.length === 0 ? undefined : { way, points, entries, newest: Math.max(...entries.map(({ position }) => position)) };
}

/** The flow that the readings of one way come to; the basin's area is the design's. Undefined where the sheet pairs what cannot go together. */
function flowOf({ way, points }: Taken, area: Uncertain | undefined): Outcome<Uncertain> | undefined {
  const of = (kind: QuantityKind): Uncertain | undefined => points.get(kind)?.value;
  const [volume, time, drop, shown] = [of("volume"), of("duration"), of("length"), of("flow")];
  if (way.by === "bin") return volume && time && flowFromBin(volume, time);
  if (way.by === "basin going down") return area && drop && time && flowFromDrawDown(area, drop, time);
  return shown ? flowByMeter(shown) : volume && time && flowByCounter(certain(0), volume, time);
}

const flowFigures = (measured: Uncertain): { readonly measuredFlow: number; readonly doubtFlow: number } => {
  const { value, expanded: doubt } = leaveCore(measured, fixedPerSi("flow"));
  return { measuredFlow: value, doubtFlow: doubt };
};

/** A bin that was full too soon says how large it would have to be; anything else that cannot be worked with is taken again. */
function refusedFlow(context: Context, { way, entries }: Taken, flow: Extract<Outcome<Uncertain>, { ok: false }>): Evaluation {
  const { code, figures = {} } = flow.refusal;
  if (code !== "flow-bin-too-fast") return lacking(instancesOf(context, way.items), entries);
  const { milliseconds = 0, least = 0, enough = 0 } = figures;
  const says = message("flow.bin-too-fast", { tookDuration: milliseconds, leastDuration: least, enoughVolume: enough });
  return { state: "does not count", says, entries };
}

/** The measured flow beside what the design gives, or what stands in the way of comparing. */
function beside({ state }: Context, taken: Taken, measured: Uncertain, entries: readonly Live[], aside: readonly Live[]): Evaluation {
  const line = lineFor(state, undefined);
  const figures = flowFigures(measured);
  if (!line.known) {
    const unknown = [...line.needs, ...(line.refusal ? figureAt(line.refusal.place) : [])];
    return { state: "does not count", says: message("flow.alone", figures), entries, unknown };
  }
  const { point } = line.value;
  if (point === undefined)
    return { state: "does not count", says: message(`flow.${line.value.outcome.replaceAll(" ", "-")}`, figures), entries };
  return {
    state: "value",
    value: measured,
    entries,
    flow: { line: line.value, point },
    ...(aside.length > 0 ? { aside } : {}),
    ...([...taken.points.values()].every(({ agrees }) => agrees) ? {} : { unsettled: disagree }),
  };
}

/**
 * Flow as it was measured, by whichever of the sheet's ways was taken; of several the newest counts. Bin: its volume and the time it
 * took. Draw-down: how far the basin went down in a time while nothing came back. Meter: what it shows, or what it counted in a time.
 */
export function flowAsMeasured(context: Context): Evaluation {
  const { check, state } = context;
  const ways = check.ways ?? [];
  const readings = readAll(context, check.items);
  const entries = entriesOf(readings);
  const [taken] = ways.flatMap((way) => takenBy(context, readings, way) ?? []).sort((a, b) => b.newest - a.newest);
  if (taken === undefined) {
    const begun = ways.find(({ items }) => items.some((id) => (readings.get(id) ?? []).length > 0));
    const waits = instancesOf(context, begun?.items ?? check.items);
    return lacking(
      waits.filter(({ item }) => (readings.get(item.id) ?? []).length === 0),
      entries,
    );
  }
  const area = taken.way.by === "basin going down" ? waterPerDepth(state) : undefined;
  if (area && "unknown" in area) return { state: "lacking", missing: [], entries: taken.entries, unknown: area.unknown };
  const flow = flowOf(taken, area?.value);
  if (flow === undefined) return lacking(instancesOf(context, taken.way.items), taken.entries);
  if (!flow.ok) return refusedFlow(context, taken, flow);
  return beside(
    context,
    taken,
    flow.value,
    entries,
    entries.filter((fact) => !taken.entries.includes(fact)),
  );
}
