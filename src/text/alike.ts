import { shownText } from "./shown.ts";

/** Letters of other scripts that look like a Latin one in common fonts (UTS 39, confusables; those of capitals and of a b c alone). */
const LIKE: readonly (readonly [string, string])[] = [
  // Cyrillic
  ["АВЕЅІЈКМНОРСТУХЗЬ", "ABESIJKMHOPCTYX36"],
  ["аеѕіјорсух", "aesijopcyx"],
  // Greek
  ["ΑΒΕΖΗΙΚΜΝΟΡΤΥΧ", "ABEZHIKMNOPTYX"],
  ["ονρυχ", "ovpux"],
];
const latin: ReadonlyMap<string, string> = new Map(
  LIKE.flatMap(([signs, letters]) => [...signs].map((sign, i) => [sign, letters[i] ?? sign] as const)),
);
const DASHES = /[\u2010-\u2015\u2212\u2043\ufe58\ufe63\uff0d]/gu;

/**
 * What two short texts have in common that no reader tells apart: without what shows nothing, wide and narrow forms as one, every dash
 * as a hyphen, letters of other scripts as the Latin ones that they look like. For comparing alone, never to be shown.
 */
export function lookAlike(text: string): string {
  const plain = shownText(text)
    .normalize("NFKC")
    .replace(/\u200c|\u200d|\p{Variation_Selector}/gu, "");
  return [...plain.replace(DASHES, "-")]
    .map((sign) => latin.get(sign) ?? sign)
    .join("")
    .trim()
    .replaceAll(/\s+/g, " ");
}
