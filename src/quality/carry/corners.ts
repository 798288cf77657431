import { message } from "../../job/index.ts";
import { binomialAtLeast } from "../../statistics/index.ts";
import { type Candidate, grouped, sumOf } from "../answering.ts";
import type { RimCarried } from "../carried.ts";
import type { ReadingObserved } from "../observation.ts";
import type { Label } from "../question.ts";
import { mostOnOneMark } from "./heaping.ts";

/** A rim with the job that it is of. */
export interface RimOfJob extends RimCarried {
  readonly job: string;
}

/** Places of one rim: three at least. */
const LEAST_PLACES = 3;

const keyOf = ({ around, setUp, tag }: ReadingObserved): string | undefined =>
  around === undefined ? undefined : `${around} ${setUp ?? ""} ${tag ?? ""}`;

/** Every rim of one job that was read whole. */
export const rimsRead = (readings: readonly ReadingObserved[]): readonly RimCarried[] =>
  [...grouped(readings, keyOf).values()]
    .filter((own) => own.length >= LEAST_PLACES && own.every(({ value }) => value !== undefined))
    .map((own) => ({
      step: own[0]?.step ?? "",
      person: own[0]?.person ?? "",
      values: own.map(({ value = 0 }) => value),
      typed: own.map(({ typed }) => typed).join("; "),
      chance: chanceOfEqual(own),
    }));

export interface EqualCorners {
  readonly n: number;
  readonly equal: number;
  readonly most: number;
  readonly p: number;
}

/** Every place after the first falls on the first one's mark at most as often as its own doubt lets it. */
function chanceOfEqual(readings: readonly ReadingObserved[]): number {
  const each = readings
    .slice(1)
    .map(({ resolution, u }) => (resolution === undefined || u === undefined ? 1 : mostOnOneMark(resolution, u)));
  return each.reduce((product, chance) => product * chance, 1);
}

const isEqual = ({ values }: RimCarried): boolean => values.every((value) => value === values[0]);

export function equalCorners(rims: readonly RimCarried[]): EqualCorners {
  const n = rims.length;
  const equal = rims.filter(isEqual).length;
  const most = sumOf(rims, ({ chance }) => chance);
  return { n, equal, most, p: equal <= most ? 1 : binomialAtLeast(equal, n, most / n) };
}

export const equalCandidate = (about: Label, { n, equal, most, p }: EqualCorners): Candidate => ({
  about,
  what: "equal corners",
  p,
  says: message("carry.equal", { equal, n, most: Math.round(most * 10) / 10 }),
});
