import { type Clearance, type Finding, type Verdict, verdicts } from "../../job/index.ts";
import type { JobNow } from "./job-now.ts";

export interface JobCounts {
  readonly findings: Readonly<Record<Verdict, number>>;
  readonly covered: number;
  readonly open: number;
  readonly onNotYet: number;
  readonly laterDoubted: number;
}

export const findingCounts = (findings: readonly Finding[]): Readonly<Record<Verdict, number>> => {
  const counts = Object.fromEntries(verdicts.map((verdict) => [verdict, 0])) as Record<Verdict, number>;
  for (const { verdict } of findings) counts[verdict] += 1;
  return counts;
};

export const coveredOnNotYet = (clearance: Clearance): boolean => clearance.covered?.shown === "not yet";

/** Plain counts of one job. */
export function countsOf({ findings, clearances }: Pick<JobNow, "findings" | "clearances">): JobCounts {
  const covered = clearances.filter((clearance) => clearance.covered !== undefined);
  return {
    findings: findingCounts(findings),
    covered: covered.length,
    open: clearances.length - covered.length,
    onNotYet: covered.filter(coveredOnNotYet).length,
    laterDoubted: covered.filter((clearance) => clearance.covered?.laterDoubted === true).length,
  };
}

/** What a reader should see first: what is not within, and whatever passed by somebody's decision. */
export const exceptionsOf = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter(
    ({ verdict, by }) => by !== undefined || verdict === "outside" || verdict === "too close to call" || verdict === "could not be taken",
  );

/** The finding behind a line of a clearance, where that line is about a finding of its own. */
export const findingBehind = (
  findings: readonly Finding[],
  about: { readonly item?: string; readonly check?: string; readonly tag?: string },
) =>
  findings.find(
    (finding) => finding.tag === about.tag && (finding.of === "check" ? finding.check === about.check : finding.check === about.item),
  );
