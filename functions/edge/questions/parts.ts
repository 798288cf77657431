import type { JobObserved, ObservedPart } from "#core/quality/index.ts";

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

/** Whole rows again; parts that were not read are empty. */
export const putTogether = (base: string, parts: Readonly<Partial<Record<ObservedPart, string>>>): JobObserved => ({
  ...none,
  ...(JSON.parse(base) as Base),
  ...Object.fromEntries(Object.entries(parts).map(([part, content]) => [part, JSON.parse(content) as unknown])),
});
