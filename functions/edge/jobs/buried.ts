import {
  type AboutToBeBuried,
  aboutToBeBuried,
  type BuriedLine,
  type Clearance,
  type Finding,
  isToDecide,
  type JobState,
} from "#core/job/index.ts";
import { makeSayer } from "#core/record/index.ts";

/** What is kept of a job for the office's list: the core's lines, and of measured things the whole sentence in each language. */
export interface Buried extends Omit<AboutToBeBuried, "lines"> {
  readonly lines: readonly (BuriedLine & { readonly says?: { readonly en: string; readonly es: string } })[];
}

const keyOf = ({ check, tag = "", of }: Pick<Finding, "check" | "tag" | "of">): string => `${of === "check"} ${check} ${tag}`;

export function buriedOf(state: JobState, found: readonly Finding[], coverings: readonly Clearance[]): Buried {
  const { lines, ...rest } = aboutToBeBuried(state, found, coverings);
  const { sheet, opened } = state;
  const findings = new Map(found.filter(isToDecide).map((finding) => [keyOf(finding), finding]));
  const about = { units: opened?.units ?? "inch", zone: opened?.zone ?? "UTC", ...(sheet ? { sheet } : {}) } as const;
  const [en, es] = (["en", "es"] as const).map((language) => makeSayer({ ...about, language }));
  const sentence = (line: BuriedLine): { readonly says?: { readonly en: string; readonly es: string } } => {
    const { item, check = item, tag } = line.about ?? {};
    const finding = check === undefined ? undefined : findings.get(`${item === undefined} ${check} ${tag ?? ""}`);
    return finding && en && es ? { says: { en: en.finding(finding), es: es.finding(finding) } } : {};
  };
  return { ...rest, lines: lines.map((line) => ({ ...line, ...sentence(line) })) };
}
