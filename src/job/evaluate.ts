import { expanded, magnitude, subtract, type Uncertain } from "../doubt/index.ts";
import { fourthPlace, heightFromRod, lipOutOfLevel, type Place, planeThrough, risesAcross } from "../geometry/index.ts";
import { betweenInstants } from "./between-instants.ts";
import { type Context, type Evaluation, instancesOf, lacking, meanLess, missingOf, plain, readAll } from "./evaluation.ts";
import { flowAsMeasured } from "./flow-as-measured.ts";
import { foundByTies } from "./found-by-ties.ts";
import { computed, movedOverMark } from "./from-set-ups.ts";
import { happenedAt } from "./live.ts";
import { lossADay } from "./loss-a-day.ts";
import { roomForRain } from "./room-for-rain.ts";
import { seriesOf } from "./series.ts";
import type { Check, CheckFunction } from "./sheet.ts";
import { shortOfSocket } from "./short-of-socket.ts";
import type { JobState } from "./state.ts";
import { stoneOnTheLid } from "./stone-on-the-lid.ts";
import { timePassed } from "./time-passed.ts";
import { dropAlongTheWire } from "./wire-drop.ts";

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

function rim(check: Check, points: ReadonlyMap<string, Uncertain>): readonly Place[] {
  const around = placesAround[check.places ?? "corners"];
  return check.items.flatMap((id, i) => {
    const [x, y] = around[i] ?? [0, 0];
    const rod = points.get(id);
    return rod === undefined ? [] : [{ x, y, height: heightFromRod(rod) }];
  });
}

function outOfLevel(context: Context): Evaluation {
  const { check } = context;
  const of = (points: ReadonlyMap<string, Uncertain>): Uncertain | undefined => {
    const plane = planeThrough(rim(check, points));
    if (!plane.ok) return undefined;
    const rises = risesAcross(plane.value, 1, 1);
    return magnitude(check.way === "across" ? rises.y : rises.x);
  };
  return computed(context, check.items, of);
}

function offThePlane(context: Context): Evaluation {
  const of = (points: ReadonlyMap<string, Uncertain>): Uncertain | undefined => {
    const gap = fourthPlace(rim(context.check, points));
    return gap.ok ? gap.value : undefined;
  };
  return computed(context, context.check.items, of);
}

function levelAlongLip(context: Context): Evaluation {
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
  const apart = Math.abs(happenedAt(second.fact) - happenedAt(first.fact));
  const least = check.apart ?? 0;
  return {
    state: "value",
    value: magnitude(subtract(second.value, first.value)),
    entries,
    ...(apart < least ? { unsettled: { key: "reason.too-soon", figures: { apartDuration: apart, leastDuration: least } } } : {}),
  };
}

function atLeastOne(context: Context): Evaluation {
  const instances = instancesOf(context, context.check.items);
  const entered = instances.flatMap((instance) => {
    const fact = seriesOf(context.state, instance).counting.at(-1);
    return fact === undefined ? [] : [{ fact, item: instance.item }];
  });
  if (entered.length === 0) return lacking(instances);
  const met = entered.some(({ fact, item }) => item.kind !== "answer" || item.choices?.find((c) => c.id === fact.what.choice)?.accepts);
  return { state: "answered", met, entries: entered.map(({ fact }) => fact) };
}

const functions: Readonly<Record<CheckFunction, (context: Context) => Evaluation>> = {
  "single value": (context) => computed(context, [...context.check.items, ...(context.check.minus ?? [])], meanLess(context.check)),
  "out of level": outOfLevel,
  "fourth place": offThePlane,
  "moved since": movedOverMark,
  steady,
  "level along a lip": levelAlongLip,
  "at least one of": atLeastOne,
  "time passed since": timePassed,
  "between two instants": betweenInstants,
  "loss a day": lossADay,
  "short of the socket": shortOfSocket,
  "flow as measured": flowAsMeasured,
  "room for rain": roomForRain,
  "found by ties": foundByTies,
  "stone on the lid": stoneOnTheLid,
  "voltage drop": dropAlongTheWire,
};

/** What a check comes to on this job, for one tag where it repeats. */
export function evaluate(state: JobState, check: Check, tag: string | undefined): Evaluation {
  return functions[check.function]({ state, check, tag });
}

/** The limit of `steady` is the doubt of the difference itself, SI. */
export const steadyLimit = (value: Uncertain): number => expanded(value);
