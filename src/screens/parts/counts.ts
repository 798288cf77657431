import type { Clearance, Finding } from "../../job/index.ts";
import { exceptionsFirst } from "../../record/index.ts";
import type { JobNow } from "./job-now.ts";

/**
 * What findings are counted as: only what was measured against a limit is ever within. What has none was taken, or is as
 * asked; what a licensed person decides stands beside the tolerance sheet's figure.
 */
export const countedAs = [
  "within",
  "as asked",
  "taken",
  "outside",
  "too close to call",
  "not taken",
  "could not be taken",
  "does not apply",
  "beside its figure",
] as const;
export type CountedAs = (typeof countedAs)[number];
export type FindingCounts = Readonly<Record<CountedAs, number>>;

/** An electrician is asked, and there is a figure to show. */
export const isForElectrician = ({ asks, value }: Pick<Finding, "asks" | "value">): boolean => asks !== undefined && value !== undefined;

/** What one finding is counted as. */
export function countOf(finding: Finding): CountedAs {
  const { verdict, of, says } = finding;
  if (isForElectrician(finding)) return "beside its figure";
  if (verdict !== "within") return verdict;
  if (of === "picture" || of === "reading") return "taken";
  return of === "check" && !says.key.startsWith("check.") ? "within" : "as asked";
}

export interface JobCounts {
  readonly findings: FindingCounts;
  readonly covered: number;
  readonly open: number;
  readonly onNotYet: number;
  readonly onWord: number;
  /** It follows from later entries that it was covered; nobody said so, and no clearance was shown. */
  readonly unsaid: number;
  readonly laterDoubted: number;
}

export function findingCounts(findings: readonly Finding[]): FindingCounts {
  const counts = Object.fromEntries(countedAs.map((as) => [as, 0])) as Record<CountedAs, number>;
  for (const finding of findings) counts[countOf(finding)] += 1;
  return counts;
}

type Happened = Pick<Clearance, "covered">;
export const coveredOnNotYet = ({ covered }: Happened): boolean => covered?.shown === "not yet";
export const coveredOnWord = ({ covered }: Happened): boolean => covered?.shown === "on word";
export const coveredUnsaid = ({ covered }: Happened): boolean =>
  covered !== undefined && covered.shown === undefined && !covered.beforeRecord;
export const coveredDoubted = ({ covered }: Happened): boolean => covered?.laterDoubted === true;

/** Plain counts of one job. */
export function countsOf({ findings, clearances }: Pick<JobNow, "findings" | "clearances">): JobCounts {
  const covered = clearances.filter((clearance) => clearance.covered !== undefined);
  return {
    findings: findingCounts(findings),
    covered: covered.length,
    open: clearances.length - covered.length,
    onNotYet: covered.filter(coveredOnNotYet).length,
    onWord: covered.filter(coveredOnWord).length,
    unsaid: covered.filter(coveredUnsaid).length,
    laterDoubted: covered.filter(coveredDoubted).length,
  };
}

export interface Exceptions {
  /** What was found, or was decided, in the order in which the record lists it. */
  readonly found: readonly Finding[];
  /** What was asked and is not entered yet. */
  readonly missing: readonly Finding[];
}

const isUntaken = ({ verdict, by }: Finding): boolean => verdict === "not taken" && by === undefined;

/** What a reader should see first, by the record's own rule; a job that has just begun misses a great deal, so that stands apart. */
export function exceptionsOf(findings: readonly Finding[]): Exceptions {
  const all = exceptionsFirst(findings);
  return { found: all.filter((finding) => !isUntaken(finding)), missing: all.filter(isUntaken) };
}

/** The finding behind a line of a clearance, where that line is about a finding of its own. */
export const findingBehind = (
  findings: readonly Finding[],
  about: { readonly item?: string; readonly check?: string; readonly tag?: string },
) =>
  findings.find(
    (finding) => finding.tag === about.tag && (finding.of === "check" ? finding.check === about.check : finding.check === about.item),
  );
