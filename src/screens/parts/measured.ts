import { type Finding, type JobState, type PhotoComparison, photoComparisons } from "../../job/index.ts";
import { type Language, makePhotoLengthSayer } from "../../record/index.ts";
import type { Units } from "../../wire/index.ts";
import type { JobNow } from "./job-now.ts";

const restsOn = ({ entries, aside = [] }: Finding, reading: string | undefined): boolean =>
  reading !== undefined && entries.includes(reading) && !aside.includes(reading);

/** Whether a finding is of this item, or of a check that needs it. */
function asksFor({ sheet }: JobState, { of, check, tag }: Finding, { item, tag: own }: PhotoComparison): boolean {
  if (tag !== own) return false;
  return of === "check" ? sheet?.checks.find(({ id }) => id === check)?.items.includes(item) === true : check === item;
}

/** What photos measured, in words, beside the first finding that rests on the reading, or that still asks for it. */
export function saidOfPhotos(
  { state, findings }: Pick<JobNow, "state" | "findings">,
  language: Language,
  units: Units,
): ReadonlyMap<Finding, readonly string[]> {
  const sayer = makePhotoLengthSayer({ language, units });
  const said = new Map<Finding, readonly string[]>();
  for (const compared of photoComparisons(state, "all")) {
    const finding = findings.find((one) => restsOn(one, compared.reading)) ?? findings.find((one) => asksFor(state, one, compared));
    if (finding !== undefined) said.set(finding, [...(said.get(finding) ?? []), sayer.comparison(compared)]);
  }
  return said;
}
