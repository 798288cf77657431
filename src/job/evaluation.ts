import { mean, type NonEmpty, repeated, subtract, type Uncertain } from "../doubt/index.ts";
import type { OperatingPoint } from "../plumbing/index.ts";
import type { LeakLoss } from "../water/index.ts";
import type { LineAtWork } from "./design/index.ts";
import type { About } from "./fact.ts";
import type { Message } from "./finding.ts";
import type { Live } from "./live.ts";
import { type Arrangement, type Reading, readingsOf } from "./measured.ts";
import { aboutOf, type Instance } from "./series.ts";
import { type Check, type Item, itemNamed } from "./sheet.ts";
import type { JobState } from "./state.ts";

/** What a check comes to before its limits: a value with its doubt, or what it waits for. */
export type Evaluation =
  | {
      readonly state: "value";
      /** SI of the check's kind. */
      readonly value: Uncertain;
      readonly entries: readonly Live[];
      /** What it rests on besides, such as readings of the height mark: no decision about it grows old by them. */
      readonly marks?: readonly Live[];
      readonly soFar?: boolean;
      /** Readings among `entries` that do not count: of a set-up that another one stands for. */
      readonly aside?: readonly Live[];
      /** The place that the value speaks of. */
      readonly place?: About;
      /** Something that no limit can settle: the mark did not close, two readings disagree. */
      readonly unsettled?: Message;
      readonly times?: { readonly since: number; readonly until?: number };
      /** What a leak test came to, from which it is known how long it would have to be. */
      readonly leak?: LeakLoss;
      /** What a measured flow is compared with. */
      readonly flow?: { readonly line: LineAtWork; readonly point: OperatingPoint };
    }
  | {
      readonly state: "lacking";
      readonly missing: readonly About[];
      readonly entries: readonly Live[];
      /** Figures of design or kit card. */
      readonly unknown?: readonly string[];
      /** Key of its sentence where the usual one would not do. */
      readonly says?: string;
    }
  /** Taken, and yet it counts for nothing, for a reason of its own; or it stands by itself, for want of figures to compare with. */
  | { readonly state: "does not count"; readonly says: Message; readonly entries: readonly Live[]; readonly unknown?: readonly string[] }
  | { readonly state: "answered"; readonly met: boolean; readonly entries: readonly Live[] };

export interface Context {
  readonly state: JobState;
  readonly check: Check;
  readonly tag: string | undefined;
}

/** The readings that count, by item. */
export type ByItem = ReadonlyMap<string, readonly Reading[]>;

/** The item as a check for `tag` reads it: for that tag, where the item repeats. */
export const instanceFor = (item: Item, tag: string | undefined): Instance =>
  item.tags === undefined || tag === undefined ? { item } : { item, tag };

export function instancesOf({ state, tag }: Context, ids: readonly string[]): readonly Instance[] {
  return ids.flatMap((id) => {
    const item = state.sheet && itemNamed(state.sheet, id);
    return item === undefined ? [] : [instanceFor(item, tag)];
  });
}

export const lacking = (instances: readonly Instance[], entries: readonly Live[] = []): Evaluation => ({
  state: "lacking",
  missing: instances.map(aboutOf),
  entries,
});

export function readAll(context: Context, ids: readonly string[], arrange?: (index: number) => Arrangement): ByItem {
  return new Map(instancesOf(context, ids).map((instance, i) => [instance.item.id, readingsOf(context.state, instance, arrange?.(i))]));
}

export const entriesOf = (readings: ByItem): readonly Live[] => [...readings.values()].flat().map((r) => r.fact);

export function missingOf(context: Context, ids: readonly string[], readings: ByItem): readonly Instance[] {
  return instancesOf(context, ids).filter(({ item }) => (readings.get(item.id) ?? []).length === 0);
}

export interface Point {
  readonly value: Uncertain;
  /** Two readings that disagree ask for a third; from the third on the mean stands. */
  readonly agrees: boolean;
}

/** Several readings of one point as one. */
export function pointOf(readings: readonly Reading[]): Point | undefined {
  const [first, ...rest] = readings.map((r) => r.value);
  if (first === undefined) return undefined;
  if (rest.length === 0) return { value: first, agrees: true };
  const { mean: value, asksForThird } = repeated([first, ...rest]);
  return { value, agrees: !asksForThird };
}

export type Compute = (points: ReadonlyMap<string, Uncertain>) => Uncertain | undefined;

/** The value that `of` makes of the points of all items, where each has been read. */
export function compute(ids: readonly string[], readings: ByItem, of: Compute): Point | undefined {
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

export const disagree: Message = { key: "reason.readings-disagree", figures: {} };

/** A value from readings that stand by themselves. */
export function plain(context: Context, ids: readonly string[], readings: ByItem, of: Compute): Evaluation {
  const entries = entriesOf(readings);
  const result = compute(ids, readings, of);
  if (result === undefined) return lacking(missingOf(context, ids, readings), entries);
  return { state: "value", value: result.value, entries, ...(result.agrees ? {} : { unsettled: disagree }) };
}

const pick = (points: ReadonlyMap<string, Uncertain>, ids: readonly string[]): NonEmpty<Uncertain> | undefined => {
  const [first, ...rest] = ids.map((id) => points.get(id)).filter((p) => p !== undefined);
  return first === undefined ? undefined : [first, ...rest];
};

/** The mean of the check's items, less the mean of those that are taken off. */
export const meanLess =
  ({ items, minus = [] }: Check): Compute =>
  (points) => {
    const [of, off] = [pick(points, items), pick(points, minus)];
    if (of === undefined) return undefined;
    return off === undefined ? mean(of) : subtract(mean(of), mean(off));
  };
