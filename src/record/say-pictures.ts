import type { PictureLine } from "../job/index.ts";
import { makeFigures } from "./say-figures.ts";
import { makeTitles } from "./say-titles.ts";
import { fill, type Speaking, sentences } from "./speaking.ts";
import { clockText } from "./when.ts";
import { type PictureSentence, pictureFactsEn } from "./words/picture-facts-en.ts";
import { pictureFactsEs } from "./words/picture-facts-es.ts";

const MICROMETRES_PER_METRE = 1e6;
const MICROMETRES_PER_FOOT = 304_800;

/** Sentences of what speaks for and against a picture; apart from the others, since the crew's phone does without them. */
export function makePictureSayer(speaking: Speaking) {
  const { language, units, behind } = speaking;
  const titles = makeTitles(speaking);
  const { quantity } = makeFigures(speaking, titles);
  const someone = sentences[language]["role.someone"];
  const texts: Readonly<Record<PictureSentence, string>> = language === "es" ? pictureFactsEs : pictureFactsEn;

  /** Whole feet or metres: no phone's place is finer. */
  const distance = (micrometres: number): string =>
    units === "metric" ? `${Math.round(micrometres / MICROMETRES_PER_METRE)} m` : `${Math.round(micrometres / MICROMETRES_PER_FOOT)} ft`;

  function figure(name: string, value: string | number): string {
    if (name === "wallClock") return clockText(String(value), language);
    if (name === "step") return titles.title({ step: String(value) }) || String(value);
    if (typeof value === "string") return value;
    if (name.endsWith("Distance")) return distance(value);
    return quantity(name.endsWith("Instant") ? "instant" : "duration", value);
  }

  function line({ says: { key, figures } }: PictureLine): string {
    const by = typeof figures.lookedEntry === "string" ? { name: behind?.(figures.lookedEntry).name || someone } : {};
    // a note of a newer program says at least that something is missing
    const template = Object.hasOwn(texts, key) ? texts[key as PictureSentence] : texts["photo.metadata-not-read"];
    return fill(template, { ...Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, figure(name, value)])), ...by });
  }

  return { line, speaks: (speaks: PictureLine["speaks"]): string => texts[`speaks.${speaks}`] };
}
