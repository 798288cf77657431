import type { Clearance, Finding } from "../job/index.ts";
import { type Likeness, likeness } from "./equal.ts";
import type { Judged } from "./judging.ts";
import type { SealedFindings } from "./sealed-record.ts";

export const findingKey = ({ step, check, tag, holds }: Pick<Finding, "step" | "check" | "tag" | "holds">): string =>
  // a tag set that is too short is found once for each covering that it holds
  JSON.stringify([step, check, tag ?? null, holds ?? null]);

const byKey = <T>(list: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, T> => new Map(list.map((one) => [keyOf(one), one]));

/** For each of `sealed`, how like the one of the same key among `again` it is; `other` where there is none. */
function compared<T>(sealed: readonly T[], again: readonly T[], keyOf: (one: T) => string): readonly Likeness[] {
  const there = byKey(again, keyOf);
  return sealed.map((one) => likeness(one, there.get(keyOf(one))));
}

const placesOf = (list: readonly Likeness[], wanted: Likeness): readonly number[] =>
  list.flatMap((one, place) => (one === wanted ? [place] : []));

const coveringOf = ({ covering }: Clearance): string => covering;

/** What is sealed of a record's findings: those of the whole ledger, with those marked that the edition does not give. */
export function sealedFindings(whole: Judged, edition: Judged): SealedFindings {
  const { findings, clearances } = whole;
  return {
    format: 1,
    findings,
    clearances,
    withheld: {
      findings: placesOf(compared(findings, edition.findings, findingKey), "other"),
      clearances: placesOf(compared(clearances, edition.clearances, coveringOf), "other"),
    },
  };
}

/** Sealed findings beside those that the attached ledger gives; places are those in the sealed lists. */
export interface JudgedAgain {
  readonly same: number;
  readonly oneUnit: readonly Finding[];
  readonly other: readonly Finding[];
  readonly otherClearances: readonly Clearance[];
  /** Found in the attached ledger, and not among what was sealed. */
  readonly added: readonly Finding[];
  readonly withheld: readonly Finding[];
  readonly withheldClearances: readonly Clearance[];
}

/** Compares. What was sealed as resting on withheld parts is not compared but listed. */
export function judgedAgain(sealed: SealedFindings, again: Judged): JudgedAgain {
  const { findings, clearances, withheld } = sealed;
  const [apart, apartClearances] = [new Set(withheld.findings), new Set(withheld.clearances)];
  const likes = compared(findings, again.findings, findingKey);
  const those = (wanted: Likeness) => findings.filter((_, place) => !apart.has(place) && likes[place] === wanted);
  const clearanceLikes = compared(clearances, again.clearances, coveringOf);
  const known = new Set(findings.map(findingKey));
  return {
    same: those("same").length,
    oneUnit: those("one unit"),
    other: those("other"),
    otherClearances: clearances.filter((_, place) => !apartClearances.has(place) && clearanceLikes[place] === "other"),
    // where something is withheld the edition may give findings of its own: what a withheld answer settles, say
    added: apart.size > 0 ? [] : again.findings.filter((one) => !known.has(findingKey(one))),
    withheld: findings.filter((_, place) => apart.has(place)),
    withheldClearances: clearances.filter((_, place) => apartClearances.has(place)),
  };
}
