import type { Finding } from "../job/index.ts";

/** In the order in which exceptions are to be read; undefined: no exception. One rule, for the record and the screens. */
export function exceptionRank(finding: Finding): number | undefined {
  const { verdict, by, weight } = finding;
  if (verdict === "outside") return 0;
  if (verdict === "too close to call") return 1;
  if (verdict === "could not be taken") return 2;
  if (by !== undefined && by.way !== "does not apply" && by.way !== "rework") return 3;
  if (verdict === "not taken" && (weight === "holds" || weight === "asked")) return 4;
  return finding.beforeRework?.some((earlier) => earlier.verdict !== "within") ? 5 : undefined;
}

/** What a reader should see first: what is not plainly as asked, what passed by a decision, what is missing. */
export const isException = (finding: Finding): boolean => exceptionRank(finding) !== undefined;

/** Exceptions alone, in the order in which they are to be read. */
export function exceptionsFirst(findings: readonly Finding[]): readonly Finding[] {
  const ranked = findings.flatMap((finding) => {
    const rank = exceptionRank(finding);
    return rank === undefined ? [] : [{ finding, rank }];
  });
  return ranked.sort((a, b) => a.rank - b.rank).map(({ finding }) => finding);
}
