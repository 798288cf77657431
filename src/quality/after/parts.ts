import { message } from "../../job/index.ts";
import { binomialAtLeast, kaplanMeierOf, logRankWithin, type SurvivalStep, timesWatched } from "../../statistics/index.ts";
import { type Candidate, grouped, LEAST_EVENTS, label, percent, sumOf } from "../answering.ts";
import type { PartObserved } from "../observation.ts";
import type { Label } from "../question.ts";
import { eventDay, isWinter, type WatchedFrom, winterCounting } from "./watched.ts";

type WatchedPart = WatchedFrom & { readonly part: PartObserved };

export interface PartLine {
  readonly about: Label;
  readonly n: number;
  /** Of them, those that were watched for a whole year. */
  readonly whole: number;
  readonly failed: number;
  readonly inWinter: number;
  readonly steps: readonly SurvivalStep[];
  /** Chance of such a difference from all the other parts where there is none. */
  readonly p: number;
}

/** Fewer failures than this and no season is made of them (own). */
const LEAST_FAILURES = 5;

/** More failures in winter than its share of the days that the part was watched. */
function seasonal(
  about: Label,
  own: readonly WatchedPart[],
  failed: readonly WatchedPart[],
  winterDays: (one: WatchedFrom) => number,
): readonly Candidate[] {
  if (failed.length < LEAST_FAILURES) return [];
  const inWinter = failed.filter((one) => isWinter(eventDay(one))).length;
  const share =
    sumOf(own, winterDays) /
    Math.max(
      1,
      sumOf(own, ({ time }) => time),
    );
  return [
    {
      about,
      what: "comes back by season",
      p: inWinter / failed.length <= share ? 1 : binomialAtLeast(inWinter, failed.length, share),
      says: message("came-back.winter", { inWinter, failed: failed.length, share: percent(share) }),
    },
  ];
}

/** A part of one name, and of one maker's lot where its lot is known and there are enough of it. */
const groupsOf = (parts: readonly WatchedPart[]): readonly (readonly [string, readonly WatchedPart[]])[] => {
  const names = [...grouped(parts, ({ part }) => part.part)];
  const lots = [...grouped(parts, ({ part }) => (part.lot === undefined ? undefined : `${part.part}, ${part.lot}`))];
  return [...names, ...lots.filter(([, own]) => own.length >= LEAST_EVENTS)];
};

/** Each part against all the others (log-rank), and its failures against the season. */
export function comparedParts(
  parts: readonly WatchedPart[],
  alpha: number,
): { readonly lines: readonly PartLine[]; readonly compared: readonly Candidate[] } {
  const compared: Candidate[] = [];
  const [all, winterDays] = [timesWatched(parts), winterCounting()];
  const lines = groupsOf(parts).map(([name, own]): PartLine => {
    const about = label("part", name);
    const times = timesWatched(own);
    const failed = own.filter(({ event }) => event);
    const { p, over } = logRankWithin(all, times);
    if (own.length >= LEAST_EVENTS && parts.length - own.length >= LEAST_EVENTS) {
      const says = message("came-back.part", { failed: failed.length, n: own.length });
      compared.push({ about, what: "part fails", p, quiet: over <= 0, says });
    }
    compared.push(...seasonal(about, own, failed, winterDays));
    return {
      about,
      n: own.length,
      whole: own.filter(({ time }) => time >= 365).length,
      failed: failed.length,
      inWinter: failed.filter((one) => isWinter(eventDay(one))).length,
      steps: kaplanMeierOf(times, alpha),
      p,
    };
  });
  return { lines: [...lines].sort((a, b) => b.failed / b.n - a.failed / a.n), compared };
}
