import type { JobObserved, ObservedPart } from "#core/quality/index.ts";

/** One part of one job as it is kept. */
export interface ObservedRow {
  readonly job: string;
  /** JSON. */
  readonly content: string;
}

/** The parts that rows are cut into, and the base that every question reads. */
export const observedParts = [
  "coverings",
  "findings",
  "readings",
  "pictures",
  "reworks",
  "callbacks",
  "parts",
] as const satisfies readonly ObservedPart[];
export const BASE = "job";

/** Raised when rows have another form: those of an older one are made again. */
export const MADE = 1;

/** A job's rows as they are kept: each part as JSON of its own. */
export function cutUp(observed: JobObserved): Readonly<Record<string, string>> {
  const cut = observedParts.map((part) => [part, JSON.stringify(observed[part])] as const);
  const base = Object.fromEntries(Object.entries(observed).filter(([key]) => !(observedParts as readonly string[]).includes(key)));
  return { [BASE]: JSON.stringify(base), ...Object.fromEntries(cut) };
}

type Base = Omit<JobObserved, ObservedPart>;

const none = Object.fromEntries(observedParts.map((part) => [part, []])) as unknown as Pick<JobObserved, ObservedPart>;

/** A page of whole rows again, in the order of their bases; parts that were not read are empty. */
export function putTogether(
  bases: readonly ObservedRow[],
  parts: readonly (readonly [ObservedPart, readonly ObservedRow[]])[],
): readonly JobObserved[] {
  const jobs = new Map(bases.map(({ job, content }) => [job, { ...none, ...(JSON.parse(content) as Base) }]));
  for (const [part, rows] of parts) {
    for (const { job, content } of rows) {
      const own = jobs.get(job) as { [part: string]: unknown } | undefined;
      if (own) own[part] = JSON.parse(content);
    }
  }
  return [...jobs.values()];
}
