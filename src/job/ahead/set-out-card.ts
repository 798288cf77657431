import { type Uncertain, unfit } from "../../doubt/index.ts";
import { type SetOutLimits, type SetOutPlace, type SetOutTarget, setOutPlaces } from "../../geometry/index.ts";
import type { Refusal } from "../../outcome/index.ts";
import { leaveCore, toInteger } from "../../tolerance/index.ts";
import { fixedPerSi } from "../../units/index.ts";
import { type FigureKey, rodTargets, setOutHeights } from "../design/index.ts";
import { sourceFor } from "../expected.ts";
import type { About } from "../fact.ts";
import type { JobState } from "../state.ts";
import { gradeUnderMark, type MarkInUse, type MarkOverGrade, markInUse } from "./height-mark.ts";
import { placeLimits } from "./set-out-limits.ts";
import { type SetOutReading, setOutReadings } from "./set-out-readings.ts";

/** One place of the set-out card. Rod readings in micrometres: a rod reads more the lower it stands. */
export interface SetOutRow {
  readonly place: SetOutPlace;
  /** Height over finished grade that the design leads to, micrometres, up positive. */
  readonly overGrade?: number;
  /** What the rod is to read, and the least and the most that it may. */
  readonly aim?: number;
  readonly lower?: number;
  readonly upper?: number;
  /** The newest reading of the set-up in use, and all of them, each compared with the aim. */
  readonly latest?: SetOutReading;
  readonly readings: readonly SetOutReading[];
  /** Figures of design or kit card that the place waits for. */
  readonly unknown: readonly FigureKey[];
}

export interface SetOutCard {
  /** The set-up in use: the newest. */
  readonly setUp?: string;
  /** The reading on the height mark that every aim rests on. */
  readonly mark?: MarkInUse;
  /** How high that mark stands over finished grade, and by what. */
  readonly markOverGrade?: MarkOverGrade;
  readonly rows: readonly SetOutRow[];
  /** Readings that the card waits for: of the height mark in the set-up in use, of the point at finished grade. */
  readonly missing: readonly About[];
  /** Figures that would do instead, or are wanted besides. */
  readonly unknown: readonly FigureKey[];
  readonly refusal?: Refusal;
}

const perMetre = fixedPerSi("length");
const whole = ({ value }: Uncertain): number => leaveCore({ value, parts: new Map() }, perMetre).value;

const aims = (target: SetOutTarget): Pick<SetOutRow, "aim" | "lower" | "upper"> => ({
  aim: whole(target.aim),
  ...(target.least ? { lower: whole(target.least) } : {}),
  ...(target.most ? { upper: whole(target.most) } : {}),
});

function rowOf(state: JobState, place: SetOutPlace, setUp: string | undefined, target: SetOutTarget | undefined): SetOutRow {
  const readings = setUp === undefined || target === undefined ? [] : setOutReadings(state, place, setUp, target);
  const latest = readings.reduce<SetOutReading | undefined>(
    (newest, one) => (newest === undefined || one.position > newest.position ? one : newest),
    undefined,
  );
  return { place, ...(target ? aims(target) : {}), ...(latest ? { latest } : {}), readings, unknown: [] };
}

/**
 * The set-out card: for every place the rod reading to work to, from one reading on the height mark and the design, and beside it
 * what was then read in the same set-up, with how much to raise or lower. `covering`: by the design that it is judged by. What is
 * missing is named and the rest still stands.
 */
export function setOutCard(state: JobState, covering?: string): SetOutCard {
  const source = sourceFor(state, covering);
  const inUse = markInUse(state);
  const grade = gradeUnderMark(state, source, inUse.setUp);
  const limits: SetOutLimits = state.sheet === undefined ? {} : placeLimits(state, state.sheet);
  const heights = setOutHeights(source, limits);
  const { mark } = inUse;
  const fault = mark && unfit("card", "finite", { mark: mark.reading });
  const targets = mark && !fault ? rodTargets(source, mark.reading, grade.found?.height, limits) : undefined;
  const known = heights.known ? heights.value : { heights: [], missing: [] };
  const rows = setOutPlaces.map((place): SetOutRow => {
    const target = targets?.ok ? targets.value.targets.find((one) => one.place === place) : undefined;
    const height = known.heights.find((one) => one.place === place);
    const row = rowOf(state, place, inUse.setUp, target);
    const unknown = known.missing.find((one) => one.place === place)?.figures ?? [];
    return { ...row, ...(height ? { overGrade: toInteger(height.aim * perMetre) } : {}), unknown };
  });
  const refusal = heights.known ? (targets?.ok === false ? targets.refusal : undefined) : heights.refusal;
  return {
    ...(inUse.setUp === undefined ? {} : { setUp: inUse.setUp }),
    ...(mark ? { mark } : {}),
    ...(grade.found ? { markOverGrade: grade.found } : {}),
    rows,
    missing: [...(mark ? [] : inUse.missing), ...(grade.found ? [] : grade.missing)],
    unknown: grade.found ? [] : ["markOverGrade"],
    ...(refusal ? { refusal } : {}),
  };
}
