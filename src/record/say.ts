import type { Clearance, Finding, Line, Said, WayOut } from "../job/index.ts";
import { makeFigures } from "./say-figures.ts";
import { makeFindings } from "./say-findings.ts";
import { makeRefusals } from "./say-refusals.ts";
import { makeTitles } from "./say-titles.ts";
import { fill, type Sentence, type Speaking, sentences } from "./speaking.ts";
import { momentText } from "./when.ts";

export { fill, type Speaking } from "./speaking.ts";

/** Makes every sentence of findings, lines, clearances and refusals in one language and one company's units. */
export function makeSayer(speaking: Speaking) {
  const { language, sheet, zone } = speaking;
  const texts = sentences[language];
  const titles = makeTitles(speaking);
  const figures = makeFigures(speaking, titles);
  const { words, title, titleOf, figureTitle } = titles;
  const { quantity, limit, value, origin, verdict, verdictWord, askedOf, doubt, marks } = figures;

  /** A line of a clearance: what is asked for and why, in words. */
  function line(l: Line): string {
    const own = title(l.about);
    const { key } = l.reason;
    if (key === "signature.missing" || key === "instants.outside-now")
      return fill(texts[key], { title: own, ...figures.figuresOf(l.reason, undefined, 16) }).replace(/\.$/, "");
    if (l.from !== undefined) return fill(texts["time.from"], { title: own, fromInstant: quantity("instant", l.from) });
    return `${own}: ${verdict(l.verdict)}`;
  }

  function clearanceText(c: Clearance): string {
    const covering = sheet?.coverings.find((k) => k.id === c.covering);
    const name = (c.onWord ?? []).map((entry) => speaking.behind?.(entry).name ?? texts["role.someone"]).join(", ");
    return fill(texts[`clearance.${c.state}`], { act: words(covering?.title), name });
  }

  /** What lies ahead, with its figures and its names in place. */
  function ahead({ key, names = {}, figures: said }: Said): string {
    const named = Object.entries(names).map(([name, of]) => [name, of.map(words).join("; ")] as const);
    const template = texts[key as Sentence] ?? key;
    return fill(template, { ...figures.figuresOf({ key, figures: said }, undefined, 16), ...Object.fromEntries(named) });
  }

  return {
    words,
    ahead,
    title,
    titleOf,
    figureTitle,
    finding: makeFindings(speaking, titles, figures),
    line,
    clearance: clearanceText,
    wayOut: (way: WayOut): string => texts[`way.${way}`],
    verdict,
    verdictWord,
    /** The verdict is not the program's to give: an electrician is asked. */
    isAsked: (f: Finding): boolean => askedOf(f) !== undefined,
    value,
    origin,
    limit,
    refusal: makeRefusals(speaking),
    quantity,
    moment: (milliseconds: number): string => momentText(milliseconds, zone, language),
    doubt,
    marks,
    role: (role: "crew" | "office" | "company owner" | "program" | "customer" | "someone"): string => texts[`role.${role}`],
  };
}

export type Sayer = ReturnType<typeof makeSayer>;
