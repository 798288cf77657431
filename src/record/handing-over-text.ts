import type { LeftToDo } from "../job/index.ts";
import type { Cover, WarrantyTerms } from "../warranty/index.ts";
import { makeWarrantySayer } from "./say-warranty.ts";
import { dayText, type Language, typedDay } from "./when.ts";

export interface HandingOverShown {
  readonly language: Language;
  /** The job's title. */
  readonly job: string;
  readonly terms: WarrantyTerms;
  readonly covers: readonly Cover[];
  readonly leftToDo: readonly LeftToDo[];
}

/**
 * The very text that is shown to the one who signs, in one language: what was received, the company's own terms word for
 * word, and what is left to do. Its digest is entered with the signature. Lines end in a line feed.
 */
export function handingOverText({ language, job, terms, covers, leftToDo }: HandingOverShown): string {
  const say = makeWarrantySayer(language);
  const by = (typed: string): string => {
    const day = typedDay(typed);
    return day === undefined ? typed : dayText(day, language);
  };
  const parts = covers.map((cover) =>
    cover.kept
      ? `${cover.part}: ${say.text("kept", { why: cover.kept.why })}`
      : say.text("shown-term", {
          part: cover.part,
          lasts: say.lasts(cover.months),
          starts: say.starts(cover),
          conditions: cover.conditions ?? "",
        }),
  );
  const left = leftToDo.filter(({ done }) => !done).map(({ text, by: until }) => `${text} (${by(until)})`);
  const lines = [
    say.text("shown-title", { job }),
    say.text("shown-received"),
    ...(terms.text[language].length + parts.length > 0 ? [say.text("shown-terms"), ...terms.text[language], ...parts] : []),
    ...(left.length > 0 ? [say.text("shown-left"), ...left] : []),
  ];
  return `${lines.join("\n")}\n`;
}
