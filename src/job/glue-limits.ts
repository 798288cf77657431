import type { Outcome } from "../outcome/index.ts";
import type { JointTimes } from "../plumbing/index.ts";
import { cureTimes } from "./design/index.ts";
import { figureAt, type LimitContext, type NamedLimit, type Resolved } from "./limit-context.ts";

const jointKinds = ["rigid PVC", "flexible PVC", "ABS to PVC transition"] as const;

/** What the items of a limit say was glued, as far as they say it. */
function gluedKind(context: LimitContext, items: readonly string[]): (typeof jointKinds)[number] | undefined {
  const means = context.meaning(items) ?? [];
  return jointKinds.find((one) => means.includes(one));
}

/** Set and cure by the company's table, for what the items say of the session. */
function byTable(context: LimitContext, items: readonly string[]): Outcome<JointTimes> {
  const kind = gluedKind(context, items);
  const coldest = context.coldest(items);
  return cureTimes(context.figures, {
    ...(kind && { kind }),
    ...(coldest && { coldest }),
    ...(context.meaning(items)?.includes("dry air") && { humidity: "dry" }),
    ...(context.cureTable && { table: context.cureTable }),
  });
}

/** What a time that no table gives waits for: the thermometer where only that is missing, else `otherwise`, with figures that the office owes. */
function waitsFor(context: LimitContext, items: readonly string[], place: string, otherwise: readonly string[]): Resolved {
  const isCold = place === "cure/coldest" && context.coldest(items) === undefined;
  const thermometers = isCold ? context.reading(items, "temperature") : [];
  const unknown = figureAt(place);
  return { missing: thermometers.length > 0 ? thermometers : otherwise, ...(unknown.length > 0 ? { unknown } : {}) };
}

const isTabled = (kind: (typeof jointKinds)[number] | undefined): boolean => kind === undefined || kind === "rigid PVC";

/**
 * Milliseconds from the last joint until water: the can's own time, else the company's table. What no table covers (flexible pipe, a
 * size or a temperature outside it) waits for the can; a figure that the office owes is named beside it.
 */
export function cureTime(context: LimitContext, { item = "", items = [] }: NamedLimit): Resolved {
  const can = context.typed(item);
  if (can !== undefined) return { value: can };
  if (!isTabled(gluedKind(context, items))) return { missing: [item] };
  const times = byTable(context, items);
  return times.ok ? { value: times.value.cure } : waitsFor(context, items, times.refusal.place, [item]);
}

/**
 * Milliseconds from the last joint until it may be handled and filled around: the can's own time, else the company's table, but never
 * longer than the can's cure. Where neither can nor table gives a set time, the cure time stands for it.
 */
export function setTime(context: LimitContext, { item = "", items = [] }: NamedLimit): Resolved {
  const can = context.typed(item);
  if (can !== undefined) return { value: can };
  const durations = context.reading(items, "duration");
  const cured = durations.map(context.typed).find((time) => time !== undefined);
  const otherwise = durations.length > 0 ? durations : [item];
  if (!isTabled(gluedKind(context, items))) return cured === undefined ? { missing: otherwise } : { value: cured };
  const times = byTable(context, items);
  if (times.ok) return { value: Math.min(times.value.set, cured ?? times.value.set) };
  return cured === undefined ? waitsFor(context, items, times.refusal.place, otherwise) : { value: cured };
}
