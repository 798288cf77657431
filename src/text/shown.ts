/**
 * Typed text as it is shown, printed and sent on. What was typed stays in the ledger as it was; here is taken out of it what makes a
 * page say something else than it reads: marks that turn the direction of a line (Unicode 16, UAX 9: the explicit ones; letters of
 * either direction still run their own way), signs that show nothing, more marks on one letter than any language sets.
 */

/** Marks on one letter in a row; no language that is written sets more (own, after UAX 15's stream-safe 30, which is for machines). */
const MOST_MARKS = 4;

/** LRM, RLM, ALM; embeddings, overrides and isolates; word joiner and invisible operators; tags; soft hyphen; zero width space, BOM. */
const SHOWS_NOTHING = /[\u00ad\u061c\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e0fff}]/gu;
/** Joiners where they join nothing: they belong between letters of some scripts, and between the parts of one picture sign. */
const IDLE_JOINER = /(?<![\p{L}\p{M}\p{Extended_Pictographic}\p{Emoji_Modifier}])(?:\u200c|\u200d)+/gu;
const FLOOD = new RegExp(`(\\p{M}{${MOST_MARKS}})\\p{M}+`, "gu");
/** Half of a pair. */
const HALF = /\p{Cs}/gu;

/** Nearly every text: then nothing is looked for one by one. */
const PLAIN = /^[\t\n\r\u0020-\u00ac\u00ae-\u02ff\u1e00-\u1eff\u2010-\u2027\u2030-\u205e\u20a0-\u22ff]*$/;

/** Whether a text is shown just as it was typed. */
export const isPlainlyShown = (text: string): boolean => PLAIN.test(text) || shownText(text) === text;

/** The text without what would deceive whoever reads it. Showing it twice changes nothing more. */
export function shownText(text: string): string {
  if (PLAIN.test(text)) return text;
  return text.replace(SHOWS_NOTHING, "").replace(IDLE_JOINER, "").replace(FLOOD, "$1").replace(HALF, "\ufffd");
}
