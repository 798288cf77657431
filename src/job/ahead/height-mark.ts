import { subtract, type Uncertain } from "../../doubt/index.ts";
import { leaveCore } from "../../tolerance/index.ts";
import { fixedPerSi } from "../../units/index.ts";
import { designFigure } from "../design/index.ts";
import { pointOf } from "../evaluation.ts";
import type { About } from "../fact.ts";
import type { FigureSource } from "../figures.ts";
import { type Closing, closingOf, readingsOf } from "../measured.ts";
import type { JobState } from "../state.ts";
import { itemsWhere } from "./said.ts";

/** The reading on the height mark of the set-up in use. */
export interface MarkInUse {
  /** Micrometres, the mean where it was read again. */
  readonly value: number;
  readonly doubt: number;
  readonly entries: readonly string[];
  readonly closing: Closing["state"];
  /** Metres. */
  readonly reading: Uncertain;
}

interface InUse {
  readonly setUp?: string;
  readonly mark?: MarkInUse;
  readonly missing: readonly About[];
}

const inFixed = (of: Uncertain): { readonly value: number; readonly doubt: number } => {
  const { value, expanded: doubt } = leaveCore(of, fixedPerSi("length"));
  return { value, doubt };
};

/** The newest set-up, and what was read on the height mark in it. */
export function markInUse(state: JobState): InUse {
  const newest = [...state.setUps.values()].sort((a, b) => a.position - b.position).at(-1);
  const [first] = itemsWhere(state, ({ heightMark }) => heightMark === true);
  const missing: readonly About[] = first ? [{ item: first.id }] : [];
  if (newest === undefined) return { missing };
  const { mark: reading, reads, state: closing } = closingOf(state, newest.id);
  if (reading === undefined) return { setUp: newest.id, missing };
  return { setUp: newest.id, mark: { ...inFixed(reading), entries: reads.map(({ id }) => id), closing, reading }, missing: [] };
}

/** How high the mark stands over finished grade. */
export interface MarkOverGrade {
  /** Micrometres, up positive. */
  readonly value: number;
  readonly doubt: number;
  readonly by: "this set-up" | "an earlier set-up" | "the design";
  /** The set-up that it was read from. */
  readonly setUp?: string;
  /** Metres. */
  readonly height: Uncertain;
}

interface Grade {
  readonly found?: MarkOverGrade;
  readonly missing: readonly About[];
}

/**
 * The mark's height over finished grade: from the set-up in use, where the point at finished grade was read too; else from the newest
 * other set-up that closed, else that read both; else as the design says.
 */
export function gradeUnderMark(state: JobState, source: FigureSource, inUse: string | undefined): Grade {
  const stakes = itemsWhere(state, ({ setOut }) => setOut === "finished grade");
  const readings = stakes.flatMap((item) => readingsOf(state, { item }));
  const read = [...state.setUps.values()]
    .sort((a, b) => b.position - a.position)
    .flatMap(({ id }) => {
      const stake = pointOf(readings.filter(({ setUp }) => setUp === id));
      const { mark, state: closing } = closingOf(state, id);
      return stake && mark ? [{ id, closing, height: subtract(stake.value, mark) }] : [];
    });
  const used = read.find(({ id }) => id === inUse) ?? read.find(({ closing }) => closing === "closed") ?? read[0];
  if (used !== undefined) {
    const by = used.id === inUse ? "this set-up" : "an earlier set-up";
    return { found: { ...inFixed(used.height), by, setUp: used.id, height: used.height }, missing: [] };
  }
  const stated = designFigure(source, "markOverGrade");
  if (stated) return { found: { ...inFixed(stated), by: "the design", height: stated }, missing: [] };
  return { missing: stakes.slice(0, 1).map(({ id }) => ({ item: id })) };
}
