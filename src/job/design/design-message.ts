import { expanded, type Uncertain } from "../../doubt/index.ts";
import { toInteger } from "../../tolerance/index.ts";
import { fixedPerSi, type QuantityKind } from "../../units/index.ts";
import type { DesignMessage, DesignState } from "./design-line.ts";

/** A figure of a message: SI value and kind, or text as it prints. */
export type Said = readonly [kind: QuantityKind, value: number] | string;

/** A message with its figures as integers. */
export function said(key: string, figures: Readonly<Record<string, Said>> = {}): DesignMessage {
  const all = Object.entries(figures);
  return {
    key,
    figures: Object.fromEntries(all.map(([name, of]) => [name, typeof of === "string" ? of : toInteger(of[1] * fixedPerSi(of[0]))])),
    kinds: Object.fromEntries(all.flatMap(([name, of]) => (typeof of === "string" ? [] : [[name, of[0]] as const]))),
  };
}

/** Whether there is room: all of the band on one side of nothing, else too close to call. Taken from the rounded integers. */
export function roomState(room: Uncertain, kind: QuantityKind): Extract<DesignState, "enough" | "not enough" | "too close to call"> {
  const perSi = fixedPerSi(kind);
  const [value, doubt] = [toInteger(room.value * perSi), toInteger(expanded(room) * perSi)];
  if (value >= doubt) return "enough";
  return -value > doubt ? "not enough" : "too close to call";
}

/** Halvings: a share is then known to a millionth. */
const HALVINGS = 20;

/** The share between `from`, where it is not enough, and `to`, where it is, nearest to `from`; undefined where `to` is not enough either. */
export function nearestEnough(from: number, to: number, isEnough: (share: number) => boolean): number | undefined {
  if (!isEnough(to)) return undefined;
  let [short, enough] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (short + enough) / 2;
    if (isEnough(middle)) enough = middle;
    else short = middle;
  }
  return enough;
}
