import type { ReadingObserved } from "#core/quality/index.ts";
import type { Chance } from "../chance/index.ts";
import type { Effects } from "./effects.ts";
import { MARK, type MadeStep, READING_U } from "./made-up.ts";

const YEAR_MS = 365.25 * 86_400_000;

/** Where and when something of a job is drawn. */
export interface At {
  readonly chance: Chance;
  readonly effects: Effects;
  readonly job: string;
  /** The company's first day, for what changes with the years. */
  readonly began: number;
  readonly foreman: string;
  readonly second: string;
  readonly laser: string;
  /** The phone's clock; moves on with every entry. */
  now: number;
}

export const onMark = (micrometres: number): number => Math.round(Math.round(micrometres / MARK) * MARK);

/** 'inches and sixteenths', as a tape is read. */
export function typedOf(value: number): string {
  const marks = Math.round(Math.abs(value) / MARK);
  return `${value < 0 ? "-" : ""}${Math.floor(marks / 16)} ${marks % 16}/16 in`;
}

export const wait = (at: At, least: number, more: number): number => {
  at.now += (least + at.chance.below(more)) * 1000;
  return at.now;
};

export function reading(
  at: At,
  step: MadeStep,
  item: string,
  value: number,
  instrument: string,
  more: Partial<ReadingObserved> = {},
): ReadingObserved {
  return {
    entry: `${at.job}-${item}`,
    item,
    step: step.id,
    typed: typedOf(value),
    unit: "in",
    kind: "length",
    value: onMark(value),
    resolution: Math.round(MARK),
    u: READING_U,
    at: wait(at, 20, 70),
    person: at.foreman,
    phone: `${at.foreman}-phone`,
    instrument,
    afterCovering: false,
    ...more,
  };
}

/** The line of a drifting laser against the years. */
export const driftOf = ({ effects: { drift }, laser, now, began }: At): number =>
  drift?.laser === laser ? (drift.perYear * (now - began)) / YEAR_MS : 0;
