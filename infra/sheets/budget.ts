import type { Item, ToleranceSheet } from "#core/job/index.ts";

/** What a sheet asks of a crew on one job. Values typed from a paper, leak tests and return visits (`apart`) are not counted. */
export interface Budget {
  readonly holdingReadings: number;
  readonly readings: number;
  readonly pictures: number;
  /** Answers, and one tap for each covering. */
  readonly taps: number;
}

/** Limits of the default sheet for the everyday job (issue 2, section 3). */
export const everydayLimits: Budget = { holdingReadings: 26, readings: 44, pictures: 30, taps: 65 };

/** One basin, fitting and spillway, two glue sessions, two buried points, two stretches of liner edge. */
export const everydayTags: Readonly<Record<string, number>> = {
  "side-fitting": 1,
  "glue-session": 2,
  "buried-point": 2,
  "fall-spillway": 1,
  "edge-stretch": 2,
};

/** Of a group of ways the first is counted; switches stand as the sheet has them; a tag set that is not named has no tags. */
export function budgetOf(sheet: ToleranceSheet, tagCounts: Readonly<Record<string, number>>): Budget {
  const standing = new Map(sheet.switches.map((s) => [s.id, s.standard]));
  const otherWays = new Set(sheet.oneOf.flatMap((one) => one.groups.slice(1).flatMap((group) => group.items)));
  const isAsked = ({ id, apart, switches }: Item): boolean =>
    apart !== true &&
    !otherWays.has(id) &&
    (switches?.on ?? []).every((s) => standing.get(s) === true) &&
    (switches?.off ?? []).every((s) => standing.get(s) !== true);
  const times = ({ tags, whenNoTagOf }: Item): number => {
    if (whenNoTagOf !== undefined && (tagCounts[whenNoTagOf] ?? 0) > 0) return 0;
    return tags === undefined ? 1 : (tagCounts[tags] ?? 0);
  };
  const count = (wanted: (item: Item) => boolean): number =>
    sheet.items.filter((item) => isAsked(item) && wanted(item)).reduce((sum, item) => sum + times(item), 0);
  return {
    holdingReadings: count(({ kind, weight }) => kind === "reading" && weight === "holds"),
    readings: count(({ kind }) => kind === "reading"),
    pictures: count(({ kind }) => kind === "picture"),
    taps: count(({ kind }) => kind === "answer") + sheet.coverings.length,
  };
}
