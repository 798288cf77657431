import { capability, moments } from "../statistics/index.ts";
import { cellOf, grouped, LEAST_JOBS, label, labelCell, row, withEnds } from "./answering.ts";
import type { FindingObserved, JobObserved } from "./observation.ts";
import type { Row } from "./question.ts";

/** Whether a finding is told of: a first value by an instrument that has been studied. */
export const isTold =
  (studied: ReadonlySet<string>) =>
  ({ of, firstValue, instrument }: FindingObserved): boolean =>
    of === "check" && firstValue !== undefined && instrument !== undefined && studied.has(instrument);

/** How first values fill their limits, of checks whose instrument has been studied: before that, the spread is not the work's. */
export function capable(jobs: readonly JobObserved[], studied: ReadonlySet<string>, alpha: number): readonly Row[] {
  const isToldOf = isTold(studied);
  // what is not told makes nothing: of many jobs these are most findings
  const findings = jobs.flatMap((job) => job.findings.filter(isToldOf).map((finding) => ({ job, finding })));
  const byCheck = grouped(findings, ({ job, finding }) => `${job.sheet}\n${finding.check}`);
  return [...byCheck].flatMap(([key, own]) => {
    const [sheet, check = ""] = key.split("\n");
    // limits that change with the design are taken off, so that jobs of different designs stand on one axis
    const values = own.map(({ finding: { firstValue = 0, aim } }) => firstValue - (aim ?? 0));
    const last = own.at(-1)?.finding;
    const { mean, variance } = moments(values);
    const shift = (limit: number | undefined): number | undefined => (limit === undefined ? undefined : limit - (last?.aim ?? 0));
    const [lower, upper] = [shift(last?.lower), shift(last?.upper)];
    const limits = { ...(lower === undefined ? {} : { lower }), ...(upper === undefined ? {} : { upper }) };
    const found =
      values.length < LEAST_JOBS ? undefined : capability({ mean, sigma: Math.sqrt(variance), n: values.length }, limits, alpha);
    if (found === undefined) return [];
    return [row([labelCell(label("check", check, sheet)), cellOf(values.length), found.cp ? withEnds(found.cp) : {}, withEnds(found.cpk)])];
  });
}
