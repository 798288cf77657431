import { message } from "../../job/index.ts";
import { binomialAtLeast } from "../../statistics/index.ts";
import { type Candidate, grouped, sumOf } from "../answering.ts";
import type { JobObserved, ReadingObserved } from "../observation.ts";
import type { Label } from "../question.ts";
import { mostOnOneMark } from "./heaping.ts";

/** The places around one rim, as one set-up read them. */
export interface RimRead {
  readonly job: string;
  readonly step: string;
  readonly person: string;
  readonly readings: readonly ReadingObserved[];
}

/** Places of one rim: three at least. */
const LEAST_PLACES = 3;

export const rimsRead = (jobs: readonly JobObserved[]): readonly RimRead[] =>
  jobs.flatMap(({ job, readings }) =>
    [
      ...grouped(readings, ({ around, setUp, tag }) =>
        around === undefined ? undefined : `${around} ${setUp ?? ""} ${tag ?? ""}`,
      ).values(),
    ]
      .filter((own) => own.length >= LEAST_PLACES && own.every(({ value }) => value !== undefined))
      .map((own) => ({ job, step: own[0]?.step ?? "", person: own[0]?.person ?? "", readings: own })),
  );

export interface EqualCorners {
  readonly n: number;
  readonly equal: number;
  readonly most: number;
  readonly p: number;
}

/** Every place after the first falls on the first one's mark at most as often as its own doubt lets it. */
function chanceOfEqual({ readings }: RimRead): number {
  const each = readings
    .slice(1)
    .map(({ resolution, u }) => (resolution === undefined || u === undefined ? 1 : mostOnOneMark(resolution, u)));
  return each.reduce((product, chance) => product * chance, 1);
}

export const isEqual = ({ readings }: RimRead): boolean => readings.every(({ value }) => value === readings[0]?.value);

export function equalCorners(rims: readonly RimRead[]): EqualCorners {
  const n = rims.length;
  const equal = rims.filter(isEqual).length;
  const most = sumOf(rims, chanceOfEqual);
  return { n, equal, most, p: equal <= most ? 1 : binomialAtLeast(equal, n, most / n) };
}

export const equalCandidate = (about: Label, { n, equal, most, p }: EqualCorners): Candidate => ({
  about,
  what: "equal corners",
  p,
  says: message("carry.equal", { equal, n, most: Math.round(most * 10) / 10 }),
});
