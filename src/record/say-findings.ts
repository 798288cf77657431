import type { Finding } from "../job/index.ts";
import type { FiguresSaid } from "./say-figures.ts";
import { makeFlowCauses } from "./say-flow.ts";
import type { Titles } from "./say-titles.ts";
import { settlingOf } from "./settle.ts";
import { fill, type Sentence, type Speaking, sentences } from "./speaking.ts";

const leaveSentences = {
  "none needed": "also.leave-none-needed",
  "leave water": "also.leave-leave-water",
  "full is not enough": "also.leave-full-is-not-enough",
} as const;

/** The sentence of a finding. */
export function makeFindings(speaking: Speaking, titles: Titles, figures: FiguresSaid) {
  const texts = sentences[speaking.language];
  const { words, itemOf, checkOf, title, titleOf, figureTitle } = titles;
  const { quantity, value, origin, verdict, limit, askedOf, figuresOf } = figures;

  const flowCauses = makeFlowCauses(speaking.language, quantity);

  function missingText(finding: Finding): string {
    return (finding.missing ?? []).map((about) => title(about)).join("; ");
  }

  /** What was decided about a finding, and what else belongs to its sentence. */
  function also(finding: Finding): string[] {
    const check = checkOf(finding.check);
    const { by, place, wins } = finding;
    const settling = askedOf(finding) === undefined ? settlingOf(finding) : undefined;
    const depths = itemOf(finding.check)?.wins;
    const won = wins && {
      least: quantity(wins.kind, wins.lower),
      most: quantity(wins.kind, wins.upper),
      shallow: depths === undefined ? "" : quantity("length", depths.lower),
      deep: depths === undefined ? "" : quantity("length", depths.upper),
      origin: origin(itemOf(finding.check)?.source),
    };
    const look = speaking.look?.(finding);
    const looked = look && {
      name: speaking.behind?.(look.entry).name || texts["role.someone"],
      lookedInstant: quantity("instant", look.at),
    };
    const behind = by && speaking.behind?.(by.entry);
    const named = { name: behind?.name ?? texts["role.someone"], reason: behind?.reason ?? "" };
    const way =
      by?.way === "go-ahead"
        ? by.confirmed
          ? texts["also.go-ahead-confirmed"]
          : texts["also.go-ahead"]
        : by?.way === "concession"
          ? texts["also.concession"]
          : by?.way === "departure"
            ? texts["also.departure"]
            : undefined;
    const earlier = (finding.beforeRework ?? [])
      .map((b) =>
        fill(texts["also.before"], {
          value: value(finding, b.value),
          verdict: verdict(b.verdict),
        }),
      )
      .join("; ");
    return [
      ...(looked === undefined ? [] : [fill(texts["also.looked"], looked)]),
      ...(place === undefined || finding.value === 0 ? [] : [fill(texts["also.place"], { place: title(place) })]),
      ...(settling === undefined ? [] : [texts[`settle.${settling}`]]),
      ...flowCauses(finding),
      ...(finding.soFar && finding.of === "check" ? [texts["also.so-far"]] : []),
      ...(finding.costs ? [fill(texts["also.costs"], { costs: quantity(finding.costs.kind, finding.costs.value) })] : []),
      ...leaveText(finding),
      ...(won === undefined ? [] : [fill(texts["also.wins"], won)]),
      ...(way === undefined ? [] : [fill(way, named)]),
      ...(by?.way === "rework" ? [texts["also.rework"]] : []),
      ...(earlier === "" ? [] : [fill(texts["also.before-rework"], { earlier })]),
      ...(check?.asks === "electrician" ? [texts["also.electrician"]] : []),
    ];
  }

  /** How much water to leave inside, and what for. */
  function leaveText({ leaves }: Finding): string[] {
    if (leaves === undefined) return [];
    const { answer, occasion, depth, volume } = leaves;
    const said = { leave: quantity("length", depth), occasion: texts[`occasion.${occasion}`] };
    const also = answer === "leave water" && volume !== undefined;
    return [
      fill(texts[leaveSentences[answer]], said),
      ...(also ? [fill(texts["also.leave-volume"], { volume: quantity("volume", volume) })] : []),
    ];
  }

  function choiceText(finding: Finding): string {
    const id = finding.says.figures.choice;
    return words(itemOf(finding.check)?.choices?.find((c) => c.id === id)?.title);
  }

  /** The key of a finding's sentence: figures beside each other where somebody else decides, else by the rule that judged it. */
  function keyOf(finding: Finding): string {
    const check = checkOf(finding.check);
    const { key } = finding.says;
    if (askedOf(finding) !== undefined && key.startsWith("value."))
      return typeof check?.upper === "object" && check.upper.function === "cord reach" ? "value.beside-cord" : "value.beside";
    if (check?.function === "found by ties") return key === "check.one-of-them" ? "found.base" : key.replace("value.", "found.");
    if (check?.function === "between two instants") return key.replace("value.", "instants.");
    return check?.rule === "simple acceptance" ? key.replace("value.", "value.simple-") : key;
  }

  function sentenceOf(finding: Finding): string {
    const marks = figures.marks(finding);
    const { kind, doubt } = finding;
    const key = keyOf(finding);
    const template = texts[key as Sentence] ?? texts[finding.says.key as Sentence] ?? finding.says.key;
    return fill(template, {
      title: titleOf(finding),
      limit: limit(finding),
      missing: missingText(finding),
      unknown: (finding.unknown ?? []).map(figureTitle).join("; "),
      choice: choiceText(finding),
      ...figuresOf(finding.says, kind, marks),
      ...(finding.says.figures.choice === undefined ? {} : { choice: choiceText(finding) }),
      ...(kind === undefined || finding.upper === undefined ? {} : { reach: quantity(kind, finding.upper, marks) }),
      ...(kind === undefined || finding.value === undefined ? {} : { value: value(finding) }),
      ...(kind === undefined || doubt === undefined ? {} : { doubt: figures.doubt(kind, doubt) }),
    });
  }

  /** The sentence of a finding, as the record prints it. */
  const finding = (f: Finding): string => [sentenceOf(f), ...also(f)].join(" ");

  return finding;
}
