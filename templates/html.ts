import { shownText } from "#core/text/index.ts";

/** Text that is already HTML. Only `html` and `trusted` make it, so a plain text can never pass for it. */
export class Html {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Piece = string | number | Html | undefined | null | false | readonly Piece[];

const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

// Controls and unpaired surrogates have no glyph; the sign for 'not a character' is printed in their place, so that nothing
// vanishes without a word.
const unprintable = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\ufffe\uffff]/gu;

/** Escapes for text and for quoted attributes alike. */
export const escaped = (text: string): string =>
  shownText(text)
    .replace(unprintable, "\ufffd")
    .replace(/[&<>"']/g, (sign) => entities[sign] as string);

const written = (piece: Piece): string => {
  if (piece === undefined || piece === null || piece === false) return "";
  if (piece instanceof Html) return piece.text;
  if (Array.isArray(piece)) return piece.map(written).join("");
  return escaped(String(piece));
};

/** Tagged template: everything put in is escaped, lists are joined, nothing stands for nothing. */
export const html = (strings: TemplateStringsArray, ...pieces: readonly Piece[]): Html =>
  new Html(strings.reduce((text, part, at) => text + written(pieces[at - 1]) + part));

/** For text that the templates write themselves: style sheets and drawings. Never for what somebody typed. */
export const trusted = (text: string): Html => new Html(text);

/** A CSS string for `content`, safe inside a `style` element: every sign that could end string, rule or element as an escape. */
export const cssString = (text: string): string =>
  `"${shownText(text)
    .replace(unprintable, "\ufffd")
    .replace(/[^\p{L}\p{N} .,;:·–′″+-]/gu, (sign) => `\\${(sign.codePointAt(0) as number).toString(16)} `)}"`;
